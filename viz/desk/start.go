package desk

import (
	"path"

	"archload/cases"
	"archload/viz/desk/looks"
	"archload/viz/panel"
	"archload/viz/stage"
)

// openDesign shows a design, alone.
func (d *Desk) openDesign(name string) {
	d.want.Designs = []stage.Design{{Name: name}}
	d.beside = nil // another one may be there the next time
	d.want.Pins, d.lesson, d.over, d.fault, d.edit = nil, nil, noSheet, "", 0
	d.look(usualView(d.looks.View))
}

// mostBeside is how many case files of the folder stand on the start page.
const mostBeside = 24

// drawBeside lists the case files of the folder.
func (d *Desk) drawBeside(c *panel.Column) {
	if d.beside == nil {
		d.beside = cases.Beside(d.o.FS, mostBeside)
	}
	if len(d.beside) == 0 {
		return
	}
	d.panel.Heading(c.Row(20), "Case files in this folder")
	n := max(1, int(c.Width()/170))
	var row []panel.Rect
	for i, name := range d.beside {
		if i%n == 0 {
			row = c.Cells(panel.ButtonHeight, n)
		}
		if d.panel.Button(panel.Control{ID: "file " + name, At: row[i%n], Label: stem(name), Tip: name}) {
			d.openDesign(name)
		}
	}
	c.Space(4)
}

// drawStart lists what can be opened: the designs shown last, the bundled ones,
// the lessons.
func (d *Desk) drawStart() {
	r := d.lid(720, 620)
	c := panel.NewColumn(r, 18, 6)
	d.panel.Title(c.Row(28), "What do you want to see?")
	lessonsWords := "The lessons: how a carved top bears its strings, step by step"
	if c.Width() < 440 {
		lessonsWords = "The lessons, step by step"
	}
	if d.panel.Button(panel.Control{ID: "start lessons", At: c.Row(panel.ButtonHeight), Label: lessonsWords, Key: "L"}) {
		d.over = lessonSheet
	}
	if last := d.looks.Designs(); len(last) > 0 {
		d.panel.Heading(c.Row(20), "Your last designs")
		row := c.Cells(panel.ButtonHeight, max(2, min(looks.MostRecent, int(c.Width()/120))))
		for i, name := range last[:min(len(last), len(row))] {
			if d.panel.Button(panel.Control{ID: "recent " + name, At: row[i], Label: stem(name), Tip: path.Clean(name)}) {
				d.openDesign(name)
			}
		}
	}
	if d.bundled == nil {
		d.bundled, d.bundledErr = cases.Bundled() // it reads them all
	}
	if d.bundledErr != nil {
		d.panel.Note(c.Row(20), d.bundledErr.Error())
	}
	const own = "A design of your own: archview MY-DESIGN.toml; archload new makes one to begin with."
	list := c.Rest()
	foot := d.atlas.ParagraphHeight(panel.Small, own, list.W)
	list.H -= foot + 6
	in := panel.NewColumn(d.panel.Scroll("start", list), 0, 6)
	d.drawBeside(in)
	d.panel.Heading(in.Row(20), "Designs that come with the program")
	for _, i := range d.bundled {
		at, wide := 178.0, 166.0 // of the words beside the button
		if in.Width() < 460 {    // or under it
			at, wide = 0, in.Width()
		}
		title := d.atlas.ParagraphHeight(panel.BodyBold, i.Title, in.Width()-at-8)
		words := d.atlas.ParagraphHeight(panel.Small, i.Shows, in.Width()-at-8)
		under := 0.0
		if at == 0 {
			under = panel.ButtonHeight + 4
		}
		row := in.Row(max(panel.ButtonHeight, under+title+words+4))
		if d.panel.Button(panel.Control{ID: "open " + i.Name, At: panel.Rect{X: row.X, Y: row.Y, W: wide, H: panel.ButtonHeight}, Label: i.Name}) {
			d.openDesign(i.Name)
		}
		l := d.panel.List()
		l.Paragraph(panel.Rect{X: row.X + at, Y: row.Y + under, W: row.W - at - 8, H: title}, panel.BodyBold, panel.Ink(), i.Title)
		d.panel.Note(panel.Rect{X: row.X + at, Y: row.Y + under + title + 1, W: row.W - at - 8, H: words}, i.Shows)
	}
	d.panel.EndScroll(in.Used(0))
	d.panel.Note(panel.Rect{X: list.X, Y: list.Bottom() + 6, W: list.W, H: foot}, own)
}
