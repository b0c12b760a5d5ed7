package mesh

import (
	"math"
	"runtime"

	"archload/fem/parallel"
	"archload/mesh/surface"
)

// Plate is a carved plate: its outer surface and its graduation.
type Plate struct {
	Outer     surface.Surface // height of the outer surface above z = 0, mm
	Thickness surface.Surface // measured from the outer surface inward along its normal, mm
}

// middle is the mid-surface point that belongs to one outer-surface point p,
// with the derivatives by p that Newton's method and the normal need.
//
// With g the gradient of the outer surface f, W = √(1+g·g) and k = h/(2W),
// the outer unit normal is (−g, 1)/W, so the mid-surface point is
//
//	q = p + k g,  z = f − k,
//
// and its derivatives are ∂q/∂p = I + k∇∇f + g⊗∇k and ∂z/∂p = g − ∇k.
type middle struct {
	q     Point         // plan place, mm
	z     float64       // height, mm
	h     float64       // thickness, mm
	slope [2]float64    // ∂z/∂p, 1
	jac   [2][2]float64 // ∂q/∂p, 1
}

// middleOf returns the mid-surface point below the outer-surface point whose
// plan is p.
func (pl Plate) middleOf(p Point) middle {
	f, t := pl.Outer.At(p), pl.Thickness.At(p)
	w := math.Sqrt(1 + f.Zx*f.Zx + f.Zy*f.Zy)
	wx := (f.Zx*f.Zxx + f.Zy*f.Zxy) / w
	wy := (f.Zx*f.Zxy + f.Zy*f.Zyy) / w
	k := t.Z / (2 * w)
	kx := (t.Zx - t.Z*wx/w) / (2 * w)
	ky := (t.Zy - t.Z*wy/w) / (2 * w)
	return middle{
		q:     Point{p[0] + k*f.Zx, p[1] + k*f.Zy},
		z:     f.Z - k,
		h:     t.Z,
		slope: [2]float64{f.Zx - kx, f.Zy - ky},
		jac: [2][2]float64{
			{1 + k*f.Zxx + f.Zx*kx, k*f.Zxy + f.Zx*ky},
			{k*f.Zxy + f.Zy*kx, 1 + k*f.Zyy + f.Zy*ky},
		},
	}
}

// node returns the mid-surface node: its normal is (−s, 1) made unit, s being
// the gradient of the mid-surface over its own plan, (∂q/∂p)⁻ᵀ ∂z/∂p.
func (m middle) node() Node {
	det := m.jac[0][0]*m.jac[1][1] - m.jac[0][1]*m.jac[1][0]
	sx := (m.jac[1][1]*m.slope[0] - m.jac[1][0]*m.slope[1]) / det
	sy := (m.jac[0][0]*m.slope[1] - m.jac[0][1]*m.slope[0]) / det
	w := math.Sqrt(1 + sx*sx + sy*sy)
	return Node{
		P: [3]float64{m.q[0], m.q[1], m.z},
		N: [3]float64{-sx / w, -sy / w, 1 / w},
		H: m.h,
	}
}

// FromOuter returns the mid-surface node half a thickness below the
// outer-surface point whose plan is q, along the outer normal.
func (pl Plate) FromOuter(q Point) Node { return pl.middleOf(q).node() }

// OuterOf returns the plan of the outer-surface point, mm, whose mid-surface
// point lies at q in plan: Newton's method on q(p) = q from p = q. The steps
// converge while half the thickness stays below the least radius of curvature
// of the outer surface; beyond that no such plate can be carved, and the last
// iterate is returned.
func (pl Plate) OuterOf(q Point) Point {
	const steps, closeEnough = 20, 1e-11 // 1, mm
	p := q
	for range steps {
		m := pl.middleOf(p)
		ex, ey := q[0]-m.q[0], q[1]-m.q[1]
		if math.Abs(ex)+math.Abs(ey) < closeEnough {
			return p
		}
		det := m.jac[0][0]*m.jac[1][1] - m.jac[0][1]*m.jac[1][0]
		if !(det > 0.05) { // about to fold: plain fixed-point step
			p = Point{p[0] + ex, p[1] + ey}
			continue
		}
		p[0] += (m.jac[1][1]*ex - m.jac[0][1]*ey) / det
		p[1] += (m.jac[0][0]*ey - m.jac[1][0]*ex) / det
	}
	return p
}

// Mid returns the mid-surface node whose plan is q.
func (pl Plate) Mid(q Point) Node {
	n := pl.middleOf(pl.OuterOf(q)).node()
	n.P[0], n.P[1] = q[0], q[1] // exactly, not to 1e-11
	return n
}

// Lift raises every point of the plan to the mid-surface of the plate.
func Lift(plan *Plan, plate Plate) *Mesh {
	m := &Mesh{Plan: plan, Nodes: make([]Node, len(plan.Points))}
	const some = 256
	parallel.Chunks(runtime.GOMAXPROCS(0), len(plan.Points), some, func(from, to int) {
		for i := from; i < to; i++ {
			m.Nodes[i] = plate.Mid(plan.Points[i])
		}
	})
	return m
}

// TriArea returns the area of the flat triangle t between its lifted corners,
// mm².
func (m *Mesh) TriArea(t int32) float64 {
	c := m.Tris[t]
	a, b, d := m.Nodes[c[0]].P, m.Nodes[c[1]].P, m.Nodes[c[2]].P
	var u, v [3]float64
	for k := range 3 {
		u[k], v[k] = b[k]-a[k], d[k]-a[k]
	}
	return 0.5 * math.Hypot(math.Hypot(u[1]*v[2]-u[2]*v[1], u[2]*v[0]-u[0]*v[2]), u[0]*v[1]-u[1]*v[0])
}

// Volume returns the volume of the plate, mm³: the sum of area times mean
// thickness of its triangles. The next term of the volume between two
// parallel surfaces, h²K/12 of it with K the Gaussian curvature, stays below
// 0.1 % for h = 6 mm and K = 3e-4 /mm², and is left out.
func (m *Mesh) Volume() float64 {
	v := 0.0
	for t := range m.Tris {
		c := m.Tris[t]
		h := (m.Nodes[c[0]].H + m.Nodes[c[1]].H + m.Nodes[c[2]].H) / 3
		v += m.TriArea(int32(t)) * h
	}
	return v
}

// Mass returns the mass of the plate, g; density in kg/m³.
func (m *Mesh) Mass(density float64) float64 {
	const gramsPerUnit = 1e-6 // (kg/m³)·mm³ = 1e-9 kg = 1e-6 g
	return m.Volume() * density * gramsPerUnit
}

// Place is a value and the point in plan where it was found.
type Place struct {
	Value float64
	At    Point // mm
}

// Extremes are the places of a plate that a maker asks about first.
type Extremes struct {
	Thinnest, Thickest Place // mm
	Steepest           Place // slope of the outer surface, degrees
	Highest, Lowest    Place // of the outer surface, mm above z = 0
}

// Extremes returns the extremes over the nodes of m, which must be lifted on
// the same plate. The places are given on the outer surface. A mesh without
// nodes gives the zero value.
func (pl Plate) Extremes(m *Mesh) Extremes {
	var e Extremes
	for i, n := range m.Nodes {
		p := pl.OuterOf(m.Points[i])
		f := pl.Outer.At(p)
		slope := math.Atan(math.Hypot(f.Zx, f.Zy)) * 180 / math.Pi
		at := func(v float64) Place { return Place{Value: v, At: p} }
		if i == 0 {
			e = Extremes{at(n.H), at(n.H), at(slope), at(f.Z), at(f.Z)}
			continue
		}
		e.Thinnest = lower(e.Thinnest, at(n.H))
		e.Thickest = higher(e.Thickest, at(n.H))
		e.Steepest = higher(e.Steepest, at(slope))
		e.Highest = higher(e.Highest, at(f.Z))
		e.Lowest = lower(e.Lowest, at(f.Z))
	}
	return e
}

// lower returns the place of lower value, a if they are equal.
func lower(a, b Place) Place {
	if b.Value < a.Value {
		return b
	}
	return a
}

// higher returns the place of higher value, a if they are equal.
func higher(a, b Place) Place {
	if b.Value > a.Value {
		return b
	}
	return a
}
