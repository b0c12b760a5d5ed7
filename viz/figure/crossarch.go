package figure

import (
	"fmt"

	"archload/viz/canvas"
)

// Sizes of a cross-arch page, points, the caption not counted.
const (
	archMost = 130 // the section
	archRest = 54  // key above and words below it
	feetPart = 254

	tightLess = 64 // that a foot without a gap needs less
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
		if gap, _ := in.greatest(); gap < tightGap {
			height -= tightLess
		}
	}
	return canvas.NewPicture(canvas.PageWidth, height, in.Caption.Title, func(g *canvas.Page) { drawCrossArch(g, in, f) }), nil
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
