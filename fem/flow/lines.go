package flow

import (
	"fmt"
	"math"
)

// Line is one line of force, from where the load presses to where it is
// held.
type Line struct {
	Points [][2]float64 // mm
	Force  float64      // that it stands for, N: half of it to each side
	Inside bool         // ends on a support within the plate, else at its edge
}

// Lines draws about n lines of equal force; where loads press on several
// separate patches, each patch has a whole number of lines, whose forces
// differ a little from one patch to the other.
func (f *Flow) Lines(n int) ([]Line, error) {
	var out []Line
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

// streamline walks along a level line of the stream function.
type streamline struct {
	f      *Flow
	tri    int32
	piece  int
	side   int     // of the piece, where the line came in
	chi    float64 // its level in the triangle's own count, N
	points [][2]float64
}

// trace follows a line downstream from a gate.
func (f *Flow) trace(g gate) (Line, error) {
	w := &streamline{f: f}
	for range 1000 { // patches that a line can pass through
		if !w.leave(g) {
			return Line{Points: w.points}, nil
		}
		in, rim, err := w.run()
		if err != nil || rim {
			return Line{Points: w.points}, err
		}
		var through bool
		if g, through = in.back(); !through {
			w.points = append(w.points, f.innermost(in))
			return Line{Points: w.points, Inside: true}, nil
		}
	}
	return Line{}, w.endless()
}

// innermost is the place of the patch's node beside a gate, mm: half way between
// them if two are as near.
func (f *Flow) innermost(g gate) [2]float64 {
	b := g.loop.borders[g.index]
	if b.kind == besideOther {
		return f.plan.middle(b.tri, (b.k+1)%3)
	}
	return f.knotPlace(b.tri, b.k)
}

func (w *streamline) endless() error {
	return fmt.Errorf("load flow: a line of force from (%.1f, %.1f) does not end", w.points[0][0], w.points[0][1])
}

// leave puts the tracer at a gate, into the piece outside the patch. It is
// false where the patch lies at the plate's edge, which the line has reached.
func (w *streamline) leave(g gate) bool {
	b := g.loop.borders[g.index]
	from, to := b.knots()
	w.tri = b.tri
	p, q := w.f.knotPlace(b.tri, from), w.f.knotPlace(b.tri, to)
	if b.kind == rimEarly || b.kind == rimLate {
		node := (b.k + b2i(b.kind == rimLate)) % 3
		w.points = append(w.points, w.f.knotPlace(b.tri, node), between(p, q, g.along))
		return false
	}
	w.points = append(w.points, between(p, q, g.along))
	w.piece, w.side = inner, (b.k+2)%3
	if b.kind == besideOther {
		w.piece, w.side = b.k, 1
	}
	a, c := w.f.knotValue(b.tri, from), w.f.knotValue(b.tri, to)
	w.chi = a + g.along*(c-a)
	return true
}

// run walks until the line leaves the plate, rim is true, or comes into a
// patch, at the gate in.
func (w *streamline) run() (in gate, rim bool, err error) {
	for range 40 * len(w.f.plan.tris) {
		if w.f.patchOf(w.tri, w.piece) != noPatch {
			return w.arrive(), false, nil
		}
		if k, out := w.step(); out && !w.cross(k) {
			return in, true, nil
		}
	}
	return in, false, w.endless()
}

// arrive is the gate at which the tracer stands, having come into a patch from
// another piece of the triangle.
func (w *streamline) arrive() gate {
	b := border{w.tri, w.piece, aboutCorner}
	if w.piece == inner {
		b = border{w.tri, (w.side + 1) % 3, besideOther}
	}
	g := w.f.gates[b]
	from, to := b.knots()
	g.along = share(w.f.knotValue(w.tri, from), w.f.knotValue(w.tri, to), w.chi)
	return g
}

// step crosses one piece. If the line leaves the triangle there, out is true
// and edge the edge that it crosses; else the tracer stands in the next piece.
//
// A line with the level chi comes in between knots p and q on either side of
// the level, and leaves between the third knot r and the one of the other side.
func (w *streamline) step() (edge int, out bool) {
	k := pieceKnots(w.piece)
	p, r := k[w.side], k[(w.side+2)%3]
	next := (w.side + 1) % 3
	if (w.f.knotValue(w.tri, r) > w.chi) != (w.f.knotValue(w.tri, p) > w.chi) {
		next = (w.side + 2) % 3
	}
	a, b := k[next], k[(next+1)%3]
	s := share(w.f.knotValue(w.tri, a), w.f.knotValue(w.tri, b), w.chi)
	w.points = append(w.points, between(w.f.knotPlace(w.tri, a), w.f.knotPlace(w.tri, b), s))
	switch {
	case w.piece == inner:
		w.piece, w.side = (next+1)%3, 1
	case next == 1:
		w.piece, w.side = inner, (w.piece+2)%3
	case next == 0:
		return w.piece, true
	default:
		return (w.piece + 2) % 3, true
	}
	return 0, false
}

// cross moves over an edge into the triangle beyond, into the corner of the
// same node. Its chi counts from elsewhere; both know the edge's middle. It is
// false at the edge of the plate.
func (w *streamline) cross(k int) bool {
	o := w.f.plan.beyond[w.tri][k]
	if o < 0 {
		return false
	}
	v := w.f.plan.tris[w.tri]
	w.chi -= w.f.knotValue(w.tri, middles+k)
	w.piece = w.f.plan.cornerOf(o, v[w.piece])
	twin := w.f.plan.cornerOf(o, v[(k+1)%3])
	w.side = 0
	if twin != w.piece { // the edge comes into the corner
		w.side = 2
	}
	w.tri = o
	w.chi += w.f.knotValue(o, middles+twin)
	return true
}

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

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}
