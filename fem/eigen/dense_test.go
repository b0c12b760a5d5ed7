package eigen

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"

	"archload/fem/sparse"
)

// randomProblem has random element matrices on a strip of triangles, some freedoms fixed,
// and a mass with none in some freedoms if hollow.
func randomProblem(t *testing.T, nodes int, seed uint64, hollow bool) *Problem {
	t.Helper()
	rng := rand.New(rand.NewPCG(seed, 1))
	var elems [][]int32
	for i := range int32(nodes - 2) {
		elems = append(elems, []int32{i, i + 1, i + 2})
	}
	p := &Problem{K: sparse.NewMatrix(nodes, elems)}
	p.M = p.K.Like()
	for _, e := range elems {
		p.K.Add(e, gram(rng, false))
		p.M.Add(e, gram(rng, hollow))
	}
	eye := make([]float64, 36)
	for d := range 6 {
		eye[7*d] = 1e-3
	}
	for v := range int32(nodes) {
		p.K.Add([]int32{v}, eye)
	}
	p.Fixed = []int32{0, 1, 2, 31, 44}
	p.K.Fix(p.Fixed)
	p.M.Fix(p.Fixed)
	var err error
	if p.Plan, err = sparse.Analyse(p.K, nil, nil); err != nil {
		t.Fatal(err)
	}
	return p
}

// gram is a random 18 x 18 matrix b bᵀ; hollow: without the last two freedoms of a node.
func gram(rng *rand.Rand, hollow bool) []float64 {
	b, g := make([]float64, 18*18), make([]float64, 18*18)
	for i := range b {
		b[i] = rng.NormFloat64()
	}
	for i := range 18 {
		for j := range 18 {
			if hollow && (i%6 > 3 || j%6 > 3) {
				continue
			}
			for l := range 18 {
				g[18*i+j] += b[18*i+l] * b[18*j+l]
			}
		}
	}
	return g
}

// denseValues solves M x = theta K x on the free freedoms by Cholesky of K and returns
// 1/theta of the finite ones, ascending.
func denseValues(t *testing.T, p *Problem) []float64 {
	t.Helper()
	var free []int
	n := 6 * p.K.Nodes()
	for d := range n {
		if !slices.Contains(p.Fixed, int32(d)) {
			free = append(free, d)
		}
	}
	k, m := mat.NewSymDense(len(free), nil), mat.NewSymDense(len(free), nil)
	x, y := make([]float64, n), make([]float64, n)
	for j, d := range free {
		clear(x)
		x[d] = 1
		p.K.MulTo(y, x)
		for i, e := range free[:j+1] {
			k.SetSym(i, j, y[e])
		}
		p.M.MulTo(y, x)
		for i, e := range free[:j+1] {
			m.SetSym(i, j, y[e])
		}
	}
	var chol mat.Cholesky
	if !chol.Factorize(k) {
		t.Fatal("K is not definite")
	}
	var l mat.TriDense
	chol.LTo(&l)
	var li, c mat.Dense
	if err := li.Inverse(&l); err != nil {
		t.Fatal(err)
	}
	c.Product(&li, m, li.T())
	sym := mat.NewSymDense(len(free), nil)
	for i := range free {
		for j := range i + 1 {
			sym.SetSym(i, j, c.At(i, j))
		}
	}
	var e mat.EigenSym
	e.Factorize(sym, false)
	theta := e.Values(nil)
	var values []float64
	for i := len(theta) - 1; i >= 0 && theta[i] > 1e-11*theta[len(theta)-1]; i-- {
		values = append(values, 1/theta[i])
	}
	return values
}

// Random matrices beside a dense solution; a mass of low rank too.
func TestLowestDense(t *testing.T) {
	for seed := range uint64(6) {
		hollow := seed%2 == 1
		p := randomProblem(t, 40, seed, hollow)
		want := denseValues(t, p)
		for _, count := range []int{1, 10, 60} {
			m, err := Lowest(p, Options{Count: count})
			if err != nil {
				t.Errorf("seed %d, %d values: %v", seed, count, err)
				continue
			}
			if len(m.Values) < count || m.Proof.Count != len(m.Values) {
				t.Errorf("seed %d: %d values of %d, %+v", seed, len(m.Values), count, m.Proof)
			}
			for i, v := range m.Values {
				if math.Abs(v-want[i]) > 1e-8*want[i] {
					t.Errorf("seed %d: value %d is %.12g, want %.12g", seed, i, v, want[i])
					break
				}
			}
			for d, v := range m.Vectors[0] {
				if v != 0 && slices.Contains(p.Fixed, int32(d)) {
					t.Errorf("seed %d: fixed freedom %d moves %g", seed, d, v)
				}
			}
		}
	}
}

// A vector that the start block does not contain is missed by the search, shown by the
// count and found in the next round. The mode is one of a chain: exact to the last bit
// it never enters the space by itself.
func TestMissingIsFound(t *testing.T) {
	c := chain(120, false)
	c.weight = distinct
	p := c.problem(t)
	l, err := newLanczos(p, Options{Count: 12}, 0)
	if err != nil {
		t.Fatal(err)
	}
	// The freedoms do not couple: without freedom 0 the space never holds its modes.
	w := l.octet(0)
	for i := range w {
		if i/width%6 == 0 {
			w[i] = 0
		}
	}
	l.mass.MulTo(l.mv, w)
	l.normalise(w, l.mv, 0)
	m, err := l.search()
	if err != nil {
		t.Fatal(err)
	}
	if m.Rounds == 0 {
		t.Error("nothing was missing: the test tests nothing")
	}
	checkValues(t, "chain with one freedom left out", m, weighted(values(120, false), distinct), 12)
}

// A body that nothing holds is an error when it is not said to be free.
func TestFreeUnsaid(t *testing.T) {
	c := chain(30, true)
	c.weight = distinct
	if _, err := Lowest(c.problem(t), Options{Count: 3}); err == nil {
		t.Error("want an error for a singular stiffness")
	}
}
