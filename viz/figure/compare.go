package figure

import (
	"fmt"
	"math"

	"archload/viz/canvas"
	"archload/viz/scale"
)

// CompareInput is what CompareSections draws: the cross-arches of two or
// more designs.
type CompareInput struct {
	Caption  canvas.Caption
	Sections []Section
	Stretch  float64 // heights against widths; 0: chosen
	Enlarge  float64 // movements against widths; 0: chosen
}

// MostSections is how many designs one page can hold.
const MostSections = 4

// CompareSections draws the cross-arches of two or more designs one above
// the other on one scale, and their sinks laid over each other.
func CompareSections(in CompareInput) (*canvas.Picture, error) {
	n := len(in.Sections)
	if n < 2 || n > MostSections {
		return nil, fmt.Errorf("compare sections: want 2 to %d designs, found %d", MostSections, n)
	}
	for _, s := range in.Sections {
		if err := s.check(); err != nil {
			return nil, fmt.Errorf("compare sections: %w", err)
		}
	}
	head := canvas.CaptionHeight(in.Caption)
	f := frameSections(in.Sections, compareCell(n, 756-head-comparePart), sectionSize{in.Stretch, in.Enlarge})
	height := head + comparePart + 12*float64(n) + float64(n)*(f.height+compareGap)
	return canvas.NewPicture(canvas.PageWidth, height, in.Caption.Title, func(g *canvas.Page) { drawCompare(g, in, f) }), nil
}

// Sizes of a page of sections, points, the caption not counted.
const (
	comparePart = 194 // key, names and diagram of the sinks
	compareGap  = 34  // a section's name and the words below it
)

// compareCell is the room that each of n sections may fill of room points;
// its top is at 0.
func compareCell(n int, room float64) canvas.Rect {
	h := room/float64(n) - compareGap - 12
	return canvas.Box(canvas.Margin+36, -math.Max(30, math.Min(104, h)), canvas.PageWidth-canvas.Margin-8, 0)
}

func drawCompare(g *canvas.Page, in CompareInput, f sectionFrame) {
	l := g.LayCaption(in.Caption)
	g.DrawCaption(l)
	r := l.Free
	n := len(in.Sections)
	chart := canvas.Box(r.X0+36, r.Y0+26, r.X1-8, r.Y0+134)
	names := 14 + 12*float64(n)
	g.SampleRow(canvas.At(r.X0, r.Y1-8), r.Width(), []canvas.KeyItem{
		{Words: "as carved", Sample: canvas.AreaSample(canvas.Wood(), canvas.Thin())},
		{Words: "under the strings", Sample: canvas.LineSample(loadedPen())},
		{Words: f.words(), Sample: nil},
	})
	for i, s := range in.Sections {
		top := r.Y1 - 28 - float64(i)*(f.height+compareGap)
		here := f
		here.y0 += top
		g.Text(canvas.At(r.X0, top+3), g.Shorten(canvas.Clean(s.Name), nameStyle(), r.Width()), nameStyle(), 0)
		here.drawSection(g, s)
		if i == n-1 {
			here.drawSides(g, s)
		}
		here.noteDeepest(g, s)
	}
	drawSinks(g, in.Sections, chart, names)
}

// drawSinks lays the sinks of all designs over each other, zero at the top.
func drawSinks(g *canvas.Page, all []Section, r canvas.Rect, names float64) {
	lo, hi := math.Inf(1), math.Inf(-1)
	x0, x1 := lo, hi
	for _, s := range all {
		x0, x1 = math.Min(x0, s.X[0]), math.Max(x1, s.X[len(s.X)-1])
		for i, v := range s.Sink {
			if !math.IsNaN(v + s.Outer[i]) {
				lo, hi = math.Min(lo, v), math.Max(hi, v)
			}
		}
	}
	if lo > hi {
		lo, hi = 0, 0
	}
	y := canvas.NewAxis(math.Min(lo, 0), hi, 7, r.Y1, r.Y0)
	x := canvas.TightAxis(x0, x1, 10, r.X0, r.X1)
	g.Levels(y, x.A, x.B)
	g.Line(canvas.At(x.A, y.At(0)), canvas.At(x.B, y.At(0)), canvas.Thin())
	g.Turned(canvas.At(x.A-29, (y.A+y.B)/2), "sink, mm", canvas.Label(), math.Pi/2)
	for i, s := range all {
		by := designPen(i)
		g.Stroke(canvas.Curve(len(s.X), func(k int) canvas.Point {
			return canvas.At(x.At(s.X[k]), y.At(s.Sink[k]+0*s.Outer[k]))
		}), false, by)
		row := r.Y1 + names - 14 - 12*float64(i)
		g.Line(canvas.At(x.A, row+3), canvas.At(x.A+26, row+3), by)
		_, d := s.deepest()
		g.Text(canvas.At(x.A+32, row), g.Shorten(canvas.Clean(s.Name), canvas.Label(), x.B-x.A-130), canvas.Label(), 0)
		g.Text(canvas.At(x.B, row), "most "+scale.Reading(d)+" mm", canvas.Label(), 1)
	}
	g.Ruler(x, r.Y0, "mm from the centre line (bass −, treble +)")
}
