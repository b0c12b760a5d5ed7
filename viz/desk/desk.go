package desk

import (
	"context"
	"errors"
	"fmt"
	"image"
	"io/fs"
	"slices"

	"archload/cases/design"
	"archload/cases/lesson"
	"archload/cases/tree"
	"archload/materials"
	"archload/viz/panel"
	"archload/viz/scene"
)

// Options are what a desk is set up with.
type Options struct {
	Names  []string       // one or two cases, as cases.Open takes them
	FS     fs.FS          // where their files are
	Solve  design.Options // how they are answered
	Woods  []materials.Card
	Looks  Looks           // what is shown at first
	Lesson string          // a lesson to begin with, as cases.OpenLesson takes it; "": none
	Step   int             // of the lesson, from 1; 0: the first
	Keys   []tree.KeyValue // set on the first case from the beginning

	// Keep writes a file whole or not at all, never over one that is there,
	// and says where it lies; nil: nothing can be kept.
	Keep func(name string, data []byte) (where string, err error)
	// Picture paints a page for a file; nil: no pictures.
	Picture func(f *Frame) (image.Image, error)
	// Remember is told the looks when they change; may be nil.
	Remember func(Looks)
}

// Desk is the state of the window. All its methods belong to one goroutine.
type Desk struct {
	o      Options
	answer *answerer
	work   *worker
	stop   context.CancelFunc

	panel  panel.Panel
	atlas  *panel.Atlas
	lay    layout
	looks  Looks
	kept   Looks // as remembered last
	want   Want
	asked  *Want // what the worker was asked last
	shown  *Shown
	busy   bool    // something is being worked on
	fault  string  // why the newest want has no answer
	note   string  // what was just done
	edit   int     // the design that the tools change
	chosen float64 // how large movements are drawn if nothing else is asked
	box    toolbox
	folded map[string]bool
	over   overlay

	camera   scene.Camera
	fitted   image.Point // the view's size for which a named view was fitted; zero: not yet
	nearFoot bool        // it was fitted to the foot
	seen     sight
	drag     drag
	hover    *hover

	play   play
	now    float64 // s, of the last input
	again  bool    // another frame is wanted at once
	moving bool
	light  bool // the picture is drawn with less care
	done   bool
	frames int
	copied string
	lesson *walk

	lessons    []lesson.Info // that come with the program; nil: not yet asked for
	lessonsErr error
}

// overlay is the sheet that lies over the page.
type overlay uint8

const (
	noSheet overlay = iota
	helpSheet
	lessonSheet
)

// New sets up a desk and begins to work on its cases beside it. Close ends
// that.
func New(o Options) (*Desk, error) {
	if len(o.Names) > 2 || len(o.Names) == 0 && o.Lesson == "" {
		return nil, fmt.Errorf("want one case or two, found %d", len(o.Names))
	}
	d := &Desk{o: o, looks: o.Looks.orUsual(), answer: newAnswerer(o.FS, o.Solve), work: newWorker(), folded: usualFolds()}
	d.want = Want{Display: d.looks.Display, Cut: Cut{Kind: d.looks.Cut}}
	for _, n := range o.Names {
		d.want.Designs = append(d.want.Designs, Design{Name: n})
	}
	if len(o.Names) > 0 {
		d.want.Designs[0].Keys = o.Keys
	}
	if o.Lesson != "" {
		if err := d.openLesson(o.Lesson); err != nil {
			return nil, err
		}
		if n := len(d.lesson.Steps); o.Step > n || o.Step < 0 {
			return nil, fmt.Errorf("want a step from 1 to %d of this lesson, found %d", n, o.Step)
		}
		d.walk(max(0, o.Step-1))
	}
	return d, nil
}

// Start lets the worker run beside the window; wake is called from its
// goroutine when there is news.
func (d *Desk) Start(wake func()) {
	ctx, stop := context.WithCancel(context.Background())
	d.stop = stop
	d.work.answer, d.work.settle, d.work.wake = d.answer.answer, d.answer.settle, wake
	go d.work.run(ctx, d.shown)
}

// Close ends the work beside the window.
func (d *Desk) Close() {
	if d.stop != nil {
		d.stop()
	}
}

// Settle answers the want here and now, slower numbers included: for pictures
// without a window.
func (d *Desk) Settle(ctx context.Context) error {
	if d.play.on { // a step of a lesson that plays: its end
		d.play.on, d.want.Load = false, d.play.to
	}
	s, err := d.answer.answer(ctx, d.want, d.shown)
	if err == nil {
		s, err = d.answer.settle(ctx, s)
	}
	if err != nil {
		return err
	}
	d.take(news{want: d.want, shown: s})
	return nil
}

// Done tells whether the window shall close.
func (d *Desk) Done() bool { return d.done }

// Moving tells whether another frame is wanted without any input.
func (d *Desk) Moving() bool {
	return d.again || d.play.on || d.moving && d.beads() || d.panel.Wake() == 0
}

// Wake returns after how many seconds another frame is wanted even if the
// hand does nothing; infinite: never.
func (d *Desk) Wake() float64 { return d.panel.Wake() }

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
	var fresh []news
	fresh, d.busy = d.work.fetch()
	for _, n := range fresh {
		d.take(n)
	}
}

// take puts news on the desk.
func (d *Desk) take(n news) {
	if n.err != nil {
		d.fault = faultWords(n.err)
		d.giveBack(n.want)
		return
	}
	if d.shown == nil || !sameDesigns(d.shown.Want, n.want) {
		d.fault = ""
	}
	d.shown = n.shown
	d.again = true
}

// giveBack sets the designs back to those that are shown, if they are still
// the ones that were refused: controls must not go on showing what cannot be.
func (d *Desk) giveBack(refused Want) {
	if d.shown == nil || d.drag.what != noDrag {
		return
	}
	if !sameDesigns(d.want, refused) || sameDesigns(refused, d.shown.Want) {
		return
	}
	d.want.Designs = slices.Clone(d.shown.Want.Designs)
	if d.want.Equal(d.shown.Want) {
		w := d.want
		d.asked = &w // it is shown already
	}
}

func sameDesigns(a, b Want) bool { return slices.EqualFunc(a.Designs, b.Designs, Design.same) }

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
	if d.stop == nil || d.asked != nil && d.asked.Equal(d.want) {
		return
	}
	w := d.want
	d.asked, d.busy = &w, true
	d.work.ask(w)
}

// beads says whether there are lines for beads to move along.
func (d *Desk) beads() bool {
	return d.shown != nil && (d.shown.Want.Flow || d.shown.Want.Field == scene.LoadFlow)
}

// design is the answered design that the tools change; nil before the first
// answer.
func (d *Desk) design() *Answered { return lastOf(d.shown, d.edit) }
