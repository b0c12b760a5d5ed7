package desk

import (
	"context"
	"errors"
	"fmt"
	"image"
	"io/fs"
	"math"
	"slices"

	"archload/cases/design"
	"archload/cases/tree"
	"archload/materials"
	"archload/viz/desk/caliper"
	"archload/viz/desk/grip"
	"archload/viz/desk/layout"
	"archload/viz/desk/looks"
	"archload/viz/desk/opening"
	"archload/viz/desk/section"
	"archload/viz/desk/tones"
	"archload/viz/panel"
	"archload/viz/passage"
	"archload/viz/scene"
	"archload/viz/stage"
	"archload/viz/teach"
)

// Options are what a desk is set up with.
type Options struct {
	Names  []string       // one or two cases, as cases.Open takes them
	FS     fs.FS          // where their files are
	Solve  design.Options // how they are answered
	Woods  []materials.Card
	Looks  looks.Looks     // what is shown at first
	Lesson string          // a lesson to begin with, as cases.OpenLesson takes it; "": none
	Step   int             // of the lesson, from 1; 0: the first
	Asking bool            // a picture of the step's question, if it has one, not of its answer
	Keys   []tree.KeyValue // set on the first case from the beginning

	Folder, Home string // that names are relative to, and the user's own, from the root with slashes; "": not known

	OnMovedShape bool // numbers settle to those of second order

	// Keep writes a file whole or not at all, never over one that is there,
	// and says where it lies; nil: nothing can be kept.
	Keep func(name string, data []byte) (where string, err error)
	// Picture paints a page for a file; nil: no pictures.
	Picture func(f *Frame) (image.Image, error)
	// Remember is told the looks when they change; may be nil.
	Remember func(looks.Looks)
}

// Desk is the state of the window. All its methods belong to one goroutine.
type Desk struct {
	o      Options
	answer *stage.Answerer
	work   *stage.Worker
	stop   context.CancelFunc

	panel   panel.Panel
	atlas   *panel.Atlas
	lay     layout.Page
	looks   looks.Looks
	kept    looks.Looks // as remembered last
	want    stage.Want
	asked   *stage.Want // what the worker was asked last
	eased   bool        // what was set last is asked for by the scales of the picture before, until its own has come to rest
	wait    waiting     // for it
	shown   *stage.Shown
	busy    bool   // something is being worked on
	fault   string // why the newest want has no answer
	note    string // what was just done
	noted   noted  // since when it stands
	grow    growth
	past    past
	swing   tones.Swing
	section section.Strip
	edit    int     // the design that the tools change
	chosen  float64 // how large movements are drawn if nothing else is asked
	box     toolbox
	folded  map[string]bool
	over    overlay
	page    pageFit

	camera   scene.Camera
	fitted   image.Point // the view's size for which a named view was fitted; zero: not yet
	nearFoot bool        // it was fitted to the foot
	seen     sight
	covers   []cover // of the views
	drag     drag
	hover    *hover
	grips    grip.Hand
	caliper  caliper.Table

	play   play
	now    float64 // s, of the last input
	again  bool    // another frame is wanted at once
	moving bool
	light  bool // the picture is drawn with less care

	underHand bool    // designs or load change under the hand
	fresh     float64 // s: until when a new answer's picture is drawn with less care; 0: no longer
	alike     bool    // it is the same picture of the same designs but for what is set on them
	done      bool
	alone     bool // the picture and its caption alone: for teaching
	frames    int
	copied    string
	lesson    *teach.Walk
	fly       passage.Flight
	aim       scene.Camera // where it flies
	arrived   arrival
	last      []View  // as drawn last
	was       []View  // what goes over into the picture; nil: nothing
	fade      float64 // s, since when

	open  *opening.Sheets
	watch *opening.Watch
	reads int    // how often files were read anew
	wake  func() // asks for a frame
}

// overlay is the sheet that lies over the page.
type overlay uint8

const (
	noSheet overlay = iota
	helpSheet
	lessonSheet
	startSheet
	fileSheet
	fieldMenu
	viewMenu
	drawnMenu
)

// New sets up a desk and begins to work on its cases beside it. Close ends
// that.
func New(o Options) (*Desk, error) {
	if len(o.Names) > 2 {
		return nil, fmt.Errorf("want two cases at most, found %d", len(o.Names))
	}
	d := &Desk{o: o, looks: o.Looks.OrUsual(), answer: stage.NewAnswerer(o.FS, o.Solve), folded: usualFolds(), watch: &opening.Watch{},
		open: opening.New(opening.Options{FS: o.FS, Folder: o.Folder, Home: o.Home})}
	if o.OnMovedShape {
		d.answer.OnMovedShape()
	}
	d.want = stage.Want{Display: d.looks.Display, Cut: stage.Cut{Kind: d.looks.Cut}}
	d.want.Behind = d.looks.View == scene.Behind
	for _, n := range o.Names {
		d.want.Designs = append(d.want.Designs, stage.Design{Name: n})
	}
	if len(o.Names) > 0 {
		d.want.Designs[0].Keys = o.Keys
	} else if o.Lesson == "" {
		d.over = startSheet
	}
	if o.Lesson != "" {
		if err := d.openLesson(o.Lesson); err != nil {
			return nil, err
		}
		if n := len(d.lesson.Steps); o.Step > n || o.Step < 0 {
			return nil, fmt.Errorf("want a step from 1 to %d of this lesson, found %d", n, o.Step)
		}
		if o.Step > 1 {
			d.lesson.To(o.Step - 1)
			d.showStep()
		}
	}
	return d, nil
}

// Start lets the worker run beside the window; wake is called from its
// goroutine when there is news.
func (d *Desk) Start(wake func()) {
	ctx, stop := context.WithCancel(context.Background())
	d.stop = stop
	d.work = stage.NewWorker(d.answer, wake)
	d.open.SetWake(wake)
	d.wake = wake
	go d.work.Run(ctx, d.shown)
}

// Close ends the work beside the window.
func (d *Desk) Close() {
	if d.stop != nil {
		d.stop()
	}
}

// Settle answers the want here and now, slower numbers included: for pictures
// without a window. Ranged: the ranges of the numbers by wood and edge, too.
func (d *Desk) Settle(ctx context.Context, ranged bool) error {
	if d.lesson != nil && d.lesson.Asking && !d.o.Asking {
		d.lesson.Reveal(nil)
		d.showStep()
	}
	if d.play.on { // a step of a lesson that plays: its end
		d.play.on, d.want.Load = false, d.play.to
	}
	s, err := d.answer.Answer(ctx, d.want, d.shown)
	for err == nil && (!s.Confirmed() || ranged && !s.Ranged()) {
		s, err = d.answer.Settle(ctx, s)
	}
	if err != nil {
		return err
	}
	d.take(stage.News{Want: d.want, Shown: s})
	return nil
}

// Done tells whether the window shall close.
func (d *Desk) Done() bool { return d.done }

// Moving tells whether another frame is wanted without any input.
func (d *Desk) Moving() bool {
	return d.again || d.play.on || d.fly.On || d.was != nil || d.moving && d.beads() || d.panel.Wake() == 0
}

// Wake returns after how many seconds another frame is wanted even if the
// hand does nothing; infinite: never.
func (d *Desk) Wake() float64 {
	care := math.Inf(1)
	if d.fresh > 0 {
		care = max(d.fresh-d.now, 1e-3)
	}
	return min(d.panel.Wake(), d.noteLeft(), care)
}

// restTime is how long nothing new must come before a picture is drawn with care, s.
const restTime = 0.12

// Clipboard returns text to put on the clipboard, once.
func (d *Desk) Clipboard() (string, bool) {
	t := d.copied
	d.copied = ""
	return t, t != ""
}

// fetch takes what the worker has to say.
func (d *Desk) fetch() {
	if d.stop == nil {
		return
	}
	var fresh []stage.News
	fresh, d.busy = d.work.Fetch()
	for _, n := range fresh {
		d.take(n)
	}
}

// take puts news on the desk.
func (d *Desk) take(n stage.News) {
	if n.Err != nil {
		d.fault = faultWords(n.Err)
		d.giveBack(n.Want)
		return
	}
	if d.shown == nil || !d.shown.Want.SameDesigns(n.Want) {
		d.fault = ""
	}
	was := d.shown
	d.shown = n.Shown
	if was == nil || !slices.Equal(was.Scenes, n.Shown.Scenes) {
		if d.stop != nil && was != nil && !was.Want.Equal(n.Want) {
			d.fresh, d.alike = d.now+restTime, was.Want.SameNames(n.Want) && was.Want.Display == n.Want.Display
		}
		d.wait.ends(d.now, d.asked != nil && d.asked.Equal(n.Want))
	}
	d.rescaled(was)
	d.passes(was)
	d.again = true
}

// giveBack sets the designs back to those that are shown, if they are still
// the ones that were refused: controls must not go on showing what cannot be.
func (d *Desk) giveBack(refused stage.Want) {
	if d.shown == nil || d.drag.what != noDrag && d.drag.what != gripping {
		return
	}
	if !d.want.SameDesigns(refused) || refused.SameDesigns(d.shown.Want) {
		return
	}
	d.want.Designs = slices.Clone(d.shown.Want.Designs)
	d.past.forgetLast(refused.Designs, d.want.Designs)
	if d.want.Equal(d.shown.Want) {
		w := d.want
		d.asked = &w // it is shown already
	}
}

// faultWords says in one line why there is no answer.
func faultWords(err error) string {
	var faults tree.Faults
	if errors.As(err, &faults) && len(faults) > 0 {
		return faults[0].Err.Error()
	}
	var one *tree.FileError
	if errors.As(err, &one) {
		return one.Err.Error()
	}
	return err.Error()
}

// ask hands a changed want to the worker.
func (d *Desk) ask() {
	if d.stop == nil || len(d.want.Designs) == 0 {
		return
	}
	w := d.easing()
	if d.asked != nil && d.asked.Equal(w) {
		return
	}
	d.asked, d.busy = &w, true
	d.wait.since = d.now
	d.work.Ask(w)
}

// easing is the want as it is asked for. What is set on designs, by a drag or a click, is first seen by the scales of
// the picture before it, at once and without a change of colours; these change, announced, once nothing newer has come for
// the time of a rest. Lessons change one thing at a time by themselves, and tones and air are found at rest alone.
func (d *Desk) easing() stage.Want {
	w := d.want
	switch {
	case d.asked == nil || d.shown == nil || d.lesson != nil || w.Field == scene.Tone || w.Aired() || !w.SameNames(d.shown.Want):
		d.eased = false
	case !w.SameDesigns(*d.asked) && w.SameNames(*d.asked):
		d.eased = true
	case d.eased && d.fresh == 0 && w.SameDesigns(d.shown.Want):
		d.eased = false
	}
	w.Held = w.Held || d.eased
	return w
}

// waiting is how long the hand waits for the worker.
type waiting struct {
	since float64 // s: when the worker was asked last
	took  float64 // s: the last answer to the newest question; 0: none yet
	ended bool    // there has been an answer in this pass
}

// ends notes an answer; newest: to what was asked last.
func (w *waiting) ends(now float64, newest bool) {
	w.ended = true
	if newest {
		w.took = now - w.since
	}
}

// Longest time that an answer may take for a page to wait for it, and how much later than expected it
// may come, s and 1.
const (
	mostWaited = 0.045
	lateness   = 1.5
)

// Soon returns within how many seconds the answer to what the hand did is due; 0: none is, it is in
// the last page, or it takes longer than a page should wait.
func (d *Desk) Soon() float64 {
	if w := &d.wait; d.busy && !w.ended && w.took > 0 && w.took < mostWaited {
		return max(0, w.since+lateness*w.took-d.now)
	}
	return 0
}

// beads says whether there are lines for beads to move along, or a tone swings.
func (d *Desk) beads() bool {
	return d.shown != nil && (d.shown.Want.Flow || d.shown.Want.Field == scene.LoadFlow || d.swings())
}

// design is the answered design that the tools change; nil before the first
// answer.
func (d *Desk) design() *stage.Answered { return d.shown.Of(d.edit) }

// project gives the place on the page of a place of the scene.
func (d *Desk) project(r panel.Rect, p [3]float64) (x, y float64, ok bool) {
	w, h := r.W*d.atlas.Density, r.H*d.atlas.Density
	x, y, _, ok = d.camera.Project(p, int(math.Round(w)), int(math.Round(h)))
	return r.X + x/d.atlas.Density, r.Y + y/d.atlas.Density, ok
}

// names are the designs that are shown.
func (d *Desk) names() string {
	s := ""
	for _, one := range d.shown.Want.Designs {
		s += one.Name + "\n"
	}
	return s
}

// see shows another field; a tone is seen in motion.
func (d *Desk) see(f scene.Field) {
	d.moving = f == scene.Tone || d.moving && d.want.Field != scene.Tone
	d.want.Field = f
}

// look moves the camera to a named view.
func (d *Desk) look(view string) {
	d.looks.View, d.want.Behind = view, view == scene.Behind
	d.fitted.X = 0
	d.again = true
}
