package scene

import (
	"image/color"
	"math"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/fem/vec3"
	"archload/mesh"
)

// hover is how far lines are drawn above the skin that they lie on, mm.
const hover = 0.25

// bars adds the braces under the plate, and on its outside the dashed lines
// that tell where they are.
func (b *build) bars() {
	for i := range b.k.braces {
		f := &b.k.braces[i]
		var rings [][]vec
		var left, right []vec
		for j := range f.stations {
			st := &f.stations[j]
			ring := b.braceRing(st)
			rings = append(rings, ring[:])
			left = append(left, b.lifted(st.above[0]))
			right = append(right, b.lifted(st.above[1]))
		}
		along := unit(vec3.Sub(rings[len(rings)-1][0], rings[0][0]))
		b.solid(lofted(f.name, rings, braceColor()).grained(along, plus(vec3.Cross(along, vec{0, 0, 1}), 0.3, vec{0, 0, 1})))
		for k := range 4 {
			b.line(&Line{Points: column(rings, k), Width: 0.9, Paint: braceLineColor()})
		}
		for _, r := range [][]vec{rings[0], rings[len(rings)-1]} {
			b.line(&Line{Points: append(append([]vec(nil), r...), r[0]), Width: 0.9, Paint: braceLineColor()})
		}
		for _, edge := range [2][]vec{left, right} {
			b.line(&Line{Points: edge, Width: 0.9, Dash: 4, Halo: true, Paint: underColor()})
		}
		for _, j := range [2]int{0, len(left) - 1} {
			b.line(&Line{Points: []vec{left[j], right[j]}, Width: 0.9, Halo: true, Paint: underColor()})
		}
	}
}

// column is the line through corner k of every section.
func column(rings [][]vec, k int) []vec {
	out := make([]vec, len(rings))
	for i, r := range rings {
		out[i] = r[k]
	}
	return out
}

// braceRing is a section of a brace as drawn: below right, above right, above
// left, below left, seen from its line's end back to its beginning
// anticlockwise.
func (b *build) braceRing(st *braceStation) [4]vec {
	glue := st.middle.on(b.inner)
	var turn vec
	for k, n := range st.middle.n {
		u := b.s.Result.U[6*n : 6*n+6]
		turn = plus(turn, st.middle.l[k], vec{u[3], u[4], u[5]})
	}
	low := func(e int) vec { return plus(vec3.Add(glue, st.below[e]), b.e, vec3.Cross(turn, st.below[e])) }
	high := func(e int) vec { // let into the plate a little, so that no gap shows
		p := st.edge[e].on(b.inner)
		return plus(p, 0.3, unit(vec3.Sub(st.edge[e].on(b.outer), p)))
	}
	return [4]vec{low(0), high(0), high(1), low(1)}
}

// lifted is a spot of the outer skin as drawn, hovering above it.
func (b *build) lifted(s spot) vec { return plus(s.on(b.outer), hover, s.on(b.up)) }

// BridgeSolids are the names of the solids that the bridge is made of.
func BridgeSolids() []string { return []string{"base", "saddle", "post", "saddle beam"} }

// bridge adds the bridge: in full, or as a shadow over the field of its foot.
func (b *build) bridge() {
	for _, p := range b.s.Top.Built.BridgeParts() {
		paint := ebonyColor()
		switch p.Name {
		case "saddle", "saddle beam":
			paint = saddleColor()
		case "post":
			paint = brassColor()
		}
		if b.in.Field.OnFoot() {
			paint.A = 34
		}
		rings := make([][]vec, len(p.Sections))
		for i, sec := range p.Sections {
			rings[i] = make([]vec, len(sec))
			for k, c := range sec {
				rings[i][k] = b.bridgePoint(c)
			}
		}
		o := lofted(p.Name, rings, paint)
		if p.Name == "post" {
			o.rounded(rings)
		} else {
			o.grained(vec{1, 0, 0}, vec{0, 1.1, 0.8})
		}
		b.solid(o)
		b.bridgeLines(p.Name, rings)
	}
}

// bridgePoint is a corner of the bridge as drawn: movement and gap enlarged
// alike, so that what touches is drawn touching.
func (b *build) bridgePoint(p design.BridgePoint) vec {
	at := plus(p.At, b.e, b.s.BridgeMove(p))
	at[2] += b.e * p.Gap
	return at
}

// bridgeLines adds the edges of a part.
func (b *build) bridgeLines(name string, rings [][]vec) {
	paint := color.NRGBA{40, 26, 18, 150}
	n := len(rings[0])
	if name == "post" {
		return
	}
	for _, k := range []int{0, n/2 - 1, n - 2, n - 1} {
		if n == 8 && k == n/2-1 {
			k = 5
		}
		b.line(&Line{Points: column(rings, k), Width: 0.7, Paint: paint})
	}
	for _, r := range [][]vec{rings[0], rings[len(rings)-1]} {
		b.line(&Line{Points: append(append([]vec(nil), r...), r[0]), Width: 0.7, Paint: paint})
	}
}

// foot lays the cells of the contact grid on the top, with their values.
func (b *build) foot() {
	if b.onFoot == nil {
		return
	}
	o := &Solid{Name: "foot", Paint: bareColor(), Picks: true}
	for i, c := range answer.FootCells(b.s) {
		first := int32(len(o.Points))
		x, y := b.s.Top.Built.Case.Bridge.At[0]+c.X, b.s.Top.Built.Case.Bridge.At[1]+c.Y
		for _, w := range [4][2]float64{{-1, -1}, {1, -1}, {1, 1}, {-1, 1}} {
			at, _ := b.s.Top.Built.OnOuter(mesh.Point{x + w[0]*c.DX/2, y + w[1]*c.DY/2})
			o.Points = append(o.Points, b.lifted(b.k.spot(at)))
			o.Values = append(o.Values, b.onFoot[i])
		}
		o.Tris = append(o.Tris, [3]int32{first, first + 1, first + 2}, [3]int32{first, first + 2, first + 3})
	}
	o.Normals = normals(o.Points, o.Tris)
	b.solid(o)
}

// strings adds the strings as far as they run over the plate.
func (b *build) strings() {
	all := b.s.Top.Built.StringShapes()
	for _, st := range all {
		thinner := 0 // strings on its bass side
		for _, o := range all {
			if o.Saddle.At[0] < st.Saddle.At[0] {
				thinner++
			}
		}
		p := b.bridgePoint(st.Saddle)
		reach := func(dir vec, y float64) vec { return plus(st.Saddle.At, (y-st.Saddle.At[1])/dir[1], dir) }
		way, wide := []vec{reach(st.Tail, b.k.lo[1]-2), p, reach(st.Neck, b.k.hi[1]+6)}, stringWidth(thinner, len(all))
		b.stringShades(way)
		b.line(&Line{Points: way, Width: wide + 0.5, Paint: stringColor()})
		b.line(&Line{Points: way, Width: 0.45 * wide, Paint: glintColor()})
		for _, end := range [2][2]vec{{way[0], st.Tail}, {way[2], st.Neck}} {
			b.fades(end[0], unit(end[1]), wide)
		}
	}
}

// fades lets a string go on from where the plate ends, fainter and fainter: its far ends are not
// part of the model.
func (b *build) fades(from, dir vec, wide float64) {
	const pieces, long, ink = 6, 5.0, 90 // lines from the same place, each longer by so many mm; opacity of each
	for _, l := range [2]Line{{Width: wide + 0.5, Paint: stringColor()}, {Width: 0.45 * wide, Paint: glintColor()}} {
		l.Paint.A = ink
		for k := range pieces {
			one := l
			one.Points = []vec{from, plus(from, long*float64(k+1), dir)}
			b.line(&one)
		}
	}
}

// stringWidth is how wide string i of n is drawn, bass first: from thick to thin.
func stringWidth(i, n int) float64 { return 1.9 - 1.0*float64(i)/math.Max(1, float64(n-1)) }

// lofted is the closed solid through sections of the same number of corners,
// each seen from the last one anticlockwise. Its edges are sharp.
func lofted(name string, rings [][]vec, paint color.NRGBA) *Solid {
	o := &Solid{Name: name, Paint: paint}
	for i := 1; i < len(rings); i++ {
		a, b := rings[i-1], rings[i]
		for k := range a {
			n := (k + 1) % len(a)
			o.quad(a[k], a[n], b[n], b[k])
		}
	}
	last := rings[len(rings)-1]
	o.cap(last, false)
	o.cap(rings[0], true)
	return o
}

// rounded turns the normals of the sides between two round sections outward
// from their axis, so that the edges between the faces do not show.
func (o *Solid) rounded(rings [][]vec) {
	a, b := middle(rings[0]), middle(rings[len(rings)-1])
	axis := unit(vec3.Sub(b, a))
	for i := range 4 * len(rings[0]) {
		r := vec3.Sub(o.Points[i], a)
		o.Normals[i] = unit(plus(r, -vec3.Dot(r, axis), axis))
	}
}

// middle is the mean of some places.
func middle(pts []vec) vec {
	var m vec
	for _, p := range pts {
		m = plus(m, 1/float64(len(pts)), p)
	}
	return m
}

// quad adds a flat face, anticlockwise seen from outside.
func (o *Solid) quad(a, b, c, d vec) {
	n := unit(vec3.Cross(vec3.Sub(c, a), vec3.Sub(d, b)))
	if n == (vec{}) {
		return // no face: the two sections meet here
	}
	f := int32(len(o.Points))
	o.Points = append(o.Points, a, b, c, d)
	o.Normals = append(o.Normals, n, n, n, n)
	o.Tris = append(o.Tris, [3]int32{f, f + 1, f + 2}, [3]int32{f, f + 2, f + 3})
}

// cap closes an end with a fan from its last corner.
func (o *Solid) cap(ring []vec, first bool) {
	f, m := int32(len(o.Points)), int32(len(ring))
	var n vec
	for i := range ring {
		n = vec3.Add(n, vec3.Cross(vec3.Sub(ring[i], ring[0]), vec3.Sub(ring[(i+1)%len(ring)], ring[0])))
	}
	n = unit(n)
	if first {
		n = vec3.Scale(n, -1)
	}
	for _, p := range ring {
		o.Points, o.Normals = append(o.Points, p), append(o.Normals, n)
	}
	for i := int32(0); i+2 < m; i++ {
		t := [3]int32{f + m - 1, f + i, f + i + 1}
		if first {
			t[1], t[2] = t[2], t[1]
		}
		o.Tris = append(o.Tris, t)
	}
}
