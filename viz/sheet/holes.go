package sheet

import (
	"fmt"
	"math"

	"archload/mesh"
	"archload/mesh/plane"
	"archload/viz/canvas"
)

// holes are the sound holes in true size.
func (s *shop) holes() *Sheet {
	return &Sheet{
		Name: "holes", Title: "sound holes",
		notes: []string{
			"Seen from outside, neck up, bass left, each as it lies beside the centre line; of a pair that mirrors, one: turn the sheet over for the other.",
			"Crosses: the outermost places of the edge, from the origin of the plan, treble and neck positive, mm. Lay the centre line on that of the plate.",
		},
		build: func(fitter) *fullScale {
			d := newFullScale()
			x := 0.0
			for i, h := range s.notes.Holes {
				if s.mirrors(i) {
					continue
				}
				one := s.drawHole(h)
				d.include(one, mesh.Point{x - one.lo[0], 0})
				x += one.hi[0] - one.lo[0] + 4*sheetGap
			}
			return d
		},
	}
}

// mirrors tells whether hole i is the mirror image, in the centre line, of one
// before it.
func (s *shop) mirrors(i int) bool {
	lo, hi := s.notes.Holes[i].Bounds()
	for _, o := range s.notes.Holes[:i] {
		a, b := o.Bounds()
		off := math.Abs(lo[0]+b[0]) + math.Abs(hi[0]+a[0]) + math.Abs(lo[1]-a[1]) + math.Abs(hi[1]-b[1])
		if off < 0.05 && lo[0]*a[0] < 0 {
			return true
		}
	}
	return false
}

// drawHole draws a hole in its place in plan, the centre line beside it if it is
// near, and the places of its outermost points.
func (s *shop) drawHole(h *plane.Curve) *fullScale {
	d := newFullScale()
	line := h.Polyline(0.02)
	d.stroke(line, true, templatePen())
	lo, hi := h.Bounds()
	if math.Min(math.Abs(lo[0]), math.Abs(hi[0])) < 60 || lo[0] < 0 && hi[0] > 0 {
		d.straight(mesh.Point{0, lo[1] - 6}, mesh.Point{0, hi[1] + 6}, centrePen())
		d.words(mesh.Point{1.5, lo[1] - 6}, "centre line", canvas.Label(), 0)
	}
	for _, k := range []struct {
		axis int
		at   float64
		dy   float64
	}{{1, hi[1], 3}, {1, lo[1], -5}, {0, lo[0], 0}, {0, hi[0], 0}} {
		for _, p := range line {
			if math.Abs(p[k.axis]-k.at) > 0.02 {
				continue
			}
			d.straight(mesh.Point{p[0] - 2, p[1]}, mesh.Point{p[0] + 2, p[1]}, canvas.Thin())
			d.straight(mesh.Point{p[0], p[1] - 2}, mesh.Point{p[0], p[1] + 2}, canvas.Thin())
			d.words(mesh.Point{p[0] + 3, p[1] + k.dy}, fmt.Sprintf("(%.1f, %.1f)", p[0], p[1]), canvas.Label(), 0)
			break
		}
	}
	d.words(mesh.Point{lo[0], hi[1] + 10}, fmt.Sprintf("%.1f mm long, %.1f mm across in all", hi[1]-lo[1], hi[0]-lo[0]), headStyle(), 0)
	return d
}
