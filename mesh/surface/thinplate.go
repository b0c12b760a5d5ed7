package surface

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"

	"archload/mesh/plane"
)

// ThinPlate is the surface through given heights at given places that bends least, as a thin plate
// laid over them does:
//
//	f(p) = a + b·p + Σ wᵢ φ(|p − pᵢ|²),  φ(s) = ½ s ln s,  Σ wᵢ = 0,  Σ wᵢ pᵢ = 0,
//
// which minimises ∫ f_xx² + 2 f_xy² + f_yy² (J. Duchon, "Splines minimizing rotation-invariant semi-norms
// in Sobolev spaces", 1977; from memory). Second derivatives are those of places at least a
// millimetre off the given ones, where they would be infinite.
type ThinPlate struct {
	at    []plane.Point
	w     []float64
	plane [3]float64 // height at the origin, slopes
}

// NewThinPlate lays it through at least three places that do not lie on a line, no two of them the same.
func NewThinPlate(at []plane.Point, z []float64) (*ThinPlate, error) {
	n := len(at)
	if n < 3 {
		return nil, errOnLine
	}
	// Places are taken about their middle and in their own size, so that the equations are well scaled.
	lo, hi := plane.Bounds(at)
	size := math.Max(hi[0]-lo[0], hi[1]-lo[1])
	if !(size > 0) {
		return nil, errOnLine
	}
	a := mat.NewDense(n+3, n+3, nil)
	b := mat.NewVecDense(n+3, nil)
	for i, p := range at {
		for j, q := range at {
			a.Set(i, j, bendFunction(squared(p, q)/(size*size)))
		}
		for k, v := range [3]float64{1, (p[0] - lo[0]) / size, (p[1] - lo[1]) / size} {
			a.Set(i, n+k, v)
			a.Set(n+k, i, v)
		}
		b.SetVec(i, z[i])
	}
	var x mat.VecDense
	if err := x.SolveVec(a, b); err != nil {
		return nil, errOnLine
	}
	// In mm again: φ(s/c²) = φ(s)/c² − s ln c / c², and Σ wᵢ |p − pᵢ|² is a plane under the side conditions.
	t := &ThinPlate{at: at}
	log := math.Log(size)
	shift := 0.0
	for i, p := range at {
		w := x.AtVec(i) / (size * size)
		t.w = append(t.w, w)
		shift += w * (p[0]*p[0] + p[1]*p[1])
	}
	t.plane = [3]float64{x.AtVec(n) - log*shift, x.AtVec(n+1) / size, x.AtVec(n+2) / size}
	t.plane[0] -= t.plane[1]*lo[0] + t.plane[2]*lo[1]
	return t, nil
}

var errOnLine = errors.New("want at least three places that do not lie on a line, no two of them the same")

// bendFunction is φ(s) = ½ s ln s.
func bendFunction(s float64) float64 {
	if s == 0 {
		return 0
	}
	return 0.5 * s * math.Log(s)
}

func squared(p, q plane.Point) float64 {
	dx, dy := p[0]-q[0], p[1]-q[1]
	return dx*dx + dy*dy
}

// At returns height and derivatives at a place.
func (t *ThinPlate) At(p plane.Point) Jet {
	const near = 1.0 // mm²
	j := Jet{Z: t.plane[0] + t.plane[1]*p[0] + t.plane[2]*p[1], Zx: t.plane[1], Zy: t.plane[2]}
	for i, q := range t.at {
		s, w := squared(p, q), t.w[i]
		if s == 0 {
			continue
		}
		x, y, l := p[0]-q[0], p[1]-q[1], math.Log(s)+1
		j.Z += w * bendFunction(s)
		j.Zx, j.Zy = j.Zx+w*x*l, j.Zy+w*y*l
		far := math.Max(s, near)
		l = math.Log(far) + 1
		j.Zxx, j.Zxy, j.Zyy = j.Zxx+w*(l+2*x*x/far), j.Zxy+w*2*x*y/far, j.Zyy+w*(l+2*y*y/far)
	}
	return j
}
