package dissection

import "slices"

const (
	cutDirections = 8    // straight cuts are tried every 22.5 degrees
	cutTrials     = 3    // so many of the best are cut out in full, one less in a small graph
	smallCut      = 400  // nodes of a small graph
	goodCut       = 3    // a cut shorter than this times sqrt(nodes) needs no rival
	walkShare     = 3    // cuts by distance are among the candidates in a third of the whole or more
	walkNodes     = 1000 // but in no smaller graph
)

// cutter finds cuts. It keeps its work space from one graph to the next.
type cutter struct {
	*Graph
	whole   int // nodes of the graph that all are parts of
	lines   []cutLine
	bins    [2][]quad  // of straight lines and of lines of equal distance
	tallies []tally    // of four lines
	sides   [2][]int32 // best and next
	place   []int32    // zero between calls: of a node among those across a line
	across  bipartite
	ends    [2][]int32 // nodes on either side of a line with a neighbour on the other
	walks   [4][]int32 // distances
	queue   []int32
	refiner
}

// resized returns a slice of n values, which may hold anything, in the memory of s
// if it is large enough.
func resized[T any](s []T, n int) []T { return slices.Grow(s[:0], n)[:n] }

// cutLine is a candidate: nodes whose bin is at most at lie on the left.
type cutLine struct {
	bins  []quad
	lane  int
	at    int32
	score float64 // smaller is better
}

// quad holds a node's bins of four lines, which are counted together.
type quad struct{ a, b, c, d int32 }

// lane returns one of the four.
func (q *quad) lane(k int) *int32 {
	switch k {
	case 0:
		return &q.a
	case 1:
		return &q.b
	case 2:
		return &q.c
	}
	return &q.d
}

// tally counts, at a bin: nodes in it; changes, from here on, of the number of
// nodes on the left that touch the right and the other way round.
type tally struct{ size, left, right int32 }
