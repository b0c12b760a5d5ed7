package desk

import (
	"fmt"
	"image/color"
	"math"

	"archload/cases/answer"

	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/scene"
)

// paperColor is the ground of the drawing.
func paperColor() color.NRGBA { return color.NRGBA{250, 247, 240, 255} }

// Frame is one pass of the window: what the hand did goes in, the page comes
// out. Width and height are those of the page in pixels, density the pixels to
// a point.
func (d *Desk) Frame(width, height int, density float64, in panel.Input) *Frame {
	f := &Frame{Width: width, Height: height, Density: density, Paper: paperColor()}
	if !d.letters(density) {
		return f
	}
	d.again, d.now = false, in.Now
	d.frames++
	d.fetch()
	d.advance(in.Now)
	w, h := float64(width)/density, float64(height)/density
	d.lay = layOut(w, h, d.parts(w, true))
	d.fit(density)
	d.panel.Begin(in, d.atlas, w, h)
	// The hand's picture comes with less care, and once more when it lets go.
	d.light = in.Down[panel.LeftButton] || d.drag.what != noDrag || d.play.on || d.moving && d.beads()
	f.Views = d.views(density, in.Now)
	d.drawViews()
	d.drawControls()
	d.gestures(in, density)
	d.drawHover(d.panel.List())
	d.drawNote()
	d.sheets()
	d.shortcuts()
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
	s.panel, s.light = panel.Panel{}, false
	s.panel.Begin(panel.Input{Away: true}, s.atlas, w, h)
	f.Views = s.views(density, 0)
	s.drawViews()
	s.drawStrip()
	s.drawCaption(false)
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
	if controls {
		free -= sideWide(width)
	}
	p := parts{bar: d.barHeight(free), words: d.captionHeight(free), designs: 1, controls: controls, strip: d.want.Cut.Kind != NoCut, legendish: true}
	if d.shown != nil {
		p.designs = len(d.shown.Scenes)
	}
	p.head = d.headHeight((free - legendWidth) / float64(p.designs))
	return p
}

// headHeight is how high the titles stand over drawings of a width, points.
func (d *Desk) headHeight(width float64) float64 {
	lines := 1
	if d.shown != nil {
		for i, s := range d.shown.Scenes {
			n := len(d.atlas.Wrap(panel.Small, d.statement(i, s), width-28))
			if why, _ := d.remark(i); why != "" || d.fault != "" {
				n++
			}
			lines = max(lines, n)
		}
	}
	return 34 + float64(lines)*panel.Small.LineHeight()
}

// fit brings the whole scene into the view as long as the user has not turned
// the camera by hand.
func (d *Desk) fit(density float64) {
	if d.shown == nil || d.looks.View == "" {
		return
	}
	size := pixels(d.lay.views[0], density).Size()
	onFoot := d.shown.Want.Field.OnFoot()
	if size == d.fitted && onFoot == d.nearFoot || size.X < 1 || size.Y < 1 {
		return
	}
	d.fitted, d.nearFoot = size, onFoot
	s := d.shown.Scenes[0]
	d.camera = s.Seen(d.looks.View, size.X, size.Y)
	if len(d.shown.Scenes) > 1 {
		d.camera.Distance *= 1.07 // room for the words at the rim in a narrow view
	}
	if onFoot {
		d.camera = s.FittedTo(d.camera, size.X, size.Y, "foot", "base")
	}
}

// views are the scenes in their rectangles, all under one camera.
func (d *Desk) views(density, now float64) []View {
	if d.shown == nil {
		return nil
	}
	var out []View
	for i, s := range d.shown.Scenes {
		out = append(out, View{Where: pixels(d.lay.views[i], density), Scene: s, Camera: d.camera, Contours: d.looks.Contours && !s.Plain,
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
		if i > 0 {
			l.Upright(r.X, head.Y+8, r.Bottom()-8, 1, panel.Hair())
		}
	}
	if s := d.shown.Scenes[0]; s.Scale != nil {
		drawLegend(l, d.lay.legend, *s.Scale, s.Unit)
	}
}

// drawWaiting says why there is no drawing yet.
func (d *Desk) drawWaiting() {
	l := d.panel.List()
	words := "Working out the first picture…"
	if d.fault != "" {
		words = d.fault
	}
	r := d.lay.view.Inset(40, 40)
	l.Paragraph(panel.Rect{X: r.X, Y: r.Y + r.H/2 - 20, W: r.W, H: 60}, panel.Title, panel.SoftInk(), words)
}

// drawTitle names the design, and says in one line what is seen.
func (d *Desk) drawTitle(l *panel.List, r panel.Rect, i int, s *scene.Scene) {
	title := s.Title
	if len(d.shown.Designs[i].Live.Keys()) > 0 {
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
		l.Paragraph(panel.Rect{X: in.X, Y: below.Y + h + 2, W: in.W, H: 40}, panel.Small, ink, why)
	}
	if d.fault != "" {
		l.Paragraph(panel.Rect{X: in.X, Y: below.Y + h + 2, W: in.W, H: 40}, panel.Small, panel.Fault(), "Not possible: "+d.fault+". The design stays as it was.")
	}
}

// remark is what must be said of a design besides: that there is nothing to
// see, or that the wood is near its end.
func (d *Desk) remark(i int) (words string, ink color.NRGBA) {
	a, w := d.shown.Designs[i], d.shown.Want
	if a.Report != nil && w.Load == 1 {
		switch used := float64(a.Report.Strength.Used); {
		case used >= 1:
			return fmt.Sprintf("Strength used %.0f %%: expect it to crack.", 100*used), panel.Fault()
		case used >= answer.LongTerm:
			return fmt.Sprintf("Strength used %.0f %%: beyond the %.0f %% that wood bears for ten years.", 100*used, 100*answer.LongTerm), panel.Fault()
		}
	}
	switch {
	case w.Field.OnFoot() && a.Bridge == nil:
		return "There is no bridge on this top, so there is no foot to show.", panel.SoftInk()
	case w.Field.OnFoot() && d.camera.Pitch < 0:
		return "Seen from inside, the plate hides the foot.", panel.SoftInk()
	}
	return a.Pathless, panel.SoftInk()
}

// statement says what is seen, in a line or two.
func (d *Desk) statement(i int, s *scene.Scene) string {
	words := s.Statement
	if len(d.shown.Scenes) < len(d.shown.Designs) {
		words += "; A: " + d.shown.Designs[0].Now.Top.Built.Case.Title + "; B: " + d.shown.Designs[1].Now.Top.Built.Case.Title
	}
	if c := s.Scale; c != nil && c.Kind != scale.Counting {
		words += d.signWords(c)
	}
	if f := d.shown.Designs[i].Flow; f != nil && len(f.Lines) > 0 && len(d.shown.Scenes) == len(d.shown.Designs) {
		words += fmt.Sprintf("; each path carries %s N, %s %% of the load", decimal(f.Lines[0].Force, 1), decimal(100*f.Lines[0].Force/f.Load, 1))
	}
	return words
}

// signWords say what the two colours of a scale mean, as far as both are used.
func (d *Desk) signWords(s *scale.Scale) string {
	switch {
	case len(d.shown.Scenes) < len(d.shown.Designs):
		return "; brown: more in B, blue: less"
	case s.Kind == scale.Sinking && s.Lo == 0:
		return ""
	case s.Kind == scale.Sinking:
		return "; green to blue has gone down, brown has come up"
	}
	return "; brown: pull, blue: push"
}

// drawLabels writes the words of the scene where they stand, each moved out of
// the way of those before it.
func (d *Desk) drawLabels(l *panel.List, r panel.Rect, i int, s *scene.Scene) {
	var taken []panel.Rect
	for _, w := range s.Labels {
		x, y, ok := d.project(r, w.At)
		if !ok || w.Kind == scene.Orientation && d.hides(i, s, w) {
			continue
		}
		face, ink := panel.Small, panel.SoftInk()
		switch w.Kind {
		case scene.Orientation:
			ink = panel.SoftInk()
		case scene.SectorForce:
			face, ink = panel.SmallBold, panel.Ink()
		case scene.Part:
			ink = panel.Ink()
		}
		at := tagPlace(l, panel.Point{X: x, Y: y}, d.off(r, w), face, w.Text)
		at = free(at, taken)
		taken = append(taken, at)
		ground := paperColor()
		ground.A = 190
		l.Rect(at, ground)
		l.TextIn(at, face, panel.Middle, ink, w.Text)
	}
}

// hides says whether a word of view i stands behind something; worked out once
// for each camera, when the hand has let go.
func (d *Desk) hides(i int, s *scene.Scene, w scene.Label) bool {
	if d.drag.what != noDrag {
		return false
	}
	if d.seen.camera != d.camera {
		d.seen = sight{d.camera, map[hiddenWord]bool{}}
	}
	k := hiddenWord{i, w.Text}
	h, known := d.seen.hidden[k]
	if !known {
		at := w.At
		for k := range at {
			at[k] += wordOff * w.Toward[k]
		}
		h = s.Hides(d.camera, at)
		d.seen.hidden[k] = h
	}
	return h
}

// wordOff is how far off the rim a word is taken to stand, mm.
const wordOff = 12

// free moves a word down or up until it covers none of the others.
func free(r panel.Rect, taken []panel.Rect) panel.Rect {
	start := r
	for _, step := range []float64{0, 1, -1, 2, -2, 3, -3, 4} {
		r.Y = start.Y + step*(r.H+1)
		alone := true
		for _, o := range taken {
			alone = alone && r.Meet(o).Empty()
		}
		if alone {
			return r
		}
	}
	return start
}

// off is where on the page a label stands off its place to, a unit step.
func (d *Desk) off(r panel.Rect, w scene.Label) panel.Point {
	if w.Toward == ([3]float64{}) {
		return panel.Point{}
	}
	far := w.At
	for k := range far {
		far[k] += 10 * w.Toward[k]
	}
	x, y, ok := d.project(r, w.At)
	x2, y2, ok2 := d.project(r, far)
	n := math.Hypot(x2-x, y2-y)
	if !ok || !ok2 || n < 1e-6 {
		return panel.Point{}
	}
	return panel.Point{X: (x2 - x) / n, Y: (y2 - y) / n}
}

// tagPlace is where a word stands beside a place.
func tagPlace(l *panel.List, at, off panel.Point, face panel.Face, text string) panel.Rect {
	w, h := l.Atlas.TextWidth(face, text), face.LineHeight()
	c := panel.Point{X: at.X + off.X*(w/2+6), Y: at.Y + off.Y*(h/2+4)}
	return panel.Rect{X: c.X - w/2 - 3, Y: c.Y - h/2, W: w + 6, H: h}
}

// project gives the place on the page of a place of the scene.
func (d *Desk) project(r panel.Rect, p [3]float64) (x, y float64, ok bool) {
	w, h := r.W*d.atlas.Density, r.H*d.atlas.Density
	x, y, _, ok = d.camera.Project(p, int(math.Round(w)), int(math.Round(h)))
	return r.X + x/d.atlas.Density, r.Y + y/d.atlas.Density, ok
}
