package desk

import (
	"fmt"
	"image/color"
	"math"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/quantity"

	"archload/viz/panel"
)

// stripFrame places millimetres of a section on the page.
type stripFrame struct {
	x0, z0   float64 // points, of along = 0 and z = 0
	sx, sz   float64 // points to a millimetre along, and up
	stretch  float64 // sz over sx
	at       panel.Rect
	lo, hi   float64 // mm along
	low, top float64 // mm in height
}

func (f stripFrame) place(along, z float64) panel.Point {
	return panel.Point{X: f.x0 + along*f.sx, Y: f.z0 - z*f.sz}
}

// drawStrip draws the section: the plate as carved and as loaded, and for a
// cut through the bridge the gap and the forces of the foot.
func (d *Desk) drawStrip() {
	if d.want.Cut.Kind == NoCut || d.lay.strip.Empty() {
		return
	}
	d.panel.Sheet(d.lay.strip)
	l := d.panel.List()
	if d.shown == nil || d.shown.Designs[0].Cut == nil || len(d.shown.Designs[0].Cut.Along) < 2 {
		words := "Working…"
		if d.want.Cut.Kind == FreeCut {
			words = "Hold Shift and draw a line across the plate to cut it there."
		}
		l.TextIn(d.lay.strip.Inset(14, 4), panel.Body, panel.Left, panel.SoftInk(), words)
		return
	}
	in := d.lay.strip.Inset(14, 6)
	l.Clip(d.lay.strip)
	defer l.Unclip()
	cut := in
	foot := d.design() != nil && d.design().Bridge != nil && d.shown.Want.Cut.Kind == CrossArch
	if foot {
		cut.W = math.Round(0.56 * in.W)
	}
	d.drawSection(l, d.stripFrame(cut))
	if foot {
		l.Upright(cut.Right()+8, in.Y+4, in.Bottom()-4, 1, panel.Hair())
		d.drawFoot(l, panel.Rect{X: cut.Right() + 18, Y: in.Y, W: in.Right() - cut.Right() - 18, H: in.H})
	}
}

// stripFrame fits the section into a rectangle: along to scale, heights
// stretched by a whole number that is stated.
func (d *Desk) stripFrame(r panel.Rect) stripFrame {
	f := stripFrame{at: r, lo: math.Inf(1), hi: math.Inf(-1), low: math.Inf(1), top: math.Inf(-1)}
	for _, a := range d.shown.Designs {
		c := a.Cut
		if c == nil {
			continue
		}
		for i := range c.Along {
			f.lo, f.hi = math.Min(f.lo, c.Along[i]), math.Max(f.hi, c.Along[i])
			if !math.IsNaN(c.Outer[i]) {
				f.low = math.Min(f.low, c.Inner[i]-math.Max(0, c.Sink[i])*d.shown.Enlarge)
				f.top = math.Max(f.top, c.Outer[i])
			}
		}
		for _, b := range c.Braces {
			f.low = math.Min(f.low, b.Bottom-math.Max(0, b.Sink)*d.shown.Enlarge)
		}
	}
	const head, side = 38.0, 48.0 // points: words above, room beside
	f.sx = (r.W - 2*side) / math.Max(1, f.hi-f.lo)
	room := (r.H - head) / math.Max(1, f.top-f.low)
	f.stretch = math.Max(1, math.Min(5, math.Floor(room/f.sx)))
	f.sz = math.Min(f.stretch*f.sx, room)
	if f.sz < f.sx {
		f.sx, f.stretch = f.sz, 1
	}
	f.x0 = r.X + r.W/2 - (f.lo+f.hi)/2*f.sx
	f.z0 = r.Bottom() - 4 + f.low*f.sz
	return f
}

// drawSection draws the cut of each design.
func (d *Desk) drawSection(l *panel.List, f stripFrame) {
	inks := []color.NRGBA{panel.Rust(), panel.Blue()}
	for i, a := range d.shown.Designs {
		if a.Cut == nil {
			continue
		}
		if i == 0 {
			d.fillCut(l, f, a.Cut)
		} else {
			d.stripLine(l, f, a.Cut, a.Cut.Outer, 1, color.NRGBA{120, 140, 170, 255})
		}
		d.loadedLine(l, f, a.Cut, inks[i%2])
	}
	words := [...]string{CrossArch: "cross-arch at the bridge, seen from the tail", LongArch: "long arch at the bridge, seen from the bass side", FreeCut: fmt.Sprintf("section along the line that was drawn, %s mm long", decimal(f.hi-f.lo, 0))}[d.shown.Want.Cut.Kind]
	loaded := "as carved, and loaded (rust)"
	if len(d.shown.Designs) == 2 {
		loaded = "thin lines: as carved; loaded: A rust, B blue"
	}
	if f.stretch != 1 {
		loaded += fmt.Sprintf("; heights drawn %g times", f.stretch)
	}
	loaded += fmt.Sprintf("; movement %g times as large", d.shown.Enlarge)
	l.TextIn(panel.Rect{X: f.at.X, Y: f.at.Y, W: f.at.W, H: 15}, panel.SmallBold, panel.Left, panel.SoftInk(), words)
	l.TextIn(panel.Rect{X: f.at.X, Y: f.at.Y + 15, W: f.at.W, H: 15}, panel.Small, panel.Left, panel.SoftInk(), loaded)
	ends := [...][2]string{CrossArch: {"bass", "treble"}, LongArch: {"tail", "neck"}, FreeCut: {"from", "to"}}[d.shown.Want.Cut.Kind]
	y := f.z0 - 8
	l.TextIn(panel.Rect{X: f.place(f.lo, 0).X - 56, Y: y - 8, W: 50, H: 16}, panel.Small, panel.Right, panel.SoftInk(), ends[0])
	l.TextIn(panel.Rect{X: f.place(f.hi, 0).X + 6, Y: y - 8, W: 50, H: 16}, panel.Small, panel.Left, panel.SoftInk(), ends[1])
}

// fillCut draws the wood of a section as it is carved.
func (d *Desk) fillCut(l *panel.List, f stripFrame, c *design.LineCut) {
	wood := color.NRGBA{233, 214, 176, 255}
	for i := 1; i < len(c.Along); i++ {
		if math.IsNaN(c.Outer[i-1]) || math.IsNaN(c.Outer[i]) || c.Along[i]-c.Along[i-1] > 5 {
			continue
		}
		l.Polygon([]panel.Point{f.place(c.Along[i-1], c.Outer[i-1]), f.place(c.Along[i], c.Outer[i]),
			f.place(c.Along[i], c.Inner[i]), f.place(c.Along[i-1], c.Inner[i-1])}, wood)
	}
	for _, side := range [][]float64{c.Outer, c.Inner} {
		d.stripLine(l, f, c, side, 1, panel.Ink())
	}
	for _, b := range c.Braces {
		p, q := f.place(b.From, b.Top), f.place(b.To, b.Bottom)
		r := panel.Rect{X: p.X, Y: p.Y, W: q.X - p.X, H: q.Y - p.Y}
		l.Rect(r, color.NRGBA{214, 186, 138, 255})
		l.Frame(r, 1, panel.Ink())
	}
}

// loadedLine draws the outer surface as loaded, enlarged.
func (d *Desk) loadedLine(l *panel.List, f stripFrame, c *design.LineCut, k color.NRGBA) {
	z := make([]float64, len(c.Outer))
	for i := range z {
		z[i] = c.Outer[i] - c.Sink[i]*d.shown.Enlarge
	}
	d.stripLine(l, f, c, z, 1.6, k)
}

// stripLine draws a height along the cut, broken over holes.
func (d *Desk) stripLine(l *panel.List, f stripFrame, c *design.LineCut, z []float64, width float64, k color.NRGBA) {
	var run []panel.Point
	flush := func() {
		if len(run) > 1 {
			l.Polyline(run, width, k)
		}
		run = nil
	}
	for i := range z {
		if math.IsNaN(z[i]) || i > 0 && c.Along[i]-c.Along[i-1] > 5 {
			flush()
		}
		if !math.IsNaN(z[i]) {
			run = append(run, f.place(c.Along[i], z[i]))
		}
	}
	flush()
}

// leastGap is the gap that fills the strip's height if none is larger, mm: the
// hairs of a tight foot shall not look like one.
const leastGap = 0.02

// drawFoot draws the foot on its own scale: the gap above its line, and below
// it the force that each station gives to the top.
func (d *Desk) drawFoot(l *panel.List, r panel.Rect) {
	a := d.design()
	cols := answer.FootColumns(a.Now)
	if len(cols) == 0 {
		return
	}
	name := "the foot"
	if len(d.shown.Designs) == 2 {
		name += fmt.Sprintf(" of design %c", 'A'+d.edit)
	}
	most, relief, tall := 0.0, 0.0, leastGap
	for _, c := range cols {
		most, relief = math.Max(most, c.Force), math.Max(relief, c.Relief)
		tall = math.Max(tall, math.Max(c.Relief, c.Gap))
	}
	lo, hi := cols[0].X, cols[len(cols)-1].X
	across := func(x float64) float64 { return r.X + 8 + (x-lo)/(hi-lo)*(r.W-16) }
	l.TextIn(panel.Rect{X: r.X, Y: r.Y, W: r.W, H: 15}, panel.SmallBold, panel.Left, panel.SoftInk(), name)
	words := fmt.Sprintf("above: relief %s mm, gap left %s mm; below: force, up to %s N",
		decimal(relief, 3), decimal(a.Bridge.GapLeft, 3), decimal(most, 1))
	l.TextIn(panel.Rect{X: r.X, Y: r.Y + 15, W: r.W, H: 15}, panel.Small, panel.Left, panel.SoftInk(), words)
	top, bottom := r.Y+34, r.Bottom()-18
	base := math.Round(top + 0.36*(bottom-top))
	d.drawGap(l, cols, across, base, (base-top)/tall)
	for i, c := range cols {
		if c.Force > 0 {
			half := stationHalf(cols, i, across)
			l.Rect(panel.Rect{X: across(c.X) - half, Y: base + 1, W: 2 * half, H: (bottom - base - 2) * c.Force / math.Max(most, 1e-9)}, panel.Blue())
		}
	}
	l.Level(r.X, r.Right(), base, 1, panel.Ink())
	d.drawThirds(l, a, cols, across, r.Bottom()-15)
}

// stationHalf is half the width of a station's bar, points.
func stationHalf(cols []answer.FootColumn, i int, across func(float64) float64) float64 {
	j := i + 1
	if j >= len(cols) || cols[j].Foot != cols[i].Foot {
		j = i - 1
	}
	if j < 0 {
		return 2
	}
	return math.Max(1, 0.42*math.Abs(across(cols[j].X)-across(cols[i].X)))
}

// drawGap draws the relief as fitted, dashed, and the gap that is left, full.
func (d *Desk) drawGap(l *panel.List, cols []answer.FootColumn, across func(float64) float64, base, scale float64) {
	var fitted []panel.Point
	flush := func() {
		if len(fitted) > 1 {
			l.Polyline(fitted, 1, panel.Pencil())
		}
		fitted = nil
	}
	for i, c := range cols {
		if i > 0 && cols[i-1].Foot != c.Foot {
			flush()
		}
		fitted = append(fitted, panel.Point{X: across(c.X), Y: base - c.Relief*scale})
		if i > 0 && cols[i-1].Foot == c.Foot && (c.Gap > 0 || cols[i-1].Gap > 0) {
			p := cols[i-1]
			l.Polygon([]panel.Point{{X: across(p.X), Y: base}, {X: across(c.X), Y: base},
				{X: across(c.X), Y: base - c.Gap*scale}, {X: across(p.X), Y: base - p.Gap*scale}}, color.NRGBA{205, 196, 180, 255})
		}
	}
	flush()
}

// drawThirds writes what each third of a single foot, or each foot, carries.
func (d *Desk) drawThirds(l *panel.List, a *Answered, cols []answer.FootColumn, across func(float64) float64, y float64) {
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
	s := a.Bridge.Share
	parts := []part{{"bass end", lo + (hi-lo)/6, all * s.BassEnd, s.BassEnd}, {"middle", (lo + hi) / 2, all * s.Middle, s.Middle}, {"treble end", hi - (hi-lo)/6, all * s.TrebleEnd, s.TrebleEnd}}
	if len(feet) == 2 {
		parts = []part{{"bass foot", lo + (hi-lo)/6, feet[0], feet[0] / all}, {"treble foot", hi - (hi-lo)/6, feet[1], feet[1] / all}}
	}
	digits := quantity.Of("middle_share").Digits
	// The longest words for which there is room, the same for all.
	room := (across(hi)-across(lo))/float64(len(parts)) - 8
	for _, say := range []func(name string, n, s float64) string{
		func(name string, n, s float64) string {
			return fmt.Sprintf("%s %s N (%s %%)", name, decimal(n, 1), decimal(100*s, digits))
		},
		func(name string, n, _ float64) string { return fmt.Sprintf("%s %s N", name, decimal(n, 1)) },
		func(_ string, n, _ float64) string { return decimal(n, 1) + " N" },
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
