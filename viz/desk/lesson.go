package desk

import (
	"math"

	"archload/cases/lesson"

	"archload/viz/panel"
	"archload/viz/passage"
	"archload/viz/scale"
	"archload/viz/scene"
	"archload/viz/stage"
	"archload/viz/teach"
)

// openLesson begins a lesson.
func (d *Desk) openLesson(name string) error {
	l, err := lesson.Open(d.o.FS, name)
	if err != nil {
		return err
	}
	d.begin(teach.Begin(l))
	return nil
}

// begin begins a lesson that has been read.
func (d *Desk) begin(l *teach.Walk) {
	d.lesson, d.over, d.fault = l, noSheet, ""
	d.showStep()
}

// walk goes to the next step of the lesson, or to the one before.
func (d *Desk) walk(by int) {
	if d.lesson != nil && d.lesson.Go(by) {
		d.showStep()
	}
}

// showStep sets everything as the step wants it. The camera flies there.
func (d *Desk) showStep() {
	d.want = d.lesson.Want()
	d.edit = d.lesson.Own()
	d.look(d.lesson.Step().View)
	d.fly = passage.Flight{From: d.camera, Since: d.now, On: d.shown != nil}
	d.play.on, d.moving = false, d.want.Field == scene.Tone
	if d.lesson.Plays() {
		d.want.Load = 0
		d.play = play{on: true, since: d.now, from: 0, to: d.lesson.Step().Load}
	}
}

// drawCaption draws the words of a lesson's step, and the way through it.
func (d *Desk) drawCaption(controls bool) {
	if d.lesson == nil {
		return
	}
	switch d.lesson.DrawCaption(&d.panel, d.lay.Caption, controls) {
	case teach.Back:
		d.walk(-1)
	case teach.On:
		d.walk(1)
	case teach.End:
		d.escape()
	}
}

// captionHeight is how high the words of a step stand in a width, points; 0
// without a lesson.
func (d *Desk) captionHeight(width float64) float64 {
	if d.lesson == nil {
		return 0
	}
	return d.lesson.CaptionHeight(d.atlas, width)
}

// stripped tells whether the page has a strip below the drawing: with a section, or with
// the bars of a lesson's step.
func (d *Desk) stripped() bool {
	return d.want.Cut.Kind != stage.NoCut || d.lesson.Below()
}

// course is the load's way while it plays, with the halts of the design that is in hand.
func (d *Desk) course() passage.Course {
	c := passage.Course{From: d.play.from, To: d.play.to}
	if one := d.design(); one != nil {
		for _, e := range one.Events {
			c.Halts = append(c.Halts, e.Load)
		}
	}
	return c
}

// drawHalt says in the drawing what happens at the foot while the load stands there.
func (d *Desk) drawHalt(l *panel.List) {
	one := d.design()
	if !d.play.on || one == nil || d.edit >= len(d.lay.Views) {
		return
	}
	_, halt, _ := d.course().At(d.now - d.play.since)
	if halt < 0 {
		return
	}
	e, in := one.Events[halt], d.lay.Views[d.edit]
	words := "at " + scale.Reading(100*e.Load) + " % of the load: " + e.Words
	w := math.Min(l.Atlas.TextWidth(panel.BodyBold, words)+28, in.W)
	r := panel.Rect{X: in.X + (in.W-w)/2, Y: in.Y + d.lay.Head.All() + 6, W: w, H: 28}
	l.Rect(r, panel.Slip())
	l.Frame(r, 2, panel.Rust())
	l.TextIn(r, panel.BodyBold, panel.Middle, panel.Ink(), words)
}

// passes begins to let the picture that was shown go over into the new one: in a
// lesson, where they differ in more than the load.
func (d *Desk) passes(was *stage.Shown) {
	s := d.shown
	if d.lesson == nil || was == nil || was.Want.Field == s.Want.Field && was.Want.SameDesigns(s.Want) {
		return
	}
	d.was, d.fade = d.last, d.now
	d.fly = passage.Flight{From: d.camera, Since: d.now, On: d.looks.View != ""}
	d.fitted.X = 0
}

// passing adds the picture that goes out to a frame.
func (d *Desk) passing(f *Frame) {
	d.last = f.Views
	if d.lesson == nil && (d.want.Held || d.eased) { // the hand goes on
		d.was = nil
	}
	share, on := passage.Fade(d.now - d.fade)
	if d.was == nil || !on {
		d.was = nil
		return
	}
	f.Was, f.Share = d.was, share
	for i := range f.Was {
		f.Was[i].Light = true
		if i < len(f.Views) && f.Was[i].Where == f.Views[i].Where {
			f.Was[i].Camera = f.Views[i].Camera
		}
	}
	d.again = true
}
