package design

import (
	"cmp"
	"math"
	"slices"

	"archload/fem"
	"archload/materials"
	"archload/mesh"
)

// zipper closes the strip of wall between two loops of nodes that run along the same
// outline, each with its own spacing. Seen from outside both run to the right.
type zipper struct {
	b            *Built
	card         materials.Card
	upper, lower []int32
	sections     []int32 // of the stretches of the upper loop
	toNeck       bool    // diagonals between nodes that lie under each other rise toward the neck
}

// link is the stretch of a loop between two neighbouring nodes.
type link struct {
	from int     // node of the loop; the next one is the other end
	mid  float64 // its middle, as the outline's parameter from where the upper loop begins
}

// close adds the triangles: each has one stretch of a loop as its base and a node of
// the other loop as its tip. In the order of their middles the tips follow by
// themselves; and read backward it is the same order, so that a mirrored body has
// the mirrored strip.
func (z *zipper) close() {
	up, low := z.links(z.upper), z.links(z.lower)
	u, l := up[0].from, low[0].from
	h := float64(z.b.Case.Rim.SideThickness)
	for i, j := 0, 0; i < len(up) || j < len(low); {
		nextU, nextL := (u+1)%len(z.upper), (l+1)%len(z.lower)
		switch {
		case i < len(up) && j < len(low) && math.Abs(up[i].mid-low[j].mid) < 1e-9*z.b.Geometry.Outline.Total():
			rises := z.toNeck == (z.at(z.upper[nextU])[1] > z.at(z.upper[u])[1])
			z.b.wallPair([4]int32{z.upper[u], z.upper[nextU], z.lower[nextL], z.lower[l]}, z.sections[u], h, rises)
			i, j, u, l = i+1, j+1, nextU, nextL
		case j == len(low) || i < len(up) && up[i].mid < low[j].mid:
			z.add([3]int32{z.upper[u], z.lower[l], z.upper[nextU]}, z.sections[u], h)
			i, u = i+1, nextU
		default:
			p, q := z.b.Model.Nodes[z.lower[l]].P, z.b.Model.Nodes[z.lower[nextL]].P
			z.add([3]int32{z.upper[u], z.lower[l], z.lower[nextL]}, z.b.grainAlong(p, q, z.card), h)
			j, l = j+1, nextL
		}
	}
}

func (z *zipper) add(nodes [3]int32, section int32, h float64) {
	z.b.Model.Shells = append(z.b.Model.Shells, fem.ShellElem{Nodes: nodes, Section: section, Flat: true, H: h})
}

func (z *zipper) at(n int32) mesh.Point {
	p := z.b.Model.Nodes[n].P
	return mesh.Point{p[0], p[1]}
}

// links lists the stretches of a loop in the order of their middles.
func (z *zipper) links(loop []int32) []link {
	o := z.b.Geometry.Outline
	first, _, _ := o.Nearest(z.at(z.upper[0]))
	along := func(n int32) float64 {
		u, _, _ := o.Nearest(z.at(n))
		return o.Wrap(u - first + o.Total())
	}
	out := make([]link, len(loop))
	for k, n := range loop {
		from, to := along(n), along(loop[(k+1)%len(loop)])
		if to < from-o.Total()/2 {
			to += o.Total()
		} else if from > to { // rounding about the beginning
			from -= o.Total()
		}
		out[k] = link{from: k, mid: o.Wrap((from+to)/2 + o.Total())}
	}
	slices.SortFunc(out, func(a, b link) int { return cmp.Compare(a.mid, b.mid) })
	return out
}
