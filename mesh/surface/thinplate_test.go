package surface

import (
	"math"
	"math/rand/v2"
	"testing"

	"archload/mesh/plane"
)

// A thin plate goes through its heights, a plane stays a plane, and its derivatives are those of
// differences.
func TestThinPlate(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	var at []plane.Point
	var z, flat []float64
	for range 12 {
		p := plane.Point{300*r.Float64() - 150, 500*r.Float64() - 250}
		at, z, flat = append(at, p), append(z, r.Float64()-0.5), append(flat, 4+0.01*p[0]-0.02*p[1])
	}
	s, err := NewThinPlate(at, z)
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range at {
		if got := s.At(p).Z; math.Abs(got-z[i]) > 1e-9 {
			t.Errorf("at %v: %g, want %g", p, got, z[i])
		}
	}
	even, err := NewThinPlate(at, flat)
	if err != nil {
		t.Fatal(err)
	}
	p, h := plane.Point{31, -77}, 1e-3
	if got, want := even.At(p).Z, 4+0.31+1.54; math.Abs(got-want) > 1e-9 {
		t.Errorf("a plane: %g, want %g", got, want)
	}
	j := s.At(p)
	x0, x1 := s.At(plane.Point{p[0] - h, p[1]}), s.At(plane.Point{p[0] + h, p[1]})
	y0, y1 := s.At(plane.Point{p[0], p[1] - h}), s.At(plane.Point{p[0], p[1] + h})
	for _, c := range []struct {
		name      string
		got, want float64
	}{{"Zx", j.Zx, (x1.Z - x0.Z) / (2 * h)}, {"Zy", j.Zy, (y1.Z - y0.Z) / (2 * h)}, {"Zxx", j.Zxx, (x1.Zx - x0.Zx) / (2 * h)},
		{"Zxy", j.Zxy, (y1.Zx - y0.Zx) / (2 * h)}, {"Zyy", j.Zyy, (y1.Zy - y0.Zy) / (2 * h)}} {
		if math.Abs(c.got-c.want) > 1e-6*(1e-3+math.Abs(c.want))+1e-10 {
			t.Errorf("%s = %g, by differences %g", c.name, c.got, c.want)
		}
	}
	for _, bad := range [][]plane.Point{{{0, 0}, {1, 1}}, {{0, 0}, {1, 1}, {2, 2}}, {{0, 0}, {0, 0}, {1, 3}, {4, 1}}} {
		if _, err := NewThinPlate(bad, make([]float64, len(bad))); err == nil {
			t.Errorf("%v: no error", bad)
		}
	}
}
