package desk

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"slices"

	"archload/cases/tree"

	"archload/viz/desk/numbers"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/scene"
	"archload/viz/stage"
	"archload/viz/teach"
)

// paperColor is the ground of the drawing.
func paperColor() color.NRGBA { return color.NRGBA{250, 247, 240, 255} }

// Frame is one pass of the window: what the hand did goes in, the page comes
// out. Width and height are those of the page in pixels, density the pixels to
// a point.
func (d *Desk) Frame(width, height int, density float64, in panel.Input) *Frame {
	// Larger letters are a page of fewer points.
	density *= d.looks.letters()
	in.X, in.Y = in.X/d.looks.letters(), in.Y/d.looks.letters()
	f := &Frame{Width: width, Height: height, Density: density, Paper: paperColor()}
	if !d.letters(density) {
		return f
	}
	d.again, d.now = false, in.Now
	d.frames++
	d.fetch()
	d.advance(in.Now)
	w, h := float64(width)/density, float64(height)/density
	d.lay = layOut(w, h, d.parts(w, !d.alone))
	d.fit(density)
	d.panel.Begin(in, d.atlas, w, h)
	// The hand's picture comes with less care, and once more when it lets go.
	d.light = in.Down[panel.LeftButton] || d.drag.what != noDrag || d.play.on || d.fly.On || d.was != nil || d.moving && d.beads()
	f.Views = d.views(density, in.Now)
	d.passing(f)
	d.drawViews()
	if d.alone {
		d.drawStrip()
		d.drawCaption(true)
		d.drawFootLines()
	} else {
		d.drawControls()
	}
	d.gestures(in, density)
	d.drawHover(d.panel.List())
	d.drawGrips(d.panel.List())
	d.drawNote()
	d.sheets()
	d.shortcuts()
	f.Cursor = d.cursor()
	d.want.Held = d.play.on || d.drag.what == gripping && d.drag.moved || in.Down[panel.LeftButton] && d.panel.Held() != ""
	if d.looks.View == "" && d.camera.Pitch >= 0 {
		d.want.Behind = false // turned by hand
	}
	d.noteStep()
	d.ask()
	f.Panels = d.panel.End()
	if d.o.Remember != nil {
		d.remember()
	}
	return f
}

// Sheet is the drawing alone, without controls, for a picture of w by h pixels.
func (d *Desk) Sheet(width, height int, density float64) *Frame {
	f := &Frame{Width: width, Height: height, Density: density, Paper: paperColor()}
	if !d.letters(density) {
		return f
	}
	s := *d // a desk of its own: panel, layout and camera of the live one stay
	w, h := float64(width)/density, float64(height)/density
	s.lay = layOut(w, h, s.parts(w, false))
	s.fit(density)
	s.panel, s.light, s.fly.On, s.fitted = panel.Panel{}, false, false, image.Point{}
	s.panel.Begin(panel.Input{Away: true}, s.atlas, w, h)
	f.Views = s.views(density, 0)
	s.drawViews()
	s.drawStrip()
	s.drawCaption(false)
	s.drawFootLines()
	f.Panels = s.panel.End()
	return f
}

// letters makes the letters for the screen's density.
func (d *Desk) letters(density float64) bool {
	if d.atlas != nil && d.atlas.Density == density {
		return true
	}
	a, err := panel.NewAtlas(density)
	if err != nil {
		return false
	}
	d.atlas = a
	return true
}

// parts says what the page has.
func (d *Desk) parts(width float64, controls bool) parts {
	free := width
	if d.sideOpen(controls) {
		free -= sideWide(width)
	}
	p := parts{words: d.captionHeight(free), designs: 1, controls: controls, side: d.sideOpen(controls), strip: d.stripped()}
	if c := d.lesson.Chart(); d.want.Cut.Kind == stage.NoCut && len(c.Rows) > 0 {
		p.bars = teach.BarsHeight(c)
	}
	if controls {
		p.bar = d.barHeight(free)
	} else {
		p.foot = d.footHeight(width)
	}
	wide := free
	if d.shown != nil {
		p.designs = len(d.shown.Scenes)
		p.stacked = p.designs > 1 && d.levelView()
		if p.designs > 1 && !p.stacked {
			wide = (free - legendWidth) / float64(p.designs)
		}
	}
	p.head = d.headHeight(wide)
	return p
}

// headHeight is how high the titles stand over drawings of a width, points.
func (d *Desk) headHeight(width float64) float64 {
	lines := 1
	if d.shown != nil {
		for i, s := range d.shown.Scenes {
			lines = max(lines, len(d.atlas.Wrap(panel.Small, d.statement(i, s), width-28)))
		}
	}
	// A line is kept for a remark: the drawing must not move when one comes.
	return 34 + float64(lines+1)*panel.Small.LineHeight()
}

// fit brings the whole scene into the view as long as the user has not turned
// the camera by hand.
func (d *Desk) fit(density float64) {
	if d.shown == nil || d.looks.View == "" && d.drag.what != noDrag {
		d.fly.On = false
		return
	}
	if d.looks.View == "" { // on its way to a place, or turned by hand
		if d.fly.On {
			d.camera, d.fly.On = d.fly.At(d.aim, d.now)
			d.again = true
		}
		return
	}
	if d.fly.On { // the camera is on its way
		defer func() { d.camera, d.fly.On = d.fly.At(d.aim, d.now) }()
	}
	size := pixels(d.lay.views[0], density).Size()
	onFoot := d.shown.Want.Field.OnFoot()
	if size == d.fitted && onFoot == d.nearFoot || size.X < 1 || size.Y < 1 {
		return
	}
	d.fitted, d.nearFoot = size, onFoot
	s := d.shown.Scenes[0]
	// Beside the legend, with room all round for the words outside the plate.
	inset := d.lay.inset * density
	w, h := max(40, float64(size.X)-inset-2*roomBeside*density), max(40, float64(size.Y)-2*roomAbove*density)
	c := s.Seen(d.looks.View, int(w), int(h))
	if onFoot {
		c = s.FittedTo(c, int(w), int(h), "foot", "base")
	}
	c.Distance *= float64(size.Y) / h
	d.aim = c.Moved(inset/2, 0, size.Y)
	d.camera = d.aim
}

// Room in a view for the words outside the plate, points.
const (
	roomBeside = 34.0
	roomAbove  = 10.0
)

// levelView tells whether the plate is seen from its edge: two designs then
// stand one above the other, heights along one scale.
func (d *Desk) levelView() bool {
	return d.looks.View == "from the tail" || d.looks.View == "from the treble side"
}

// sideOpen tells whether numbers and tools stand beside the drawing.
func (d *Desk) sideOpen(controls bool) bool {
	return controls && !d.looks.NoSide
}

// views are the scenes in their rectangles, all under one camera.
func (d *Desk) views(density, now float64) []View {
	if d.shown == nil {
		return nil
	}
	var out []View
	for i, s := range d.scenes() {
		out = append(out, View{Where: pixels(d.lay.views[i], density), Scene: s.Above(d.camera), Camera: d.camera, Contours: d.looks.Contours && !s.Plain,
			Phase: d.phase(now), Light: d.light})
	}
	return out
}

// phase of the beads on the lines of force, 0 to 1.
func (d *Desk) phase(now float64) float64 {
	if !d.moving {
		return 0
	}
	const perSecond = 0.35
	_, frac := math.Modf(now * perSecond)
	return frac
}

// drawViews draws what is flat over the scenes: titles, words at the rim,
// legend, readings.
func (d *Desk) drawViews() {
	l := d.panel.List()
	if d.shown == nil {
		d.drawWaiting()
		return
	}
	for i, s := range d.shown.Scenes {
		r, head := d.lay.views[i], d.lay.heads[i]
		l.Clip(panel.Rect{X: head.X, Y: head.Y, W: head.W, H: head.H + r.H})
		d.drawLabels(l, r, i, s)
		d.drawTitle(l, head, i, s)
		l.Unclip()
		switch {
		case i > 0 && r.X > d.lay.views[0].X:
			l.Upright(r.X, head.Y+8, r.Bottom()-8, 1, panel.Hair())
		case i > 0:
			l.Level(r.X+8, r.Right()-8, head.Y, 1, panel.Hair())
		}
	}
	if s := d.shown.Scenes[0]; s.Scale != nil {
		d.drawLegend(l, *s.Scale, s.Unit)
	}
	d.drawMeasure(l, d.lay.views[0])
	if d.edit < len(d.lay.views) && d.edit < len(d.shown.Scenes) {
		d.drawArrival(l, d.lay.views[d.edit])
	}
	d.drawHalt(l)
}

// drawWaiting says why there is no drawing yet.
func (d *Desk) drawWaiting() {
	l := d.panel.List()
	words := "Working out the first picture…"
	if d.fault != "" {
		words = d.fault
	}
	if len(d.want.Designs) == 0 {
		words = ""
	}
	r := d.lay.view.Inset(40, 40)
	l.Paragraph(panel.Rect{X: r.X, Y: r.Y + r.H/2 - 20, W: r.W, H: 60}, panel.Title, panel.SoftInk(), words)
}

// drawTitle names the design, and says in one line what is seen.
func (d *Desk) drawTitle(l *panel.List, r panel.Rect, i int, s *scene.Scene) {
	title := s.Title
	keys := d.shown.Designs[i].Live.Keys()
	if len(keys) > 0 && !slices.ContainsFunc(keys, func(k tree.KeyValue) bool { return k.Key == "title" }) {
		title += ", changed"
	}
	switch {
	case len(d.shown.Scenes) == 2:
		title = string(rune('A'+i)) + "  " + title
	case len(d.shown.Designs) == 2:
		title = "What B has more than A: " + s.Field
	}
	in := panel.Rect{X: r.X + 14, Y: r.Y + 8, W: r.W - 28, H: 24}
	face := panel.TitleBold
	if l.Atlas.TextWidth(face, title) > in.W {
		face = panel.BodyBold
	}
	l.TextIn(in, face, panel.Left, panel.Ink(), title)
	below := panel.Rect{X: in.X, Y: in.Bottom(), W: in.W, H: 40}
	h := l.Paragraph(below, panel.Small, panel.SoftInk(), d.statement(i, s))
	if why, ink := d.remark(i); why != "" && d.fault == "" {
		l.TextIn(panel.Rect{X: in.X, Y: below.Y + h + 1, W: in.W, H: panel.Small.LineHeight()}, panel.Small, panel.Left, ink, why)
	}
	if d.fault != "" {
		l.Paragraph(panel.Rect{X: in.X, Y: below.Y + h + 2, W: in.W, H: 40}, panel.Small, panel.Fault(), "Not possible: "+d.fault+". The design stays as it was.")
	}
}

// remark is what must be said of a design besides: that there is nothing to
// see, or what archload solve warns of.
func (d *Desk) remark(i int) (words string, ink color.NRGBA) {
	a, w := d.shown.Designs[i], d.shown.Want
	switch {
	case w.Field.OnFoot() && a.Bridge == nil:
		return "There is no bridge on this top, so there is no foot to show.", panel.SoftInk()
	case w.Field.OnFoot() && d.camera.Pitch < 0:
		return "Seen from inside, the plate hides the foot.", panel.SoftInk()
	}
	// A page without controls lists them all at its foot.
	if all := numbers.Warned(a); len(all) > 0 && w.Load == 1 && !d.lay.bar.Empty() {
		words = all[0]
		if len(all) > 1 {
			words = fmt.Sprintf("%d warnings, the first: %s", len(all), words)
		}
		return words, panel.Fault()
	}
	return a.Pathless, panel.SoftInk()
}

// statement says what is seen, in a line or two.
func (d *Desk) statement(i int, s *scene.Scene) string {
	words := s.Statement
	if len(d.shown.Scenes) < len(d.shown.Designs) {
		words += "; A: " + d.shown.Designs[0].Now.Top.Built.Case.Title + "; B: " + d.shown.Designs[1].Now.Top.Built.Case.Title
	}
	if d.shown.Want.Behind && d.shown.Designs[i].Full.Top.Built.Back != nil {
		words += "; the back, down is out of the body"
	}
	if c := s.Scale; c != nil && c.Kind != scale.Counting {
		words += d.signWords(c)
	}
	if f := d.shown.Designs[i].Flow; f != nil && len(f.Lines) > 0 && (d.shown.Want.Flow || d.shown.Want.Field == scene.LoadFlow) && len(d.shown.Scenes) == len(d.shown.Designs) {
		words += fmt.Sprintf("; each path carries %s N, %s %% of the load", scale.Fixed(f.Lines[0].Force, 1), scale.Fixed(100*f.Lines[0].Force/f.Load, 1))
	}
	return words
}

// signWords say what the two colours of a scale mean, as far as both are used.
func (d *Desk) signWords(s *scale.Scale) string {
	switch {
	case len(d.shown.Scenes) < len(d.shown.Designs):
		return "; brown: more in B, blue: less"
	case d.shown.Want.Field == scene.Tone:
		return "; brown against blue (dashed lines)"
	case s.Kind == scale.Sinking && s.Lo == 0:
		return ""
	case s.Kind == scale.Sinking:
		return "; green to blue has gone down, brown has come up (dashed lines)"
	}
	return "; brown: pull, blue: push (dashed lines)"
}
