package sparse

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// The number of negative pivots is that of the negative eigenvalues, and the factor
// solves: beside the dense eigenvalues of A = K - sigma D, with any number of workers.
func TestSignedInertia(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 1))
	for _, kern := range []kernels{{}, fastKernels()} {
		for _, p := range []plate{hexPlate(40, rng, nil), hexPlate(90, rng, nil).bridge(12)} {
			k := p.matrix(rng)
			values := eigenvalues(k)
			for _, below := range []int{0, 1, 7, 60, len(values) / 2, len(values) - 3} {
				sigma := (values[below] + values[max(below-1, 0)]) / 2
				if below == 0 {
					sigma = 0
				}
				a := shifted(k, sigma)
				testSigned(t, fmt.Sprintf("%d nodes, %d below", k.n, below), signedCase{p, a, kern, below})
			}
		}
	}
}

type signedCase struct {
	p     plate
	m     *Matrix
	kern  kernels
	below int
}

func testSigned(t *testing.T, name string, c signedCase) {
	t.Helper()
	a, err := Analyse(c.m, c.p.xy, c.p.last)
	if err != nil {
		t.Fatal(name, err)
	}
	var first *Factor
	for workers := 1; workers <= 3; workers++ {
		f := newFactor(a, workers, c.kern)
		f.signs = make(signs, a.n)
		if f, err = f.first(c.m); err != nil {
			t.Fatal(name, err)
		}
		if got := f.Negative(); got != c.below {
			t.Errorf("%s: %d negative pivots, want %d", name, got, c.below)
		}
		if first == nil {
			first = f
		} else if !slices.Equal(f.values(), first.values()) || !slices.Equal(f.tri, first.tri) || !slices.Equal(f.signs, first.signs) {
			t.Errorf("%s: %d workers give other bits than one", name, workers)
		}
	}
	n := Block * c.m.n
	growth := first.Growth(c.m)
	limit := 1e-14 * growth * float64(n)
	b := make([]float64, n)
	for i := range b {
		b[i] = math.Sin(float64(3 * i))
	}
	x := slices.Clone(b)
	first.Solve(x)
	if r := residual(c.m, x, b); !(r < limit) {
		t.Errorf("%s: residual %.2g, want below %.2g (growth %.2g)", name, r, limit, growth)
	}
	many := make([]float64, 0, 3*n)
	for range 3 {
		many = append(many, b...)
	}
	first.SolveMany(many, 3)
	if r := residual(c.m, many[2*n:], b); !(r < limit) {
		t.Errorf("%s: residual of many %.2g, want below %.2g", name, r, limit)
	}
	if c.p.last != nil {
		testSignedLast(t, name, first, c, limit)
	}
}

// The last nodes' compliance and solution agree with those of the whole.
func testSignedLast(t *testing.T, name string, f *Factor, c signedCase, limit float64) {
	t.Helper()
	dof := 6*c.p.last[3] + 2
	want := make([]float64, Block*c.m.n)
	want[dof] = 1
	f.Solve(want)
	got := make([]float64, len(want))
	got[dof] = 1
	f.SolveLast(got)
	one := []Column{{Dofs: []int32{dof}, Vals: []float64{1}}, {Dofs: []int32{dof - 1}, Vals: []float64{1}}}
	comp := f.Compliance(one)
	scale := math.Abs(slices.MaxFunc(want, func(a, b float64) int { return int(math.Copysign(1, math.Abs(a)-math.Abs(b))) }))
	for i := range want {
		if math.Abs(got[i]-want[i]) > limit*scale {
			t.Fatalf("%s: SolveLast gives %g at %d, Solve %g", name, got[i], i, want[i])
		}
	}
	if math.Abs(comp[0]-want[dof]) > limit*scale || math.Abs(comp[1]-want[dof-1]) > limit*scale {
		t.Errorf("%s: compliance %g %g, want %g %g", name, comp[0], comp[1], want[dof], want[dof-1])
	}
}

// shifted returns k - sigma on the diagonal.
func shifted(k *Matrix, sigma float64) *Matrix {
	one := k.Like()
	eye := make([]float64, blockLen)
	for d := range Block {
		eye[7*d] = 1
	}
	for v := range int32(k.n) {
		one.Add([]int32{v}, eye)
	}
	a := k.Like()
	a.SetSum(1, k, -sigma, one)
	return a
}

func eigenvalues(m *Matrix) []float64 {
	n := Block * m.n
	var e mat.EigenSym
	if !e.Factorize(mat.NewSymDense(n, m.toDense()), false) {
		panic("no eigenvalues")
	}
	return e.Values(nil)
}

// A definite matrix has growth 1 and the signed factor is Cholesky's.
func TestSignedDefinite(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 3))
	p := hexPlate(200, rng, nil)
	m := p.matrix(rng)
	a, err := Analyse(m, p.xy, nil)
	if err != nil {
		t.Fatal(err)
	}
	f, err := Factorize(m, a, 1)
	if err != nil {
		t.Fatal(err)
	}
	if g := f.Growth(m); math.Abs(g-1) > 1e-12 {
		t.Errorf("growth of a definite matrix is %.15g, want 1", g)
	}
	want := slices.Clone(f.values())
	if err := f.RefactorSigned(m); err != nil {
		t.Fatal(err)
	}
	if f.Negative() != 0 || !slices.Equal(f.values(), want) {
		t.Error("the signed factor of a definite matrix is not Cholesky's")
	}
}

// A pivot that vanishes is an error, not a wrong count: the leading entry is zero.
func TestSignedVanishingPivot(t *testing.T) {
	m := NewMatrix(1, nil)
	k := make([]float64, blockLen)
	for d := range Block {
		k[7*d] = 1
	}
	k[0], k[1], k[6] = 1e-20, 1, 1
	k[7] = 1e-20
	m.Add([]int32{0}, k)
	a, err := Analyse(m, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	f, err := FactorizeSigned(m, a, 1)
	if err == nil && f.Growth(m) < 1e10 {
		t.Errorf("want an error or a great growth, found growth %g", f.Growth(m))
	}
}
