package figure

import (
	"math"

	"archload/viz/canvas"
	"archload/viz/scale"
)

// Size of a plan page, points; many words or gauges make it higher.
const (
	planWidth  = 504 // 7 in
	planHeight = 648 // 9 in
	planColumn = 112 // the legend's column
	planLeast  = 380 // least height of the plate's part
	planMost   = 520 // greatest height of the plate in a report
	planWords  = 16  // room for the words at the rim
)

type planView struct {
	in     PlanInput
	sheet  *sheet // nil: no field
	scale  scale.Scale
	empty  bool // the field has no value anywhere
	height float64
	lay    planLayout
	bar    legendLayout
}

// planLayout says where the parts of a plan page lie.
type planLayout struct {
	caption canvas.CaptionLayout
	frame   canvas.Frame
	plate   canvas.Rect // box of the plate on the page
	column  canvas.Rect // legend and key
	list    canvas.Rect // readings
}

// legendLayout is the place of a legend on the page.
type legendLayout struct {
	scale scale.Scale
	head  []canvas.Line // name and unit of the field
	bar   canvas.Rect   // all patches together
	notes []canvas.Line // below the bar
	below float64       // where the key may begin, points
}

// patch returns the patch of band k.
func (l *legendLayout) patch(k int) canvas.Rect {
	h := l.bar.Height() / float64(l.scale.Bands())
	k = max(k, 0)
	return canvas.Box(l.bar.X0, l.bar.Y0+h*float64(k), l.bar.X1, l.bar.Y0+h*float64(k+1))
}

// linePen is the pen of the line between bands k-1 and k: light on dark, and
// firmer for zero and every fifth step, so that lines can be counted; dashed below
// zero, so that a print without colours keeps the sign.
func (v *planView) linePen(k int) canvas.Pen {
	by := canvas.Pen{Width: 0.45, Color: canvas.Faded(canvas.Ink(), 0.55)}
	if scale.Lightness(v.scale.BandColor(k)) < 0.62 {
		by.Color = canvas.Faded(canvas.Paper(), 0.75)
	}
	if n := math.Round(v.scale.Level(k) / v.scale.Step); math.Mod(n, 5) == 0 {
		by.Width = 0.95
	}
	if v.scale.Kind != scale.Counting && v.scale.Level(k) < -scale.Slack*v.scale.Step {
		by.Dash = []float64{3, 2.2}
	}
	return by
}
