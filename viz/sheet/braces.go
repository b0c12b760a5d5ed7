package sheet

import (
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/mesh"
	"archload/viz/canvas"
)

// braces are the profiles and glue faces of the braces that are glued in.
func (s *shop) braces() *Sheet {
	return &Sheet{
		Name: "braces", Title: "braces: profiles and glue faces",
		notes: []string{
			"Each brace from the side, glue face up: the upper line is the inner surface along its middle line, the lower one its height below that. Below it the glue face, as wide as it is.",
			"Numbers: height of the brace, mm. Lengths are those in plan. Leave some wood on the glue face and fit it to the plate that is really there.",
		},
		build: func(fit fitter) *fullScale {
			return stacked(fitted(s.c), fit, s.drawBrace)
		},
	}
}

// fitted are the braces that are glued in.
func fitted(c *cases.Case) []*cases.Brace {
	var out []*cases.Brace
	for i := range c.Braces {
		if b := &c.Braces[i]; b.Fitted {
			out = append(out, b)
		}
	}
	return out
}

// alongLine is the place at a length along a chain of points, mm, and its whole
// length.
func alongLine(line []mesh.Point, at float64) (p mesh.Point, length float64) {
	found := false
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		l := math.Hypot(b[0]-a[0], b[1]-a[1])
		if !found && (at <= length+l || i == len(line)-1) {
			t := (at - length) / l
			p, found = mesh.Point{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1])}, true
		}
		length += l
	}
	return p, length
}

// brace heights are written every so many mm.
const braceStep = 30.0

// drawBrace draws one brace with the length along it as x and heights above
// z = 0 as y, its glue face below.
func (s *shop) drawBrace(b *cases.Brace) *fullScale {
	d := newFullScale()
	_, long := alongLine(b.Line, 0)
	n := max(2, int(math.Ceil(long)))
	var above, below, left, right []mesh.Point
	low, most := math.Inf(1), math.Inf(-1)
	for i := range n + 1 {
		u := long * float64(i) / float64(n)
		p, _ := alongLine(b.Line, u)
		z, share := s.under(p), u/long
		above, below = append(above, mesh.Point{u, z}), append(below, mesh.Point{u, z - b.HeightAt(share)})
		low, most = math.Min(low, below[i][1]), math.Max(most, z)
	}
	face := low - 12 - b.Width.Max()
	for i := range n + 1 {
		u := long * float64(i) / float64(n)
		w := b.Width.Value(u/long) / 2
		left, right = append(left, mesh.Point{u, face + w}), append(right, mesh.Point{u, face - w})
	}
	slices.Reverse(below)
	slices.Reverse(right)
	d.stroke(append(above, below...), true, templatePen())
	d.stroke(append(left, right...), true, templatePen())
	d.straight(mesh.Point{0, face}, mesh.Point{long, face}, centrePen())
	for u := 0.0; u <= long+1e-9; u += braceStep {
		s.braceHeight(d, b, u, long)
	}
	if math.Mod(long, braceStep) > 8 {
		s.braceHeight(d, b, long, long)
	}
	first, last := b.Line[0], b.Line[len(b.Line)-1]
	d.words(mesh.Point{0, most + 6}, fmt.Sprintf("%s: %s, %.0f mm long, %.1f mm wide", b.Name, b.Wood, long, b.Width.Max()), headStyle(), 0)
	d.words(mesh.Point{0, most + 2}, fmt.Sprintf("left end at (%s, %s) mm, right end at (%s, %s) mm; out of a blank %.0f mm high", signed(first[0]), signed(first[1]),
		signed(last[0]), signed(last[1]), math.Ceil(most-low)), canvas.Label(), 0)
	return d
}

// braceHeight writes the height of a brace at a length along it.
func (s *shop) braceHeight(d *fullScale, b *cases.Brace, u, long float64) {
	p, _ := alongLine(b.Line, u)
	z, h := s.under(p), b.HeightAt(u/long)
	d.straight(mesh.Point{u, z}, mesh.Point{u, z - h}, canvas.Hair())
	d.words(mesh.Point{u, z - h - 4}, fmt.Sprintf("%.1f", h), canvas.Label(), 0.5)
}
