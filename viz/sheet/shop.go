package sheet

import (
	"fmt"
	"math"

	"archload/cases"
	"archload/cases/shape"

	"archload/mesh"
	"archload/viz/canvas"
)

// shop is what the drawings are made from.
type shop struct {
	c     *cases.Case
	plate mesh.Plate
	notes *shape.Geometry
	rim   []mesh.Point // the outline as a polyline
	every float64      // mm between cross-arch templates; 0: not asked for
}

// inWood says whether a place has wood at least d mm around it.
func (s *shop) inWood(p mesh.Point, d float64) bool {
	if !s.notes.Outline.Contains(p) || s.notes.Outline.Distance(p) < d {
		return false
	}
	for _, h := range s.notes.Holes {
		if h.Contains(p) || h.Distance(p) < d {
			return false
		}
	}
	return true
}

// apex is the highest place of the outer surface, found on squares of 2 mm.
func (s *shop) apex() (at mesh.Point, z float64) {
	lo, hi := s.notes.Outline.Bounds()
	first := true
	for y := lo[1]; y <= hi[1]; y += 2 {
		for x := lo[0]; x <= hi[0]; x += 2 {
			p := mesh.Point{x, y}
			if v := s.plate.Outer.At(p).Z; s.notes.Outline.Contains(p) && (first || v > z) {
				at, z, first = p, v, false
			}
		}
	}
	return at, z
}

// body draws outline, holes and the centre line.
func (s *shop) body(d *fullScale) {
	for _, h := range s.notes.Holes {
		d.stroke(h.Polyline(0.02), true, canvas.Firm())
	}
	d.stroke(s.rim, true, canvas.Pen{Width: 1.1, Color: canvas.Ink()})
	lo, hi := s.notes.Outline.Bounds()
	d.straight(mesh.Point{0, lo[1]}, mesh.Point{0, hi[1]}, centrePen())
	d.words(mesh.Point{3, hi[1] - 7}, "neck", canvas.Rim(), 0)
	d.words(mesh.Point{3, lo[1] + 4}, "tail", canvas.Rim(), 0)
	for _, p := range s.rim {
		if p[0] == lo[0] {
			d.words(mesh.Point{p[0] + 3, p[1]}, "bass", canvas.Rim(), 0)
		}
		if p[0] == hi[0] {
			d.words(mesh.Point{p[0] - 3, p[1]}, "treble", canvas.Rim(), 1)
		}
	}
}

func centrePen() canvas.Pen {
	return canvas.Pen{Width: 0.5, Color: canvas.SoftInk(), Dash: []float64{14, 3, 2, 3}}
}

// signed writes a whole number of mm with its sign, 0 without.
func signed(v float64) string {
	if math.Round(v) == 0 {
		return "0"
	}
	return fmt.Sprintf("%+.0f", v)
}

// level writes a contour's height without needless zeros.
func level(v float64) string { return fmt.Sprintf("%g", float64(int(v*1000+0.5))/1000) }

// dot is a small disc, mm.
func dot(at mesh.Point, r float64) []mesh.Point {
	l := make([]mesh.Point, 16)
	for i := range l {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(len(l)))
		l[i] = mesh.Point{at[0] + r*c, at[1] + r*s}
	}
	return l
}
