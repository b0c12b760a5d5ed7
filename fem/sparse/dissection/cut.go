package dissection

import (
	"cmp"
	"math"
	"slices"
)

// cut returns the side of every node of a connected graph: left, right or
// separator, without an edge from left to right; nil if there is no cut with two
// sizeable sides. Candidates are straight lines in plan and, in a large graph,
// lines of equal distance along edges, which follow the density of the mesh; the
// distance from the rim serves where coordinates are missing, coincide or mislead.
// The next call overwrites the result.
func (c *cutter) cut(g *Graph) []int32 {
	c.Graph, c.lines = g, c.lines[:0]
	c.straightLines()
	if g.Len() >= max(walkNodes, c.whole/walkShare) {
		c.walkLines()
	}
	size := c.bestSides(math.Inf(1))
	if !(size < goodCut*math.Sqrt(float64(g.Len()))) {
		c.lines = c.lines[:0]
		c.levelLine()
		size = c.bestSides(size)
	}
	if math.IsInf(size, 1) {
		return nil
	}
	return c.sides[0]
}

// bestSides turns the best candidates into separators, keeps the best of these in
// sides[0] if it is better than the score given, and returns its score.
func (c *cutter) bestSides(best float64) float64 {
	slices.SortStableFunc(c.lines, func(a, b cutLine) int { return cmp.Compare(a.score, b.score) })
	trials := cutTrials
	if c.Len() < smallCut {
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
		if c.Len() >= refineNodes {
			s = c.refine(c.Graph, side, n)
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
	side := resized(c.sides[1], c.Len())
	c.sides[1] = side
	for i := range side {
		side[i] = leftSide
		if *line.bins[i].lane(line.lane) > line.at {
			side[i] = rightSide
		}
	}
	if len(c.place) < c.Len() {
		c.place = make([]int32, c.Len())
	}
	x := &c.across
	x.ptr, x.adj = x.ptr[:0], x.adj[:0]
	left, right := c.ends[0][:0], c.ends[1][:0]
	for i, s := range side {
		if s != leftSide {
			continue
		}
		before := len(x.adj)
		for _, j := range c.Neighbours(int32(i)) {
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
