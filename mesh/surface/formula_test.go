package surface

import (
	"math"
	"strings"
	"testing"

	"archload/mesh/plane"
)

// oval is an ellipse as a Region.
type oval struct{ a, b float64 }

func (o oval) Polyline(float64) []plane.Point {
	pts := make([]plane.Point, 720)
	for i := range pts {
		t := 2 * math.Pi * float64(i) / 720
		pts[i] = plane.Point{o.a * math.Cos(t), o.b * math.Sin(t)}
	}
	return pts
}

// rectangle is centred on the origin, w by h.
func rectangle(w, h float64) polygon {
	return polygon{{-w / 2, -h / 2}, {w / 2, -h / 2}, {w / 2, h / 2}, {-w / 2, h / 2}}
}

func TestFormulaArch(t *testing.T) {
	for _, c := range []struct {
		name string
		spec FormulaSpec
	}{
		{"guitar, apex on the centre line", FormulaSpec{Outline: guitarShape{}, Height: 22, Rim: 5, Apex: plane.Point{0, 10}, RecurveDepth: 1.5}},
		{"guitar, apex to the treble", FormulaSpec{Outline: guitarShape{}, Height: 22, Rim: 5, Apex: plane.Point{22, 10}, RecurveDepth: 1.5}},
		{"guitar, apex toward the neck", FormulaSpec{Outline: guitarShape{}, Height: 20, Rim: 4, Apex: plane.Point{-30, 60}}},
		{"oval", FormulaSpec{Outline: oval{140, 190}, Height: 18, Rim: 4, Apex: plane.Point{10, -20}, RecurveDepth: 2, RecurveAt: 15}},
		{"rectangle", FormulaSpec{Outline: rectangle(300, 400), Height: 18, Rim: 5, Apex: plane.Point{20, 30}, RecurveDepth: 1}},
		{"low arch", FormulaSpec{Outline: rectangle(300, 400), Height: 6, Rim: 5, Apex: plane.Point{0, 0}}},
	} {
		s, err := NewFormula(c.spec)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		if got := s.At(c.spec.Apex).Z; math.Abs(got-c.spec.Height) > 1e-6 {
			t.Errorf("%s: height at the apex = %.6f mm, want %g", c.name, got, c.spec.Height)
		}
		rim, _ := rimOf(c.spec.Outline)
		checkApex(t, c.name, s, rim, c.spec)
		checkEdge(t, c.name, s, rim, c.spec)
	}
}

// checkApex looks for the highest point of a 2 mm grid.
func checkApex(t *testing.T, name string, s Surface, rim *rimLine, spec FormulaSpec) {
	t.Helper()
	top, at := math.Inf(-1), plane.Point{}
	for x := rim.lo[0]; x <= rim.hi[0]; x += 2 {
		for y := rim.lo[1]; y <= rim.hi[1]; y += 2 {
			if p := (plane.Point{x, y}); rim.contains(p) && s.At(p).Z > top {
				top, at = s.At(p).Z, p
			}
		}
	}
	if d := plane.Dist(summit(s, at), spec.Apex); d > 1 {
		t.Errorf("%s: highest point %v, %.2f mm from the apex, want at most 1", name, at, d)
	}
}

// checkEdge walks the outline, which must lie at the rim's height.
func checkEdge(t *testing.T, name string, s Surface, rim *rimLine, spec FormulaSpec) {
	t.Helper()
	worst := 0.0
	for i := range 200 {
		p := rim.pointAt(rim.length() * float64(i) / 200)
		worst = max(worst, math.Abs(s.At(p).Z-spec.Rim))
	}
	if worst > 0.05 {
		t.Errorf("%s: height on the outline off by %.3f mm, want at most 0.05", name, worst)
	}
}

// TestFormulaOnADisc compares with the solution known for a round plate.
func TestFormulaOnADisc(t *testing.T) {
	const r, rise = 150.0, 10.0
	s, err := NewFormula(FormulaSpec{Outline: oval{r, r}, Height: 5 + rise, Rim: 5, RecurveDepth: 1})
	if err != nil {
		t.Fatal(err)
	}
	// The source exp(−ρ²/2R²) with R half the disc's span, R = r√π/2, gives
	// u(ρ) = ∫ρ..r (R²/s)(1 − exp(−s²/2R²)) ds.
	width := r * math.Sqrt(math.Pi) / 2
	u := func(rho float64) float64 {
		const n = 2000
		sum := 0.0
		for i := range n {
			x := rho + (r-rho)*(float64(i)+0.5)/n
			sum += width * width / x * (1 - math.Exp(-x*x/(2*width*width))) * (r - rho) / n
		}
		return sum
	}
	for _, rho := range []float64{0, 30, 75, 110, 128, 140} {
		v, d := u(rho)/u(0), (r-rho)/22
		want := 5 + rise*2*v*v/(1+v) - d*d*math.Exp(1-d*d)
		if got := s.At(plane.Point{rho * 0.6, rho * 0.8}).Z; math.Abs(got-want) > 0.01 {
			t.Errorf("height %g mm from the middle = %.4f mm, want %.4f (radial solution)", rho, got, want)
		}
	}
}

func TestFormulaRefuses(t *testing.T) {
	good := FormulaSpec{Outline: rectangle(300, 400), Height: 18, Rim: 5}
	for _, c := range []struct {
		change func(*FormulaSpec)
		want   string
	}{
		{func(s *FormulaSpec) { s.Height = 5 }, "want more than the rim"},
		{func(s *FormulaSpec) { s.Apex = plane.Point{200, 0} }, "inside the outline"},
		{func(s *FormulaSpec) { s.Apex = plane.Point{140, 0} }, "inside the outline"},
		{func(s *FormulaSpec) { s.RecurveDepth = -1 }, "negative"},
		{func(s *FormulaSpec) { s.RecurveDepth = 14 }, "at most the arch's rise"},
		{func(s *FormulaSpec) { s.Height = math.NaN() }, "finite"},
		{func(s *FormulaSpec) { s.Outline = nil }, "no outline"},
		{func(s *FormulaSpec) { s.Outline = polygon{{0, 0}, {1, 1}} }, "at least 3 points"},
	} {
		spec := good
		c.change(&spec)
		if _, err := NewFormula(spec); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("error = %v, want one that says %q", err, c.want)
		}
	}
}
