package surface

import (
	"math"
	"testing"

	"archload/mesh/plane"
)

// waves fills a spline with smooth but unremarkable coefficients.
func waves(g grid) *Spline {
	s := &Spline{grid: g, coef: make([]float64, g.count())}
	for i := range g.nx + 3 {
		for j := range g.ny + 3 {
			s.coef[g.index(i, j)] = 10*math.Sin(0.7*float64(i)) + 4*math.Cos(0.9*float64(j)+0.3*float64(i))
		}
	}
	return s
}

func TestSplineDerivatives(t *testing.T) {
	const step, tol = 1e-4, 1e-5 // mm, 1 and 1/mm; central differences
	for _, box := range []plane.Point{{40, 70}, {70, 40}} {
		s := waves(gridOver(plane.Point{-10, 5}, plane.Point{-10 + box[0], 5 + box[1]}, 6))
		for _, p := range []plane.Point{{3.3, 21.7}, {8, 11}, {0.01, 30}, {-3, 44.9}} {
			got := s.At(p)
			e, w := s.At(plane.Point{p[0] + step, p[1]}), s.At(plane.Point{p[0] - step, p[1]})
			n, o := s.At(plane.Point{p[0], p[1] + step}), s.At(plane.Point{p[0], p[1] - step})
			want := Jet{
				got.Z, (e.Z - w.Z) / (2 * step), (n.Z - o.Z) / (2 * step),
				(e.Zx - w.Zx) / (2 * step), (n.Zx - o.Zx) / (2 * step), (n.Zy - o.Zy) / (2 * step),
			}
			if d := jetDistance(got, want); d > tol {
				t.Errorf("box %v, jet at %v = %+v, want %+v (central differences)", box, p, got, want)
			}
		}
	}
}

func jetDistance(a, b Jet) float64 {
	d := 0.0
	for _, v := range []float64{a.Zx - b.Zx, a.Zy - b.Zy, a.Zxx - b.Zxx, a.Zxy - b.Zxy, a.Zyy - b.Zyy} {
		d = max(d, math.Abs(v))
	}
	return d
}

func TestSplineStencilsAgreeWithJet(t *testing.T) {
	s := waves(gridOver(plane.Point{0, 0}, plane.Point{60, 30}, 6))
	for _, p := range []plane.Point{{1, 2}, {33.3, 17}, {60, 30}, {0, 0}} {
		jet, value, laplace := s.At(p), s.valueAt(p), s.laplaceAt(p)
		if got := s.apply(&value, s.coef); math.Abs(got-jet.Z) > 1e-12 {
			t.Errorf("stencil height at %v = %g mm, want %g (jet)", p, got, jet.Z)
		}
		if got, want := s.apply(&laplace, s.coef), jet.Zxx+jet.Zyy; math.Abs(got-want) > 1e-12 {
			t.Errorf("stencil Laplacian at %v = %g /mm, want %g (jet)", p, got, want)
		}
	}
}

func TestSplineGoesOnAlongTangentPlane(t *testing.T) {
	s := waves(gridOver(plane.Point{0, 0}, plane.Point{60, 30}, 6))
	edge := plane.Point{s.x0 + float64(s.nx)*s.size, 10}
	at := s.At(edge)
	got := s.At(plane.Point{edge[0] + 5, 10})
	if want := at.Z + 5*at.Zx; math.Abs(got.Z-want) > 1e-12 || got.Zxx != 0 {
		t.Errorf("5 mm beyond the box: %g mm, curvature %g; want %g mm and 0 (tangent plane)", got.Z, got.Zxx, want)
	}
}
