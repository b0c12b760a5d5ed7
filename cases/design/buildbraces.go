package design

import (
	"fmt"
	"math"

	"archload/cases"
	"archload/fem"
	"archload/materials"
	"archload/mesh"
)

// braces adds each brace as beams along its chain of nodes, glued under the
// plate's inner face; its axis lies half its height straight below, as bars
// are cut with upright sides.
func (b *Built) braces() error {
	b.findJoints()
	for i := range b.Case.Braces {
		br := &b.Case.Braces[i]
		if !br.Fitted {
			continue
		}
		card, err := b.Case.Wood(fmt.Sprintf("brace[%d].wood", i+1))
		if err != nil {
			return err
		}
		one := b.bar(br, b.Mesh.Lines[i], card, int32(len(b.Bars)))
		one.Brace = i
		b.Bars = append(b.Bars, one)
	}
	return nil
}

// findJoints adds a joint at every node where two braces cross and one of them
// is joined.
func (b *Built) findJoints() {
	b.joints = map[int32]int32{}
	users := map[int32][]int{}
	for i := range b.Case.Braces {
		if !b.Case.Braces[i].Fitted {
			continue
		}
		for _, n := range b.Mesh.Lines[i] {
			users[n] = append(users[n], i)
		}
	}
	for i := range b.Case.Braces { // in the order of the lines, not of the map
		for _, n := range b.Mesh.Lines[i] {
			_, done := b.joints[n]
			done = done || !b.Case.Braces[i].Fitted
			for _, k := range users[n] {
				if k != i && !done && (b.Case.Braces[i].Joined || b.Case.Braces[k].Joined) {
					b.joints[n] = b.Model.AddJoint(b.Model.Nodes[n])
					done = true
				}
			}
		}
	}
}

// bar adds the beams of one brace.
func (b *Built) bar(br *cases.Brace, chain []int32, card materials.Card, group int32) Bar {
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
		p, q := b.Mesh.Points[chain[k-1]], b.Mesh.Points[chain[k]]
		sec := rectangle(w, h, card.Wood)
		dir := Unit2(q[0]-p[0], q[1]-p[1])
		e := fem.BeamElem{
			Nodes: [2]int32{chain[k-1], chain[k]}, Glued: true,
			Lean: [2]int32{lean[k-1], lean[k]}, Joined: [2]bool{joined[k-1], joined[k]}, Across: [3]float64{-dir[1], dir[0], 0},
			Up: [3]float64{0, 0, 1}, Section: sec, Mass: stretchMass(sec, p, q, card.Wood.Density),
			Part: PartBraces, Group: group,
		}
		for end := range 2 {
			e.Glue[end], _ = b.place.inner(b.Mesh.Points[chain[k-1+end]])
			e.Offset[end] = [3]float64{0, 0, -br.HeightAt(along[k-1+end]) / 2}
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

// BraceMass is the mass of a brace, g.
func (b *Built) BraceMass(one Bar, wood materials.Orthotropic) float64 {
	br, chain := &b.Case.Braces[one.Brace], b.Mesh.Lines[one.Brace]
	along := fractions(b.Model.Nodes, chain)
	mass := 0.0
	for k := 1; k < len(chain); k++ {
		s := (along[k-1] + along[k]) / 2
		p, q := b.Mesh.Points[chain[k-1]], b.Mesh.Points[chain[k]]
		mass += stretchMass(rectangle(br.Width.Value(s), br.HeightAt(s), wood), p, q, wood.Density) / tonnePerGram
	}
	return mass
}
