package design

import (
	"fmt"
	"math"

	"archload/cases"
	"archload/fem"
	"archload/materials"
	"archload/mesh"
)

// barred is the inside of a plate on which bars are glued.
type barred struct {
	braces []cases.Brace
	key    string // of the braces, "brace"
	mesh   *mesh.Mesh
	place  placer
	first  int32   // node of the model
	up     float64 // -1: bars hang below the top; 1: they stand on the back
	part   fem.Part
}

// braces adds each brace of the top as beams along its chain of nodes, glued
// under the plate's inner face; its axis lies half its height straight below, as
// bars are cut with upright sides.
func (b *Built) braces() (err error) {
	b.joints = map[int32]int32{}
	b.Bars, err = b.barsOn(barred{braces: b.Case.Braces, key: "brace", mesh: b.Mesh, place: b.place, up: -1, part: PartBraces})
	return err
}

// barsOn adds the bars of a plate.
func (b *Built) barsOn(on barred) ([]Bar, error) {
	var out []Bar
	b.findJoints(on)
	for i := range on.braces {
		br := &on.braces[i]
		if !br.Fitted {
			continue
		}
		card, err := b.Case.Wood(fmt.Sprintf("%s[%d].wood", on.key, i+1))
		if err != nil {
			return nil, err
		}
		group := int32(len(out))
		if on.part != PartBraces {
			group = -1
		}
		one := b.bar(on, i, card, group)
		one.Brace = i
		out = append(out, one)
	}
	return out, nil
}

// findJoints adds a joint at every node where two braces cross and one of them
// is joined.
func (b *Built) findJoints(on barred) {
	users := map[int32][]int{}
	for i := range on.braces {
		if !on.braces[i].Fitted {
			continue
		}
		for _, n := range on.mesh.Lines[i] {
			users[n] = append(users[n], i)
		}
	}
	for i := range on.braces { // in the order of the lines, not of the map
		for _, n := range on.mesh.Lines[i] {
			at := n + on.first
			_, done := b.joints[at]
			done = done || !on.braces[i].Fitted
			for _, k := range users[n] {
				if k != i && !done && (on.braces[i].Joined || on.braces[k].Joined) {
					b.joints[at] = b.Model.AddJoint(b.Model.Nodes[at])
					done = true
				}
			}
		}
	}
}

// bar adds the beams of one brace.
func (b *Built) bar(on barred, i int, card materials.Card, group int32) Bar {
	br, inPlan := &on.braces[i], on.mesh.Lines[i]
	chain := make([]int32, len(inPlan))
	for k, n := range inPlan {
		chain[k] = n + on.first
	}
	one := Bar{Name: br.Name, First: len(b.Model.Beams), Count: len(chain) - 1}
	along := fractions(b.Model.Nodes, chain)
	lean := make([]int32, len(chain))
	joined := make([]bool, len(chain))
	for k, n := range chain {
		lean[k], joined[k] = b.joints[n]
		if !joined[k] {
			lean[k] = b.Model.AddLean(b.Model.Nodes[n])
		}
	}
	for k := 1; k < len(chain); k++ {
		s := (along[k-1] + along[k]) / 2
		w, h := br.Width.Value(s), br.HeightAt(s)
		p, q := on.mesh.Points[inPlan[k-1]], on.mesh.Points[inPlan[k]]
		sec := rectangle(w, h, card.Wood)
		dir := Unit2(q[0]-p[0], q[1]-p[1])
		e := fem.BeamElem{
			Nodes: [2]int32{chain[k-1], chain[k]}, Glued: true,
			Lean: [2]int32{lean[k-1], lean[k]}, Joined: [2]bool{joined[k-1], joined[k]}, Across: [3]float64{-dir[1], dir[0], 0},
			Up: [3]float64{0, 0, 1}, Section: sec, Mass: stretchMass(sec, p, q, card.Wood.Density), Swell: barSwell(card.Water),
			Part: on.part, Group: group,
		}
		for end := range 2 {
			e.Glue[end], _ = on.place.inner(on.mesh.Points[inPlan[k-1+end]])
			e.Offset[end] = [3]float64{0, 0, on.up * br.HeightAt(along[k-1+end]) / 2}
		}
		b.Model.Beams = append(b.Model.Beams, e)
	}
	return one
}

// fractions gives each node's place along its chain in plan, 0 to 1.
func fractions(nodes []mesh.Node, chain []int32) []float64 {
	s := make([]float64, len(chain))
	for k := 1; k < len(chain); k++ {
		p, q := nodes[chain[k-1]].P, nodes[chain[k]].P
		s[k] = s[k-1] + math.Hypot(q[0]-p[0], q[1]-p[1])
	}
	for k := range s {
		s[k] /= s[len(s)-1]
	}
	return s
}

// BraceMass is the mass of a brace of the top, g.
func (b *Built) BraceMass(one Bar, wood materials.Orthotropic) float64 {
	return barMass(one, b.Case.Braces, b.Mesh, wood)
}

// BackMass is the mass of a body's back with its bars, g; 0 without a body.
func (b *Built) BackMass() float64 {
	if b.Back == nil {
		return 0
	}
	mass := 0.0
	if card, err := b.Case.Wood("body.back.wood"); err == nil {
		mass = b.Back.Mesh.Mass(card.Wood.Density)
	}
	for _, one := range b.Back.Bars {
		if card, err := b.Case.Wood(fmt.Sprintf("body.back.brace[%d].wood", one.Brace+1)); err == nil {
			mass += barMass(one, b.Case.Body.Back.Braces, b.Back.Mesh, card.Wood)
		}
	}
	return mass
}

// barMass is the mass of one of the bars on a plate, g.
func barMass(one Bar, braces []cases.Brace, m *mesh.Mesh, wood materials.Orthotropic) float64 {
	br, chain := &braces[one.Brace], m.Lines[one.Brace]
	along := fractions(m.Nodes, chain)
	mass := 0.0
	for k := 1; k < len(chain); k++ {
		s := (along[k-1] + along[k]) / 2
		p, q := m.Points[chain[k-1]], m.Points[chain[k]]
		mass += stretchMass(rectangle(br.Width.Value(s), br.HeightAt(s), wood), p, q, wood.Density) / tonnePerGram
	}
	return mass
}
