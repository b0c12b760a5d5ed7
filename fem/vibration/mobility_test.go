package vibration

import (
	"math"
	"math/cmplx"
	"testing"

	"gonum.org/v1/gonum/mat"

	"archload/fem/sparse"
)

// Mobilities are those of a direct complex solution within 0.1 dB, at tones and between them;
// reciprocal; and as much power goes in as is lost.
func TestMobility(t *testing.T) {
	for name, held := range map[string]int{"hinged": 3, "free": 0} {
		sys := plate(t, 8, 180, 120, 3, spruce(), held)
		s, err := New(Input{Plate: sys, Workers: 1})
		if err != nil {
			t.Fatal(err)
		}
		free := 0
		if held == 0 {
			free = 6
		}
		tones, err := s.Tones(30, free)
		if err != nil {
			t.Fatal(err)
		}
		ports := []sparse.Column{
			s.PlatePort(corner(sys, 30), [3]float64{0, 0, 1}), s.PlatePort(corner(sys, 50), [3]float64{0, 0, 1}),
			s.PlatePort(corner(sys, 30), [3]float64{0, 1, 0}),
		}
		const loss = 0.02
		r, err := tones.Reduce(ports, loss)
		if err != nil {
			t.Fatal(err)
		}
		top := tones.List[len(tones.List)-1].Hz
		list := []float64{20, tones.List[0].Hz, tones.List[1].Hz * 1.01, tones.List[3].Hz, tones.List[5].Hz * 0.97, 0.4 * top, 0.5 * top}
		for _, hz := range list {
			direct := directMobility(t, s, ports, loss, hz)
			for i := range ports {
				for j := range ports {
					got, want := r.Mobility(i, j, hz), direct[i][j]
					if db := 20 * math.Log10(cmplx.Abs(got)/cmplx.Abs(want)); cmplx.Abs(want) > 1e-9*cmplx.Abs(direct[i][i]) && math.Abs(db) > 0.1 {
						t.Errorf("%s: %.1f Hz, %d to %d: %.3g, direct %.3g: %.2f dB", name, hz, i, j, got, want, db)
					}
					if back := r.Mobility(j, i, hz); cmplx.Abs(got-back) > 1e-9*cmplx.Abs(got) {
						t.Errorf("%s: %.1f Hz, %d to %d: not reciprocal: %g and %g", name, hz, i, j, got, back)
					}
				}
				in, lost := r.Power(i, hz)
				if in < 0 || math.Abs(in-lost) > 1e-6*in {
					t.Errorf("%s: %.1f Hz at %d: power in %g, lost %g", name, hz, i, in, lost)
				}
			}
		}
	}
}

// directMobility solves (K (1 + i eta) - omega² M) u = b for all ports as a real problem of twice
// the size, dense.
func directMobility(t *testing.T, s *Structure, ports []sparse.Column, loss, hz float64) [][]complex128 {
	t.Helper()
	n, w := 6*s.nodes(), 2*math.Pi*hz
	a := mat.NewDense(2*n, 2*n, nil)
	x, kx, mx := make([]float64, n), make([]float64, n), make([]float64, n)
	fixed := map[int]bool{}
	for _, d := range s.fixed {
		fixed[int(d)] = true
	}
	for j := range n {
		clear(x)
		x[j] = 1
		s.K.MulTo(kx, x)
		s.M.MulTo(mx, x)
		for i := range n {
			re, im := kx[i]-w*w*mx[i], loss*kx[i]
			if fixed[j] {
				re, im = 0, 0
				if i == j {
					re = 1
				}
			}
			a.Set(i, j, re)
			a.Set(n+i, n+j, re)
			a.Set(i, n+j, -im)
			a.Set(n+i, j, im)
		}
	}
	b := mat.NewDense(2*n, len(ports), nil)
	for p, c := range ports {
		for i, d := range c.Dofs {
			b.Set(int(d), p, c.Vals[i])
		}
	}
	var u mat.Dense
	if err := u.Solve(a, b); err != nil {
		t.Log(err) // a condition number
	}
	out := make([][]complex128, len(ports))
	for p := range ports {
		for _, c := range ports {
			sum := complex(0, 0)
			for i, d := range c.Dofs {
				sum += complex(c.Vals[i], 0) * complex(u.At(int(d), p), u.At(n+int(d), p))
			}
			out[p] = append(out[p], complex(0, w)*sum)
		}
	}
	return out
}
