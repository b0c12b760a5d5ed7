package design

import (
	"math"

	"archload/cases/shape"
	"archload/cases/tree"
	"archload/fem"
	"archload/fem/vec3"
	"archload/materials"
	"archload/mesh"
)

// rim holds the plate's edge as the case says.
func (b *Built) rim() error {
	switch b.Case.Rim.Support {
	case "hinged":
		b.hold(b.Mesh.Rim, 3)
	case "clamped":
		b.hold(b.Mesh.Rim, 6)
	case "elastic":
		return b.sides()
	case "body":
		return b.body()
	case "free":
		b.layDown()
	}
	return nil
}

// layDown holds a free plate that only swells at one node, the one nearest to the
// plan's origin: all six freedoms, so that nothing hinders it.
func (b *Built) layDown() {
	if !b.Case.SwellsAlone() {
		return
	}
	best := int32(0)
	for i, p := range b.Mesh.Points {
		if q := b.Mesh.Points[best]; math.Hypot(p[0], p[1]) < math.Hypot(q[0], q[1]) {
			best = int32(i)
		}
	}
	b.hold([]int32{best}, 6)
}

func (b *Built) hold(nodes []int32, dofs int) {
	for _, n := range nodes {
		for d := range dofs {
			b.Model.Fixed = append(b.Model.Fixed, fem.Fix{Node: n, Dof: d})
		}
	}
}

// blockThickness is how thick the side is taken where a block stands behind
// it, mm: common practice, no published source.
const blockThickness = 20

// sides hangs a wall of shells below the outline, its lower edge held in
// translation by the back, and the lining as beams along its top. The diagonals
// of its quads rise toward the neck and toward the tail in turn, row by row, so
// that a mirrored top has the mirrored wall.
func (b *Built) sides() error {
	card, err := b.Case.Wood("rim.side_wood")
	if err != nil {
		return err
	}
	r := &b.Case.Rim
	rows := max(3, int(math.Ceil(float64(r.SideHeight)/12)))
	loop := b.Mesh.Rim
	below := b.wallNodes(rows)
	for k := range loop {
		next := (k + 1) % len(loop)
		sec, h := b.wallSection(k, next, card)
		toNeck := b.Mesh.Points[loop[next]][1] > b.Mesh.Points[loop[k]][1]
		for row := range rows {
			a, c := below[row][k], below[row][next]
			d, e := below[row+1][k], below[row+1][next]
			b.wallPair([4]int32{a, c, e, d}, sec, h, (row%2 == 0) == toNeck)
		}
		b.lining(strip{r.Lining, -1}, loop[k], loop[next], card)
	}
	b.hold(below[rows], 3)
	return nil
}

// wallNodes adds the rows of nodes below the outline; row 0 is the outline.
func (b *Built) wallNodes(rows int) [][]int32 {
	r := &b.Case.Rim
	all := [][]int32{b.Mesh.Rim}
	for row := 1; row <= rows; row++ {
		ids := make([]int32, len(b.Mesh.Rim))
		for k, n := range b.Mesh.Rim {
			p := b.Model.Nodes[n].P
			p[2] -= float64(r.SideHeight) * float64(row) / float64(rows)
			ids[k] = int32(len(b.Model.Nodes))
			b.Model.Nodes = append(b.Model.Nodes, mesh.Node{P: p, H: float64(r.SideThickness)})
		}
		all = append(all, ids)
	}
	return all
}

// wallSection adds the wood of one stretch: grain along the outline, rings
// upright.
func (b *Built) wallSection(k, next int, card materials.Card) (int32, float64) {
	p, q := b.Model.Nodes[b.Mesh.Rim[k]].P, b.Model.Nodes[b.Mesh.Rim[next]].P
	h := float64(b.Case.Rim.SideThickness)
	if !b.Case.Bodied() && b.atBlock((p[0]+q[0])/2, (p[1]+q[1])/2) {
		h = blockThickness
	}
	return b.grainAlong(p, q, card), h
}

// grainAlong adds the wood of a stretch of wall between two nodes: grain along it,
// rings upright.
func (b *Built) grainAlong(p, q [3]float64, card materials.Card) int32 {
	along := Unit2(q[0]-p[0], q[1]-p[1])
	axes := materials.Axes{{along[0], along[1], 0}, {0, 0, 1}, {along[1], -along[0], 0}}
	b.Model.Sections = append(b.Model.Sections, fem.Section{
		Wood: card.Wood.Compliance(), Axes: axes, Part: PartRim, Density: card.Wood.Density, Swell: card.Water.Swell})
	return int32(len(b.Model.Sections) - 1)
}

// atBlock says whether a place of the outline lies before the neck or tail
// block.
func (b *Built) atBlock(x, y float64) bool {
	lo, hi := b.Span()
	if y > (lo+hi)/2 {
		return math.Abs(x) <= float64(b.Case.Rim.NeckBlock)/2
	}
	return math.Abs(x) <= float64(b.Case.Rim.TailBlock)/2
}

// Span is the least and greatest y of the outline, mm.
func (b *Built) Span() (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, n := range b.Mesh.Rim {
		lo, hi = math.Min(lo, b.Mesh.Points[n][1]), math.Max(hi, b.Mesh.Points[n][1])
	}
	return lo, hi
}

// wallPair adds the two triangles of one quad a-c-e-d of the wall, seen from
// outside: the outline runs anticlockwise, so a to c runs to the right. Their
// diagonal rises to the right, from d to c, or falls, from a to e.
func (b *Built) wallPair(q [4]int32, sec int32, h float64, rises bool) {
	tri := [2][3]int32{{q[0], q[3], q[2]}, {q[0], q[2], q[1]}}
	if rises {
		tri = [2][3]int32{{q[0], q[3], q[1]}, {q[3], q[2], q[1]}}
	}
	for _, t := range tri {
		b.Model.Shells = append(b.Model.Shells, fem.ShellElem{Nodes: t, Section: sec, Flat: true, H: h})
	}
}

// strip is a lining: its width and height, and whether it lies below the top's edge
// (-1) or above the back's (1).
type strip struct {
	size [2]tree.Length // mm
	up   float64
}

// lining adds one stretch of a lining between two nodes of a plate's edge: inside
// the side, on the plate's inner face, of the sides' wood.
func (b *Built) lining(l strip, n0, n1 int32, card materials.Card) {
	w, h := float64(l.size[0]), float64(l.size[1])
	if w <= 0 || h <= 0 {
		return
	}
	p, q := b.Model.Nodes[n0].P, b.Model.Nodes[n1].P
	along := Unit2(q[0]-p[0], q[1]-p[1])
	in := (float64(b.Case.Rim.SideThickness) + w) / 2
	arm := func(n int32) [3]float64 {
		return [3]float64{-along[1] * in, along[0] * in, l.up * (b.Model.Nodes[n].H/2 + h/2)}
	}
	sec := rectangle(w, h, card.Wood)
	b.Model.Beams = append(b.Model.Beams, fem.BeamElem{
		Nodes: [2]int32{n0, n1}, Offset: [2][3]float64{arm(n0), arm(n1)}, Up: [3]float64{0, 0, 1},
		Section: sec, Mass: stretchMass(sec, mesh.Point{p[0], p[1]}, mesh.Point{q[0], q[1]}, card.Wood.Density), Swell: barSwell(card.Water), Part: PartRim, Group: -1,
	})
}

// squeeze presses the plate's edge together at the two blocks: equal and
// opposite forces in its plane, spread evenly over each block's nodes.
func (b *Built) squeeze() []fem.PointForce {
	f := float64(b.Case.Rim.Squeeze)
	if f == 0 {
		return nil
	}
	var out []fem.PointForce
	lo, hi := b.Span()
	for _, end := range []struct {
		name string
		push float64
	}{{"neck", -f}, {"tail", f}} {
		var nodes []int32
		for _, n := range b.Mesh.Rim {
			p := b.Mesh.Points[n]
			if b.SectorOf(p[0], p[1], lo, hi) == end.name {
				nodes = append(nodes, n)
			}
		}
		for _, n := range nodes {
			out = append(out, fem.PointForce{At: b.corner(n), F: [3]float64{0, end.push / float64(len(nodes)), 0}})
		}
	}
	return out
}

// corner is a plate node as a place on one of its triangles.
func (b *Built) corner(node int32) fem.SurfacePoint {
	for i, t := range b.Mesh.Tris {
		for k, n := range t {
			if n == node {
				at := fem.SurfacePoint{Shell: int32(i)}
				at.L[k] = 1
				return at
			}
		}
	}
	panic("cases: a rim node without a triangle") // the mesher leaves none
}

// SectorOf names the part of the rim a place belongs to: the two blocks'
// widths, else the side.
func (b *Built) SectorOf(x, y, lo, hi float64) string {
	r := &b.Case.Rim
	neck := y > (lo+hi)/2
	switch {
	case neck && math.Abs(x) <= float64(r.NeckBlock)/2:
		return "neck"
	case !neck && math.Abs(x) <= float64(r.TailBlock)/2:
		return "tail"
	case x < 0:
		return "bass"
	}
	return "treble"
}

// benchPin is the stiffness of a point support on the bench, N/mm: so much
// more than a plate's that 100 N press it down by a hundred-thousandth of a
// millimetre.
const benchPin = 1e7

// supports holds the plate vertically at the bench supports.
func (b *Built) supports() {
	line := len(b.Case.Braces)
	for i := range b.Case.Supports {
		s := &b.Case.Supports[i]
		if s.At != nil {
			at, _ := b.place.inner(*s.At)
			b.Model.Springs = append(b.Model.Springs, fem.Spring{Part: PartRim, At: at, Dir: [3]float64{0, 0, 1}, K: benchPin})
			continue
		}
		held, edging := b.railed(s.Line)
		if !edging {
			held = b.Mesh.Lines[line]
			line++
		}
		for _, n := range held {
			b.Model.Fixed = append(b.Model.Fixed, fem.Fix{Node: n, Dof: 2})
		}
	}
}

// railed are the edge's nodes that lie on a rail along it; false if it lies elsewhere.
func (b *Built) railed(rail []mesh.Point) (held []int32, edging bool) {
	if !b.Geometry.Edging(rail) {
		return nil, false
	}
	for _, n := range b.Mesh.Rim {
		if shape.OnRail(rail, b.Mesh.Points[n]) {
			held = append(held, n)
		}
	}
	return held, true
}

// friction keeps a plate that only lies on bench supports from sliding: three
// ties in its plane at the two supports farthest apart, just enough to hold it,
// so that they carry nothing under loads straight down.
func (b *Built) friction() {
	if b.Case.Rim.Support != "free" {
		return
	}
	var at []mesh.Point
	for _, s := range b.Case.Supports {
		if s.At != nil {
			at = append(at, *s.At)
		}
		at = append(at, s.Line...)
	}
	if len(at) < 2 {
		return // nothing holds it: a plate in the hand
	}
	p, q, far := mesh.Point{}, mesh.Point{}, -1.0
	for i := range at {
		for _, o := range at[i+1:] {
			if d := math.Hypot(o[0]-at[i][0], o[1]-at[i][1]); d > far {
				p, q, far = at[i], o, d
			}
		}
	}
	side := Unit2(p[1]-q[1], q[0]-p[0])
	for _, tie := range []struct {
		at  mesh.Point
		dir [3]float64
	}{{p, [3]float64{1, 0, 0}}, {p, [3]float64{0, 1, 0}}, {q, [3]float64{side[0], side[1], 0}}} {
		place, _ := b.place.middle(tie.at)
		b.Model.Springs = append(b.Model.Springs, fem.Spring{Part: PartRim, At: place, Dir: tie.dir, K: benchPin})
	}
}

// PostSprings is how many springs stand for one post: its end bears on a disc,
// as a plate that shears sinks without limit under a true point.
const PostSprings = 7

// posts are springs between the plate's inner face and the back, which does not give
// where there is no body, spread over the end of each post: one in its middle, six
// around it.
func (b *Built) posts() {
	b.FirstPost = len(b.Model.Springs)
	for i := range b.Case.Posts {
		p := &b.Case.Posts[i]
		for k := range PostSprings {
			q := p.At
			if k > 0 {
				sin, cos := math.Sincos(float64(k) * math.Pi / 3)
				q[0] += float64(p.Diameter) / 3 * cos
				q[1] += float64(p.Diameter) / 3 * sin
			}
			at, _ := b.place.inner(q)
			s := fem.Spring{Part: PartRim, At: at, Dir: [3]float64{0, 0, 1}, K: float64(p.Stiffness) / PostSprings}
			if b.Back != nil {
				on, _ := b.Back.place.inner(q)
				up := vec3.Sub(b.Model.Place(at), b.Model.Place(on)) // not quite upright; otherwise its two ends make a couple
				s.Far, s.Dir = &on, vec3.Scale(up, 1/vec3.Norm(up))
			}
			b.Model.Springs = append(b.Model.Springs, s)
		}
	}
}
