package tone

import (
	"context"
	"fmt"
	"maps"
	"slices"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/tree"
)

// lever is one thing that may be changed by a little.
type lever struct {
	key, words string
	woods      []string // keys of the wood it is a constant of; none: of no wood
	constants  []string // of those woods' cards
	set        func(c *cases.Case, times float64)
}

// stiffnesses are the moduli of a card: twice their changes sum to the share of the strain
// energy that is in that wood, because a stiffness is as many times greater as all of them.
func stiffnesses() []string { return []string{"EL", "ER", "ET", "GLR", "GLT", "GRT"} }

// leversOf lists what a maker chooses: wood by its constants, thickness (taken off or left on
// inside, the arch as it is carved), heights of bars.
func leversOf(m *design.Moving) []lever {
	c, state := m.Case, m.State
	rim := tree.Length(m.Built.Geometry.RimHeight)
	var list []lever
	wood := func(key, what string) {
		if _, known := c.Cards[key]; !known {
			return
		}
		for _, k := range append(stiffnesses(), "density") {
			list = append(list, lever{key: key + ": " + k, words: what + ", " + k, woods: []string{key}, constants: []string{k}})
		}
	}
	wood("plate.wood", "wood of the plate")
	list = append(list, lever{key: "plate.thickness_scale", words: "thickness of the plate",
		set: func(c *cases.Case, t float64) {
			c.Plate.ThicknessScale *= t
			c.Plate.Arch.RimHeight = &rim
		}})
	for i, b := range c.Braces {
		if !b.Fitted {
			continue
		}
		key := tree.EntryKey("brace", i+1)
		wood(key+".wood", "wood of the "+b.Name)
		list = append(list, lever{key: key + ".height_scale", words: "height of the " + b.Name, set: func(c *cases.Case, t float64) {
			c.Braces = slices.Clone(c.Braces)
			c.Braces[i].HeightScale *= t
		}})
	}
	if state != design.Free {
		wood("rim.side_wood", "wood of the sides")
	}
	if state == design.Strung {
		wood("bridge.wood", "wood of the bridge")
	}
	return list
}

// with is the case with the thing that many times as great.
func (l *lever) with(c *cases.Case, times float64) *cases.Case {
	out := *c
	if l.set != nil {
		l.set(&out, times)
		return &out
	}
	by := map[string]float64{}
	for _, k := range l.constants {
		by[k] = times
	}
	out.Cards = maps.Clone(c.Cards)
	for _, k := range l.woods {
		out.Cards[k] = c.Cards[k].Varied(by)
	}
	return &out
}

// littleStep is the change by which a derivative is taken to both sides: stiffness and mass are
// smooth, and what is left of the third power is below a millionth of the derivative.
const littleStep = 1e-3

// swings are shapes of modal mass 1 tonne with the squares of their frequencies.
type swings struct {
	shapes  [][]float64
	squares []float64 // 1/s²
}

// slopes are the derivatives of the square of each frequency by the logarithm of a thing, as a share
// of it, by Rayleigh's quotient about the shapes, whose own change does not count at first order:
//
//	dλ/λ = φᵀ(dK − λ dM)φ / λ,  φᵀMφ = 1.
//
// What the load's own stress lends stays as it is. Of a modulus it is the share of the strain energy
// that hangs on it.
func slopes(ctx context.Context, m *design.Moving, l *lever, t swings, workers int) ([]float64, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	out := make([]float64, len(t.shapes))
	for _, side := range []float64{1, -1} {
		s, err := m.Altered(l.with(m.Case, 1+side*littleStep), workers)
		if err != nil {
			return nil, fmt.Errorf("%s a little changed: %w", l.words, err)
		}
		for i, lambda := range t.squares {
			k, mass := s.Quotient(t.shapes[i])
			out[i] += side * (k - lambda*mass) / (2 * littleStep * lambda)
		}
	}
	return out, nil
}

// FindChanges says which way each thing that a maker chooses moves the tones of a report.
func (r *Report) FindChanges(ctx context.Context, s *Shapes, o design.Options) error {
	r.Changes = []Change{}
	var t swings
	for i := range r.Tones {
		t.shapes, t.squares = append(t.shapes, s.Tones.List[i].Shape), append(t.squares, s.Tones.List[i].Square())
	}
	for _, l := range leversOf(s.Moving) {
		o.Say("changes: " + l.words)
		d, err := slopes(ctx, s.Moving, &l, t, o.WorkerCount())
		if err != nil {
			return err
		}
		c := Change{Key: l.key, Words: l.words}
		for _, v := range d {
			c.PerPercent = append(c.PerPercent, answer.Num(v/2))
		}
		r.Changes = append(r.Changes, c)
	}
	return nil
}
