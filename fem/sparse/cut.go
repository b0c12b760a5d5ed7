package sparse

import (
	"cmp"
	"math"
	"slices"
)

// Sides of a cut.
const (
	leftSide  = 0
	rightSide = 1
	separator = 2
)

const (
	cutDirections = 8    // straight cuts are tried every 22.5 degrees
	cutTrials     = 3    // so many of the best are cut out in full, one less in a small graph
	smallCut      = 400  // nodes of a small graph
	minShare      = 0.1  // the smaller side holds at least this share of the nodes
	goodCut       = 3    // a cut shorter than this times sqrt(nodes) needs no rival
	walkShare     = 3    // cuts by distance are among the candidates in a third of the whole or more
	walkNodes     = 1000 // but in no smaller graph
)

// cutter finds cuts. It keeps its work space from one graph to the next.
type cutter struct {
	*graph
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

// cut returns the side of every node of a connected graph: left, right or
// separator, without an edge from left to right; nil if there is no cut with two
// sizeable sides. Candidates are straight lines in plan and, in a large graph,
// lines of equal distance along edges, which follow the density of the mesh; the
// distance from the rim serves where coordinates are missing, coincide or mislead.
// The next call overwrites the result.
func (c *cutter) cut(g *graph) []int32 {
	c.graph, c.lines = g, c.lines[:0]
	c.straightLines()
	if g.len() >= max(walkNodes, c.whole/walkShare) {
		c.walkLines()
	}
	size := c.bestSides(math.Inf(1))
	if !(size < goodCut*math.Sqrt(float64(g.len()))) {
		c.lines = c.lines[:0]
		c.levelLine()
		size = c.bestSides(size)
	}
	if math.IsInf(size, 1) {
		return nil
	}
	return c.sides[0]
}

// score weighs the size of a separator against the balance of the sides: the size
// over the product of the shares, 1 for equal halves.
func score(sep, left, right int32) float64 {
	l, r := float64(left), float64(right)
	n := l + r
	if min(l, r) < minShare*n {
		return math.Inf(1)
	}
	return float64(sep) * n * n / (4 * l * r)
}

// bestSides turns the best candidates into separators, keeps the best of these in
// sides[0] if it is better than the score given, and returns its score.
func (c *cutter) bestSides(best float64) float64 {
	slices.SortStableFunc(c.lines, func(a, b cutLine) int { return cmp.Compare(a.score, b.score) })
	trials := cutTrials
	if c.len() < smallCut {
		trials--
	}
	for _, line := range c.lines[:min(len(c.lines), trials)] {
		if math.IsInf(line.score, 1) {
			continue
		}
		side := c.separate(line)
		var n [3]int32
		for _, s := range side {
			n[s]++
		}
		if n[leftSide] == 0 || n[rightSide] == 0 {
			continue
		}
		s := score(n[separator], n[leftSide], n[rightSide])
		if c.len() >= refineNodes {
			s = c.refine(c.graph, side, n)
		}
		if s < best {
			best = s
			c.sides[0], c.sides[1] = c.sides[1], c.sides[0]
		}
	}
	return best
}

// separate makes the smallest vertex cover of the edges across the line the
// separator, in sides[1].
func (c *cutter) separate(line cutLine) []int32 {
	side := resized(c.sides[1], c.len())
	c.sides[1] = side
	for i := range side {
		side[i] = leftSide
		if *line.bins[i].lane(line.lane) > line.at {
			side[i] = rightSide
		}
	}
	if len(c.place) < c.len() {
		c.place = make([]int32, c.len())
	}
	x := &c.across
	x.ptr, x.adj = x.ptr[:0], x.adj[:0]
	left, right := c.ends[0][:0], c.ends[1][:0]
	for i, s := range side {
		if s != leftSide {
			continue
		}
		before := len(x.adj)
		for _, j := range c.neighbours(int32(i)) {
			if side[j] != rightSide {
				continue
			}
			if c.place[j] == 0 {
				right = append(right, j)
				c.place[j] = int32(len(right))
			}
			x.adj = append(x.adj, c.place[j]-1)
		}
		if len(x.adj) > before {
			x.ptr = append(x.ptr, int32(before))
			left = append(left, int32(i))
		}
	}
	x.ptr = append(x.ptr, int32(len(x.adj)))
	x.nl, x.nr = len(left), len(right)
	for _, j := range right {
		c.place[j] = 0
	}
	c.ends = [2][]int32{left, right}
	coverL, coverR := x.minCover()
	markCover(side, left, coverL)
	markCover(side, right, coverR)
	return side
}

// markCover moves the covered nodes into the separator.
func markCover(side, nodes []int32, cover []bool) {
	for k, i := range nodes {
		if cover[k] {
			side[i] = separator
		}
	}
}
