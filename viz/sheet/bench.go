package sheet

import (
	"archload/cases"
	"archload/cases/say"
	"archload/cases/study"
	"archload/mesh"
	"archload/viz/canvas"
)

// Bench is the full-scale sheet for the relief of a trial, or nil if it
// has none: what to take off, and how to check it.
func Bench(c *cases.Case, t *study.Trial, paper Paper) *Sheet {
	if t.Sheet == nil {
		return nil
	}
	s := &shop{c: c}
	sh := &Sheet{Name: "bench", Title: "relief under the bridge's foot", Paper: paper, subject: c.Title,
		notes: []string{
			"Fit the foot tight first. Numbers along it: wood to take off, above in hundredths of a millimetre, below in thousandths of an inch.",
			"Seen from above, neck edge up, bass left.",
		}}
	sh.build = func(fitter) *fullScale {
		d := s.drawFoot()
		y := d.lo[1] - 8
		for i, part := range say.Instructions(t) {
			if i == 0 {
				part.Lines = []string{"The numbers stand along the foot above; the curve shows them."}
			}
			y = benchPart(d, part, y)
		}
		return d
	}
	return sh
}

// benchWidth is the width of the text on a bench sheet, mm.
const benchWidth = 178.0

// benchPart sets a heading and its lines from y down and returns where the
// next part begins, mm.
func benchPart(d *fullScale, p say.Instruction, y float64) float64 {
	x := -benchWidth / 2
	d.words(mesh.Point{x, y}, p.Head, canvas.Style{Size: 10, Face: canvas.Bold, Color: canvas.Rust()}, 0)
	y--
	for _, l := range p.Lines {
		for _, w := range d.rule.Wrap(canvas.Clean(l), canvas.Label(), benchWidth*perMM) {
			y -= 3.9
			d.words(mesh.Point{x, y}, w, canvas.Label(), 0)
		}
		y -= 0.8
	}
	return y - 5
}
