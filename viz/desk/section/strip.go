package section

import (
	"fmt"
	"image/color"
	"math"

	"archload/cases/design"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/scene"
	"archload/viz/stage"
)

// Draw draws the section: the plate as carved and as loaded with bridge and strings on
// it, and for a cut through the bridge the gap and the forces of the foot.
func (s *Strip) Draw(l *panel.List, at panel.Rect, in Input) {
	s.in, s.shown = in, in.Shown
	if s.shown == nil || s.shown.Designs[0].Cut == nil || len(s.shown.Designs[0].Cut.Along) < 2 {
		words := "Working…"
		if in.Cut == stage.FreeCut {
			words = "Hold Shift and draw a line across the plate to cut it there."
		}
		l.TextIn(at.Inset(14, 4), panel.Body, panel.Left, panel.SoftInk(), words)
		return
	}
	room := at.Inset(14, 6)
	l.Clip(at)
	defer l.Unclip()
	cut := room
	foot := s.hasFoot()
	var beside panel.Rect
	if foot || in.Beside != nil {
		cut, beside = divided(l, room)
	}
	f := s.fit(l.Atlas, cut)
	s.drawSection(l, f)
	s.caption(l, f)
	switch {
	case in.Beside != nil:
		in.Beside(beside)
	case foot:
		s.drawFoot(l, beside)
	}
}

// divided is the room of the section and of what stands beside it, or, in an upright strip, below
// it, with a line between them.
func divided(l *panel.List, room panel.Rect) (cut, beside panel.Rect) {
	cut, beside = room, room
	if room.W < upright*room.H {
		cut.H = math.Round(0.5*room.H) - 6
		beside.Y, beside.H = cut.Bottom()+12, room.Bottom()-cut.Bottom()-12
		l.Level(room.X, room.Right(), cut.Bottom()+5, 1, panel.Hair())
		return cut, beside
	}
	cut.W = math.Round(besideShare * room.W)
	beside.X, beside.W = cut.Right()+18, room.Right()-cut.Right()-18
	l.Upright(cut.Right()+8, room.Y+4, room.Bottom()-4, 1, panel.Hair())
	return cut, beside
}

// besideShare is the share of a strip's width for a section with a picture beside it.
const besideShare = 0.56

// upright is how many times as wide as high a strip is at least in which two pictures stand side by side.
const upright = 1.6

// leastShare is the share of a strip's width that its section keeps, or the heights are not written beside it.
const leastShare = 0.5

// stretch is how many times as large as widths heights are drawn, in every window in
// which the strip has room for it: an arch that is not stretched says nothing, and one
// that is stretched by the window's width cannot be known again.
const stretch = 2

// fit fits the section into a rectangle: along to scale, heights
// stretched, which is stated. While the hand moves it stays.
func (s *Strip) fit(at *panel.Atlas, r panel.Rect) stripFrame {
	if s.shown.Want.Held && s.frame.at == r {
		return s.frame
	}
	f := s.extent(r)
	foot := s.below(f)
	right, wide := s.wide(at, f)
	room := (r.H - s.captionTall(at, f) - foot) / math.Max(1, f.top-f.low)
	// A wide strip is not filled, nor is a high one: the section stands in its middle.
	f.measured = right > side
	f.sx = math.Min(wide/math.Max(1, f.hi-f.lo), room/stretch)
	f.sz = stretch * f.sx
	f.x0 = r.X + side + wide/2 - (f.lo+f.hi)/2*f.sx
	f.floor = r.Bottom() - (room-stretch*f.sx)*(f.top-f.low)/2
	f.z0 = f.floor - foot + f.low*f.sz
	s.frame = f
	return f
}

// side is the least room beside a section, points.
const side = 20.0

// wide is the room right of a section, and what is left for it.
func (s *Strip) wide(at *panel.Atlas, f stripFrame) (right, wide float64) {
	if need := measuresWide(at, !s.tellsSunk(f)); f.at.W-side-need > leastShare*f.at.W {
		return need, f.at.W - side - need
	}
	return side, f.at.W - 2*side
}

// below is the room below a section, points.
func (s *Strip) below(f stripFrame) float64 {
	if s.tellsSunk(f) {
		return 18
	}
	return 4
}

// extent is what a section in a rectangle reaches over, mm.
func (s *Strip) extent(r panel.Rect) (f stripFrame) {
	f = stripFrame{at: r, lo: math.Inf(1), hi: math.Inf(-1), low: math.Inf(1), top: math.Inf(-1)}
	for _, a := range s.shown.Designs {
		c := a.FullCut
		if c == nil {
			continue
		}
		for i := range c.Along {
			f.lo, f.hi = math.Min(f.lo, c.Along[i]), math.Max(f.hi, c.Along[i])
			if !math.IsNaN(c.Outer[i]) {
				f.low = math.Min(f.low, c.Inner[i]-math.Max(0, c.Sink[i])*s.shown.Enlarge)
				f.top = math.Max(f.top, c.Outer[i]-math.Min(0, c.Sink[i])*s.shown.Enlarge)
			}
		}
		if b, ok := standing(a, s.shown.Want.Cut.Kind, 0); ok {
			f.top = math.Max(f.top, b.saddle+1+math.Max(0, -s.down(a))*s.shown.Enlarge)
		}
		for _, b := range c.Braces {
			f.low = math.Min(f.low, b.Bottom-math.Max(0, b.Sink)*s.shown.Enlarge)
		}
	}
	return f
}

// Tall is how high a strip of a width must be for its section to fill the width, points; 0 without one.
func (s *Strip) Tall(at *panel.Atlas, width float64, in Input) float64 {
	s.in, s.shown = in, in.Shown
	if s.shown == nil || s.shown.Designs[0].Cut == nil {
		return 0
	}
	room := panel.Rect{W: width, H: 2 * low}.Inset(14, 6)
	spare := 12.0
	if s.hasFoot() || in.Beside != nil {
		room.W, spare = math.Round(besideShare*room.W), spare+60 // a chart reads better if it is higher
	}
	f := s.extent(room)
	_, wide := s.wide(at, f)
	return spare + s.captionTall(at, f) + s.below(f) + stretch*wide*(f.top-f.low)/math.Max(1, f.hi-f.lo)
}

// hasFoot tells whether the foot is drawn beside the section.
func (s *Strip) hasFoot() bool {
	edited := s.shown.Of(s.in.Edit)
	return edited != nil && edited.Bridge != nil && s.shown.Want.Cut.Kind == stage.CrossArch
}

// drawSection draws the cut of each design.
func (s *Strip) drawSection(l *panel.List, f stripFrame) {
	inks := []color.NRGBA{panel.Rust(), panel.Blue()}
	for i, a := range s.shown.Designs {
		if a.Cut == nil {
			continue
		}
		if i == 0 {
			s.drawPosts(l, f, a.Cut, a.Now.Top.Built.Case.Posts)
			s.fillCut(l, f, a.Cut)
		} else {
			stripLine(l, f, a.Cut, a.Cut.Outer, 1, color.NRGBA{120, 140, 170, 255})
		}
		if b := s.before(a); b != nil {
			s.loadedLine(l, f, b.Cut, panel.SoftInk(), true)
		}
		s.loadedLine(l, f, a.Cut, inks[i%2], i > 0)
	}
	ends := [...][2]string{stage.CrossArch: {"bass", "treble"}, stage.LongArch: {"tail", "neck"}, stage.FreeCut: {"from", "to"}}[s.shown.Want.Cut.Kind]
	from, to := f.ends(l.Atlas, ends)
	for i, a := range s.shown.Designs {
		b, ok := standing(a, s.shown.Want.Cut.Kind, s.in.Scales.Enlarge)
		switch {
		case ok && i == 0:
			b.draw(l, f)
			s.measures(l, f, &b, to)
		case ok:
			b.drawLoaded(l, f, inks[i%2])
		}
	}
	l.TextIn(from, panel.Small, panel.Right, panel.SoftInk(), ends[0])
	l.TextIn(to, panel.Small, panel.Left, panel.SoftInk(), ends[1])
	s.sunk(l, f, panel.Rect{X: from.Right() + 6, Y: f.floor - 14, W: to.X - from.Right() - 12, H: 14})
}

// ends is where the words for both ends stand: beside the rim and below it, within the strip.
func (f stripFrame) ends(a *panel.Atlas, words [2]string) (from, to panel.Rect) {
	const tall, under = 16.0, 6.0 // points; of the strip's edge below its room
	y := math.Min(f.z0, f.floor+under-tall)
	box := func(right float64, s string) panel.Rect {
		w := a.TextWidth(panel.Small, s) + 1
		return panel.Rect{X: math.Max(f.at.X-under, math.Min(right-w, f.at.Right()+under-w)), Y: y, W: w, H: tall}
	}
	from = box(f.place(f.lo, 0).X, words[0])
	to = box(f.place(f.hi, 0).X-2+a.TextWidth(panel.Small, words[1])+1, words[1])
	return from, to
}

// down is how far the bridge of a design has gone down in what is drawn, mm; negative: up. 0 without a bridge.
func (s *Strip) down(a *stage.Answered) float64 {
	switch {
	case a.Bridge == nil:
		return 0
	case s.byAir(a):
		return a.Air.Report.Bridge.Sink
	}
	return a.Bridge.Sink
}

// byAir tells whether what the air does to a design is drawn, not what the strings do.
func (s *Strip) byAir(a *stage.Answered) bool {
	return s.shown.Want.Field == scene.Humidity && a.Air != nil && a.Air.Report.Bridge != nil
}

// tellsSunk tells whether it stands below the section how far the bridge has gone down.
func (s *Strip) tellsSunk(f stripFrame) bool {
	a, w := s.shown.Designs[0], s.shown.Want
	return a.Bridge != nil && len(s.shown.Designs) == 1 && f.at.H >= low && w.Cut.Kind != stage.FreeCut && (s.byAir(a) || !w.Aired())
}

// sunk writes how far the bridge has gone down, in the longest words for which there is room.
func (s *Strip) sunk(l *panel.List, f stripFrame, r panel.Rect) {
	if !s.tellsSunk(f) {
		return
	}
	by := s.down(s.shown.Designs[0])
	down := scale.Fixed(math.Abs(by), 3) + " mm " + map[bool]string{false: "down", true: "up"}[by < 0]
	for _, words := range []string{"bridge " + down, down} {
		if l.Atlas.TextWidth(panel.SmallBold, words) <= r.W {
			l.TextIn(r, panel.SmallBold, panel.Middle, panel.Rust(), words)
			return
		}
	}
}

// words say what is cut, and how it is drawn; in a low strip in one sentence.
func (s *Strip) words(f stripFrame) (what, how string) {
	kind := s.shown.Want.Cut.Kind
	if f.at.H < low {
		what = [...]string{stage.CrossArch: "cross-arch, from the tail", stage.LongArch: "long arch, from the treble", stage.FreeCut: "section"}[kind]
		how = fmt.Sprintf("heights %d ×, movement %.3g ×", stretch, s.in.Scales.Enlarge)
		if s.shown.Want.Field == scene.Tone {
			how = "without the tone; " + how
		}
		return what, how
	}
	what = [...]string{stage.CrossArch: "cross-arch at the bridge, seen from the tail", stage.LongArch: "long arch at the bridge, seen from the treble side",
		stage.FreeCut: fmt.Sprintf("section along the line that was drawn, %s mm long", scale.Fixed(f.hi-f.lo, 0))}[kind]
	return what, s.loaded() + fmt.Sprintf("; heights %d times, movement %.3g times", stretch, s.in.Scales.Enlarge)
}

// loaded says what the lines of the section are.
func (s *Strip) loaded() string {
	state, was := "loaded", "as carved"
	w, a := s.shown.Want, s.shown.Designs[0]
	switch {
	case w.Field == scene.Tone:
		state = "under the strings, without the tone"
	case s.byAir(a):
		state, was = "in that air", "as made"
		if len(s.shown.Designs) == 1 {
			state = fmt.Sprintf("in air of %s %%", scale.Fixed(a.Air.Humidity, 0))
		}
	case w.Aired() && a.Air != nil:
		state = "loaded, in that air"
	}
	switch {
	case len(s.shown.Designs) == 2:
		return state + ": A full (rust), B dashed (blue)"
	case s.before(a) != nil:
		return state + " (rust, bold), " + was + " (grey, fine); dashes: as its file says"
	}
	return state + " (rust, bold), " + was + " (grey, fine)"
}

// before is a design as its file says, where it is drawn beside the design; else nil.
func (s *Strip) before(a *stage.Answered) *stage.Before {
	if a.Before == nil || a.Before.Cut == nil || s.shown.Want.Aired() && a.Air != nil {
		return nil
	}
	return a.Before
}

// captionTall is how high the words are, points.
func (s *Strip) captionTall(at *panel.Atlas, f stripFrame) float64 {
	what, how := s.words(f)
	return at.ParagraphHeight(panel.SmallBold, what, f.at.W) + at.ParagraphHeight(panel.Small, how, f.at.W)
}

// caption writes them.
func (s *Strip) caption(l *panel.List, f stripFrame) {
	what, how := s.words(f)
	h := l.Paragraph(panel.Rect{X: f.at.X, Y: f.at.Y, W: f.at.W}, panel.SmallBold, panel.SoftInk(), what)
	l.Paragraph(panel.Rect{X: f.at.X, Y: f.at.Y + h, W: f.at.W}, panel.Small, panel.SoftInk(), how)
}

// fillCut draws the wood of a section where it stands now, its movement enlarged, and its outline as carved:
// so bridge and bars stand on wood.
func (s *Strip) fillCut(l *panel.List, f stripFrame, c *design.LineCut) {
	wood := color.NRGBA{233, 214, 176, 255}
	at := func(i int, z float64) panel.Point {
		if !math.IsNaN(c.Sink[i]) {
			z -= s.in.Scales.Enlarge * c.Sink[i]
		}
		return f.place(c.Along[i], z)
	}
	for i := 1; i < len(c.Along); i++ {
		if math.IsNaN(c.Outer[i-1]) || math.IsNaN(c.Outer[i]) || c.Along[i]-c.Along[i-1] > 5 {
			continue
		}
		l.Polygon([]panel.Point{at(i-1, c.Outer[i-1]), at(i, c.Outer[i]), at(i, c.Inner[i]), at(i-1, c.Inner[i-1])}, wood)
	}
	for _, side := range [][]float64{c.Outer, c.Inner} {
		stripLine(l, f, c, side, 1, panel.Pencil())
	}
	for _, b := range c.Braces {
		down := s.in.Scales.Enlarge * b.Sink
		p, q := f.place(b.From, b.Top-down), f.place(b.To, b.Bottom-down)
		r := panel.Rect{X: p.X, Y: p.Y, W: q.X - p.X, H: q.Y - p.Y}
		l.Rect(r, color.NRGBA{214, 186, 138, 255})
		l.Frame(r, 1, panel.Ink())
	}
}

// loadedLine draws the outer surface as loaded, enlarged.
func (s *Strip) loadedLine(l *panel.List, f stripFrame, c *design.LineCut, k color.NRGBA, dashed bool) {
	z := make([]float64, len(c.Outer))
	for i := range z {
		z[i] = c.Outer[i] - c.Sink[i]*s.in.Scales.Enlarge
	}
	if dashed {
		stripDashes(l, f, c, z, k)
		return
	}
	stripLine(l, f, c, z, 1.6, k)
}

// stripDashes draws a height along the cut as dashes, so that it stays apart
// from a full line without colours.
func stripDashes(l *panel.List, f stripFrame, c *design.LineCut, z []float64, k color.NRGBA) {
	const on, period = 6.0, 10.0 // points
	gone := 0.0
	for i := 1; i < len(z); i++ {
		if math.IsNaN(z[i]) || math.IsNaN(z[i-1]) || c.Along[i]-c.Along[i-1] > 5 {
			continue
		}
		a, b := f.place(c.Along[i-1], z[i-1]), f.place(c.Along[i], z[i])
		if math.Mod(gone, period) < on {
			l.Line(a, b, 2, k)
		}
		gone += math.Hypot(b.X-a.X, b.Y-a.Y)
	}
}

// stripLine draws a height along the cut, broken over holes.
func stripLine(l *panel.List, f stripFrame, c *design.LineCut, z []float64, width float64, k color.NRGBA) {
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
