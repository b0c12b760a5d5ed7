package mesh

import (
	"math"
	"sort"

	"archload/mesh/plane"
)

// chordTurn is the most that a curve may turn along one edge, radians.
const chordTurn = 0.8

// resampleRounds bounds how often chords that cross are halved.
const resampleRounds = 16

// chordSet is the arcs cut into straight pieces.
type chordSet struct {
	pts    []Point
	chords []arcChord
}

type arcChord struct {
	arc    int32
	ends   [2]int32
	u0, u1 float64 // parameters of the arc at the ends
}

// resample cuts every arc into chords of the wanted length, all of the same
// number of sizes, and halves chords until no two cross or touch.
func (s *arcSet) resample(size func(Point) float64) (*chordSet, error) {
	c := &chordSet{pts: append([]Point(nil), s.pts...)}
	for i := range s.arcs {
		c.cutArc(&s.arcs[i], int32(i), size)
	}
	for range resampleRounds {
		bad := c.crossing()
		if len(bad) == 0 {
			return c, nil
		}
		for _, i := range bad {
			c.halve(s, i)
		}
	}
	x := c.chords[c.crossing()[0]]
	return nil, s.arcs[x.arc].fault(c.pts[x.ends[0]], "lies too close to another curve to be meshed")
}

// cutArc places points so that the integral of the larger of ds/size and
// turning/chordTurn between neighbours is the same.
func (c *chordSet) cutArc(a *planArc, arc int32, size func(Point) float64) {
	w := make([]float64, len(a.samples))
	for i := 1; i < len(w); i++ {
		p, q := &a.samples[i-1], &a.samples[i]
		ds := (q.s - p.s) / size(plane.Lerp(p.p, q.p, 0.5))
		w[i] = w[i-1] + max(ds, (p.turn+q.turn)/2/chordTurn)
	}
	total := w[len(w)-1]
	n := max(int(math.Ceil(total-0.15)), 1)
	last := arcChord{arc: arc, ends: [2]int32{a.ends[0], 0}, u0: a.u0}
	for k := 1; k < n; k++ {
		want := total * float64(k) / float64(n)
		i := sort.SearchFloat64s(w, want)
		i = min(max(i, 1), len(w)-1)
		t := (want - w[i-1]) / (w[i] - w[i-1])
		u := a.samples[i-1].u + t*(a.samples[i].u-a.samples[i-1].u)
		v := int32(len(c.pts))
		c.pts = append(c.pts, a.at(u))
		last.ends[1], last.u1 = v, u
		c.chords = append(c.chords, last)
		last.ends[0], last.u0 = v, u
	}
	last.ends[1], last.u1 = a.ends[1], a.u1
	c.chords = append(c.chords, last)
}

// halve splits chord i in the middle of its stretch of the curve.
func (c *chordSet) halve(s *arcSet, i int) {
	x := c.chords[i]
	u, v := (x.u0+x.u1)/2, int32(len(c.pts))
	c.pts = append(c.pts, s.arcs[x.arc].at(u))
	y := x
	x.ends[1], x.u1 = v, u
	y.ends[0], y.u0 = v, u
	c.chords[i] = x
	c.chords = append(c.chords, y)
}

// crossing lists the chords that meet others elsewhere than in a common end.
func (c *chordSet) crossing() []int {
	segs := make([][2]Point, len(c.chords))
	for i, x := range c.chords {
		segs[i] = [2]Point{c.pts[x.ends[0]], c.pts[x.ends[1]]}
	}
	bad := make([]bool, len(segs))
	plane.NewGrid(segs).Pairs(func(i, j int32) bool {
		if c.meet(&c.chords[i], &c.chords[j]) {
			bad[i], bad[j] = true, true
		}
		return true
	})
	var out []int
	for i, b := range bad {
		if b {
			out = append(out, i)
		}
	}
	return out
}

// meet tells whether two chords meet elsewhere than in one common end.
func (c *chordSet) meet(x, y *arcChord) bool {
	a, b, p, q := x.ends[0], x.ends[1], y.ends[0], y.ends[1]
	if a == p || b == q {
		p, q = q, p
	}
	switch {
	case a == b || p == q:
		return true
	case a == q && b == p:
		return true
	case b == p: // a, b = p, q
		return plane.Fold(c.pts[a], c.pts[b], c.pts[q])
	case a == q: // p, q = a, b
		return plane.Fold(c.pts[p], c.pts[q], c.pts[b])
	}
	return plane.Meet(c.pts[a], c.pts[b], c.pts[p], c.pts[q])
}
