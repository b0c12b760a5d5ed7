package figure

import (
	"fmt"

	"archload/viz/canvas"
)

// FootSection is one foot of the bridge in the cross-arch, one value per
// station; forces and gaps of stations one behind the other are summed and
// averaged by the caller.
type FootSection struct {
	Name   string
	X      []float64 // place across, mm, rising
	Relief []float64 // gap as fitted, unloaded, mm
	Gap    []float64 // gap left at full load, mm
	Force  []float64 // force on the top at each station, N
}

// Share is the force of a part of the bearing length.
type Share struct {
	Name     string  // "bass end", "middle", "treble end"
	From, To float64 // mm across
	Force    float64 // N
}

// CrossArchInput is what CrossArch draws.
type CrossArchInput struct {
	Caption canvas.Caption
	Section Section
	Feet    []FootSection // none: the plate alone
	Shares  []Share
	Stretch float64 // heights against widths; 0: chosen
	Enlarge float64 // movements against widths; 0: chosen
}

// Sizes of a cross-arch page, points, the caption not counted.
const (
	archMost = 130 // the section
	archRest = 54  // key above and words below it
	feetPart = 254
)

// CrossArch draws the plate cut across at the bridge: carved surfaces,
// loaded shape, and below it, across the feet only, the gap between foot and
// top and the forces that the foot gives to the top. Bass is left.
func CrossArch(in CrossArchInput) (*canvas.Picture, error) {
	if err := in.Section.check(); err != nil {
		return nil, fmt.Errorf("cross-arch: %w", err)
	}
	for _, f := range in.Feet {
		if err := f.check(); err != nil {
			return nil, fmt.Errorf("cross-arch: %w", err)
		}
	}
	arch := canvas.Box(canvas.Margin+8, -archMost, canvas.PageWidth-canvas.Margin-8, 0)
	f := frameSections([]Section{in.Section}, arch, sectionSize{in.Stretch, in.Enlarge})
	height := canvas.CaptionHeight(in.Caption) + f.height + archRest
	if len(in.Feet) > 0 {
		height += feetPart
	}
	return canvas.NewPicture(canvas.PageWidth, height, in.Caption.Title, func(g *canvas.Page) { drawCrossArch(g, in, f) }), nil
}

func (f FootSection) check() error {
	n := len(f.X)
	if n == 0 || len(f.Relief) != n || len(f.Gap) != n || len(f.Force) != n {
		return fmt.Errorf("foot %q: want equally many places, reliefs, gaps and forces, found %d, %d, %d, %d",
			f.Name, n, len(f.Relief), len(f.Gap), len(f.Force))
	}
	for i := 1; i < n; i++ {
		if !(f.X[i] > f.X[i-1]) {
			return fmt.Errorf("foot %q: station %d at %g mm does not follow %g mm", f.Name, i, f.X[i], f.X[i-1])
		}
	}
	return nil
}

// reach returns the ends of station i, halfway to its neighbours, mm.
func (f FootSection) reach(i int) (from, to float64) {
	n := len(f.X)
	if n == 1 {
		return f.X[0] - 3, f.X[0] + 3
	}
	half := func(a, b int) float64 { return (f.X[b] - f.X[a]) / 2 }
	before, after := half(max(i-1, 0), max(i, 1)), half(min(i, n-2), min(i+1, n-1))
	return f.X[i] - before, f.X[i] + after
}

// drawCrossArch draws the page; f is the section's frame with its top at
// height 0.
func drawCrossArch(g *canvas.Page, in CrossArchInput, f sectionFrame) {
	l := g.LayCaption(in.Caption)
	g.DrawCaption(l)
	r := l.Free
	f.y0 += r.Y1 - 26
	keys := []canvas.KeyItem{
		{Words: "as carved", Sample: canvas.AreaSample(canvas.Wood(), canvas.Thin())},
		{Words: "under the strings", Sample: canvas.LineSample(loadedPen())},
		{Words: f.words(), Sample: nil},
	}
	g.SampleRow(canvas.At(r.X0, r.Y1-8), r.Width(), keys)
	f.drawSection(g, in.Section)
	f.drawSides(g, in.Section)
	low := f.noteDeepest(g, in.Section)
	if len(in.Feet) > 0 {
		drawFeet(g, in, f, canvas.Box(r.X0, r.Y0, r.X1, r.Y1-f.height-archRest), low-7)
	}
}
