package scene

import (
	"math"
	"testing"

	"archload/mesh"
)

// TestFlatTris covers a line with a waist by triangles whose areas add up to its own.
func TestFlatTris(t *testing.T) {
	var line []mesh.Point
	want := 0.0
	for k := range 120 {
		s, c := math.Sincos(2 * math.Pi * float64(k) / 120)
		r := 100 + 35*math.Cos(4*math.Pi*float64(k)/120)
		line = append(line, mesh.Point{r * c, r * s})
	}
	for i, p := range line {
		q := line[(i+1)%len(line)]
		want += (p[0]*q[1] - q[0]*p[1]) / 2
	}
	got := 0.0
	tris := flatTris(line)
	for _, k := range tris {
		p, q, r := line[k[0]], line[k[1]], line[k[2]]
		a := ((q[0]-p[0])*(r[1]-p[1]) - (q[1]-p[1])*(r[0]-p[0])) / 2
		if a < 0 {
			t.Errorf("triangle %v is turned over", k)
		}
		got += a
	}
	if len(tris) != len(line)-2 || math.Abs(got-want) > 1e-9*want {
		t.Errorf("%d triangles of %g mm², want %d of %g", len(tris), got, len(line)-2, want)
	}
}
