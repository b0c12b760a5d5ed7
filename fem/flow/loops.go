package flow

import "math"

// Nodes that give or take inside the plate lie in patches: loaded nodes that
// hang together, and nodes of inner supports that do. A patch covers the corner
// pieces of its nodes, and the piece between the middles of the edges where two
// corners of a triangle are its own. There is no stream function inside;
// along its edge there is.

// net is what flows out in all, N.
func (l *loop) net() float64 { return l.chi[len(l.borders)] }

// level is chi at the gate, N.
func (g gate) level() float64 {
	a, b := g.loop.chi[g.index], g.loop.chi[g.index+1]
	return a + g.along*(b-a)
}

// findPatches numbers the patches. A node belongs to a support if that takes
// more than the load gives.
func (f *Flow) findPatches() {
	kind := make([]int8, len(f.plan.node))
	f.patch = make([]int32, len(f.plan.node))
	for n, m := range f.plan.node {
		load, held := math.Abs(f.Load[m]), math.Abs(f.Support[m])
		f.patch[n] = noPatch
		switch {
		case load+held <= leastFlow*f.Total:
		case held > load:
			kind[n] = 2
		default:
			kind[n] = 1
		}
	}
	count := int32(0)
	for n := range f.plan.node {
		if kind[n] != 0 && f.patch[n] == noPatch {
			f.growPatch(int32(n), count, kind)
			count++
		}
	}
}

// growPatch gives number to node n and all of its kind that hang together with
// it.
func (f *Flow) growPatch(n, number int32, kind []int8) {
	f.patch[n] = number
	for open := []int32{n}; len(open) > 0; {
		i := open[len(open)-1]
		open = open[:len(open)-1]
		for _, c := range f.plan.fan[i] {
			j := f.plan.tris[c.tri][(c.k+1)%3]
			k := f.plan.tris[c.tri][(c.k+2)%3]
			for _, m := range [2]int32{j, k} {
				if kind[m] == kind[n] && f.patch[m] == noPatch {
					f.patch[m] = number
					open = append(open, m)
				}
			}
		}
	}
}

// patchOf is the patch that covers a piece of triangle t.
func (f *Flow) patchOf(t int32, piece int) int32 {
	v := f.plan.tris[t]
	if piece != inner {
		return f.patch[v[piece]]
	}
	for k := range 3 {
		if q := f.patch[v[k]]; q != noPatch && q == f.patch[v[(k+1)%3]] {
			return q
		}
	}
	return noPatch
}

// findLoops walks the edges of all patches.
func (f *Flow) findLoops() {
	f.gates = map[border]gate{}
	for t := range f.plan.tris {
		for k := range 3 {
			at, mid := f.patchOf(int32(t), k), f.patchOf(int32(t), inner)
			if at == mid {
				continue
			}
			if at != noPatch {
				f.walkLoop(border{int32(t), k, aboutCorner})
			}
			if mid != noPatch {
				f.walkLoop(border{int32(t), k, besideOther})
			}
		}
	}
}

// walkLoop follows a patch's edge from b round to it, unless that was done.
func (f *Flow) walkLoop(b border) {
	if _, done := f.gates[b]; done {
		return
	}
	l := &loop{chi: []float64{0}}
	for at := b; ; {
		f.gates[at] = gate{loop: l, index: len(l.borders)}
		l.borders = append(l.borders, at)
		l.chi = append(l.chi, l.chi[len(l.chi)-1]+f.through(at))
		if at = f.nextBorder(at); at == b {
			break
		}
	}
	f.loops = append(f.loops, l)
}

// nextBorder is the border that begins where b ends.
func (f *Flow) nextBorder(b border) border {
	switch b.kind {
	case aboutCorner: // ends on the edge that comes into corner k
		return f.beyondEdge(b.tri, (b.k+2)%3)
	case besideOther: // ends on the edge that leaves corner k
		return f.beyondEdge(b.tri, b.k)
	case rimLate:
		c := f.plan.fan[f.plan.tris[b.tri][(b.k+1)%3]][0]
		return border{c.tri, c.k, rimEarly}
	}
	v := f.plan.tris[b.tri]
	own := f.patch[v[b.k]]
	if f.patch[v[(b.k+1)%3]] == own {
		return border{b.tri, b.k, rimLate}
	}
	return f.borderIn(b.tri, b.k, (b.k+1)%3)
}

// beyondEdge is the border that begins in the middle of edge k of triangle t,
// whose one end is the patch's, in the triangle beyond or along the plate's
// edge. It is an edge that leads to the patch's node, seen from t.
func (f *Flow) beyondEdge(t int32, k int) border {
	v := f.plan.tris[t]
	o := f.plan.beyond[t][k]
	if o < 0 {
		return border{t, k, rimLate}
	}
	own, other := v[(k+1)%3], v[k]
	return f.borderIn(o, f.plan.cornerOf(o, own), f.plan.cornerOf(o, other))
}

// borderIn is the border in triangle t that begins between a corner of the
// patch and one that is not.
func (f *Flow) borderIn(t int32, own, other int) border {
	v := f.plan.tris[t]
	if f.patch[v[3-own-other]] == f.patch[v[own]] {
		return border{t, other, besideOther}
	}
	return border{t, own, aboutCorner}
}

// knots returns the knots at the start and end of a border.
func (b border) knots() (from, to int) {
	switch b.kind {
	case aboutCorner:
		return middles + b.k, middles + (b.k+2)%3
	case besideOther:
		return middles + (b.k+2)%3, middles + b.k
	case rimEarly:
		return b.k, middles + b.k
	}
	return middles + b.k, (b.k + 1) % 3
}

// through is what flows out of a patch through a border, N.
func (f *Flow) through(b border) float64 {
	switch b.kind {
	case rimEarly:
		before, _ := f.rimShares(f.plan.tris[b.tri][b.k])
		return before
	case rimLate:
		_, after := f.rimShares(f.plan.tris[b.tri][(b.k+1)%3])
		return after
	}
	from, to := b.knots()
	return f.knotValue(b.tri, to) - f.knotValue(b.tri, from)
}

// back returns where a line that enters a patch at the gate comes out again:
// the next place of the loop where chi has risen to the same level, so that
// lines do not cross inside. ok is false if the patch keeps the line.
func (g gate) back() (out gate, ok bool) {
	l := g.loop
	n := len(l.borders)
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
// first rises to the levels (k + 1/2) net/m above its highest of the round
// before. Where it falls and rises again, lines pass through the patch.
func (l *loop) seeds(m int) []gate {
	n := len(l.borders)
	top := 0
	for i := 1; i < n; i++ {
		if l.chi[i] > l.chi[top] {
			top = i
		}
	}
	var out []gate
	step := l.net() / float64(m)
	next := l.chi[top] - l.net() + step/2
	for j := top; j < top+n; j++ {
		i := j % n
		shift := l.net() * float64(j/n-1)
		a, b := l.chi[i]+shift, l.chi[i+1]+shift
		for ; next < b && len(out) < m; next = l.chi[top] - l.net() + (float64(len(out))+0.5)*step {
			out = append(out, gate{loop: l, index: i, along: min(1, max(0, (next-a)/(b-a)))})
		}
	}
	return out
}
