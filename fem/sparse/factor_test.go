package sparse

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// testPlates are plate-like meshes with awkward features.
func testPlates(rng *rand.Rand) map[string]plate {
	hole := func(x, y float64) bool { return math.Hypot(math.Abs(x)-90, y) < 35 }
	apart := hexPlate(200, rng, func(x, _ float64) bool { return math.Abs(x) < 30 })
	apart.last = []int32{0, int32(len(apart.xy)) - 1} // one node of either half
	lost := hexPlate(100, rng, nil)
	lost.xy = slices.Clone(lost.xy)
	for i := range lost.xy {
		lost.xy[i] = [2]float64{1, 2}
	}
	blind := hexPlate(300, rng, nil)
	blind.xy = nil
	return map[string]plate{
		"one node":         {xy: make([][2]float64, 1), tris: [][]int32{{0}}},
		"one triangle":     {xy: make([][2]float64, 3), tris: [][]int32{{2, 0, 1}}, last: []int32{1}},
		"plate":            hexPlate(450, rng, nil),
		"holes and bridge": hexPlate(450, rng, hole).bridge(50),
		"wall":             hexPlate(200, rng, hole).withWall(4).bridge(20),
		"two halves":       apart,
		"coincident nodes": lost,
		"no coordinates":   blind.bridgeOf(25),
		"clique":           {tris: [][]int32{sequence(45)}},
		"star":             {tris: star(120)},
		"tree with a ring": {tris: tree(90)},
	}
}

// bridgeOf takes the first n nodes as last.
func (p plate) bridgeOf(n int) plate { p.last = sequence(n); return p }

func sequence(n int) []int32 {
	s := make([]int32, n)
	for i := range s {
		s[i] = int32(i)
	}
	return s
}

func star(n int) (el [][]int32) {
	for i := range int32(n) {
		el = append(el, []int32{int32(n), i})
	}
	return el
}

// tree is a binary tree with one more edge, which makes a ring.
func tree(n int) [][]int32 {
	el := [][]int32{{int32(n) - 1, int32(n) / 2}}
	for i := range int32(n - 1) {
		el = append(el, []int32{i + 1, i / 2})
	}
	return el
}

// nodes returns the number of nodes of a plate with or without coordinates.
func (p plate) nodes() int {
	n := len(p.xy)
	for _, t := range p.tris {
		for _, v := range t {
			n = max(n, int(v)+1)
		}
	}
	return n
}

// system assembles a plate without coordinates too.
func (p plate) system(rng *rand.Rand) *Matrix {
	m := NewMatrix(p.nodes(), p.tris)
	for _, t := range p.tris {
		m.Add(t, randomElement(rng, len(t)))
	}
	return m
}

// TestSolve checks residuals of both solves, and that the number of workers does
// not change a bit, for both sets of kernels.
func TestSolve(t *testing.T) {
	for kind, kern := range kernelSets() {
		for name, p := range testPlates(rand.New(rand.NewPCG(1, 1))) {
			t.Run(kind+"/"+name, func(t *testing.T) {
				rng := rand.New(rand.NewPCG(2, 2))
				m := p.system(rng)
				a := mustAnalyse(t, m, p)
				f := mustFactorize(t, m, a, 1, kern)
				for workers := 2; workers <= 3; workers++ {
					g := mustFactorize(t, m, a, workers, kern)
					if !slices.Equal(f.values(), g.values()) || !slices.Equal(f.tri, g.tri) {
						t.Errorf("%d workers give other bits than 1", workers)
					}
				}
				checkSolves(t, rng, m, f)
			})
		}
	}
}

func checkSolves(t *testing.T, rng *rand.Rand, m *Matrix, f *Factor) {
	t.Helper()
	const bar = 1e-13
	n := Block * m.n
	for _, nrhs := range []int{0, 1, 8, 19} {
		b := randomVector(rng, n*nrhs)
		x := slices.Clone(b)
		f.SolveMany(x, nrhs)
		for c := 0; c < nrhs; c += 3 {
			bc, xc := b[c*n:(c+1)*n], x[c*n:(c+1)*n]
			if r := residual(m, xc, bc); !(r <= bar) {
				t.Errorf("column %d of %d: residual %g, want %g", c, nrhs, r, bar)
			}
			y := slices.Clone(bc)
			f.Solve(y)
			if r := residual(m, y, bc); !(r <= bar) {
				t.Errorf("single solve: residual %g, want %g", r, bar)
			}
		}
	}
}

// TestAgainstDense compares with plain dense Cholesky on random patterns.
func TestAgainstDense(t *testing.T) {
	rng := rand.New(rand.NewPCG(9, 4))
	for kind, kern := range kernelSets() {
		for _, n := range []int{1, 2, 5, 13, 30} {
			p := plate{xy: make([][2]float64, n), tris: [][]int32{sequence(n)[n-1:]}}
			for i := range n {
				p.xy[i] = [2]float64{rng.Float64(), rng.Float64()}
				p.tris = append(p.tris, []int32{int32(i), rng.Int32N(int32(n)), rng.Int32N(int32(n))})
			}
			m := p.matrix(rng)
			b := randomVector(rng, Block*n)
			got := slices.Clone(b)
			mustFactorize(t, m, mustAnalyse(t, m, p), 2, kern).Solve(got)
			want := denseSolve(t, m.toDense(), b)
			// The condition of these matrices reaches 1e5 or so.
			if d := apart(got, want); d > 1e-9 {
				t.Errorf("%s, %d nodes: %g off the dense solution", kind, n, d)
			}
			if r := residual(m, got, b); r > 1e-15*float64(n+5) {
				t.Errorf("%s, %d nodes: residual %g", kind, n, r)
			}
		}
	}
}

// TestRefactor re-uses analysis and factor with new values, with fixed dofs.
func TestRefactor(t *testing.T) {
	rng := rand.New(rand.NewPCG(4, 4))
	p := hexPlate(250, rng, nil)
	m := p.matrix(rng)
	a := mustAnalyse(t, m, p)
	f := mustFactorize(t, m, a, 2, fastKernels())
	fixed := []int32{0, 1, 2, 77, 600}
	m.Zero()
	p.fill(m, rng)
	m.Fix(fixed)
	if err := f.Refactor(m); err != nil {
		t.Fatal(err)
	}
	if g := mustFactorize(t, m, a, 1, fastKernels()); !slices.Equal(f.values(), g.values()) {
		t.Error("Refactor and Factorize give different bits")
	}
	b := randomVector(rng, Block*m.n)
	for _, d := range fixed {
		b[d] = 0
	}
	x := slices.Clone(b)
	f.Solve(x)
	if r := residual(m, x, b); r > 1e-13 {
		t.Errorf("residual %g", r)
	}
	for _, d := range fixed {
		if x[d] != 0 {
			t.Errorf("fixed degree of freedom %d moves by %g", d, x[d])
		}
	}
}

// TestPivotError checks that the fault is found where it is.
func TestPivotError(t *testing.T) {
	rng := rand.New(rand.NewPCG(6, 6))
	p := hexPlate(200, rng, nil)
	n := int32(len(p.xy))
	for _, c := range []struct {
		name  string
		spoil func(m *Matrix)
		node  int32 // -1: any
		dof   int
		count int
	}{
		{"no element", func(*Matrix) {}, n, 0, 6},
		{"zero diagonal", func(m *Matrix) { tie(m, n); m.val[blockLen*int(m.ptr[41]-1)+2*7] = 0 }, 40, 2, 0},
		{"negative", func(m *Matrix) { tie(m, n); m.val[blockLen*int(m.ptr[12]-1)+5*7] *= -1 }, 11, 5, 0},
		{"not a number", func(m *Matrix) { tie(m, n); m.val[blockLen*int(m.ptr[12]-1)+5*7] = math.NaN() }, -1, 0, 0},
		{"infinite", func(m *Matrix) { tie(m, n); m.val[blockLen*int(m.ptr[12]-1)+5*7] = math.Inf(1) }, -1, 0, 0},
		{"tiny", func(m *Matrix) { tie(m, n); dependent(m, n, 1e-15) }, n, -1, 1},
		{"worst of two", func(m *Matrix) { tie(m, n); dependent(m, n, 1e-15); indefinite(m, n) }, n, 4, 2},
		{"small enough", func(m *Matrix) { tie(m, n); dependent(m, n, 1e-11) }, -2, 0, 0},
	} {
		for workers := 1; workers <= 2; workers++ {
			q := p
			q.xy = append(slices.Clone(p.xy), [2]float64{})
			m := q.system(rng)
			c.spoil(m)
			_, err := Factorize(m, mustAnalyse(t, m, q), workers)
			checkPivot(t, c.name, err, [4]int{int(c.node), c.dof, c.count})
		}
	}
}

// checkPivot compares err with node, dof and count wanted.
func checkPivot(t *testing.T, name string, err error, want [4]int) {
	t.Helper()
	if want[0] == -2 {
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
		return
	}
	var pe *PivotError
	if !errors.As(err, &pe) {
		t.Errorf("%s: got %v, want a *PivotError", name, err)
		return
	}
	if want[0] >= 0 && pe.Node != want[0] || want[0] >= 0 && want[1] >= 0 && pe.Dof != want[1] ||
		want[2] > 0 && pe.Count != want[2] || pe.Error() == "" {
		t.Errorf("%s: got %+v, want node, dof, count %v", name, pe, want)
	}
}

// tie puts ones on the diagonal of a node.
func tie(m *Matrix, node int32) {
	for d := range Block {
		m.val[blockLen*int(m.ptr[node+1]-1)+7*d] = 1
	}
}

// dependent makes uy of a lone node follow ux but for eps.
func dependent(m *Matrix, node int32, eps float64) {
	blk := m.val[blockLen*int(m.ptr[node+1]-1):][:blockLen]
	blk[0], blk[7], blk[1], blk[6] = 1, 1, 1-eps, 1-eps
}

// TestEmpty checks that a matrix without nodes passes through all stages.
func TestEmpty(t *testing.T) {
	m := NewMatrix(0, nil)
	f := mustFactorize(t, m, mustAnalyse(t, m, plate{}), 2, fastKernels())
	f.Solve(nil)
	f.SolveMany(nil, 3)
	if c := f.Compliance(nil); len(c) != 0 {
		t.Errorf("compliance of nothing has %d values", len(c))
	}
}

// indefinite makes the pivot of ry of a lone node 1 - 2² = -3.
func indefinite(m *Matrix, node int32) {
	blk := m.val[blockLen*int(m.ptr[node+1]-1):][:blockLen]
	blk[22], blk[27] = 2, 2
}

// TestMechanism leaves a plate of springs free: its six rigid translations (one
// for each degree of freedom) must be found, whatever the stiffness of each edge.
// One held node then makes it positive definite.
func TestMechanism(t *testing.T) {
	rng := rand.New(rand.NewPCG(10, 1))
	p := hexPlate(600, rng, nil).bridge(30)
	for _, spread := range []float64{0, 3, 6} { // decades
		m := NewMatrix(len(p.xy), p.tris)
		for _, tri := range p.tris {
			for e := range tri {
				k := make([]float64, 144)
				for d := range Block {
					s := math.Pow(10, spread*rng.Float64())
					k[12*d+d], k[12*(d+6)+d+6], k[12*d+d+6], k[12*(d+6)+d] = s, s, -s, -s
				}
				m.Add([]int32{tri[e], tri[(e+1)%3]}, k)
			}
		}
		a := mustAnalyse(t, m, p)
		_, err := Factorize(m, a, 2)
		var pe *PivotError
		if !errors.As(err, &pe) || pe.Count != Block {
			t.Errorf("free plate, %g decades: %v, want %d bad pivots", spread, err, Block)
		}
		m.Fix([]int32{30, 31, 32, 33, 34, 35})
		if _, err := Factorize(m, a, 2); err != nil {
			t.Errorf("held plate, %g decades: %v", spread, err)
		}
	}
}
