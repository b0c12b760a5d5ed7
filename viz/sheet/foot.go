package sheet

import (
	"fmt"
	"math"

	"archload/mesh"
	"archload/viz/canvas"
)

// footStep is from one reading of the relief to the next, mm.
const footStep = 10

// footDeep is how many times too deep the relief is drawn under the outline.
const footDeep = 50

func (s *shop) foot() *Sheet {
	b := s.c.Bridge
	notes := []string{
		fmt.Sprintf("Seen from above, neck edge up, bass left. The bridge's middle stands at (%.0f, %.0f) mm.", b.At[0], b.At[1]),
		"Firm: where the foot bears. Dashed: the base above it, and what is hollowed out.",
	}
	if s.relieved() {
		notes = append(notes, fmt.Sprintf("Numbers: wood to take from under the foot after it has been fitted tight, above in hundredths of a millimetre, below in thousandths of an inch. The curve shows the same %d times as deep.", footDeep))
	} else {
		notes = append(notes, "The foot is fitted tight everywhere: nothing is taken from under it.")
	}
	return &Sheet{Name: "foot", Title: "outline of the bridge's foot", notes: notes,
		build: func(fitter) *fullScale { return s.drawFoot() }}
}

// relief is what is to be removed at x, mm: the gap without a measured misfit.
func (s *shop) relief(x, y float64) float64 {
	b := *s.c.Bridge
	b.Misfit = nil
	return b.Gap(x, y)
}

func (s *shop) relieved() bool {
	from, to := s.c.Bridge.Reach()
	for x := from; x <= to; x++ {
		if s.relief(x, 0) > 0 {
			return true
		}
	}
	return false
}

func (s *shop) drawFoot() *fullScale {
	d := newFullScale()
	b := s.c.Bridge
	half, wide := float64(b.Length)/2, float64(b.Width)/2
	d.stroke(upr(-half, -wide, half, wide), true, canvas.Hidden())
	d.straight(mesh.Point{0, -wide}, mesh.Point{0, wide}, centrePen())
	d.words(mesh.Point{-half, wide + 12}, "bass", canvas.Rim(), 0)
	d.words(mesh.Point{half, wide + 12}, "treble", canvas.Rim(), 1)
	d.words(mesh.Point{0, wide + 12}, "neck edge", canvas.Rim(), 0.5)
	if h := b.Hollow; h != nil {
		w := wide - float64(h.Wall)
		d.straight(mesh.Point{-half, w}, mesh.Point{half, w}, canvas.Hidden())
		d.straight(mesh.Point{-half, -w}, mesh.Point{half, -w}, canvas.Hidden())
	}
	for _, f := range b.Feet {
		from, to := float64(f.From), float64(f.To)
		d.stroke(upr(from, -wide, to, wide), true, canvas.Firm())
		if w := float64(f.Wall); f.Bearing == "perimeter" && 2*w < math.Min(to-from, 2*wide) {
			d.stroke(upr(from+w, -wide+w, to-w, wide-w), true, canvas.Firm())
		}
		s.readings(d, from, to, wide)
	}
	below := -wide - 16
	if s.relieved() {
		s.depthCurve(d, -wide-24)
		below -= 16
	}
	if s.plate.Outer != nil {
		s.fittedCurves(d, below)
	}
	return d
}

// fittedCurves draws below y, seen from the tail, the curve that the foot is
// fitted to at its neck edge and at its tail edge: the outer surface there, under
// a level upper edge, as templates for the foot.
func (s *shop) fittedCurves(d *fullScale, y float64) {
	b := s.c.Bridge
	from, to := b.Reach()
	for _, e := range []struct {
		name string
		y    float64
	}{{"neck edge", b.At[1] + float64(b.Width)/2}, {"tail edge", b.At[1] - float64(b.Width)/2}} {
		n := max(2, int(math.Ceil(to-from)))
		line := make([]mesh.Point, 0, n+3)
		low, top := math.Inf(1), math.Inf(-1)
		for i := range n + 1 {
			x := from + (to-from)*float64(i)/float64(n)
			z := s.plate.Outer.At(mesh.Point{b.At[0] + x, e.y}).Z
			line = append(line, mesh.Point{x, z})
			low, top = math.Min(low, z), math.Max(top, z)
		}
		rise := top + 12
		off := y - rise
		for i := range line {
			line[i][1] += off
		}
		d.stroke(append(line, mesh.Point{to, rise + off}, mesh.Point{from, rise + off}), true, templatePen())
		d.words(mesh.Point{from + 3, rise + off - 5}, "fitted curve of the foot's "+e.name, headStyle(), 0)
		d.words(mesh.Point{from + 3, rise + off - 9}, fmt.Sprintf("the arch under it rises %.1f mm", top-low), canvas.Label(), 0)
		y = low + off - 5
	}
}

func upr(x0, y0, x1, y1 float64) []mesh.Point {
	return []mesh.Point{{x0, y0}, {x1, y0}, {x1, y1}, {x0, y1}}
}

// readings writes the relief at stations along one foot and at its ends.
func (s *shop) readings(d *fullScale, from, to, wide float64) {
	at := []float64{from}
	for x := math.Ceil(from/footStep) * footStep; x <= to; x += footStep {
		if x > from+7 && x < to-7 {
			at = append(at, x)
		}
	}
	for _, x := range append(at, to) {
		r := s.relief(x, 0)
		d.straight(mesh.Point{x, wide}, mesh.Point{x, wide + 2}, canvas.Thin())
		d.straight(mesh.Point{x, -wide}, mesh.Point{x, -wide - 2}, canvas.Thin())
		d.words(mesh.Point{x, wide + 3}, fmt.Sprintf("%.0f", 100*r), canvas.Style{Size: 9, Face: canvas.Bold, Color: canvas.Ink()}, 0.5)
		d.words(mesh.Point{x, -wide - 5.5}, fmt.Sprintf("%.1f", 1000*r/25.4), canvas.Label(), 0.5)
		d.words(mesh.Point{x, -wide - 10}, signed(x), canvas.Small(), 0.5)
	}
	d.words(mesh.Point{to + 6, wide + 3}, "0.01 mm", canvas.Label(), 0)
	d.words(mesh.Point{to + 6, -wide - 5.5}, "0.001 in", canvas.Label(), 0)
	d.words(mesh.Point{to + 6, -wide - 10}, "mm from the middle", canvas.Small(), 0)
}

// depthCurve draws the relief below the outline, its zero at y.
func (s *shop) depthCurve(d *fullScale, y float64) {
	from, to := s.c.Bridge.Reach()
	n := int(math.Ceil(to - from))
	line := make([]mesh.Point, n+1)
	for i := range line {
		x := from + (to-from)*float64(i)/float64(n)
		line[i] = mesh.Point{x, y + footDeep*s.relief(x, 0)}
	}
	d.straight(mesh.Point{from, y}, mesh.Point{to, y}, canvas.Hair())
	d.stroke(line, false, canvas.Pen{Width: 1, Color: canvas.Rust()})
	d.words(mesh.Point{0, y - 4}, fmt.Sprintf("wood taken from under the foot, drawn %d times as deep", footDeep), canvas.Small(), 0.5)
}
