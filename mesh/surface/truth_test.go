package surface

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"archload/mesh/plane"
)

// guitarShape is the outline of the test arches, 410 x 510 mm with a waist:
// x = sin θ P(cos θ), y = 55 + 255 cos θ, with P the quartic through five
// values.
type guitarShape struct{}

func (guitarShape) at(th float64) plane.Point {
	stations := [5]float64{-1, -0.42, 0.22, 0.62, 1}
	widths := [5]float64{215, 216, 126, 178, 205} // mm
	c, p := math.Cos(th), 0.0
	for i := range stations {
		l := widths[i]
		for j := range stations {
			if j != i {
				l *= (c - stations[j]) / (stations[i] - stations[j])
			}
		}
		p += l
	}
	return plane.Point{-math.Sin(th) * p, 55 + 255*c}
}

// Polyline returns the outline, anticlockwise.
func (g guitarShape) Polyline(tol float64) []plane.Point {
	n := max(360, int(2*math.Pi/math.Sqrt(8*tol/250)))
	pts := make([]plane.Point, n)
	for i := range pts {
		pts[i] = g.at(2 * math.Pi * float64(i) / float64(n))
	}
	return pts
}

// polygon is a closed polyline as a Region.
type polygon []plane.Point

func (p polygon) Polyline(float64) []plane.Point { return p }

// truth is an arch known to some 1e-6 mm that is no spline: a solution of
// −Δu = exp(α·p) with u = 0 on the outline by fundamental solutions outside
// it, raised to a power, less a trough along the outline.
type truth struct {
	rim          *rimLine
	poles        []plane.Point
	strength     []float64
	alpha        plane.Point // 1/mm
	top          float64     // greatest u
	apex         plane.Point
	power, depth float64 // 1, mm
}

const (
	truthRim, truthTop, truthAt = 5.0, 22.0, 22.0 // mm
)

func newTruth(t testing.TB, power, depth float64) *truth {
	t.Helper()
	s := &truth{rim: newRimLine(guitarShape{}.Polyline(1e-4)), alpha: plane.Point{0.003, 0.0002}, power: power, depth: depth}
	const poles, rows, off = 120, 360, 30.0
	for k := range poles {
		p, in := s.rim.placeAt(s.rim.length() * float64(k) / poles)
		s.poles = append(s.poles, plane.Point{p[0] - off*in[0], p[1] - off*in[1]})
	}
	a, b := mat.NewDense(rows, poles+1, nil), mat.NewVecDense(rows, nil)
	for i := range rows {
		p := s.rim.pointAt(s.rim.length() * (float64(i) + 0.37) / rows)
		for k, q := range s.poles {
			a.Set(i, k, math.Log(plane.Dist(p, q)))
		}
		a.Set(i, poles, 1)
		b.SetVec(i, math.Exp(s.alpha[0]*p[0]+s.alpha[1]*p[1])/(s.alpha[0]*s.alpha[0]+s.alpha[1]*s.alpha[1]))
	}
	var x mat.VecDense
	if err := x.SolveVec(a, b); err != nil {
		t.Logf("fundamental solutions: %v", err)
	}
	s.strength = x.RawVector().Data
	for px := -60.0; px <= 60; px += 2 {
		for py := -180.0; py <= 200; py += 2 {
			if u := s.u(plane.Point{px, py}).Z; u > s.top {
				s.top, s.apex = u, plane.Point{px, py}
			}
		}
	}
	return s
}

// u returns the solution with its derivatives.
func (s *truth) u(p plane.Point) Jet {
	e := math.Exp(s.alpha[0]*p[0]+s.alpha[1]*p[1]) / (s.alpha[0]*s.alpha[0] + s.alpha[1]*s.alpha[1])
	j := Jet{
		s.strength[len(s.poles)] - e, -s.alpha[0] * e, -s.alpha[1] * e,
		-s.alpha[0] * s.alpha[0] * e, -s.alpha[0] * s.alpha[1] * e, -s.alpha[1] * s.alpha[1] * e,
	}
	for k, q := range s.poles {
		x, y := p[0]-q[0], p[1]-q[1]
		r2 := x*x + y*y
		c := s.strength[k] / r2
		j.Z += s.strength[k] * math.Log(r2) / 2
		j.Zx += c * x
		j.Zy += c * y
		j.Zxx += c * (1 - 2*x*x/r2)
		j.Zxy -= c * 2 * x * y / r2
		j.Zyy += c * (1 - 2*y*y/r2)
	}
	return j
}

// trough returns what is taken off along the outline, mm.
func (s *truth) trough(p plane.Point) float64 {
	d := s.rim.nearest(p).dist / truthAt
	return s.depth * d * d * math.Exp(1-d*d)
}

// At returns the jet of the outer surface: the dome analytically, the trough
// by central differences.
func (s *truth) At(p plane.Point) Jet {
	const e = 1.0 // mm: wide enough not to see the corners of the polyline
	u := s.u(p)
	t := max(u.Z, 1e-9*s.top) / s.top
	f := (truthTop - truthRim) * math.Pow(t, s.power)
	f1, f2 := f*s.power/(t*s.top), f*s.power*(s.power-1)/(t*t*s.top*s.top)
	j := Jet{
		truthRim + f, f1 * u.Zx, f1 * u.Zy,
		f1*u.Zxx + f2*u.Zx*u.Zx, f1*u.Zxy + f2*u.Zx*u.Zy, f1*u.Zyy + f2*u.Zy*u.Zy,
	}
	if s.depth == 0 || s.rim.nearest(p).dist > 4*truthAt { // less than 1e-4 mm is left of the trough
		return j
	}
	z := func(i, k float64) float64 { return -s.trough(plane.Point{p[0] + i*e, p[1] + k*e}) }
	c := z(0, 0)
	j.Z += c
	j.Zx += (z(1, 0) - z(-1, 0)) / (2 * e)
	j.Zy += (z(0, 1) - z(0, -1)) / (2 * e)
	j.Zxx += (z(1, 0) - 2*c + z(-1, 0)) / (e * e)
	j.Zxy += (z(1, 1) - z(1, -1) - z(-1, 1) + z(-1, -1)) / (4 * e * e)
	j.Zyy += (z(0, 1) - 2*c + z(0, -1)) / (e * e)
	return j
}

// TestTruth makes sure that the yardstick is straight: Poisson's equation
// holds, the outline is a zero line, and the jet is the derivative.
func TestTruth(t *testing.T) {
	s := newTruth(t, 2, 1.55)
	for i := range 1000 {
		p := s.rim.pointAt(s.rim.length() * float64(i) / 1000)
		if u := s.u(p).Z / s.top; math.Abs(u) > 1e-4 {
			t.Fatalf("u = %g of its maximum at %v on the outline, want 0", u, p)
		}
	}
	const h = 0.5
	for _, p := range []plane.Point{{0, 0}, {150, -60}, {-100, 100}} {
		j := s.u(p)
		if got, want := j.Zxx+j.Zyy, -math.Exp(s.alpha[0]*p[0]+s.alpha[1]*p[1]); math.Abs(got-want) > 1e-9 {
			t.Errorf("Laplacian at %v = %g, want %g", p, got, want)
		}
		e, w := s.At(plane.Point{p[0] + h, p[1]}), s.At(plane.Point{p[0] - h, p[1]})
		if got, want := s.At(p).Zxx, (e.Zx-w.Zx)/(2*h); math.Abs(got-want) > 1e-4 { // 0.5 % of the steepest recurve's
			t.Errorf("curvature at %v = %g /mm, want %g (differences)", p, got, want)
		}
	}
}
