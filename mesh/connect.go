package mesh

import (
	"errors"
	"fmt"

	"archload/mesh/delaunay"
	"archload/mesh/plane"
)

// connect triangulates the points and chords.
func (s *arcSet) connect(c *chordSet) (*delaunay.Triangulation, error) {
	lo, hi := plane.Bounds(c.pts)
	tr := delaunay.New(lo, hi)
	vertex := make([]int32, len(c.pts))
	for _, i := range spreadOrder(len(c.pts)) {
		vertex[i] = tr.AddPoint(c.pts[i])
	}
	for _, x := range c.chords {
		err := tr.AddSegment(delaunay.Segment{
			A: vertex[x.ends[0]], B: vertex[x.ends[1]], Curve: x.arc,
			TA: x.u0, TB: x.u1, Boundary: s.arcs[x.arc].boundary(),
		})
		if err != nil {
			return nil, s.asPlace(err)
		}
	}
	tr.Legalize()
	tr.MarkRegions()
	return tr, nil
}

// spreadOrder returns 0 to n-1 in an order that spreads neighbours apart (bits
// reversed), which keeps insertion along a curve from flipping long fans.
func spreadOrder(n int) []int {
	out := make([]int, 0, n)
	bits := 0
	for 1<<bits < n {
		bits++
	}
	for i := range 1 << bits {
		j := 0
		for b := range bits {
			j |= (i >> b & 1) << (bits - 1 - b)
		}
		if j < n {
			out = append(out, j)
		}
	}
	return out
}

// asPlace turns the error of the triangulation into one about the domain.
func (s *arcSet) asPlace(err error) error {
	var cross *delaunay.CrossError
	if errors.As(err, &cross) {
		a, b := &s.arcs[cross.New.Curve], &s.arcs[cross.Old.Curve]
		return a.fault(cross.At, fmt.Sprintf("too close to %s to be meshed", b.name()))
	}
	return &PlaceError{Part: "size", Msg: err.Error()}
}
