package sheet

import (
	"fmt"
	"math"
	"slices"

	"archload/mesh"
	"archload/viz/canvas"
)

// under is the height of the inner surface above a place in plan, mm. The inner
// surface lies a thickness h below the outer one along its normal: from the
// outer place p it is met at p + h g/W, h/W lower, with g the slope of the outer
// surface and W = √(1 + g·g). p is found by going back and forth.
func (s *shop) under(q mesh.Point) float64 {
	p := q
	var z float64
	for range 8 {
		j := s.plate.Outer.At(p)
		w := math.Sqrt(1 + j.Zx*j.Zx + j.Zy*j.Zy)
		k := s.plate.Thickness.At(p).Z / w
		z = j.Z - k
		p = mesh.Point{q[0] - k*j.Zx, q[1] - k*j.Zy}
	}
	return z
}

// insides are templates that fit into the hollowed side.
func (s *shop) insides() *Sheet {
	return &Sheet{
		Name: "inside-arches", Title: "inside templates",
		notes: []string{
			"For the hollowed side, seen from the tail with the outer surface up: bass left. Cut along the firm line; the upper edge then lies against the inner surface from edge to edge of the outline.",
			"Each template's lower edge is straight and level; how far it lies below the rim's gluing surface is written on it.",
			"Braces, lining and blocks are left out: use it before they are glued in.",
		},
		build: func(fit fitter) *fullScale { return stacked(s.crossStations(), fit, s.drawInside) },
	}
}

// drawInside draws one inside template with heights above z = 0 as its y.
func (s *shop) drawInside(st station) *fullScale {
	d := newFullScale()
	n := max(2, int(math.Ceil(st.to-st.from)))
	arch := make([]mesh.Point, n+1)
	low := math.Inf(1)
	for i := range arch {
		u := st.from + (st.to-st.from)*float64(i)/float64(n)
		arch[i] = mesh.Point{u, s.under(mesh.Point{u, st.at})}
		low = math.Min(low, arch[i][1])
	}
	floor := math.Floor(low - templateRise)
	d.stroke(append(slices.Clone(arch), mesh.Point{st.to, floor}, mesh.Point{st.from, floor}), true, templatePen())
	if st.from < 0 && st.to > 0 {
		z := s.under(mesh.Point{0, st.at})
		d.straight(mesh.Point{0, floor}, mesh.Point{0, z}, centrePen())
		d.words(mesh.Point{1.5, z - 5}, fmt.Sprintf("centre line, inside %.1f mm high", z), canvas.Label(), 0)
	}
	d.words(mesh.Point{st.from + 3, floor + 7}, "bass", canvas.Rim(), 0)
	d.words(mesh.Point{st.to - 3, floor + 7}, "treble", canvas.Rim(), 1)
	d.words(mesh.Point{st.from + 15, floor + 7}, fmt.Sprintf("inside at y = %s mm", signed(st.at)), headStyle(), 0)
	d.words(mesh.Point{st.from + 15, floor + 3}, fmt.Sprintf("lower edge %.0f mm below the rim's gluing surface", -floor), canvas.Label(), 0)
	return d
}

// templatePen is the line to cut along.
func templatePen() canvas.Pen { return canvas.Pen{Width: 0.9, Color: canvas.Ink()} }

// headStyle is that of a part's name.
func headStyle() canvas.Style {
	return canvas.Style{Size: 10, Face: canvas.Bold, Color: canvas.Ink()}
}
