package friction

import (
	"math"
	"math/rand/v2"

	"gonum.org/v1/gonum/mat"
)

// cross is the vector product.
func cross(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// arm is the movement along d of a point at x under the six rigid motions about the origin.
func arm(x, d [3]float64) [6]float64 {
	m := cross(x, d)
	return [6]float64{d[0], d[1], d[2], m[0], m[1], m[2]}
}

// fit says what a random problem is like.
type fit struct {
	columns, rows int
	slope         float64 // of the arch at the foot's ends, 1
	coupling      float64 // how much of the compliance is by lot
	relief        float64 // mm
	misfit        float64 // mm
	push          float64 // along, of the downforce
	mu            float64
}

// random makes a foot of columns by rows pads on an arch: compliance that fades with
// distance, a bedding of its own for each pad, some of it by lot, guides at a saddle.
func random(r *rand.Rand, f fit) *Problem {
	m := f.columns * f.rows
	n := 3*m + 3
	p := &Problem{A: make([]float64, n*n), B: make([]float64, n), Gap: make([]float64, m), Coefficient: f.mu}
	var at, dirs [][3]float64
	half := 60.0
	for i := range m {
		x := -half + 2*half*(float64(i/f.rows)+0.5)/float64(f.columns)
		y := 0.0
		if f.rows > 1 {
			y = -5 + 10*float64(i%f.rows)/float64(f.rows-1)
		}
		s := -f.slope * x / half
		l := math.Hypot(1, s)
		normal, t := [3]float64{-s / l, 0, 1 / l}, [3]float64{1 / l, 0, s / l}
		for _, d := range [][3]float64{normal, t, cross(normal, t)} {
			pos := [3]float64{x, y, -f.slope * x * x / half / 2}
			at, dirs = append(at, pos), append(dirs, d)
			p.R = append(p.R, arm(pos, d))
		}
		u := x / half
		p.Gap[i] = f.relief*(1-u*u) + f.misfit*r.Float64()
	}
	root := mat.NewDense(3*m, 3*m, nil)
	for i := range 3 * m {
		for j := range 3 * m {
			root.Set(i, j, r.NormFloat64())
		}
	}
	var lot mat.Dense
	lot.Mul(root, root.T())
	k := func(i, j int) float64 { // the body's and the plate's
		d := math.Hypot(at[i][0]-at[j][0], at[i][1]-at[j][1])
		dot := dirs[i][0]*dirs[j][0] + dirs[i][1]*dirs[j][1] + dirs[i][2]*dirs[j][2]
		return 1e-3 * math.Exp(-d/40) * dot
	}
	for i := range 3 * m {
		for j := range 3 * m {
			p.A[i*n+j] = (1-f.coupling)*k(i, j) + f.coupling*1e-3*lot.At(i, j)/float64(3*m)
		}
		p.A[i*n+i] += 2e-4 * float64(m) / 40
		p.B[i] = 0.02 * r.NormFloat64() * f.coupling
	}
	if f.misfit > 0 || f.relief > 0 { // at rest three touch; here any do
		least := math.Inf(1)
		for _, g := range p.Gap {
			least = min(least, g)
		}
		for i := range p.Gap {
			p.Gap[i] -= least
		}
		for _, i := range []int{0, f.rows - 1, m - f.rows, m - 1} {
			p.Gap[i] = 0
		}
	}
	saddle := [3]float64{0, 0, 25}
	p.R = append(p.R, arm(saddle, [3]float64{1, 0, 0}), arm(saddle, [3]float64{0, 1, 0}), [6]float64{0, 0, 0, 0, 0, 1})
	down := -160.0
	force := [3]float64{0, f.push * -down, down}
	where := [3]float64{20 * (r.Float64() - 0.5), 2 * (r.Float64() - 0.5), 5}
	mom := cross(where, force)
	p.F = [6]float64{force[0], force[1], force[2], mom[0], mom[1], mom[2]}
	return p
}
