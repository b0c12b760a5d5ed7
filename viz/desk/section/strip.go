package section

import (
	"fmt"
	"image/color"
	"math"

	"archload/cases/design"
	"archload/viz/panel"
	"archload/viz/scale"
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
	edited := s.shown.Of(in.Edit)
	foot := edited != nil && edited.Bridge != nil && s.shown.Want.Cut.Kind == stage.CrossArch
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
	cut.W = math.Round(0.56 * room.W)
	beside.X, beside.W = cut.Right()+18, room.Right()-cut.Right()-18
	l.Upright(cut.Right()+8, room.Y+4, room.Bottom()-4, 1, panel.Hair())
	return cut, beside
}

// upright is how many times as wide as high a strip is at least in which two pictures stand side by side.
const upright = 1.6

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
	f := stripFrame{at: r, lo: math.Inf(1), hi: math.Inf(-1), low: math.Inf(1), top: math.Inf(-1)}
	for _, a := range s.shown.Designs {
		c := a.FullCut
		if c == nil {
			continue
		}
		for i := range c.Along {
			f.lo, f.hi = math.Min(f.lo, c.Along[i]), math.Max(f.hi, c.Along[i])
			if !math.IsNaN(c.Outer[i]) {
				f.low = math.Min(f.low, c.Inner[i]-math.Max(0, c.Sink[i])*s.shown.Enlarge)
				f.top = math.Max(f.top, c.Outer[i])
			}
		}
		if b, ok := standing(a, s.shown.Want.Cut.Kind, 0); ok && b.saddle > f.top {
			f.top = b.saddle + 1
		}
		for _, b := range c.Braces {
			f.low = math.Min(f.low, b.Bottom-math.Max(0, b.Sink)*s.shown.Enlarge)
		}
	}
	left, right := 20.0, 96.0 // points: room beside
	if f.narrow() {
		right = left
	}
	foot := 4.0 // points below
	if s.tellsSunk(f) {
		foot = 18
	}
	room := (r.H - s.captionTall(at, f) - foot) / math.Max(1, f.top-f.low)
	// A wide strip is not filled, nor is a high one.
	f.sx = math.Min((r.W-left-right)/math.Max(1, f.hi-f.lo), room/stretch)
	f.sz = stretch * f.sx
	f.x0 = r.X + left + (r.W-left-right)/2 - (f.lo+f.hi)/2*f.sx
	f.floor = r.Bottom()
	if spare := room - (f.top-f.low)*f.sz; f.narrow() { // an upright strip that is not filled: in its middle
		f.floor -= math.Max(0, spare/2)
	}
	f.z0 = f.floor - foot + f.low*f.sz
	s.frame = f
	return f
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
		if b := a.Before; b != nil && b.Cut != nil {
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

// tellsSunk tells whether it stands below the section how far the bridge has gone down.
func (s *Strip) tellsSunk(f stripFrame) bool {
	return s.shown.Designs[0].Bridge != nil && len(s.shown.Designs) == 1 && f.at.H >= low && s.shown.Want.Cut.Kind != stage.FreeCut
}

// sunk writes how far the bridge has gone down, in the longest words for which there is room.
func (s *Strip) sunk(l *panel.List, f stripFrame, r panel.Rect) {
	a := s.shown.Designs[0]
	if !s.tellsSunk(f) {
		return
	}
	down := scale.Fixed(a.Bridge.Sink, 3) + " mm down"
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
	two, changed := len(s.shown.Designs) == 2, s.shown.Designs[0].Before != nil
	if f.at.H < low {
		what = [...]string{stage.CrossArch: "cross-arch, from the tail", stage.LongArch: "long arch, from the treble", stage.FreeCut: "section"}[kind]
		return what, fmt.Sprintf("heights %d ×, movement %.3g ×", stretch, s.in.Scales.Enlarge)
	}
	what = [...]string{stage.CrossArch: "cross-arch at the bridge, seen from the tail", stage.LongArch: "long arch at the bridge, seen from the treble side",
		stage.FreeCut: fmt.Sprintf("section along the line that was drawn, %s mm long", scale.Fixed(f.hi-f.lo, 0))}[kind]
	switch how = "loaded (rust), and as carved (grey)"; {
	case two:
		how = "loaded: A full, B dashed (blue)"
	case changed:
		how = "loaded (rust), as carved (grey); dashes: as its file says"
	}
	return what, how + fmt.Sprintf("; heights %d times, movement %.3g times", stretch, s.in.Scales.Enlarge)
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
