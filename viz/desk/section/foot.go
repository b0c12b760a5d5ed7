package section

import (
	"fmt"
	"image/color"
	"math"

	"archload/cases/answer"
	"archload/cases/quantity"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/scene"
	"archload/viz/stage"
)

// footPlot is the foot in the strip: the gap above its line, and below it the
// force that it gives to the top on each mm, both on axes that stay while the
// hand moves and the load plays.
type footPlot struct {
	of       []stage.Station
	at       panel.Rect
	lo, hi   float64 // mm across
	base     float64 // points, of the foot's line
	top, low float64 // points, of the ends of both axes
	scales   stage.Scales
}

// axisWidth is the room for an axis' numbers, points.
const axisWidth = 34.0

// across is the place of x on the page.
func (p *footPlot) across(x float64) float64 {
	return p.at.X + axisWidth + (x-p.lo)/(p.hi-p.lo)*(p.at.W-axisWidth-6)
}

// above is the place of a gap, mm, and below that of a force, N/mm; what lies
// beyond its axis ends at it.
func (p *footPlot) above(gap float64) float64 {
	return p.base - math.Min(1, gap/p.scales.Gap)*(p.base-p.top)
}

func (p *footPlot) below(force float64) float64 {
	return p.base + math.Min(1, force/p.scales.Force)*(p.low-p.base)
}

// drawFoot draws the foot of the design that the tools change.
func (s *Strip) drawFoot(l *panel.List, r panel.Rect) {
	a := s.shown.Of(s.in.Edit)
	cols := stage.Stations(answer.FootColumns(a.Now))
	if len(cols) == 0 {
		return
	}
	p := &footPlot{of: cols, at: r, lo: cols[0].From, hi: cols[len(cols)-1].To, scales: s.in.Scales, low: r.Bottom() - 20}
	name := "the foot"
	if len(s.shown.Designs) == 2 {
		name += fmt.Sprintf(" of design %c", 'A'+s.in.Edit)
	}
	if w := s.shown.Want; (w.Aired() || w.Field == scene.Tone) && r.H >= low {
		name += ", by string load alone"
	}
	most, relief := 0.0, 0.0
	for _, c := range cols {
		most, relief = math.Max(most, c.PerMM), math.Max(relief, c.Relief)
	}
	l.TextIn(panel.Rect{X: r.X, Y: r.Y, W: r.W, H: 15}, panel.SmallBold, panel.Left, panel.SoftInk(), name)
	words := fmt.Sprintf("above, mm: relief %s, gap left %s; below, N/mm: up to %s",
		scale.Fixed(relief, 3), scale.Fixed(a.Bridge.GapLeft, 3), scale.Fixed(most, 2))
	if r.H < low {
		words = "mm of gap, and N/mm"
	}
	p.top = r.Y + 19 + l.Paragraph(panel.Rect{X: r.X, Y: r.Y + 15, W: r.W, H: 30}, panel.Small, panel.SoftInk(), words)
	p.base = math.Round(p.top + 0.36*(p.low-p.top))
	p.axes(l)
	p.drawGap(l)
	for _, c := range cols {
		if c.Force > 0 {
			x0, x1 := p.across(c.From), p.across(c.To)
			in := math.Min(1, 0.1*(x1-x0))
			l.Rect(panel.Rect{X: x0 + in, Y: p.base + 1, W: x1 - x0 - 2*in, H: p.below(c.PerMM) - p.base - 1}, panel.Blue())
		}
	}
	l.Level(p.across(p.lo), p.across(p.hi), p.base, 1, panel.Ink())
	if cols[0].Foot == cols[len(cols)-1].Foot { // between the thirds
		for _, u := range []float64{1.0 / 3, 2.0 / 3} {
			x := p.across(p.lo + u*(p.hi-p.lo))
			l.Dashed(panel.Point{X: x, Y: p.top}, panel.Point{X: x, Y: r.Bottom() - 2}, 1, [2]float64{2, 3}, panel.Pencil())
		}
	}
	drawThirds(l, a, cols, p.across, r.Bottom()-15)
}

// axes draws the ends and the middle of both axes.
func (p *footPlot) axes(l *panel.List) {
	mark := func(y float64, words string) {
		l.Level(p.across(p.lo)-3, p.across(p.hi), y, 1, panel.Hair())
		l.TextIn(panel.Rect{X: p.at.X, Y: y - 8, W: axisWidth - 6, H: 16}, panel.Small, panel.Right, panel.SoftInk(), words)
	}
	mark(p.top, fmt.Sprintf("%g", p.scales.Gap))
	if p.low-p.base > 40 {
		mark(p.below(p.scales.Force/2), fmt.Sprintf("%g", p.scales.Force/2))
	}
	mark(p.low, fmt.Sprintf("%g", p.scales.Force))
}

// drawGap draws the relief as fitted, dashed, and the gap that is left, full.
func (p *footPlot) drawGap(l *panel.List) {
	for i, c := range p.of {
		if i == 0 || p.of[i-1].Foot != c.Foot {
			continue
		}
		b := p.of[i-1]
		from, to := panel.Point{X: p.across(b.X), Y: p.above(b.Relief)}, panel.Point{X: p.across(c.X), Y: p.above(c.Relief)}
		if i%2 == 0 || len(p.of) < 12 {
			l.Line(from, to, 1.2, panel.Ink())
		}
		if c.Gap > 0 || b.Gap > 0 {
			l.Polygon([]panel.Point{{X: from.X, Y: p.base}, {X: to.X, Y: p.base}, {X: to.X, Y: p.above(c.Gap)}, {X: from.X, Y: p.above(b.Gap)}},
				color.NRGBA{205, 196, 180, 255})
		}
	}
}

// drawThirds writes what each third of a single foot, or each foot, carries.
func drawThirds(l *panel.List, a *stage.Answered, cols []stage.Station, across func(float64) float64, y float64) {
	all := 0.0
	feet := map[int]float64{}
	for _, c := range cols {
		all += c.Force
		feet[c.Foot] += c.Force
	}
	if all <= 0 {
		l.TextIn(panel.Rect{X: across(cols[0].X), Y: y, W: 300, H: 15}, panel.Small, panel.Left, panel.SoftInk(), "slack strings: the foot carries nothing yet")
		return
	}
	lo, hi := cols[0].X, cols[len(cols)-1].X
	type part struct {
		name    string
		x, n, s float64
	}
	share := a.Bridge.Share
	parts := []part{{"bass end", lo + (hi-lo)/6, all * share.BassEnd, share.BassEnd}, {"middle", (lo + hi) / 2, all * share.Middle, share.Middle}, {"treble end", hi - (hi-lo)/6, all * share.TrebleEnd, share.TrebleEnd}}
	if len(feet) == 2 {
		parts = []part{{"bass foot", lo + (hi-lo)/6, feet[0], feet[0] / all}, {"treble foot", hi - (hi-lo)/6, feet[1], feet[1] / all}}
	}
	digits := quantity.Of("middle_share").Digits
	// The longest words for which there is room, the same for all.
	room := (across(hi)-across(lo))/float64(len(parts)) - 8
	for _, say := range []func(name string, n, s float64) string{
		func(name string, n, s float64) string {
			return fmt.Sprintf("%s %s N (%s %%)", name, scale.Fixed(n, 1), scale.Fixed(100*s, digits))
		},
		func(name string, n, _ float64) string { return fmt.Sprintf("%s %s N", name, scale.Fixed(n, 1)) },
		func(_ string, n, _ float64) string { return scale.Fixed(n, 1) + " N" },
	} {
		fits := true
		for _, p := range parts {
			fits = fits && l.Atlas.TextWidth(panel.SmallBold, say(p.name, p.n, p.s)) <= room
		}
		if !fits {
			continue
		}
		for _, p := range parts {
			l.TextIn(panel.Rect{X: across(p.x) - 90, Y: y, W: 180, H: 15}, panel.SmallBold, panel.Middle, panel.Ink(), say(p.name, p.n, p.s))
		}
		return
	}
}
