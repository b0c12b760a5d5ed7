package sparse

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// TestLayout compares the closed formulas of the packed triangle with sums.
func TestLayout(t *testing.T) {
	at := 0
	for p := range 50 {
		if got := triOff(p); got != at {
			t.Fatalf("triOff(%d) = %d, want %d", p, got, at)
		}
		width := 8 * (p + 1)
		for width%Block != 0 {
			width++
		}
		if got := triWidth(p); got != width {
			t.Fatalf("triWidth(%d) = %d, want %d", p, got, width)
		}
		at += panelRows * width
	}
	for nodes := range 40 {
		total, order := 0, Block*nodes
		for p := range panels(order) {
			total += panelRows * min(triWidth(p), order)
		}
		if got := triLen(order); got != total {
			t.Errorf("triLen(%d) = %d, want %d", order, got, total)
		}
	}
}

// TestAnalysis checks order, tree and structure against elimination of the graph
// node by node.
func TestAnalysis(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 2))
	for name, p := range map[string]plate{
		"plate":      hexPlate(400, rng, nil),
		"hole":       hexPlate(700, rng, func(x, y float64) bool { return x*x+y*y < 4000 }),
		"wall":       hexPlate(300, rng, nil).withWall(5),
		"bridge":     hexPlate(500, rng, nil).bridge(60),
		"all last":   hexPlate(60, rng, nil).bridge(20).bridge(50),
		"no element": {xy: make([][2]float64, 5), last: []int32{3, 1}},
	} {
		m := NewMatrix(len(p.xy), p.tris)
		a := mustAnalyse(t, m, p)
		sorted := slices.Sorted(slices.Values(a.order))
		for i, v := range sorted {
			if int(v) != i {
				t.Fatalf("%s: the order is not a permutation", name)
			}
		}
		if n := len(p.last); n > 0 {
			got := slices.Sorted(slices.Values(a.order[len(a.order)-n:]))
			if !slices.Equal(got, slices.Sorted(slices.Values(p.last))) {
				t.Errorf("%s: the last nodes are %v, want %v", name, got, p.last)
			}
			if first := int(a.fronts[a.tail].first); first != a.n-n {
				t.Errorf("%s: the fronts of the last nodes begin at place %d, want %d", name, first, a.n-n)
			}
		}
		checkStructure(t, name, m, a)
	}
}

// checkStructure eliminates the graph of m in the order of a and checks that the
// fronts hold every entry of L.
func checkStructure(t *testing.T, name string, m *Matrix, a *Analysis) {
	t.Helper()
	below := make([]map[int32]bool, a.n)
	for p := range below {
		below[p] = map[int32]bool{}
	}
	for i := range int32(a.n) {
		for _, j := range m.col[m.ptr[i] : m.ptr[i+1]-1] {
			pi, pj := a.place[i], a.place[j]
			below[min(pi, pj)][max(pi, pj)] = true
		}
	}
	for k := range a.fronts {
		f := &a.fronts[k]
		for p := f.first; p < f.first+f.pivots; p++ {
			first := int32(a.n)
			for q := range below[p] {
				if _, in := slices.BinarySearch(f.rows, q); !in && q >= f.first+f.pivots {
					t.Fatalf("%s: front %d lacks row %d", name, k, q)
				}
				first = min(first, q)
			}
			for q := range below[p] {
				if q > first {
					below[first][q] = true
				}
			}
		}
		if len(f.rows) > 0 && f.parent <= int32(k) {
			t.Fatalf("%s: front %d has rows below and parent %d", name, k, f.parent)
		}
	}
}

// TestAnalyseErrors checks the refusals.
func TestAnalyseErrors(t *testing.T) {
	m := identity(3)
	for _, c := range []struct {
		xy   [][2]float64
		last []int32
		want string
	}{
		{make([][2]float64, 2), nil, "sparse: want 3 plan coordinates, one for each node, found 2"},
		{nil, []int32{3}, "sparse: last node 3: want 0..2"},
		{nil, []int32{-1}, "sparse: last node -1: want 0..2"},
		{nil, []int32{1, 0, 1}, "sparse: last node 1 is named twice"},
	} {
		if _, err := Analyse(m, c.xy, c.last); err == nil || err.Error() != c.want {
			t.Errorf("got %v, want %s", err, c.want)
		}
	}
	a := mustAnalyse(t, m, plate{})
	if _, err := Factorize(identity(4), a, 1); err == nil {
		t.Error("an analysis of another pattern was accepted")
	}
}

// TestOrderQuality checks that a plate large enough to be cut in parallel always
// gets the same order, and that the fill is not above that of a general-purpose
// graph partitioner on such a mesh of 9993 nodes: 10.4 million nonzeros, measured.
func TestOrderQuality(t *testing.T) {
	p := hexPlate(10000, rand.New(rand.NewPCG(1, 1)), nil)
	m := NewMatrix(len(p.xy), p.tris)
	a, b := mustAnalyse(t, m, p), mustAnalyse(t, m, p)
	if !slices.Equal(a.order, b.order) {
		t.Error("two analyses give two orders")
	}
	if got, want := a.Stats().NNZ, 10.4e6; len(p.xy) != 9993 || got > want {
		t.Errorf("%d nodes: %.4g nonzeros, want at most %.4g", len(p.xy), got, want)
	}
}

// TestStats checks the sizes of one dense front by hand.
func TestStats(t *testing.T) {
	m := NewMatrix(3, [][]int32{{0, 1, 2}})
	got := mustAnalyse(t, m, plate{}).Stats()
	want := Stats{Nodes: 3, Fronts: 1, MaxFront: 18, NNZ: 171, Stored: 8 * (12 + 18 + 18), Flops: 1944}
	if got != want {
		t.Errorf("got %+v, want %+v (18·19/2; panels of 12, 18 and 18 columns; 18³/3)", got, want)
	}
}
