package etree

import (
	"math/rand/v2"
	"slices"
	"testing"

	"archload/fem/sparse/dissection"
)

// grid is the graph of a grid of squares, of which nothing but the sides couples.
func grid(nx, ny int32) *dissection.Graph {
	ptr, col := []int32{0}, []int32(nil)
	for i := range nx * ny {
		if i >= nx {
			col = append(col, i-nx)
		}
		if i%nx > 0 {
			col = append(col, i-1)
		}
		col = append(col, i)
		ptr = append(ptr, int32(len(col)))
	}
	return dissection.NewGraph(int(nx*ny), ptr, col)
}

// TestSupernodes eliminates a grid node by node in random orders: every supernode has the
// structure of its first column, its parent holds the first row below, and merging leaves
// columns with an ancestor.
func TestSupernodes(t *testing.T) {
	g := grid(7, 6)
	rng := rand.New(rand.NewPCG(4, 4))
	for range 20 {
		order := make([]int32, g.Len())
		for i, v := range rng.Perm(len(order)) {
			order[i] = int32(v)
		}
		nodes, at := Supernodes(g, order, 3)
		if end := at[len(at)-3:]; !slices.Equal(end, order[len(order)-3:]) {
			t.Fatalf("the order ends with %v, want %v", end, order[len(order)-3:])
		}
		below := eliminated(g, at)
		holder := Merge(nodes, len(nodes)-1, 6)
		next := int32(0)
		for k, s := range nodes {
			if s.First != next {
				t.Fatalf("supernode %d begins at %d, want %d", k, s.First, next)
			}
			next = s.End
			if k == len(nodes)-1 {
				break // the root front is dense by definition
			}
			want := slices.DeleteFunc(below[s.First], func(p int32) bool { return p < s.End })
			if got := slices.Sorted(slices.Values(s.Rows)); !slices.Equal(got, want) {
				t.Fatalf("supernode %d has the rows %v, want %v", k, got, want)
			}
			if len(want) > 0 && (nodes[s.Parent].First > want[0] || nodes[s.Parent].End <= want[0]) {
				t.Fatalf("supernode %d: its parent does not hold row %d", k, want[0])
			}
			up := int32(k)
			for up >= 0 && up != holder[k] {
				up = nodes[up].Parent
			}
			if up < 0 {
				t.Fatalf("supernode %d is held by %d, which is not above it", k, holder[k])
			}
		}
	}
}

// eliminated returns the rows below each place of the factor, ascending.
func eliminated(g *dissection.Graph, at []int32) [][]int32 {
	place := make([]int32, len(at))
	for p, v := range at {
		place[v] = int32(p)
	}
	out := make([][]int32, len(at))
	for p, v := range at {
		for _, w := range g.Neighbours(v) {
			if q := place[w]; q > int32(p) {
				out[p] = append(out[p], q)
			}
		}
	}
	for p := range out {
		slices.Sort(out[p])
		out[p] = slices.Compact(out[p])
		if len(out[p]) > 1 {
			first := out[p][0]
			out[first] = append(out[first], out[p][1:]...)
		}
	}
	return out
}
