package problem

import (
	"math"
	"testing"

	"archload/mesh"
	"archload/mesh/surface"
)

// TestSurfaces checks the derivatives of the test surfaces by central
// differences.
func TestSurfaces(t *testing.T) {
	for name, s := range map[string]surface.Surface{"dome": Dome{300}, "pillow": pillow{150, 200}} {
		const h = 1e-3
		p := mesh.Point{37, -54}
		j := s.At(p)
		at := func(dx, dy float64) [3]float64 {
			j := s.At(mesh.Point{p[0] + dx, p[1] + dy})
			return [3]float64{j.Z, j.Zx, j.Zy}
		}
		e, w, n, so := at(h, 0), at(-h, 0), at(0, h), at(0, -h)
		for k, c := range [5][2]float64{
			{(e[0] - w[0]) / (2 * h), j.Zx}, {(n[0] - so[0]) / (2 * h), j.Zy},
			{(e[1] - w[1]) / (2 * h), j.Zxx}, {(n[1] - so[1]) / (2 * h), j.Zxy}, {(n[2] - so[2]) / (2 * h), j.Zyy},
		} {
			if math.Abs(c[0]-c[1]) > 1e-6*math.Max(1e-3, math.Abs(c[0])) {
				t.Errorf("%s: derivative %d is %g, want %g (central difference)", name, k, c[1], c[0])
			}
		}
	}
}
