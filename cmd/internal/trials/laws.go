package main

import (
	"context"
	"fmt"

	"archload/cases"
)

// law is something that holds of every design.
type law struct {
	name  string
	most  float64                                    // deviation allowed, 1
	of    func(*cases.Case) bool                     // whether it holds of a design at all
	other func(seed uint64) (*cases.Case, error)     // the design to compare with
	miss  func(a, b answers) (off float64, w string) // how far its answers b are from what a asks for
}

// off solves the other design of a seed and says by how much the law is missed.
func (l law) off(ctx context.Context, seed uint64, a answers, refine float64) (float64, string, error) {
	c, err := l.other(seed)
	if err != nil {
		return 0, "", err
	}
	b, err := solve(ctx, c, refine)
	if err != nil || a == nil {
		return 0, "", err
	}
	off, words := l.miss(a, b)
	return off, words, nil
}

// thinner is what a plate a seventh thicker may store more, relative: wood is added
// inside, which lowers the middle of the plate and with it a flat arch.
const thinner = 0.02

// laws are all of them.
func laws() []law {
	every := func(*cases.Case) bool { return true }
	changed := func(change func(*cases.Case) *cases.Case) func(uint64) (*cases.Case, error) {
		return func(seed uint64) (*cases.Case, error) {
			c, err := drawn(seed, inMM)
			if err != nil {
				return nil, err
			}
			return change(c), nil
		}
	}
	return []law{
		{"mirrored", exactly, firm, changed(mirrored), mirrorImage},
		{"mirrored, rough foot", closely, rough, changed(mirrored), mirrorImage},
		{"in inches", exactly, every, func(seed uint64) (*cases.Case, error) { return drawn(seed, inInches) }, answers.off},
		{"forces and moduli", exactly, every, changed(func(c *cases.Case) *cases.Case { return stiffer(tauter(c, 1.5), 1.5, "") }), sameMoves},
		{"tauter, tight foot", exactly, tight, changed(func(c *cases.Case) *cases.Case { return tauter(c, 1.5) }), moves(1.5)},
		{"stiffer plate, tight foot", 0, tight, changed(func(c *cases.Case) *cases.Case { return stiffer(c, 1.2, "plate.wood") }), lessWork},
		{"thicker plate, tight foot", thinner, tight, changed(func(c *cases.Case) *cases.Case { return thicker(c, 1.15) }), lessWork},
	}
}

// mirrorImage is how far b's answers are from the mirror image of a's.
func mirrorImage(a, b answers) (float64, string) { return a.mirrored().off(b) }

// rough says whether friction holds the foot, so that its path is followed in increments, and
// firm whether its path is exact from event to event.
func rough(c *cases.Case) bool { return c.Bridge != nil && c.Bridge.Hold == "friction" }
func firm(c *cases.Case) bool  { return !rough(c) }

// tight says whether the foot fits without a gap.
func tight(c *cases.Case) bool { return c.Bridge.Relief.Depth == 0 }

// moved are the quantities that are lengths moved or angles, and those that are
// shares of the load.
func moved() []string {
	return []string{"bridge_sink", "bass_end_sink", "treble_end_sink", "action_change", "most_sunk", "apex_sink", "gauge 1 sinks"}
}

func shares() []string { return []string{"bass_share", "middle_share", "treble_share"} }

func sameMoves(a, b answers) (float64, string) { return moves(1)(a, b) }

// moves wants so many times the movements, and the same shares.
func moves(times float64) func(a, b answers) (float64, string) {
	return func(a, b answers) (worst float64, where string) {
		check := func(k string, want, least float64) {
			if d := apart(want, b[k], least); d > worst {
				worst, where = d, fmt.Sprintf("%s %.12g, want %.12g", k, b[k], want)
			}
		}
		for _, k := range moved() {
			check(k, times*a[k], 1e-3)
		}
		for _, k := range shares() {
			check(k, a[k], 0.1)
		}
		return worst, where
	}
}

// lessWork wants no more energy than before. With a gap under the foot that is no law:
// it is the energy less the load's work that a stiffer plate raises, and only without
// a gap is that minus the energy.
func lessWork(a, b answers) (float64, string) {
	k := "energy"
	return max(0, b[k]/a[k]-1), fmt.Sprintf("%s %.12g after %.12g", k, b[k], a[k])
}
