package viz

import (
	"fmt"
	"image/color"
	"math"
)

// CompareInput is what CompareSections draws: the cross-arches of two or
// more designs.
type CompareInput struct {
	Caption  Caption
	Sections []Section
	Stretch  float64 // heights against widths; 0: chosen
	Enlarge  float64 // movements against widths; 0: chosen
}

// mostSections is how many designs one page can hold.
const mostSections = 4

// CompareSections draws the cross-arches of two or more designs one above
// the other on one scale, and their sinks laid over each other.
func CompareSections(in CompareInput) (*Picture, error) {
	n := len(in.Sections)
	if n < 2 || n > mostSections {
		return nil, fmt.Errorf("compare sections: want 2 to %d designs, found %d", mostSections, n)
	}
	for _, s := range in.Sections {
		if err := s.check(); err != nil {
			return nil, fmt.Errorf("compare sections: %w", err)
		}
	}
	p := &Picture{Width: pageWidth, Title: clean(in.Caption.Title)}
	head := captionHeight(in.Caption)
	f := frameSections(in.Sections, compareCell(n, 756-head-comparePart), sectionSize{in.Stretch, in.Enlarge})
	p.Height = head + comparePart + 12*float64(n) + float64(n)*(f.height+compareGap)
	p.draw = func(g *page) { drawCompare(g, in, f) }
	return p, nil
}

// designPen tells designs apart by colour and by dashes.
func designPen(i int) pen {
	colors := []color.NRGBA{rustColor(), blueColor(), {70, 110, 50, 255}, {120, 60, 120, 255}, {40, 40, 40, 255}, {150, 120, 20, 255}}
	dashes := [][]float64{nil, {6, 2.5}, {1.5, 2}, {8, 2, 1.5, 2}, {3, 2}, {10, 3}}
	return pen{width: 1.4, color: colors[i%len(colors)], dash: dashes[i%len(dashes)]}
}

// Sizes of a page of sections, points, the caption not counted.
const (
	comparePart = 194 // key, names and diagram of the sinks
	compareGap  = 34  // a section's name and the words below it
)

// compareCell is the room that each of n sections may fill of room points;
// its top is at 0.
func compareCell(n int, room float64) rect {
	h := room/float64(n) - compareGap - 12
	return rect{margin + 36, -math.Max(30, math.Min(104, h)), pageWidth - margin - 8, 0}
}

func drawCompare(g *page, in CompareInput, f sectionFrame) {
	l := g.layCaption(in.Caption)
	g.drawCaption(l)
	r := l.free
	n := len(in.Sections)
	chart := rect{r.X0 + 36, r.Y0 + 26, r.X1 - 8, r.Y0 + 134}
	names := 14 + 12*float64(n)
	g.sampleRow(pt{r.X0, r.Y1 - 8}, r.width(), []keyItem{
		{"as carved", areaSample(woodColor(), thin())},
		{"under the strings", lineSample(loadedPen())},
		{f.words(), nil},
	})
	for i, s := range in.Sections {
		top := r.Y1 - 28 - float64(i)*(f.height+compareGap)
		here := f
		here.y0 += top
		g.text(pt{r.X0, top + 3}, g.shorten(clean(s.Name), nameStyle(), r.width()), nameStyle(), 0)
		g.drawSection(s, here)
		if i == n-1 {
			g.sides(s, here)
		}
		g.noteDeepest(s, here)
	}
	drawSinks(g, in.Sections, chart, names)
}

func nameStyle() style { return style{8.5, bold, inkColor()} }

// drawSinks lays the sinks of all designs over each other, zero at the top.
func drawSinks(g *page, all []Section, r rect, names float64) {
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
	y := newAxis(math.Min(lo, 0), hi, 7, r.Y1, r.Y0)
	x := tightAxis(x0, x1, 10, r.X0, r.X1)
	g.levels(y, x.a, x.b)
	g.line(pt{x.a, y.at(0)}, pt{x.b, y.at(0)}, thin())
	g.turned(pt{x.a - 29, (y.a + y.b) / 2}, "sink, mm", label(), math.Pi/2)
	for i, s := range all {
		by := designPen(i)
		g.stroke(curve(len(s.X), func(k int) pt {
			return pt{x.at(s.X[k]), y.at(s.Sink[k] + 0*s.Outer[k])}
		}), false, by)
		row := r.Y1 + names - 14 - 12*float64(i)
		g.line(pt{x.a, row + 3}, pt{x.a + 26, row + 3}, by)
		_, d := s.deepest()
		g.text(pt{x.a + 32, row}, g.shorten(clean(s.Name), label(), x.b-x.a-130), label(), 0)
		g.text(pt{x.b, row}, "most "+reading(d)+" mm", label(), 1)
	}
	g.ruler(x, r.Y0, "mm from the centre line (bass −, treble +)")
}
