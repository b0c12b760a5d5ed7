package desk

import (
	"slices"

	"archload/cases/live"
	"archload/viz/desk/opening"
	"archload/viz/panel"
	"archload/viz/stage"
)

// watchFiles looks now and then whether the files of what is shown still say what was read of them.
func (d *Desk) watchFiles() {
	if d.wake == nil || d.shown == nil {
		return
	}
	var of []*live.Live
	for _, one := range d.shown.Designs {
		of = append(of, one.Live)
	}
	d.watch.Look(d.now, of, d.wake)
}

// freshly is a design whose files are read when it is shown, whatever was read of them before.
func (d *Desk) freshly(one stage.Design) stage.Design {
	if opening.IsFile(one.Name) {
		d.reads++
		one.Read = d.reads
	}
	return one
}

// readAgain shows what the files of the designs say now, with what the hand has set.
func (d *Desk) readAgain() {
	if d.lesson != nil {
		d.say("a lesson says what it shows; begin it again")
		return
	}
	designs := slices.Clone(d.want.Designs)
	for i := range designs {
		designs[i] = d.freshly(designs[i])
	}
	if sameDesigns(designs, d.want.Designs) {
		d.say("a design that comes with the program has no file that could change")
		return
	}
	d.want.Designs, d.fault = designs, ""
	d.say("the files were read again")
}

// drawChanged says that a file of the designs has changed or gone, and offers to read it again.
func (d *Desk) drawChanged(c *panel.Column) {
	file := d.watch.Changed()
	if file == "" || d.lesson != nil {
		return
	}
	words := file + " has changed or gone since it was read."
	d.panel.List().Paragraph(c.Row(d.atlas.ParagraphHeight(panel.SmallBold, words, c.Width())), panel.SmallBold, panel.Rust(), words)
	if d.panel.Button(panel.Control{ID: "read again", At: c.Row(panel.ButtonHeight), Label: "Read it again", Key: "Ctrl R", Tip: "what you have set stays set"}) {
		d.readAgain()
	}
}
