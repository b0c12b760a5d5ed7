package sparse

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// TestSolveLast compares with full solves, and one worker with several.
func TestSolveLast(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 4))
	for kind, kern := range kernelSets() {
		p := hexPlate(700, rng, func(x, y float64) bool { return x > 100 && y*y < 900 }).withWall(3).bridge(50)
		m := p.matrix(rng)
		a := mustAnalyse(t, m, p)
		x := make([]float64, Block*m.Nodes())
		for _, v := range p.last {
			copy(x[Block*v:], randomVector(rng, Block))
		}
		want := slices.Clone(x)
		mustFactorize(t, m, a, 1, kern).Solve(want)
		var one []float64
		for workers := 1; workers <= 4; workers++ {
			got := slices.Clone(x)
			mustFactorize(t, m, a, workers, kern).SolveLast(got)
			if d := apart(got, want); !(d <= 1e-13) {
				t.Errorf("%s, %d workers: %g off the full solve, want 1e-13", kind, workers, d)
			}
			if workers == 1 {
				one = got
			} else if !slices.Equal(got, one) {
				t.Errorf("%s: %d workers give other bits than one", kind, workers)
			}
		}
	}
}

// TestPartSubtrees: every front is solved once, after those above it.
func TestPartSubtrees(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 9))
	p := hexPlate(900, rng, nil).bridge(40)
	a := mustAnalyse(t, p.matrix(rng), p)
	for workers := 1; workers <= 8; workers++ {
		upper, subtrees := a.partSubtrees(workers)
		done := make([]bool, len(a.fronts))
		visit := func(k int32) {
			if up := a.fronts[k].parent; done[k] || up >= 0 && !done[up] {
				t.Fatalf("%d workers: front %d is solved twice or before its parent", workers, k)
			}
			done[k] = true
		}
		for _, k := range upper {
			visit(k)
		}
		for _, top := range subtrees {
			for k := top; k >= a.fronts[top].subtree; k-- {
				visit(k)
			}
		}
		if slices.Contains(done, false) {
			t.Errorf("%d workers: a front is left out", workers)
		}
	}
}
