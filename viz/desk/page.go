package desk

import (
	"image"
	"image/color"
	"math"

	"archload/viz/desk/layout"
	"archload/viz/panel"
	"archload/viz/scene"
	"archload/viz/stage"
)

// Frame is one pass of the window: what the hand did goes in, the page comes
// out. Width and height are those of the page in pixels, density the pixels to
// a point.
func (d *Desk) Frame(width, height int, density float64, in panel.Input) *Frame {
	// Larger letters are a page of fewer points.
	letters := d.letterScale(width, height, density)
	density *= letters
	in.X, in.Y = in.X/letters, in.Y/letters
	f := &Frame{Width: width, Height: height, Density: density, Paper: paperColor()}
	if !d.letters(density) {
		return f
	}
	d.again, d.now, d.wait.ended = false, in.Now, false
	d.frames++
	d.fetch()
	d.advance(in.Now)
	w, h := float64(width)/density, float64(height)/density
	d.lay = layout.Of(w, h, d.parts(w, h, !d.alone))
	d.fit(density)
	d.panel.Begin(in, d.atlas, w, h)
	// The hand's picture comes with less care, and once more when it lets go; so does a new one, until
	// nothing newer comes.
	if d.now >= d.fresh {
		d.fresh = 0
	}
	d.light = d.fresh > 0 || d.eased || in.Down[panel.LeftButton] || d.drag.what != noDrag || d.play.on || d.fly.On || d.was != nil || d.moving && d.beads()
	d.underHand = d.light && (d.want.Held || d.fresh > 0 && d.alike) // held in the pass before
	f.Views = d.views(density, in.Now)
	d.passing(f)
	d.drawViews(in.More)
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
	for i := range f.Views {
		f.Views[i].Light = f.Views[i].Light || d.eased // a change in this pass: its picture is on its way
	}
	d.watchFiles()
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
	s.page = pageFit{view: d.page.view, saved: true}
	w, h := float64(width)/density, float64(height)/density
	s.lay = layout.Of(w, h, s.parts(w, h, false))
	s.fit(density)
	s.panel, s.light, s.underHand, s.fly.On, s.fitted = panel.Panel{}, false, false, false, image.Point{}
	s.panel.Begin(panel.Input{Away: true}, s.atlas, w, h)
	f.Views = s.views(density, 0)
	s.drawViews(false)
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

// parts says what a page of w × h points has.
func (d *Desk) parts(w, h float64, controls bool) layout.Parts {
	d.page.narrow = w < layout.NarrowPage || d.lesson != nil && w < layout.NarrowLesson
	p := layout.Parts{Designs: 1, Controls: controls, Side: d.sideOpen(controls), Strip: d.stripped(), Level: d.levelView()}
	free := w
	if p.Side {
		free -= layout.SideWide(w)
	}
	if controls {
		p.Form = d.barForm(w, free)
	} else {
		p.Foot = d.footHeight(w)
	}
	wide, cut := free, d.want.Cut.Kind != stage.NoCut
	p.Bars = d.lesson.BelowHeight(wide, cut)
	if p.Words = d.captionHeight(free); p.Words > 0 && p.DrawingTall(h) < layout.LeastLesson {
		p.Aside = math.Round(layout.AsideShare * free)
		wide = p.Aside
		p.Words, p.Bars, free = d.captionHeight(wide), d.lesson.BelowHeight(wide, cut), free-wide
	}
	bars := p
	if p = d.yielding(p, free, h); p.Words > 0 && p.Bars == 0 && d.lesson.Below() && p.Room(free, h) < leastRoom {
		bars.Bars = d.lesson.BelowHeight(wide, false) // without the section
		p = d.yielding(bars, free, h)
	}
	if p.Strip && p.Bars == 0 && p.Aside == 0 && d.shown != nil && h >= layout.TallPage {
		p.More = d.stripMore(p, free, h)
	}
	return p
}

// leastRoom is how ill the drawings of a lesson may be shown before the section beside its bars goes.
const leastRoom = 0.15

// yielding is the first way to divide a page of h points, so many of its width free beside the panel and a lesson's
// words, that leaves the plates large enough beside what they would be without a strip; without one that which leaves most.
func (d *Desk) yielding(p layout.Parts, free, h float64) layout.Parts {
	const enough, each = 0.6, 0.96 // 1; what is given up is worth that share of the size
	if d.shown == nil {
		return d.arranged(p, layout.Yield{}, free, h)
	}
	bare := p
	bare.Strip, bare.Bars = false, 0
	whole := d.plateSize(d.arranged(bare, layout.Yield{Brief: true, Line: true}, free, h), free, h)
	best, most, worth := p, math.Inf(-1), 1.0
	for _, y := range layout.Yields() {
		if (y.Aside || y.Low) && (!p.Strip || p.Words > 0) {
			continue
		}
		q := d.arranged(p, y, free, h)
		share, room := d.plateSize(q, free, h)/math.Max(1e-9, whole), q.Room(free, h)
		if score := worth * share * room; score > most {
			best, most = q, score
		}
		if share >= enough && room >= 1 {
			break
		}
		worth *= each
	}
	return best
}

// arranged is a page that gives up y, two designs one above the other if they are drawn larger so, or level.
func (d *Desk) arranged(p layout.Parts, y layout.Yield, free, h float64) layout.Parts {
	if y.Aside {
		p.Aside = math.Round(layout.AsideShare * free)
	}
	p.Low = y.Low
	if d.shown != nil {
		p.Designs = len(d.shown.Scenes)
	}
	own := free
	if p.Words == 0 && p.Designs > 1 { // else the head runs over both
		own -= p.Aside
	}
	head := func(stacked bool) layout.Parts {
		q := p
		q.Stacked, q.Wide = stacked, layout.HeadWidth(own, p.Designs, stacked)
		q.Wide.Brief, q.Wide.Line = y.Brief, y.Line
		q.Head = d.headTall(q.Wide)
		return q
	}
	beside := head(false)
	if p.Designs == 1 {
		return beside
	}
	const worth = 1.1
	over := head(true)
	if d.levelView() && over.DrawingTall(h) >= leastStack || beside.Wide.One < leastHead || d.plateSize(over, free, h) > worth*d.plateSize(beside, free, h) {
		return over
	}
	return beside
}

// Least height for two drawings, points, from which on those seen from the edge stand one above the other
// in any case, and the width below which a title's words would be broken.
const (
	leastStack = 300.0
	leastHead  = 90.0
)

// stripMore is how much higher the strip may be on a page h points high before the drawings,
// free points wide, get smaller: a plate seen from the tail leaves paper above and below. More than fills it with the section
// it is not.
func (d *Desk) stripMore(p layout.Parts, free, h float64) (more float64) {
	const step, most, worth = 20.0, 140.0, 0.92
	switch {
	case !d.levelView():
		return 0
	case d.shown.Want.Held:
		return d.page.more
	}
	defer func() { d.page.more = more }()
	whole := d.plateSize(p, free, h) // a lower view stands nearer, and its perspective makes it a little smaller
	need := d.section.Tall(d.atlas, free, d.sectionInput())
	for p.More < most && p.StripTall(h) < need {
		p.More += step
		if d.plateSize(p, free, h) <= worth*whole {
			return p.More - step
		}
	}
	return p.More
}

// plateSize is how large a plate is drawn on a page, by any measure.
func (d *Desk) plateSize(p layout.Parts, free, h float64) float64 {
	wide, tall := p.Plate(free, h)
	if wide < 20 || tall < 20 {
		return 0
	}
	k := sized{view: d.namedView(), names: d.names(), onFoot: d.shown.Want.Field.OnFoot(), wide: wide, tall: tall}
	size, known := d.page.sizes[k]
	if !known {
		size = tall / d.seenFrom(wide, tall).Distance
		if d.page.sizes == nil || len(d.page.sizes) > mostRooms {
			d.page.sizes = map[sized]float64{}
		}
		d.page.sizes[k] = size
	}
	return size
}

// namedView is the view by which the page is divided: turned by hand it stays as it was.
func (d *Desk) namedView() string {
	if d.looks.View != "" {
		d.page.view = d.looks.View
	}
	return d.page.view
}

// seenFrom is the camera of the named view, fitted to what the field is about in a view of w × h, of two designs
// to the larger.
func (d *Desk) seenFrom(w, h float64) (c scene.Camera) {
	for i, s := range d.shown.Scenes {
		one := s.Seen(d.namedView(), int(w), int(h))
		if d.shown.Want.Field.OnFoot() {
			one = s.FittedTo(one, int(w), int(h), "foot", "base")
		}
		if i == 0 || one.Distance > c.Distance {
			c = one
		}
	}
	return c
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
	size := layout.Pixels(d.lay.Views[0], density).Size()
	onFoot := d.shown.Want.Field.OnFoot()
	if size == d.fitted && onFoot == d.nearFoot || size.X < 1 || size.Y < 1 {
		return
	}
	d.fitted, d.nearFoot = size, onFoot
	// Beside the legend and below the title, with room all round for the words outside the plate.
	inset, head := d.lay.Inset*density, d.lay.Head.All()*density
	beside, above := layout.RoomBeside, layout.RoomAbove
	if onFoot { // the plate runs on beyond it
		beside, above = 0, 0
	}
	w, h := max(40, float64(size.X)-inset-2*beside*density), max(40, float64(size.Y)-head-2*above*density)
	c := d.seenFrom(w, h)
	c.Distance *= float64(size.Y) / h
	d.aim = c.Moved(inset/2, head/2, size.Y)
	d.camera = d.aim
}

// levelView tells whether the plate is seen from its edge: two designs then
// stand one above the other, heights along one scale.
func (d *Desk) levelView() bool {
	v := d.namedView()
	return v == "from the tail" || v == "from the treble side"
}

// views are the scenes in their rectangles, all under one camera.
func (d *Desk) views(density, now float64) []View {
	if d.shown == nil {
		return nil
	}
	var out []View
	for i, s := range d.scenes() {
		out = append(out, View{Where: layout.Pixels(d.lay.Views[i], density), Scene: s.Above(d.camera), Camera: d.camera, Contours: d.looks.Contours && !s.Plain,
			Phase: d.phase(now), Light: d.light, Pen: d.pen(s, d.lay.Views[i].H)})
	}
	return out
}

// pen is how many times as wide lines are drawn in a view so many points high: on a drawing smaller than usual less
// than once, or, with large letters, lines of force would cover the plate.
func (d *Desk) pen(s *scene.Scene, tall float64) float64 {
	const usual, least = 420.0, 0.45 // points across the scene; 1
	return math.Max(least, math.Min(1, d.across(s, tall)/usual))
}

// across is how wide a scene is drawn in a view so many points high: the sphere that holds it, points.
func (d *Desk) across(s *scene.Scene, tall float64) float64 {
	return s.Radius / d.camera.Distance * tall / math.Tan(d.camera.Lens*math.Pi/360)
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
// legend, readings. On a page that nobody sees words are not placed, which takes longest.
func (d *Desk) drawViews(unseen bool) {
	l := d.panel.List()
	if d.shown == nil {
		d.drawWaiting()
		return
	}
	for i, s := range d.shown.Scenes {
		r := d.lay.Views[i]
		if i == 0 && len(d.lay.Views) > 1 && d.lay.Inset == 0 { // a drawing that comes near fades toward the legend
			ends := []color.NRGBA{paperColor(), paperColor()}
			ends[1].A = 0
			l.Strip(panel.Rect{X: r.X, Y: r.Y, W: 36, H: r.H}, ends, false)
		}
		l.Clip(r)
		if !unseen {
			d.drawLabels(l, r, i, s)
		}
		l.Unclip()
		switch {
		case i > 0 && r.X > d.lay.Views[0].X:
			l.Upright(r.X, r.Y+d.lay.Head.All(), r.Bottom()-8, 1, panel.Hair())
		case i > 0:
			l.Level(r.X+8, r.Right()-8, r.Y, 1, panel.Hair())
		}
	}
	d.drawHeads(l)
	if s := d.shown.Scenes[0]; s.Scale != nil {
		d.drawLegend(l, *s.Scale, s.Unit)
	}
	for _, m := range d.measures() {
		m.Draw(l, sheer())
	}
	if d.edit < len(d.lay.Views) && d.edit < len(d.shown.Scenes) {
		d.drawArrival(l, d.lay.Views[d.edit])
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
	r := d.lay.View.Inset(40, 40)
	l.Paragraph(panel.Rect{X: r.X, Y: r.Y + r.H/2 - 20, W: r.W, H: 60}, panel.Title, panel.SoftInk(), words)
}
