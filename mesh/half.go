package mesh

import (
	"math"
	"slices"

	"archload/mesh/plane"
)

// sameMirrored is the distance within which places count as mirror images, mm:
// coordinates are rounded to 1e-9.
const sameMirrored = 1.5e-9

// symmetry says which hole is the mirror image of which, and whether outline,
// holes and lines are their own mirror image in the y axis. Where triangles are
// to be fine does not matter: both halves get what one of them wants.
func (d *Domain) symmetry() (hole []int, ok bool) {
	if !plane.MirrorImage(d.Outline, d.Outline, sameMirrored) {
		return nil, false
	}
	for _, h := range d.Holes {
		j := slices.IndexFunc(d.Holes, func(g *plane.Curve) bool { return plane.MirrorImage(h, g, sameMirrored) })
		if j < 0 {
			return nil, false
		}
		hole = append(hole, j)
	}
	for _, l := range d.Lines {
		if !slices.ContainsFunc(d.Lines, func(m []Point) bool { return mirrorLine(l, m) }) {
			return nil, false
		}
	}
	return hole, true
}

// evened returns the domain with both halves asking for what one of them wants.
// The wanted edge length is laid out on a grid that is not its own mirror image, so
// the lesser of what it gives on both sides would still depend on the side.
func (d *Domain) evened() Domain {
	e := *d
	m := d.mirrored()
	e.Fine = slices.Concat(d.Fine, m.Fine)
	slices.SortStableFunc(e.Fine, compareFine)
	e.Fine = slices.CompactFunc(e.Fine, func(f, g Fine) bool { return compareFine(f, g) == 0 })
	if bend := d.Curvature; bend != nil {
		e.Curvature = func(p Point) float64 { return math.Max(math.Abs(bend(p)), math.Abs(bend(p.Mirrored()))) }
	}
	return e
}

// mirrorLine tells whether m is l reflected, in either direction.
func mirrorLine(l, m []Point) bool {
	if len(l) != len(m) {
		return false
	}
	there, back := true, true
	for i, p := range l {
		q := p.Mirrored()
		there = there && plane.Dist(q, m[i]) <= sameMirrored
		back = back && plane.Dist(q, m[len(m)-1-i]) <= sameMirrored
	}
	return there || back
}

// axis returns the stretches of the line x = 0 that lie in the wood.
func (d *Domain) axis() (out [][]Point) {
	var cuts []float64
	for _, c := range d.curves() {
		cuts = append(cuts, c.OnAxis()...)
	}
	slices.Sort(cuts)
	for i := 1; i < len(cuts); i++ {
		a, b := Point{0, cuts[i-1]}, Point{0, cuts[i]}
		if b[1] > a[1] && d.inWood(plane.Lerp(a, b, 0.5)) {
			out = append(out, []Point{a, b})
		}
	}
	return out
}

// halves are the arcs of a symmetric domain whose axis is among its lines: those
// of the half x >= 0 and what each of the others mirrors.
type halves struct {
	whole *arcSet
	right *arcSet
	of    []int32 // of each arc of the whole: the arc of the right half that it is or mirrors
	role  []role
}

// role says how an arc of the whole follows from one of the right half.
type role struct {
	mirrored bool // it lies on the left
	backward bool // it runs against the mirror image of the other
}

// rightHalf takes the arcs of the half x >= 0 out of all; it gives up, ok false,
// where an arc lies on both sides or mirrors none.
func (s *arcSet) rightHalf(hole []int, axisLines int) (h *halves, ok bool) {
	if !s.straighten(axisLines) {
		return nil, false
	}
	h = &halves{whole: s, right: &arcSet{domain: s.domain}, of: make([]int32, len(s.arcs)), role: make([]role, len(s.arcs))}
	number := make([]int32, len(s.pts)) // in the right half, from 1
	for i := range s.arcs {
		a := &s.arcs[i]
		side := s.side(a)
		if side == astride {
			return nil, false
		}
		if side == left {
			continue
		}
		b := *a
		for k, v := range a.ends {
			if number[v] == 0 {
				h.right.pts = append(h.right.pts, s.pts[v])
				number[v] = int32(len(h.right.pts))
			}
			b.ends[k] = number[v] - 1
		}
		if side == onAxis {
			b.part = "axis" // a boundary of the half
		}
		h.of[i] = int32(len(h.right.arcs))
		h.right.arcs = append(h.right.arcs, b)
	}
	for i := range s.arcs {
		if s.side(&s.arcs[i]) != left {
			continue
		}
		if !h.match(int32(i), hole) {
			return nil, false
		}
	}
	return h, len(h.right.arcs) > 0
}

// Sides of the axis.
const (
	left = iota
	right
	onAxis
	astride
)

// straighten puts the nodes of the axis exactly onto it, unless one was drawn to a
// place beside it.
func (s *arcSet) straighten(axisLines int) bool {
	const most = 1e-6 // mm
	for _, line := range s.lines[len(s.lines)-axisLines:] {
		for _, r := range line {
			a := &s.arcs[r.arc]
			for _, v := range a.ends {
				if math.Abs(s.pts[v][0]) > most {
					return false
				}
				s.pts[v][0] = 0
			}
			for i := range a.path {
				a.path[i][0] = 0
			}
		}
	}
	return true
}

// side tells on which side of the axis the inside of an arc lies.
func (s *arcSet) side(a *planArc) int {
	var lo, hi float64
	for _, x := range a.samples[1 : len(a.samples)-1] {
		lo, hi = min(lo, x.p[0]), max(hi, x.p[0])
	}
	const slack = 1e-9 // mm
	switch {
	case hi <= slack && lo >= -slack:
		return onAxis
	case lo >= -slack:
		return right
	case hi <= slack:
		return left
	}
	return astride
}

// match finds the arc of the right half whose mirror image arc i of the whole
// is.
func (h *halves) match(i int32, hole []int) bool {
	const tol = 1e-6 // mm; of points on splines through points within sameMirrored
	a := &h.whole.arcs[i]
	for j := range h.whole.arcs {
		b := &h.whole.arcs[j]
		if a.part != b.part || h.whole.side(b) != right {
			continue
		}
		if a.ends[0] == a.ends[1] { // a hole's edge without a node that must stay
			if b.ends[0] != b.ends[1] || a.part != "hole" || hole[a.index] != b.index {
				continue
			}
			h.of[i], h.role[i] = h.of[j], role{mirrored: true, backward: true}
			return true
		}
		at := func(x *planArc, u float64) Point { return x.at(x.u0 + u*(x.u1-x.u0)) }
		there := true
		back := true
		for _, u := range []float64{0, 0.5, 1} {
			q := at(b, u).Mirrored()
			there = there && plane.Dist(q, at(a, u)) <= tol
			back = back && plane.Dist(q, at(a, 1-u)) <= tol
		}
		if there || back {
			h.of[i], h.role[i] = h.of[j], role{mirrored: true, backward: !there}
			return true
		}
	}
	return false
}

// unfold makes the plan of the whole from the nodes, triangles and chains of the
// right half.
func (h *halves) unfold(p *Plan, chains [][]int32) (*Plan, error) {
	image := make([]int32, len(p.Points))
	for i, q := range slices.Clone(p.Points) {
		image[i] = int32(i)
		if q[0] != 0 {
			image[i] = int32(len(p.Points))
			p.Points = append(p.Points, q.Mirrored())
		}
	}
	for _, t := range slices.Clone(p.Tris) {
		p.Tris = append(p.Tris, [3]int32{image[t[0]], image[t[2]], image[t[1]]})
	}
	all := make([][]int32, len(h.whole.arcs))
	for i := range all {
		all[i] = slices.Clone(chains[h.of[i]])
		if h.role[i].mirrored {
			for k, v := range all[i] {
				all[i][k] = image[v]
			}
		}
		if h.role[i].backward {
			slices.Reverse(all[i])
		}
	}
	h.whole.assemble(p, all)
	return p, h.whole.checkPlan(p)
}
