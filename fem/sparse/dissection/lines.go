package dissection

import (
	"cmp"
	"math"
	"slices"
)

const (
	sampleNodes  = 250 // a sample has at least so many nodes
	sampleStride = 2   // and takes at most every second
	countedLines = 4   // so many of the best by sample are counted in full
)

// straightLines adds the best straight lines in plan to the candidates. Which
// directions are worth the count, a sample of the nodes shows in a large graph, and
// in a small one the extent: where that is great, cuts are short.
func (c *cutter) straightLines() {
	if c.xy == nil {
		return
	}
	var spans [cutDirections]extent
	for d := range spans {
		spans[d] = c.extent(d)
	}
	if stride := min(c.Len()/sampleNodes, sampleStride); stride > 1 {
		for d := 0; d < cutDirections; d += countedLines {
			c.straight(spans[d:d+countedLines], stride)
		}
		for i := range spans {
			spans[i].score = c.lines[i].score
		}
		c.lines = c.lines[:0]
	}
	slices.SortStableFunc(spans[:], func(a, b extent) int {
		return cmp.Or(cmp.Compare(a.score, b.score), cmp.Compare(b.hi-b.lo, a.hi-a.lo))
	})
	c.straight(spans[:countedLines], 1)
}

// extent is the range of the graph along a direction (x, y) in plan, and the score
// of its best line if it is known.
type extent struct{ x, y, lo, hi, score float64 }

// extent measures along direction d.
func (c *cutter) extent(d int) extent {
	y, x := math.Sincos(math.Pi * float64(d) / cutDirections)
	e := extent{x: x, y: y, lo: math.Inf(1), hi: math.Inf(-1)}
	for _, p := range c.xy {
		t := x*p[0] + y*p[1]
		e.lo, e.hi = min(e.lo, t), max(e.hi, t)
	}
	return e
}

// straight adds the best line of each of four directions.
func (c *cutter) straight(spans []extent, stride int) {
	c.bins[0] = resized(c.bins[0], c.Len())
	bins := c.bins[0]
	count := min(max(int(4*math.Sqrt(float64(c.Len()))), 16), 512)
	for k, e := range spans {
		scale := float64(count) / (e.hi - e.lo)
		if !(e.hi > e.lo) || math.IsInf(e.hi-e.lo, 0) || math.IsInf(scale, 0) {
			scale = 0 // all nodes coincide: there will be no line
		}
		for i, p := range c.xy {
			*bins[i].lane(k) = min(int32((e.x*p[0]+e.y*p[1]-e.lo)*scale), int32(count-1))
		}
	}
	c.bestLines(bins, count, stride)
}

// bestLines finds the best place of the cut between bins in each of four lanes. For
// each place it counts, among every stride-th node, those on either side that
// touch the other; the smaller count bounds the separator from above.
func (c *cutter) bestLines(bins []quad, count, stride int) {
	c.tallies = resized(c.tallies, 4*count)
	clear(c.tallies)
	t0, t1, t2, t3 := c.tallies[:count], c.tallies[count:2*count], c.tallies[2*count:3*count], c.tallies[3*count:]
	var n int32
	ptr, adj := c.ptr, c.adj
	for i := 0; i < len(bins); i += stride {
		b := bins[i]
		lo, hi := b, b
		for _, j := range adj[ptr[i]:ptr[i+1]] {
			q := bins[j]
			lo.a, hi.a = min(lo.a, q.a), max(hi.a, q.a)
			lo.b, hi.b = min(lo.b, q.b), max(hi.b, q.b)
			lo.c, hi.c = min(lo.c, q.c), max(hi.c, q.c)
			lo.d, hi.d = min(lo.d, q.d), max(hi.d, q.d)
		}
		count1(t0, b.a, lo.a, hi.a)
		count1(t1, b.b, lo.b, hi.b)
		count1(t2, b.c, lo.c, hi.c)
		count1(t3, b.d, lo.d, hi.d)
		n++
	}
	for k, t := range [][]tally{t0, t1, t2, t3} {
		line := cutLine{bins: bins, lane: k, score: math.Inf(1)}
		line.at, line.score = bestPlace(t, n)
		c.lines = append(c.lines, line)
	}
}

// count1 enters a node in bin b whose neighbours reach from lo to hi.
func count1(t []tally, b, lo, hi int32) {
	t[b].size++
	t[b].left++
	t[hi].left--
	t[lo].right++
	t[b].right--
}

// bestPlace returns the last bin on the left of the best line and its score.
func bestPlace(t []tally, n int32) (at int32, best float64) {
	best = math.Inf(1)
	var nl, sl, sr int32
	for b := range t[:len(t)-1] {
		nl += t[b].size
		sl += t[b].left
		sr += t[b].right
		if s := score(min(sl, sr), nl, n-nl); s < best {
			at, best = int32(b), s
		}
	}
	return at, best
}

// walkLines adds two lines of equal distance from two nodes: from two at opposite
// ends of the graph, and from two between them.
func (c *cutter) walkLines() {
	n := c.Len()
	for i := range c.walks {
		c.walks[i] = resized(c.walks[i], n)
	}
	a, b, d, e := c.walks[0], c.walks[1], c.walks[2], c.walks[3]
	c.walk(farthest(c.walk(0, a)), a)
	c.walk(farthest(a), b)
	for i := range e {
		e[i] = min(a[i], b[i])
	}
	c.walk(farthest(e), d)
	c.walk(farthest(d), e)
	c.bins[1] = resized(c.bins[1], n)
	bins := c.bins[1]
	lo, hi := quad{}, quad{}
	for i := range bins {
		bins[i] = quad{a: a[i] - b[i], b: d[i] - e[i]}
		lo.a, hi.a = min(lo.a, bins[i].a), max(hi.a, bins[i].a)
		lo.b, hi.b = min(lo.b, bins[i].b), max(hi.b, bins[i].b)
	}
	for i := range bins {
		bins[i].a -= lo.a
		bins[i].b -= lo.b
	}
	c.bestLines(bins, int(max(hi.a-lo.a, hi.b-lo.b))+1, 1)
}

// levelLine adds the best line of equal distance from one node at the rim of the
// graph.
func (c *cutter) levelLine() {
	dist := resized(c.walks[0], c.Len())
	c.walks[0] = dist
	c.walk(farthest(c.walk(0, dist)), dist)
	c.walk(farthest(dist), dist)
	c.bins[1] = resized(c.bins[1], c.Len())
	for i, d := range dist {
		c.bins[1][i] = quad{a: d}
	}
	c.bestLines(c.bins[1], int(slices.Max(dist))+1, 1)
}

// walk sets dist to the number of edges from a node and returns it.
func (c *cutter) walk(from int32, dist []int32) []int32 {
	for i := range dist {
		dist[i] = -1
	}
	dist[from] = 0
	c.queue = resized(c.queue, len(dist))
	queue, ptr, adj := c.queue, c.ptr, c.adj
	queue[0] = from
	for h, n := 0, 1; h < n; h++ {
		u := queue[h]
		next := dist[u] + 1
		for _, v := range adj[ptr[u]:ptr[u+1]] {
			if dist[v] < 0 {
				dist[v] = next
				queue[n] = v
				n++
			}
		}
	}
	return dist
}

// farthest returns the first node with the greatest distance.
func farthest(dist []int32) int32 {
	far := 0
	for i, d := range dist {
		if d > dist[far] {
			far = i
		}
	}
	return int32(far)
}
