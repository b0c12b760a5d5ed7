package body

import (
	"archload/cases/design"
)

// Report is what the body does at full load: mm, N, N·mm, degrees. Movements count
// from a stand that holds the blocks where they meet the back: see
// design.Built.
type Report struct {
	NeckTurn float64 `json:"neck_turn"` // deg, of the neck block about the line across, upper part inward: the nut rises
	TailTurn float64 `json:"tail_turn"` // deg, of the tail block, upper part inward
	Nearer   Nearer  `json:"nearer"`
	Blocks   Blocks  `json:"blocks"`
	Sink     Sinks   `json:"sink"`
	Back     Lift    `json:"back"`
	Thrust   Thrust  `json:"thrust"`
	Onward   *Onward `json:"onward"`  // null where movements are not small
	Joint    *Joint  `json:"joint"`   // null without strings
	Action   *Action `json:"action"`  // null without strings
	Outside  float64 `json:"outside"` // greatest force that the stand gives over what is applied, 1: strings alone need none
}

// Nearer is how much nearer the blocks come to each other at three heights, mm.
type Nearer struct {
	Top    float64 `json:"top"`    // at the top's gluing surface
	Middle float64 `json:"middle"` // half way down the side
	Back   float64 `json:"back"`   // at the back's gluing surface
}

// Blocks is how the two blocks move.
type Blocks struct {
	Neck Motion `json:"neck"`
	Tail Motion `json:"tail"`
}

// Bridge is how the bridge of a solution moves from the slack strings.
type Bridge struct {
	Sink   float64                    // of the base at its middle, mm
	Saddle func(x float64) [3]float64 // movement of the saddle at x from the bridge's middle, mm
}

// Of is what the body of a solution does, under a bridge if it has one; nil without
// a body.
func Of(s *design.Solution, br Bridge) *Report {
	b := s.Top.Built
	if b.Back == nil {
		return nil
	}
	r := &Report{Blocks: Blocks{Neck: motion(s, "neck"), Tail: motion(s, "tail")}, Outside: s.Result.Checks.Outside}
	r.NeckTurn, r.TailTurn = r.Blocks.Neck.Turn[0], -r.Blocks.Tail.Turn[0]
	side := float64(b.Case.Rim.SideHeight)
	r.Nearer = Nearer{Top: r.nearer(0), Middle: r.nearer(-side / 2), Back: r.nearer(-side)}
	plane := rimPlane(s)
	r.Sink = sinks(s, plane)
	r.Back = lift(s)
	r.Thrust, r.Onward = thrust(s), onward(s)
	if b.Bridge != nil {
		sink := br.Sink + plane.At(b.Case.Bridge.At)
		r.Sink.Bridge = &sink
		r.Joint = joint(b)
		r.Action = action(s, &r.Blocks.Neck, plane, br.Saddle)
	}
	return r
}

// LoweredAt is how much lower a string at x from the bridge's middle comes over the
// board at the octave, mm, its place on the saddle moving by saddle, mm; ok is false
// without a body.
func LoweredAt(s *design.Solution, x float64, saddle [3]float64) (lower float64, ok bool) {
	if s.Top.Built.Back == nil {
		return 0, false
	}
	for _, f := range s.Top.Built.Geometry.StringForces() {
		if f.X == x {
			neck := motion(s, "neck")
			return lowered(s.Top.Built, &neck, f, saddle), true
		}
	}
	return 0, false
}

// nearer is how much nearer the blocks come at a height, mm.
func (r *Report) nearer(z float64) float64 {
	neck, tail := &r.Blocks.Neck, &r.Blocks.Tail
	return tail.of([3]float64{0, tail.At[1], z})[1] - neck.of([3]float64{0, neck.At[1], z})[1]
}
