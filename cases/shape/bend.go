package shape

import (
	"math"
	"runtime"

	"archload/fem/parallel"
	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// bendMap holds the greater principal curvature of the outer surface on a grid
// over the plate, as it is and averaged over a square of 15 mm.
type bendMap struct {
	lo     mesh.Point
	nx, ny int
	point  []float64 // 1/mm; NaN beyond the outline
	smooth []float64 // 1/mm
}

// bendCell is the grid's step, mm; three make the averaging square.
const bendCell = 5.0

// newBendMap samples a surface. The grid lies about the middle of the outline, so
// that a mirrored plate has the mirrored map.
func newBendMap(outline *plane.Curve, s surface.Surface) *bendMap {
	lo, hi := outline.Bounds()
	m := &bendMap{nx: int((hi[0]-lo[0])/bendCell) + 2, ny: int((hi[1]-lo[1])/bendCell) + 2}
	for k, n := range [2]int{m.nx, m.ny} {
		m.lo[k] = (lo[k]+hi[k])/2 - bendCell*float64(n-1)/2
	}
	m.point = make([]float64, m.nx*m.ny)
	m.smooth = make([]float64, m.nx*m.ny)
	m.eachApart(func(k int, p mesh.Point) {
		m.point[k] = math.NaN()
		if outline.Contains(p) {
			m.point[k] = curvature(s.At(p))
		}
	})
	m.average()
	return m
}

// each calls a function for every grid point, in their order.
func (m *bendMap) each(f func(k int, p mesh.Point)) {
	for j := range m.ny {
		m.eachOf(j, f)
	}
}

// eachApart calls a function for every grid point, on all cores.
func (m *bendMap) eachApart(f func(k int, p mesh.Point)) {
	parallel.Chunks(runtime.GOMAXPROCS(0), m.ny, 1, func(j, _ int) { m.eachOf(j, f) })
}

// eachOf calls a function for every grid point of a row.
func (m *bendMap) eachOf(j int, f func(k int, p mesh.Point)) {
	for i := range m.nx {
		f(j*m.nx+i, mesh.Point{m.lo[0] + float64(i)*bendCell, m.lo[1] + float64(j)*bendCell})
	}
}

// average fills smooth: the mean of the sampled neighbours, 0 without any.
func (m *bendMap) average() {
	for k := range m.smooth {
		sum, count := 0.0, 0.0
		for j := max(k/m.nx-1, 0); j <= min(k/m.nx+1, m.ny-1); j++ {
			for i := max(k%m.nx-1, 0); i <= min(k%m.nx+1, m.nx-1); i++ {
				if v := m.point[j*m.nx+i]; !math.IsNaN(v) {
					sum, count = sum+v, count+1
				}
			}
		}
		m.smooth[k] = sum / max(count, 1)
	}
}

// mean returns the averaged curvature at a place, 1/mm, bilinear in the grid.
func (m *bendMap) mean(p mesh.Point) float64 {
	x := min(max((p[0]-m.lo[0])/bendCell, 0), float64(m.nx-1)-1e-9)
	y := min(max((p[1]-m.lo[1])/bendCell, 0), float64(m.ny-1)-1e-9)
	i, j := int(x), int(y)
	u, v := x-float64(i), y-float64(j)
	at := func(i, j int) float64 { return m.smooth[j*m.nx+i] }
	return (1-v)*((1-u)*at(i, j)+u*at(i+1, j)) + v*((1-u)*at(i, j+1)+u*at(i+1, j+1))
}

// curvature returns the greater principal curvature of a surface z(x, y),
// 1/mm, without sign: |H| + sqrt(H² − K), H the mean and K the Gaussian
// curvature of a graph. Source: any text on the differential geometry of
// surfaces (from memory); tested on a sphere.
func curvature(j surface.Jet) float64 {
	w := 1 + j.Zx*j.Zx + j.Zy*j.Zy
	gauss := (j.Zxx*j.Zyy - j.Zxy*j.Zxy) / (w * w)
	mean := ((1+j.Zy*j.Zy)*j.Zxx - 2*j.Zx*j.Zy*j.Zxy + (1+j.Zx*j.Zx)*j.Zyy) / (2 * w * math.Sqrt(w))
	return math.Abs(mean) + math.Sqrt(max(0, mean*mean-gauss))
}
