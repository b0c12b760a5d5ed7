package body

import (
	"math"

	"archload/cases"
	"archload/cases/design"
	"archload/fem"
	"archload/fem/vec3"
)

// Joint is what the strings ask of the neck's joint.
type Joint struct {
	Z      float64 `json:"z"`      // mm, its middle above the rim's gluing surface
	Force  float64 `json:"force"`  // N, lengthwise, pressing the joint together
	Moment float64 `json:"moment"` // N·mm about its middle, the neck's head pulled up
}

// joint takes the strings' pull at the nut to the middle of the neck's joint.
func joint(b *design.Built) *Joint {
	j := &Joint{Z: b.Case.NeckJoint()}
	end := b.Geometry.Blocks[0].Edge[1]
	for _, f := range b.Geometry.StringForces() {
		at := b.Saddle(f.X)
		sin, cos := math.Sincos(f.FrontAngle * math.Pi / 180)
		pull := f.Tension + f.Rise
		height := at[2] - (end-at[1])*sin/cos - j.Z // of the string over the joint
		j.Force += pull * cos
		j.Moment += pull * cos * height
	}
	return j
}

// Action is how much lower the strings come over the board at the octave, mm, and
// what of it comes from where. The board goes with the neck block: neck and board
// are taken as rigid.
type Action struct {
	Lower      float64 `json:"lower"`        // in all
	BridgeSink float64 `json:"bridge_sinks"` // the saddle comes down from the plane of the rim
	NeckTurn   float64 `json:"neck_turns"`   // the neck block turns in the plane of the rim: the board tips up or down
	BodyBend   float64 `json:"body_bends"`   // the neck block rises or sinks out of the plane of the rim
}

// action halves, string by string, how far the saddle comes down toward the board's
// plane as the neck block takes it along: the octave lies half way between nut and
// saddle. Of that, with c the tip of the rim's plane and r the way from block to
// saddle, the block's own turn gives (c - turn) r and its rise out of the plane its
// part; the rest is the saddle's.
func action(s *design.Solution, neck *Motion, plane Plane, saddle func(x float64) [3]float64) *Action {
	b := s.Top.Built
	edge := b.Geometry.Blocks[0].Edge
	forces := b.Geometry.StringForces()
	a := &Action{}
	for _, f := range forces {
		a.Lower += lowered(b, neck, f, saddle(f.X))
		away := edge[1] - b.Case.Bridge.At[1]
		a.NeckTurn += (plane[2] - neck.Turn[0]*math.Pi/180) * away / 2
		a.BodyBend += (neck.of([3]float64{edge[0], edge[1], 0})[2] - plane.At(edge)) / 2
	}
	n := float64(len(forces))
	a.Lower, a.NeckTurn, a.BodyBend = a.Lower/n, a.NeckTurn/n, a.BodyBend/n
	a.BridgeSink = a.Lower - a.NeckTurn - a.BodyBend
	return a
}

// lowered is half of how far a string's place on the saddle comes down square to the
// string, toward the board that goes with the neck block, mm.
func lowered(b *design.Built, neck *Motion, f cases.StringForce, saddle [3]float64) float64 {
	sin, cos := math.Sincos(f.FrontAngle * math.Pi / 180)
	rel := vec3.Sub(saddle, neck.of(b.Saddle(f.X)))
	return -vec3.Dot(rel, [3]float64{0, sin, cos}) / 2
}

// Thrust is the force that the body's parts carry lengthwise through a cut straight
// across it, N, pressing positive.
type Thrust struct {
	Y          float64 `json:"y"` // mm, where the body is cut: half way between the blocks
	Top        float64 `json:"top"`
	Back       float64 `json:"back"`
	BassSide   float64 `json:"bass_side"`
	TrebleSide float64 `json:"treble_side"`
}

// thrust sums, part by part, what the elements across the cut give to their nodes
// beyond it: whatever the elements are, all parts together balance what is applied
// beyond.
func thrust(s *design.Solution) Thrust {
	b := s.Top.Built
	return thrustAt(s, (b.Geometry.Blocks[0].Edge[1]+b.Geometry.Blocks[1].Edge[1])/2)
}

// ThrustOf is the thrust of a design whose edge something holds; nil if nothing does. A top without a body is cut
// half way along it: what it carries goes into its sides and the edge that is held.
func ThrustOf(s *design.Solution) *Thrust {
	b := s.Top.Built
	if b.Case.SwellsAlone() {
		return nil
	}
	if b.Back != nil {
		t := thrust(s)
		return &t
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range b.Mesh.Points {
		lo, hi = min(lo, p[1]), max(hi, p[1])
	}
	t := thrustAt(s, (lo+hi)/2)
	return &t
}

// thrustAt is that through a cut at y.
func thrustAt(s *design.Solution, y float64) Thrust {
	b := s.Top.Built
	t := Thrust{Y: y}
	for i, e := range s.Result.Plate.Elements {
		nodes := fem.OwnNodes(e)
		beyond, x := 0, 0.0
		for _, n := range nodes {
			p := b.Model.Nodes[n].P
			x += p[0]
			if p[1] > t.Y {
				beyond++
			}
		}
		if beyond == 0 || beyond == len(nodes) {
			continue
		}
		to := &t.Top
		switch {
		case e.Part() == design.PartBack:
			to = &t.Back
		case e.Part() == design.PartRim && x < 0:
			to = &t.BassSide
		case e.Part() == design.PartRim:
			to = &t.TrebleSide
		}
		for c, f := range s.Result.PullOwn(i) {
			if c%6 == 1 && b.Model.Nodes[nodes[c/6]].P[1] > t.Y {
				*to -= f
			}
		}
	}
	return t
}
