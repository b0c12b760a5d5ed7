package element

import (
	"fmt"
	"math"

	"archload/fem/vec3"
	"archload/materials"
)

// andesAlpha is alpha_b of the optimal ANDES membrane: the share of the edges'
// drilling rotations in the mean strain. Felippa, A study of optimal membrane
// triangles with drilling freedoms, CMAME 192 (2003) 2125.
const andesAlpha = 1.5

// edge is one side of a facet, from corner i to corner j.
type edge struct {
	i, j   int
	c, s   float64    // direction in the facet frame, 1
	length float64    // mm
	bow    float64    // -(n_j - n_i).t: change of the true surface's slope along the edge, 1
	normal [3]float64 // unit(n_i + n_j) in the facet frame, 1
	alpha  float64    // share of its drilling rotations in the mean strain, 1
}

// facet is the flat triangle's own frame and geometry.
type facet struct {
	axes  [3][3]float64 // e1, e2, n in global axes (rows)
	corn  [3][3]float64 // corners, global, mm
	xy    [3][2]float64 // corners in the facet frame from corner 1, mm
	grad  [3][2]float64 // gradients of the area coordinates, 1/mm
	area  float64       // mm²
	h     float64       // mm
	edges [3]edge       // 1-2, 2-3, 3-1
	norm  [3][3]float64 // unit normals of the true surface at the corners, in the facet frame
	kink  bool          // a corner lies on a line of jumping membrane shear
}

// leastShare is the smallest share of the grain that must lie in the facet for
// it to serve as e1; below it R is projected instead.
const leastShare = 0.1

// set computes the facet's frame from the corners and the wood's axes.
func (f *facet) set(in *ShellInput) error {
	f.h, f.corn = in.H, in.X
	d2, d3 := vec3.Sub(in.X[1], in.X[0]), vec3.Sub(in.X[2], in.X[0])
	n := vec3.Cross(d2, d3)
	twice := vec3.Norm(n)
	longest := max(vec3.Dot(d2, d2), vec3.Dot(d3, d3), vec3.Dot(vec3.Sub(d3, d2), vec3.Sub(d3, d2)))
	if !(twice > 1e-9*longest) || math.IsInf(twice, 1) {
		return fmt.Errorf("shell: corners: want a triangle, found twice the area %g mm² at %v", twice, in.X[0])
	}
	n = vec3.Scale(n, 1/twice)
	f.area = twice / 2
	e1 := projected(in.Axes[0], n)
	if vec3.Norm(e1) < leastShare {
		e1 = projected(in.Axes[1], n)
	}
	if !(vec3.Norm(e1) >= leastShare) {
		return fmt.Errorf("shell: wood axes: want orthogonal unit vectors, found %v", in.Axes)
	}
	e1 = vec3.Scale(e1, 1/vec3.Norm(e1))
	f.axes = [3][3]float64{e1, vec3.Cross(n, e1), n}
	f.setPlane()
	return f.setEdges(in)
}

// setPlane fills the corners' plane coordinates and the gradients of the area
// coordinates.
func (f *facet) setPlane() {
	for i := range f.xy {
		d := vec3.Sub(f.corn[i], f.corn[0])
		f.xy[i] = [2]float64{vec3.Dot(f.axes[0], d), vec3.Dot(f.axes[1], d)}
	}
	for i := range f.xy {
		j, k := (i+1)%3, (i+2)%3
		f.grad[i] = [2]float64{
			(f.xy[j][1] - f.xy[k][1]) / (2 * f.area),
			(f.xy[k][0] - f.xy[j][0]) / (2 * f.area),
		}
	}
}

// setEdges fills the edges. It refuses a corner normal more than 60 degrees off
// the facet's: that is a crease or a wrong orientation, not a smooth surface.
func (f *facet) setEdges(in *ShellInput) error {
	var nl [3][3]float64
	for i, n := range in.N {
		nl[i] = [3]float64{0, 0, 1}
		if n == ([3]float64{}) {
			continue
		}
		nl[i] = vec3.Scale(f.local(n), 1/vec3.Norm(n))
		if !(nl[i][2] > 0.5) {
			return fmt.Errorf("shell: normal of corner %d: want within 60 degrees of the facet's, found cosine %.3g", i+1, nl[i][2])
		}
	}
	f.norm = nl
	for e := range f.edges {
		f.edges[e] = f.newEdge(e, &nl)
		if in.Kink[e] || in.Kink[(e+1)%3] {
			f.edges[e].alpha, f.kink = 0, true
		}
	}
	return nil
}

// newEdge returns the edge that leaves corner i, from the corner normals.
func (f *facet) newEdge(i int, normals *[3][3]float64) edge {
	j := (i + 1) % 3
	dx, dy := f.xy[j][0]-f.xy[i][0], f.xy[j][1]-f.xy[i][1]
	l := math.Hypot(dx, dy)
	c, s := dx/l, dy/l
	ni, nj := normals[i], normals[j]
	sum := vec3.Add(ni, nj)
	return edge{
		i: i, j: j, c: c, s: s, length: l, alpha: andesAlpha,
		bow:    -(c*(nj[0]-ni[0]) + s*(nj[1]-ni[1])),
		normal: vec3.Scale(sum, 1/vec3.Norm(sum)),
	}
}

// woodAxes returns the wood's axes at this facet in global coordinates: those
// given for a carved plate; for a pressed one, turned with the blank onto the
// facet, so that the grain's projection stays where it is.
func (f *facet) woodAxes(in *ShellInput) materials.Axes {
	if !in.Pressed {
		return in.Axes
	}
	blank := in.Blank
	if blank == ([3]float64{}) {
		blank = f.nearestAxis(in.Axes)
	}
	blank = vec3.Scale(blank, 1/vec3.Norm(blank))
	b1 := projected(in.Axes[0], blank)
	if vec3.Norm(b1) < leastShare {
		b1 = projected(in.Axes[1], blank)
	}
	b1 = vec3.Scale(b1, 1/vec3.Norm(b1))
	from := [3][3]float64{b1, vec3.Cross(blank, b1), blank}
	var out materials.Axes
	for i := range out {
		for k := range from {
			out[i] = vec3.Add(out[i], vec3.Scale(f.axes[k], vec3.Dot(from[k], in.Axes[i])))
		}
	}
	return out
}

// nearestAxis returns R or T, whichever lies nearer to the facet's normal,
// pointing to the normal's side.
func (f *facet) nearestAxis(axes materials.Axes) [3]float64 {
	n := f.axes[2]
	a := [3]float64(axes[1])
	if math.Abs(vec3.Dot(axes[2], n)) > math.Abs(vec3.Dot(a, n)) {
		a = axes[2]
	}
	if vec3.Dot(a, n) < 0 {
		return vec3.Scale(a, -1)
	}
	return a
}

// local turns a global vector into the facet frame.
func (f *facet) local(v [3]float64) [3]float64 {
	return [3]float64{vec3.Dot(f.axes[0], v), vec3.Dot(f.axes[1], v), vec3.Dot(f.axes[2], v)}
}

// toGlobal turns a linear form in the facet's degrees of freedom into one in
// global degrees of freedom.
func (f *facet) toGlobal(row *[18]float64) {
	for b := 0; b < 18; b += 3 {
		r := (*[3]float64)(row[b:])
		v := *r
		if v == ([3]float64{}) {
			continue
		}
		for k := range r {
			r[k] = v[0]*f.axes[0][k] + v[1]*f.axes[1][k] + v[2]*f.axes[2][k]
		}
	}
}
