package dissection

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// TestMinCover compares with the largest matching found by trying all subsets
// (Koenig: they are equally large).
func TestMinCover(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 5))
	for range 300 {
		b := bipartite{nl: 1 + rng.IntN(7), nr: 1 + rng.IntN(7), ptr: []int32{0}}
		for range b.nl {
			for r := range b.nr {
				if rng.IntN(3) == 0 {
					b.adj = append(b.adj, int32(r))
				}
			}
			b.ptr = append(b.ptr, int32(len(b.adj)))
		}
		left, right := b.minCover()
		size := 0
		for _, in := range slices.Concat(left, right) {
			if in {
				size++
			}
		}
		for l := range b.nl {
			for _, r := range b.adj[b.ptr[l]:b.ptr[l+1]] {
				if !left[l] && !right[r] {
					t.Fatalf("edge %d-%d is not covered", l, r)
				}
			}
		}
		if want := bruteMatching(b, 0, 0); size != want {
			t.Fatalf("cover of %d nodes, want %d", size, want)
		}
	}
}

// bruteMatching returns the size of the largest matching of the left nodes from l
// on with the right nodes not in taken.
func bruteMatching(b bipartite, l int, taken uint) int {
	if l == b.nl {
		return 0
	}
	best := bruteMatching(b, l+1, taken)
	for _, r := range b.adj[b.ptr[l]:b.ptr[l+1]] {
		if taken>>r&1 == 0 {
			best = max(best, 1+bruteMatching(b, l+1, taken|1<<r))
		}
	}
	return best
}

// TestCut checks that no edge joins the two sides.
func TestCut(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 1))
	g, plan := plateGraph(28, 22, 4, rng)
	for _, xy := range [][][2]float64{plan, nil, make([][2]float64, len(plan))} {
		g.xy = xy
		side := new(cutter).cut(g)
		var n [3]int
		for i, s := range side {
			n[s]++
			for _, j := range g.Neighbours(int32(i)) {
				if s+side[j] == leftSide+rightSide && s != side[j] {
					t.Fatalf("edge %d-%d crosses", i, j)
				}
			}
		}
		if limit := 60; n[separator] > limit || min(n[leftSide], n[rightSide]) < g.Len()/10 {
			t.Errorf("left, right, separator = %v; want a separator of at most %d", n, limit)
		}
	}
}

// TestRefine starts from poor separators, two layers of nodes thick, and expects
// thinner ones that still part the sides; the counts kept on the way must agree
// with the result.
func TestRefine(t *testing.T) {
	g, xy := plateGraph(36, 27, 0, rand.New(rand.NewPCG(3, 9)))
	var r refiner
	for _, slope := range []float64{0, 0.3, 1, 7} {
		side := make([]int32, g.Len())
		var n [3]int32
		for i, q := range xy {
			switch at := q[1] - slope*q[0]; {
			case at > 12*(1+slope):
				side[i] = rightSide
			case at > -12*(1+slope):
				side[i] = separator
			}
			n[side[i]]++
		}
		before := n[separator]
		got := r.refine(g, side, n)
		n = [3]int32{}
		for i, s := range side {
			n[s]++
			for _, j := range g.Neighbours(int32(i)) {
				if s != side[j] && s+side[j] == leftSide+rightSide {
					t.Fatalf("slope %g: edge %d-%d crosses", slope, i, j)
				}
			}
		}
		if n != r.nodes || got != score(n[separator], n[leftSide], n[rightSide]) || 2*n[separator] > before+8 {
			t.Errorf("slope %g: %v nodes, score %g, separator before %d, counted on the way %v", slope, n, got, before, r.nodes)
		}
	}
}
