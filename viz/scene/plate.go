package scene

import (
	"image/color"

	"archload/fem/vec3"
)

// The colours of the parts. Functions, so that none can be changed.

func spruceColor() color.NRGBA    { return color.NRGBA{252, 238, 208, 255} } // the plate without a field
func insideColor() color.NRGBA    { return color.NRGBA{246, 229, 197, 255} } // its inner face
func cutColor() color.NRGBA       { return color.NRGBA{224, 200, 160, 255} } // its edge
func braceColor() color.NRGBA     { return color.NRGBA{250, 239, 215, 255} }
func sideColor() color.NRGBA      { return color.NRGBA{212, 148, 82, 66} }
func ebonyColor() color.NRGBA     { return color.NRGBA{92, 66, 52, 255} }
func saddleColor() color.NRGBA    { return color.NRGBA{106, 78, 60, 255} }
func brassColor() color.NRGBA     { return color.NRGBA{206, 176, 104, 255} }
func bareColor() color.NRGBA      { return color.NRGBA{250, 246, 236, 255} } // foot without a value
func lineColor() color.NRGBA      { return color.NRGBA{70, 52, 38, 255} }
func softColor() color.NRGBA      { return color.NRGBA{70, 52, 38, 120} }
func braceLineColor() color.NRGBA { return color.NRGBA{70, 52, 38, 190} }
func underColor() color.NRGBA     { return color.NRGBA{58, 42, 30, 145} } // of what lies under the skin
func stringColor() color.NRGBA    { return color.NRGBA{104, 98, 90, 255} }
func glintColor() color.NRGBA     { return color.NRGBA{232, 228, 218, 255} } // where light runs along a string
func cutLineColor() color.NRGBA   { return color.NRGBA{160, 74, 28, 255} }
func flowColor() color.NRGBA      { return color.NRGBA{120, 30, 60, 255} }

// plate adds the two skins and the cut edge between them.
func (b *build) plate() {
	m, n := b.k.mesh, len(b.k.mesh.Nodes)
	b.outer, b.inner = make([]vec, n), make([]vec, n)
	for i := range m.Nodes {
		d := &m.Nodes[i]
		u := b.s.Result.U[6*i : 6*i+6]
		arm := vec3.Scale(d.N, d.H/2)
		turn := vec3.Cross(vec{u[3], u[4], u[5]}, arm)
		move := vec{u[0], u[1], u[2]}
		b.outer[i] = plus(vec3.Add(d.P, arm), b.e, vec3.Add(move, turn))
		b.inner[i] = plus(vec3.Sub(d.P, arm), b.e, vec3.Sub(move, turn))
	}
	out := &Solid{Name: "plate outside", Points: b.outer, Tris: m.Tris, Values: b.values, Across: b.k.across, Along: b.k.along, Paint: spruceColor(), Picks: true}
	in := &Solid{Name: insideSkin, Points: b.inner, Tris: b.k.below, Values: b.values, Across: b.k.across, Along: b.k.along, Paint: insideColor(), Picks: true}
	b.beside.Go(func() { in.Normals, out.Dim = normals(in.Points, in.Tris), b.dims() })
	b.up = normals(b.outer, m.Tris)
	out.Normals = b.up
	b.scene.Solids = append(b.scene.Solids, out, in, b.edge())
}

// edge is the cut edge, with its dark lines.
func (b *build) edge() *Solid {
	e := &b.k.edges
	pts, across := make([]vec, 0, 2*len(e.nodes)), make([]float64, 0, 2*len(e.nodes))
	for _, n := range e.nodes {
		pts, across = append(pts, b.outer[n], b.inner[n]), append(across, b.k.across[n], b.k.across[n])
	}
	for i, loop := range e.loops {
		paint := lineColor()
		if i > 0 {
			paint.A = 220
		}
		for _, skin := range [2][]vec{b.outer, b.inner} {
			l := make([]vec, 0, len(loop)+1)
			for _, n := range loop {
				l = append(l, skin[n])
			}
			b.line(&Line{Points: append(l, l[0]), Width: 1.1, Paint: paint})
		}
	}
	n := normals(pts, e.tris)
	return &Solid{Name: "plate edge", Points: pts, Normals: n, Dim: b.endGrain(n), Across: across, Along: b.k.along, Tris: e.tris, Paint: cutColor()}
}

// normals returns the unit normals at the points of a skin: the means of the
// triangles about each, weighted by area.
func normals(pts []vec, tris [][3]int32) []vec {
	out := make([]vec, len(pts))
	for _, t := range tris {
		a := &pts[t[0]]
		n := vec3.Cross(vec3.Sub(pts[t[1]], *a), vec3.Sub(pts[t[2]], *a))
		for _, k := range t {
			out[k][0] += n[0]
			out[k][1] += n[1]
			out[k][2] += n[2]
		}
	}
	for i := range out {
		out[i] = unit(out[i])
	}
	return out
}

// ring adds the sides, faint, where they are modelled.
func (b *build) ring() {
	f := &b.k.sides
	if len(f.tris) == 0 {
		return
	}
	pts := make([]vec, len(f.nodes))
	for i, n := range f.nodes {
		u := b.s.Result.U[6*n : 6*n+3]
		pts[i] = plus(b.s.Top.Built.Model.Nodes[n].P, b.e, vec{u[0], u[1], u[2]})
	}
	sides := &Solid{Name: "sides", Points: pts, Normals: normals(pts, f.tris), Tris: f.tris, Paint: sideColor()}
	b.solid(sides.grained(vec{}, vec{0, 0, 1})) // along the bend
	if len(f.foot) > 1 {
		l := make([]vec, 0, len(f.foot)+1)
		for _, n := range f.foot {
			l = append(l, pts[n])
		}
		b.line(&Line{Points: append(l, l[0]), Width: 1, Paint: softColor()})
	}
}
