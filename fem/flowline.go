package fem

import (
	"fmt"
	"math"
)

// FlowLine is one line of force, from where the load presses to where it is
// held.
type FlowLine struct {
	Points [][2]float64 // mm
	Force  float64      // carried between it and each neighbour, N
	Inside bool         // ends on a support within the plate, else at its edge
}

// Lines draws about n lines of equal force; where loads press on several
// separate patches, each patch has a whole number of lines, whose forces
// differ a little from one patch to the other. The force stands half to each
// side of a line.
func (f *Flow) Lines(n int) ([]FlowLine, error) {
	var out []FlowLine
	for _, l := range f.loops {
		m := int(math.Round(l.net() * float64(n) / f.Total))
		if m < 1 {
			continue
		}
		for _, g := range l.seeds(m) {
			line, err := f.trace(g)
			if err != nil {
				return nil, err
			}
			line.Force = l.net() / float64(m)
			out = append(out, line)
		}
	}
	return out, nil
}

// tracer walks along a level line of the stream function.
type tracer struct {
	f      *Flow
	tri    int32
	piece  int
	side   int     // of the piece, where the line came in
	chi    float64 // its level in the triangle's own count, N
	points [][2]float64
	steps  int
}

// trace follows a line downstream from a gate, with its beginning inside the
// patch.
func (f *Flow) trace(g gate) (FlowLine, error) {
	w := &tracer{f: f}
	w.upstream(g)
	for {
		h := g.loop.halves[g.index]
		if !w.enter(f.across(h), 1-g.along) {
			return FlowLine{Points: w.points}, nil // the patch lies at the plate's edge
		}
		in, at, err := w.run()
		if err != nil || !in {
			return FlowLine{Points: w.points}, err
		}
		var through bool
		if g, through = at.back(); !through {
			w.enter(at.loop.halves[at.index], at.along)
			w.inside()
			return FlowLine{Points: w.points, Inside: true}, nil
		}
		w.add(f.gatePlace(g))
	}
}

// gatePlace is where a gate lies, mm.
func (f *Flow) gatePlace(g gate) [2]float64 {
	h := g.loop.halves[g.index]
	a, b := f.knots(h)
	return between(f.knotPlace(h.tri, a), f.knotPlace(h.tri, b), g.along)
}

// upstream begins the line inside the patch, where a loaded node's own corner
// ends, and brings it to the gate.
func (w *tracer) upstream(g gate) {
	h := g.loop.halves[g.index]
	w.enter(h, g.along)
	w.inside()
	for i, j := 0, len(w.points)-1; i < j; i, j = i+1, j-1 {
		w.points[i], w.points[j] = w.points[j], w.points[i]
	}
	w.add(w.f.gatePlace(g))
}

// enter puts the tracer into the triangle of a half edge, at the share along
// of it. It is false beyond the plate's edge.
func (w *tracer) enter(h halfEdge, along float64) bool {
	if h.tri < 0 {
		return false
	}
	w.tri = h.tri
	w.piece, w.side = h.piece()
	a, b := w.f.knots(h)
	va, vb := w.f.knotValue(h.tri, a), w.f.knotValue(h.tri, b)
	w.chi = va + along*(vb-va)
	return true
}

// blocked tells whether the tracer stands in the corner of a node that gives
// or takes, where there is no stream function.
func (w *tracer) blocked() bool {
	return w.piece != inner && w.f.active[w.f.plan.tris[w.tri][w.piece]]
}

// inside walks through a patch's triangles to such a corner.
func (w *tracer) inside() {
	for range 200 {
		if w.blocked() {
			return
		}
		if h, out := w.step(); out {
			o := w.f.across(h)
			if o.tri < 0 || !w.f.inPatch(o.tri) {
				return
			}
			w.change(o)
		}
	}
}

// run walks until the line leaves the plate or enters a patch, in is true, at
// the gate at.
func (w *tracer) run() (in bool, at gate, err error) {
	for ; w.steps < 40*len(w.f.plan.tris); w.steps++ {
		h, out := w.step()
		if !out {
			continue
		}
		o := w.f.across(h)
		if o.tri < 0 {
			return false, at, nil
		}
		if g, ok := w.f.gates[o]; ok {
			w.change(o)
			a, b := w.f.knots(o)
			g.along = share(w.f.knotValue(o.tri, a), w.f.knotValue(o.tri, b), w.chi)
			return true, g, nil
		}
		w.change(o)
	}
	return false, at, fmt.Errorf("load flow: a line of force from (%.1f, %.1f) does not end", w.points[0][0], w.points[0][1])
}

// change moves over a half edge into the triangle beyond, whose chi counts
// from elsewhere; both know the edge's middle.
func (w *tracer) change(o halfEdge) {
	here := w.f.across(o)
	w.chi += w.f.knotValue(o.tri, middles+o.k) - w.f.knotValue(here.tri, middles+here.k)
	w.tri = o.tri
	w.piece, w.side = o.piece()
}

// step crosses one piece. If the line leaves the triangle there, out is true
// and h the half edge; else the tracer stands in the next piece.
func (w *tracer) step() (h halfEdge, out bool) {
	k := pieceKnots(w.piece)
	var v [3]float64
	for i := range v {
		v[i] = w.f.knotValue(w.tri, k[(w.side+i)%3])
	}
	next := (w.side + 1) % 3
	if (v[2] > w.chi) != (v[0] > w.chi) {
		next = (w.side + 2) % 3
	}
	a, b := k[next], k[(next+1)%3]
	s := share(w.f.knotValue(w.tri, a), w.f.knotValue(w.tri, b), w.chi)
	w.add(between(w.f.knotPlace(w.tri, a), w.f.knotPlace(w.tri, b), s))
	switch {
	case w.piece == inner:
		w.piece, w.side = (next+1)%3, 1
	case next == 1:
		w.piece, w.side = inner, (w.piece+2)%3
	case next == 0:
		return halfEdge{tri: w.tri, k: w.piece}, true
	default:
		return halfEdge{tri: w.tri, k: (w.piece + 2) % 3, late: true}, true
	}
	return h, false
}

// add appends a point.
func (w *tracer) add(p [2]float64) { w.points = append(w.points, p) }

// share is where the level c lies between a and b, 0 to 1.
func share(a, b, c float64) float64 {
	if a == b {
		return 0.5
	}
	return min(1, max(0, (c-a)/(b-a)))
}

func between(p, q [2]float64, s float64) [2]float64 {
	return [2]float64{p[0] + s*(q[0]-p[0]), p[1] + s*(q[1]-p[1])}
}
