package vibration

import (
	"errors"
	"math"
	"math/cmplx"
	"slices"

	"gonum.org/v1/gonum/mat"

	"archload/fem/sparse"
)

// Reduced is a structure in the space of its tones and of its static movements under forces at
// some ports.
type Reduced struct {
	Values []float64   // squares of its frequencies, 1/s², ascending
	Loss   []float64   // of the stiffness in each shape, 1
	Port   [][]float64 // of each port: its movement in every shape, of modal mass 1 tonne

	basis [][]float64
	small *mat.Dense // shapes in the basis, one a column
}

// Shape is the movements of all nodes in shape i, six each, of modal mass 1 tonne.
func (r *Reduced) Shape(i int) []float64 {
	u := make([]float64, len(r.basis[0]))
	for j, b := range r.basis {
		axpy(u, r.small.At(j, i), b)
	}
	return u
}

// Reduce makes the small structure for forces and movements at some ports. loss is that of every
// stiffness, 1.
func (t *Tones) Reduce(ports []sparse.Column, loss float64) (*Reduced, error) {
	s := t.of
	basis := append([][]float64(nil), t.modes.Vectors...)
	shift := t.modes.Shift
	k := s.K
	if shift != 0 {
		k = s.K.Like()
		k.SetSum(1, s.K, shift, s.M)
		k.Fix(s.fixed)
	}
	f, err := sparse.Factorize(k, s.plan, s.in.Workers)
	if err != nil {
		return nil, err
	}
	for _, p := range ports {
		b := make([]float64, sparse.Block*s.nodes())
		for i, d := range p.Dofs {
			b[d] += p.Vals[i]
		}
		for range residuals {
			f.Solve(b)
			basis = s.extend(basis, b)
			s.M.MulTo(b, slices.Clone(b))
		}
	}
	return s.reduce(basis, ports, loss)
}

// residuals is how many movements each port adds: under its force at rest, K⁻¹ b, and under the
// inertia of that, K⁻¹ M K⁻¹ b.
const residuals = 2

// extend adds a movement, less what the basis has of it; nothing where that leaves nothing.
func (s *Structure) extend(basis [][]float64, u []float64) [][]float64 {
	u = slices.Clone(u)
	mu := make([]float64, len(u))
	s.M.MulTo(mu, u)
	before := math.Sqrt(dot(u, mu))
	for range 2 { // twice is enough (B. N. Parlett, The Symmetric Eigenvalue Problem, 6.9)
		for _, v := range basis {
			axpy(u, -dot(v, mu), v)
		}
		s.M.MulTo(mu, u)
	}
	after := math.Sqrt(dot(u, mu))
	if !(after > 1e-9*before) {
		return basis
	}
	for i := range u {
		u[i] /= after
	}
	return append(basis, u)
}

// reduce solves the small problem: M is the unit matrix in the basis.
func (s *Structure) reduce(basis [][]float64, ports []sparse.Column, loss float64) (*Reduced, error) {
	n := len(basis)
	k := mat.NewSymDense(n, nil)
	ku := make([]float64, len(basis[0]))
	for j, u := range basis {
		s.K.MulTo(ku, u)
		for i := range j + 1 {
			k.SetSym(i, j, dot(basis[i], ku))
		}
	}
	var e mat.EigenSym
	if !e.Factorize(k, true) {
		return nil, errors.New("vibration: the reduced problem does not converge")
	}
	var v mat.Dense
	e.VectorsTo(&v)
	r := &Reduced{Values: e.Values(nil), basis: basis, small: &v}
	for i, x := range r.Values {
		r.Values[i] = max(x, 0)
		r.Loss = append(r.Loss, loss)
	}
	for _, p := range ports {
		own := make([]float64, n)
		for j, u := range basis {
			for i, d := range p.Dofs {
				own[j] += p.Vals[i] * u[d]
			}
		}
		row := make([]float64, n)
		for m := range n {
			for j := range n {
				row[m] += own[j] * v.At(j, m)
			}
		}
		r.Port = append(r.Port, row)
	}
	return r, nil
}

// Mobility is the velocity at one port under a unit force at another at a frequency in Hz,
// mm/s per N.
func (r *Reduced) Mobility(drive, at int, hz float64) complex128 {
	w := 2 * math.Pi * hz
	sum := complex(0, 0)
	for m, l := range r.Values {
		sum += complex(r.Port[drive][m]*r.Port[at][m], 0) / (complex(l, l*r.Loss[m]) - complex(w*w, 0))
	}
	return complex(0, w) * sum
}

// Power returns the mean power that a unit force at a port brings in at a frequency, and the mean
// power that the loss takes, N·mm/s: the first from the mobility, the second from the movement.
func (r *Reduced) Power(drive int, hz float64) (in, lost float64) {
	w := 2 * math.Pi * hz
	for m, l := range r.Values {
		q := complex(r.Port[drive][m], 0) / (complex(l, l*r.Loss[m]) - complex(w*w, 0))
		lost += w / 2 * l * r.Loss[m] * real(q*cmplx.Conj(q))
	}
	return real(r.Mobility(drive, drive, hz)) / 2, lost
}
