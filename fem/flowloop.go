package fem

// halfEdge is half an edge of a triangle: from corner k to the edge's middle,
// or, late, from there to corner k+1.
type halfEdge struct {
	tri  int32
	k    int
	late bool
}

// piece returns the corner piece of its triangle that lies along the half
// edge, and which side of that piece it is.
func (h halfEdge) piece() (piece, side int) {
	if h.late {
		return (h.k + 1) % 3, 2
	}
	return h.k, 0
}

// flowLoop is the edge of a patch of triangles about nodes that give or take:
// half edges of the triangles just inside, the patch on their left. Chi rises
// along it by what flows out.
type flowLoop struct {
	halves []halfEdge
	chi    []float64 // at the start of each and the end of the last, N
}

// net is what flows out in all, N.
func (l *flowLoop) net() float64 { return l.chi[len(l.halves)] }

// gate is a place on a loop: a half edge and how far along it, 0 to 1.
type gate struct {
	loop  *flowLoop
	index int
	along float64
}

// level is chi at the gate, N.
func (g gate) level() float64 {
	a, b := g.loop.chi[g.index], g.loop.chi[g.index+1]
	return a + g.along*(b-a)
}

// inPatch tells whether a triangle has a node that gives or takes.
func (f *Flow) inPatch(t int32) bool {
	v := f.plan.tris[t]
	return f.active[v[0]] || f.active[v[1]] || f.active[v[2]]
}

// leaves tells whether edge k of a patch's triangle is on the patch's edge.
func (f *Flow) leaves(t int32, k int) bool {
	o := f.plan.beyond[t][k]
	return o < 0 || !f.inPatch(o)
}

// findLoops walks the edges of all patches.
func (f *Flow) findLoops() {
	f.gates = map[halfEdge]gate{}
	for t := range f.plan.tris {
		for k := range 3 {
			h := halfEdge{tri: int32(t), k: k}
			if _, done := f.gates[h]; !done && f.inPatch(h.tri) && f.leaves(h.tri, k) {
				f.loops = append(f.loops, f.walkLoop(h))
			}
		}
	}
}

// walkLoop follows a patch's edge from the half edge h round to it.
func (f *Flow) walkLoop(h halfEdge) *flowLoop {
	l := &flowLoop{chi: []float64{0}}
	for t, k := h.tri, h.k; ; {
		for _, late := range [2]bool{false, true} {
			one := halfEdge{t, k, late}
			f.gates[one] = gate{loop: l, index: len(l.halves)}
			l.halves = append(l.halves, one)
			l.chi = append(l.chi, l.chi[len(l.chi)-1]+f.through(one))
		}
		if t, k = f.nextLeaving(t, k); t == h.tri && k == h.k {
			return l
		}
	}
}

// nextLeaving turns about the end of edge k of triangle t, inside the patch,
// to the next edge that leaves it.
func (f *Flow) nextLeaving(t int32, k int) (int32, int) {
	k = (k + 1) % 3
	n := f.plan.tris[t][k]
	for !f.leaves(t, k) {
		t = f.plan.beyond[t][k]
		k = f.plan.cornerOf(t, n)
	}
	return t, k
}

// through is what flows out of a patch through a half edge of it, N.
func (f *Flow) through(h halfEdge) float64 {
	o := f.across(h)
	if o.tri < 0 {
		before, after := f.rimShares(f.plan.tris[h.tri][(h.k+b2i(h.late))%3])
		if h.late {
			return after
		}
		return before
	}
	// The half edge of the triangle beyond runs the other way.
	a, b := f.knots(o)
	return f.knotValue(o.tri, a) - f.knotValue(o.tri, b)
}

// across is the same half edge as seen from the triangle beyond; its tri is -1
// at the edge of the plate.
func (f *Flow) across(h halfEdge) halfEdge {
	o := f.plan.beyond[h.tri][h.k]
	if o < 0 {
		return halfEdge{tri: -1}
	}
	return halfEdge{tri: o, k: f.plan.cornerOf(o, f.plan.tris[h.tri][(h.k+1)%3]), late: !h.late}
}

// knots returns the knots at the start and end of a half edge.
func (f *Flow) knots(h halfEdge) (from, to int) {
	if h.late {
		return middles + h.k, (h.k + 1) % 3
	}
	return h.k, middles + h.k
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}

// back returns where a line that enters a patch at the gate comes out again:
// the next place of the loop where chi has risen to the same level, so that
// lines do not cross inside. ok is false if the patch keeps the line.
func (g gate) back() (out gate, ok bool) {
	l := g.loop
	n := len(l.halves)
	level := g.level()
	for j := 1; j < n; j++ {
		i := (g.index + j) % n
		if i == 0 {
			level -= l.net()
		}
		if b := l.chi[i+1]; b > level {
			a := l.chi[i]
			return gate{loop: l, index: i, along: max(0, (level-a)/(b-a))}, true
		}
	}
	return gate{}, false
}

// seeds returns the m places of a loop where lines begin: those where chi
// first rises to the levels (k + 1/2) net/m. Where it falls and rises again,
// lines pass through the patch.
func (l *flowLoop) seeds(m int) []gate {
	n := len(l.halves)
	top := 0
	for i := 1; i < n; i++ {
		if l.chi[i] > l.chi[top] {
			top = i
		}
	}
	var out []gate
	step := l.net() / float64(m)
	high := l.chi[top] - l.net() // the highest level of the round before
	for j := top; j < top+n; j++ {
		i := j % n
		shift := l.net() * float64(j/n-1)
		a, b := l.chi[i]+shift, l.chi[i+1]+shift
		for b > high && len(out) < m {
			next := l.chi[top] - l.net() + (float64(len(out))+0.5)*step
			if next > b {
				break
			}
			out = append(out, gate{loop: l, index: i, along: min(1, max(0, (next-a)/(b-a)))})
			high = next
		}
		high = max(high, b)
	}
	return out
}
