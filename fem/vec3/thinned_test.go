package vec3

import (
	"math"
	"testing"
)

// A circle of 100 mm and a straight line with a knee keep their way through fewer places; what turns
// back, or has a gap, keeps all of them.
func TestThinned(t *testing.T) {
	const off = 0.06 // mm
	var circle, straight [][3]float64
	for i := range 401 {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 400)
		circle = append(circle, [3]float64{100 * c, 100 * s, 3})
	}
	for i := range 11 {
		straight = append(straight, [3]float64{float64(i), 0, 0})
	}
	for i := range 10 {
		straight = append(straight, [3]float64{10, float64(i + 1), 0})
	}
	nan := math.NaN()
	for _, c := range []struct {
		what        string
		line        [][3]float64
		least, most int // places left
	}{
		{"a circle", circle, 80, 110}, // a chord of 2 sqrt(2 r off) = 6.9 mm leaves it by 0.06 mm
		{"a knee", straight, 3, 3},
		{"there and back", [][3]float64{{}, {5, 0, 0}, {2, 0, 0}, {7, 0, 0}}, 4, 4},
		{"a gap", [][3]float64{{}, {1, 0, 0}, {nan, nan, nan}, {3, 0, 0}, {4, 0, 0}}, 5, 5},
		{"one place twice", [][3]float64{{}, {}, {}}, 3, 3},
	} {
		got := Thinned(c.line, off)
		if len(got) < c.least || len(got) > c.most {
			t.Errorf("%s goes through %d of %d places, want %d to %d", c.what, len(got), len(c.line), c.least, c.most)
		}
		if last := got[len(got)-1]; got[0] != c.line[0] || last != c.line[len(c.line)-1] {
			t.Errorf("%s ends at %v and %v", c.what, got[0], last)
		}
		for _, p := range c.line {
			if far := offLine(got, p); far > off*(1+1e-9) {
				t.Errorf("%s leaves %v by %g mm", c.what, p, far)
				break
			}
		}
	}
}

// offLine is how far a place lies from a polyline, mm; 0 if it is no number.
func offLine(line [][3]float64, p [3]float64) float64 {
	least := math.Inf(1)
	for i := 1; i < len(line); i++ {
		d := Sub(line[i], line[i-1])
		u := math.Max(0, math.Min(1, Dot(Sub(p, line[i-1]), d)/math.Max(1e-12, Dot(d, d))))
		if far := Norm(Sub(p, Add(line[i-1], Scale(d, u)))); far < least {
			least = far
		}
	}
	if math.IsNaN(p[0]) {
		return 0
	}
	return least
}
