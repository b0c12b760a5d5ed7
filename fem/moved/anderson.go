package moved

import "gonum.org/v1/gonum/mat"

// mixer speeds up a fixed-point iteration u ← G(u): of the last steps it takes the combination
// whose rest G(u) - u is smallest.
type mixer struct {
	u, rest [][]float64 // of the last steps
}

// depth is how many earlier steps are combined.
const depth = 6

// next returns the movements to go on from, given u and G(u).
func (m *mixer) next(u, g []float64) []float64 {
	rest := make([]float64, len(u))
	for i := range rest {
		rest[i] = g[i] - u[i]
	}
	m.u, m.rest = append(m.u, u), append(m.rest, rest)
	if len(m.u) > depth+1 {
		m.u, m.rest = m.u[1:], m.rest[1:]
	}
	out := append([]float64(nil), g...)
	n := len(m.u) - 1
	if n == 0 {
		return out
	}
	share, ok := m.shares(n, rest)
	if !ok {
		m.u, m.rest = m.u[n:], m.rest[n:]
		return out
	}
	for k, c := range share {
		for i := range out {
			out[i] -= c * (u[i] - m.u[k][i] + rest[i] - m.rest[k][i])
		}
	}
	return out
}

// shift says that G has come to be so much further everywhere.
func (m *mixer) shift(by []float64) {
	for _, rest := range m.rest {
		for i, v := range by {
			rest[i] += v
		}
	}
}

// shares solves the least squares of rest - Σ c (rest - rest k).
func (m *mixer) shares(n int, rest []float64) ([]float64, bool) {
	diff := make([][]float64, n)
	for k := range diff {
		diff[k] = make([]float64, len(rest))
		for i, r := range rest {
			diff[k][i] = r - m.rest[k][i]
		}
	}
	a, b := mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
	for k := range diff {
		for l := range k + 1 {
			a.SetSym(k, l, dot(diff[k], diff[l]))
		}
		b.SetVec(k, dot(diff[k], rest))
	}
	for k := range n {
		a.SetSym(k, k, a.At(k, k)*(1+1e-13))
	}
	var ch mat.Cholesky
	if !ch.Factorize(a) {
		return nil, false
	}
	var c mat.VecDense
	if err := ch.SolveVecTo(&c, b); err != nil {
		return nil, false // too near to dependent: of no worth
	}
	return c.RawVector().Data, true
}

func dot(a, b []float64) (sum float64) {
	for i, v := range a {
		sum += v * b[i]
	}
	return sum
}
