package sheet

import (
	"fmt"
	"math"

	"archload/cases"
	"archload/cases/say"
	"archload/cases/setup"
	"archload/mesh"
	"archload/viz/canvas"
)

// wedge is the length of the neck's angle template, mm.
const wedge = 150.0

// Action is the bench sheet of an action sheet: the ways side by side, and for each a
// template of the neck's angle in true size.
func Action(c *cases.Case, a *setup.Sheet, paper Paper) *Sheet {
	sh := &Sheet{Name: "action", Title: "neck, saddle and anchor for the action", Paper: paper, subject: c.Title,
		notes: []string{
			"Heights of the strings are over the frets at the octave; saddle over the top; anchor over the rim's gluing surface.",
			"Templates: lay the long edge on the top's plane (the rim), the frets run along the sloping one, to the nut on the right.",
		}}
	sh.build = func(fitter) *fullScale {
		d := newFullScale()
		y := actionTable(d, a)
		for _, l := range append(say.SetupNotes(a), a.Cautions...) {
			for _, w := range d.rule.Wrap(canvas.Clean(l), canvas.Label(), benchWidth*perMM) {
				d.words(mesh.Point{-benchWidth / 2, y}, w, canvas.Label(), 0)
				y -= 3.9
			}
			y--
		}
		for i := range a.Ways {
			if i == 0 || a.Ways[i].NeckAngle != a.Ways[0].NeckAngle {
				y = neckWedge(d, &a.Ways[i], y-4)
			}
		}
		return d
	}
	return sh
}

// actionTable sets the ways side by side from the origin down, and returns where the
// next part begins, mm.
func actionTable(d *fullScale, a *setup.Sheet) float64 {
	left, name, y := -benchWidth/2, 76.0, 0.0
	column := (benchWidth - name) / float64(len(a.Ways))
	for i := range a.Ways {
		d.words(mesh.Point{left + name + float64(i+1)*column, y}, a.Ways[i].Name, canvas.Style{Size: 9, Face: canvas.Bold, Color: canvas.Rust()}, 1)
	}
	for _, r := range say.SetupRows() {
		y -= 5
		d.words(mesh.Point{left, y}, r.Name, canvas.Label(), 0)
		for i := range a.Ways {
			d.words(mesh.Point{left + name + float64(i+1)*column, y}, r.Text(&a.Ways[i]), canvas.Label(), 1)
		}
		d.straight(mesh.Point{left, y - 1.4}, mesh.Point{-left, y - 1.4}, canvas.Hidden())
	}
	return y - 9
}

// neckWedge draws the angle between the top's plane and the frets of one way.
func neckWedge(d *fullScale, w *setup.Way, y float64) float64 {
	left := -benchWidth / 2
	fall := wedge * math.Tan(w.NeckAngle*math.Pi/180)
	top, low := math.Max(0, -fall), math.Min(0, -fall)
	d.words(mesh.Point{left, y}, fmt.Sprintf("%s: neck angle %.2f degrees, %.2f mm on %.0f mm", w.Name, w.NeckAngle, math.Abs(fall), wedge), canvas.Label(), 0)
	y -= 4 + top
	d.stroke([]mesh.Point{{left, y}, {left + wedge, y}, {left + wedge, y - fall}}, true, canvas.Firm())
	return y + low - 4
}
