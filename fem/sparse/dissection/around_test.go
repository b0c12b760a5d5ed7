package dissection

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// TestAroundNeck: two plates of 6 x 6 nodes hang together by a neck of five. Whatever nodes of one
// plate are to come last, the way to the neck is the shortest rim: one node, the nearest of several.
func TestAroundNeck(t *testing.T) {
	const side, neck = 6, 5
	at := func(plate, i, j int32) int32 { return plate*side*side + side*j + i }
	var edges [][2]int32
	for plate := range int32(2) {
		for j := range int32(side) {
			for i := range int32(side) {
				if i > 0 {
					edges = append(edges, [2]int32{at(plate, i-1, j), at(plate, i, j)})
				}
				if j > 0 {
					edges = append(edges, [2]int32{at(plate, i, j-1), at(plate, i, j)})
				}
			}
		}
	}
	before := at(0, side-1, 2)
	for k := range int32(neck) {
		edges = append(edges, [2]int32{before, 2*side*side + k})
		before = 2*side*side + k
	}
	edges = append(edges, [2]int32{before, at(1, 0, 2)})
	g := graphOf(2*side*side+neck, edges)
	last := []int32{at(0, 3, 3), at(0, 1, 1), at(0, 3, 1), at(0, 1, 3), at(0, 2, 2), at(0, 4, 4), at(0, 4, 2), at(0, 2, 4), at(0, 3, 2), at(0, 1, 2)}
	got := g.Around(last)
	if !slices.Equal(got[:len(last)], last) {
		t.Errorf("the nodes asked for come as %v, want %v", got[:len(last)], last)
	}
	want := []int32{}
	for v := range int32(side * side) {
		want = append(want, v)
	}
	if sorted := slices.Sorted(slices.Values(got)); !slices.Equal(sorted, want) {
		t.Errorf("around them lie %v, want %v", sorted, want)
	}
	if _, rim := g.Order(nil, got); rim != 1 {
		t.Errorf("the rim has %d nodes, want 1", rim)
	}
}

// TestAround compares with the fewest nodes that part the last ones from those far away, found by
// trying all sets of nodes of small graphs, and expects that the rim of what is taken in is no larger.
func TestAround(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 9))
	widened := 0
	for range 150 {
		const n = 13
		var edges [][2]int32
		for i := range int32(n) {
			for j := range i {
				if i-j <= 3 && rng.IntN(2) == 0 || i == j+1 {
					edges = append(edges, [2]int32{j, i})
				}
			}
		}
		g := graphOf(n, edges)
		last := []int32{int32(rng.IntN(3)), int32(3 + rng.IntN(3))}
		got := g.Around(last)
		_, rim := g.Order(nil, got)
		s := g.newSurrounder(last)
		if s == nil {
			continue
		}
		if want := bruteRim(g, s, last); rim != want {
			t.Fatalf("rim of %d nodes, want %d", rim, want)
		}
		if _, own := g.Order(nil, last); own > rim {
			widened++
		}
	}
	if widened == 0 {
		t.Error("no rim became shorter: nothing was tried")
	}
}

// bruteRim is the size of the smallest set of nodes, near ones all, on every path from the last nodes to far ones.
func bruteRim(g *Graph, s *surrounder, last []int32) int {
	best := g.Len()
	for set := range uint32(1) << g.Len() {
		size := 0
		for v := range g.Len() {
			if set>>v&1 == 1 {
				if size++; s.far[v] == outside {
					size = g.Len()
				}
			}
		}
		if size < best && parts(g, s, last, set) {
			best = size
		}
	}
	return best
}

// parts says whether a set of nodes lies on every path from the last nodes to far ones.
func parts(g *Graph, s *surrounder, last []int32, set uint32) bool {
	seen, stack := set, []int32(nil)
	for _, v := range last {
		if seen>>v&1 == 0 {
			seen |= 1 << v
			stack = append(stack, v)
		}
	}
	for len(stack) > 0 {
		v := stack[len(stack)-1]
		stack = stack[:len(stack)-1]
		if s.far[v] == outside {
			return false
		}
		for _, w := range g.Neighbours(v) {
			if seen>>w&1 == 0 {
				seen |= 1 << w
				stack = append(stack, w)
			}
		}
	}
	return true
}
