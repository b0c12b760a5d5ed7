package contact

import (
	"archload/fem"
	"archload/fem/element"
	"archload/fem/sparse"
	"archload/fem/vec3"
)

// Body is an elastic frame that stands on the plate by contact alone: the
// bridge of an instrument, say. Its first node is the one whose six movements stand for the body's
// rigid motion.
type Body struct {
	Nodes  [][3]float64 // mm
	Beams  []BodyBeam
	Loads  []BodyLoad // at full load
	Guides []Guide
	Masses []BodyMass // what stands on the beams and only weighs; asked for by vibration alone

	// Labels for the strain energy of the body and of its pads' bedding.
	Part, BeddingPart fem.Part
}

// BodyBeam is one straight stretch between two nodes of a body.
type BodyBeam struct {
	Nodes   [2]int32
	Offset  [2][3]float64 // rigid arms from the nodes to the axis, mm
	Up      [3]float64
	Section element.Section
	Mass    float64 // of this stretch, tonne; asked for by vibration alone
}

// BodyMass is a mass on a rigid arm from a node.
type BodyMass struct {
	Node int32
	At   [3]float64 // its place, mm
	Mass float64    // tonne
}

// BodyLoad is a force on a rigid arm from a node.
type BodyLoad struct {
	Node int32
	At   [3]float64 // place of the force, mm
	F    [3]float64 // N at full load
	M    [3]float64 // N·mm, a moment beside it
}

// Guide holds one movement of a point of the body: what keeps it from
// sliding away where its pads have no friction.
type Guide struct {
	Node int32
	At   [3]float64 // mm
	Dir  [3]float64 // unit vector
	Turn bool       // holds the rotation about Dir instead of the movement along it
	On   [2]Share   // what it hangs on; nothing: the ground
}

// Share is a part of a guide that hangs on a rigid body of the plate's model, which
// the guide's force pulls at in its turn.
type Share struct {
	Body int32   // 1 + the number of the rigid body; 0: none
	Part float64 // of the guide, 1
}

// onPlate says whether a guide hangs on the plate's model.
func (g *Guide) onPlate() bool { return g.On[0].Body > 0 }

// pull is the row of a guide over the plate's freedoms, held ones too: how the place
// that it hangs on moves along it.
func (g *Guide) pull(p *fem.Prepared) sparse.Column {
	var c sparse.Column
	for _, s := range g.On {
		if s.Body == 0 {
			continue
		}
		ref := p.Model.Bodies[s.Body-1].Ref
		for d, v := range g.row(p.Model.Nodes[ref].P) {
			if v != 0 {
				c.Dofs, c.Vals = append(c.Dofs, 6*ref+int32(d)), append(c.Vals, s.Part*v)
			}
		}
	}
	return c
}

// ArmRow returns the six coefficients by which a node's freedoms move the
// point at along dir: u·d + θ·(r × d).
func ArmRow(node, at, dir [3]float64) [6]float64 {
	r := vec3.Sub(at, node)
	m := vec3.Cross(r, dir)
	return [6]float64{dir[0], dir[1], dir[2], m[0], m[1], m[2]}
}

func (g *Guide) row(node [3]float64) [6]float64 {
	if g.Turn {
		return [6]float64{0, 0, 0, g.Dir[0], g.Dir[1], g.Dir[2]}
	}
	return ArmRow(node, g.At, g.Dir)
}
