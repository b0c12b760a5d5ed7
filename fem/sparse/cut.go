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
	cutDirections = 8   // straight cuts are tried every 22.5 degrees
	cutTrials     = 3   // so many of the best are cut out in full
	minShare      = 0.1 // the smaller side holds at least this share of the nodes
	goodCut       = 3   // a cut shorter than this times sqrt(nodes) needs no rival
)

// cutLine is a candidate: nodes whose bin is at most at lie on the left.
type cutLine struct {
	bins  []int32
	at    int32
	score float64 // smaller is better
}

// cut returns the side of every node of a connected graph: left, right or
// separator, without an edge from left to right; nil if there is no cut with two
// sizeable sides. Candidates are straight lines in plan; the distance along
// edges serves where coordinates are missing, coincide or mislead.
func (g *graph) cut() []int32 {
	var lines []cutLine
	if g.xy != nil {
		for d := range cutDirections {
			s, c := math.Sincos(math.Pi * float64(d) / cutDirections)
			if bins, count := g.project(c, s); count > 1 {
				lines = append(lines, g.bestLine(bins, count))
			}
		}
	}
	slices.SortStableFunc(lines, func(a, b cutLine) int { return cmp.Compare(a.score, b.score) })
	best, size := g.bestSides(lines[:min(len(lines), cutTrials)])
	if best != nil && size < goodCut*math.Sqrt(float64(g.len())) {
		return best
	}
	bins := g.levels()
	line := g.bestLine(bins, int(slices.Max(bins))+1)
	if side, s := g.bestSides([]cutLine{line}); side != nil && s < size {
		return side
	}
	return best
}

// project sorts the nodes into bins along the direction (c, s).
func (g *graph) project(c, s float64) (bins []int32, count int) {
	t := make([]float64, g.len())
	lo, hi := math.Inf(1), math.Inf(-1)
	for i, p := range g.xy {
		t[i] = c*p[0] + s*p[1]
		lo, hi = min(lo, t[i]), max(hi, t[i])
	}
	count = min(max(int(4*math.Sqrt(float64(g.len()))), 16), 512)
	scale := float64(count) / (hi - lo)
	if !(hi > lo) || math.IsInf(hi-lo, 0) || math.IsInf(scale, 0) {
		return nil, 0
	}
	bins = make([]int32, g.len())
	for i, v := range t {
		bins[i] = min(int32((v-lo)*scale), int32(count-1))
	}
	return bins, count
}

// bestLine finds the place of the cut between bins. For each place it counts the
// nodes on either side that touch the other; the smaller count bounds the
// separator from above.
func (g *graph) bestLine(bins []int32, count int) cutLine {
	size := make([]int32, 3*count)
	left, right := size[count:2*count], size[2*count:]
	for i, b := range bins {
		size[b]++
		lo, hi := b, b
		for _, j := range g.neighbours(int32(i)) {
			lo, hi = min(lo, bins[j]), max(hi, bins[j])
		}
		left[b]++
		left[hi]--
		right[lo]++
		right[b]--
	}
	line := cutLine{bins: bins, score: math.Inf(1)}
	var nl, sl, sr int32
	for b := range int32(count - 1) {
		nl += size[b]
		sl += left[b]
		sr += right[b]
		if s := score(min(sl, sr), nl, int32(g.len())-nl); s < line.score {
			line.at, line.score = b, s
		}
	}
	return line
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

// bestSides turns each line into a separator and returns the best.
func (g *graph) bestSides(lines []cutLine) (best []int32, bestScore float64) {
	bestScore = math.Inf(1)
	for _, line := range lines {
		if math.IsInf(line.score, 1) {
			continue
		}
		side := g.separate(line)
		var n [3]int32
		for _, s := range side {
			n[s]++
		}
		if n[leftSide] == 0 || n[rightSide] == 0 {
			continue
		}
		if s := score(n[separator], n[leftSide], n[rightSide]); s < bestScore {
			best, bestScore = side, s
		}
	}
	return best, bestScore
}

// separate makes the smallest vertex cover of the edges across the line the
// separator.
func (g *graph) separate(line cutLine) []int32 {
	side := make([]int32, g.len())
	for i, b := range line.bins {
		if b > line.at {
			side[i] = rightSide
		}
	}
	var across bipartite
	var lnode, rnode []int32
	place := make([]int32, g.len())
	for i := range side {
		if side[i] != leftSide {
			continue
		}
		before := len(across.adj)
		for _, j := range g.neighbours(int32(i)) {
			if side[j] != rightSide {
				continue
			}
			if place[j] == 0 {
				rnode = append(rnode, j)
				place[j] = int32(len(rnode))
			}
			across.adj = append(across.adj, place[j]-1)
		}
		if len(across.adj) > before {
			across.ptr = append(across.ptr, int32(before))
			lnode = append(lnode, int32(i))
		}
	}
	across.ptr = append(across.ptr, int32(len(across.adj)))
	across.nl, across.nr = len(lnode), len(rnode)
	coverL, coverR := across.minCover()
	markCover(side, lnode, coverL)
	markCover(side, rnode, coverR)
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
