package desk

import (
	"math"

	"archload/cases/lesson"

	"archload/viz/panel"
)

// sheets draws what lies over the page: help, or the list of lessons.
func (d *Desk) sheets() {
	switch d.over {
	case helpSheet:
		d.drawHelp()
	case lessonSheet:
		d.drawLessons()
	case startSheet:
		d.drawStart()
	case fieldMenu, viewMenu, drawnMenu:
		d.drawMenu()
	}
}

// lid lays a sheet in the middle of the page.
func (d *Desk) lid(w, h float64) panel.Rect {
	page := d.lay.Page
	w, h = min(w, page.W-24), min(h, page.H-24)
	r := panel.Rect{X: (page.W - w) / 2, Y: (page.H - h) / 2, W: w, H: h}
	d.panel.Lid(r)
	return r
}

// closeRoom is the height at the foot of a sheet for its button, points.
const closeRoom = 30.0

// drawHelp lists the hand's ways and the keys.
func (d *Desk) drawHelp() {
	r := d.lid(720, 640)
	in := panel.NewColumn(r, 18, 3)
	d.panel.Title(in.Row(28), "What the hand can do")
	const words = "Drag the drawing to turn it, with the right or middle button to shift it; the wheel or two fingers bring it nearer. " +
		"Rest the pointer on the plate to read it there; click to pin the place. Hold Shift and drag across the plate to cut it along that line. " +
		"Drag a slider, or press Tab to reach it and use the arrow keys; a double click sets it back to what the case file says."
	list := in.Rest()
	list.H -= closeRoom
	in = panel.NewColumn(d.panel.Scroll("help", list), 0, 3)
	d.panel.Paragraph(in.Row(d.atlas.ParagraphHeight(panel.Body, words, in.Width())+6), words)
	var keys []shortcut
	for _, s := range shortcuts() {
		if s.name != "" {
			keys = append(keys, s)
		}
	}
	columns := 2
	if in.Width() < 560 {
		columns = 1
	}
	high := (len(keys) + columns - 1) / columns
	cells := in.Cells(panel.RowHeight*float64(high), columns)
	for i, s := range keys {
		at := cells[i/high]
		row := panel.Rect{X: at.X, Y: at.Y + float64(i%high)*panel.RowHeight, W: at.W, H: panel.RowHeight}
		d.panel.List().TextIn(panel.Rect{X: row.X, Y: row.Y, W: 44, H: row.H}, panel.BodyBold, panel.Left, panel.Ink(), s.name)
		d.panel.List().TextIn(panel.Rect{X: row.X + 50, Y: row.Y, W: row.W - 56, H: row.H}, panel.Body, panel.Left, panel.SoftInk(), s.words)
	}
	d.panel.EndScroll(in.Used(0))
	if d.panel.Button(panel.Control{ID: "close", At: panel.Rect{X: r.Right() - 118, Y: r.Bottom() - 42, W: 100, H: panel.ButtonHeight}, Label: "Close", Key: "Esc"}) {
		d.over = noSheet
	}
}

// drawLessons lists the bundled lessons.
func (d *Desk) drawLessons() {
	if d.lessons == nil {
		d.lessons, d.lessonsErr = lesson.Bundled() // it opens every case that they show
	}
	infos, err := d.lessons, d.lessonsErr
	r := d.lid(620, 120+62*float64(len(infos)))
	c := panel.NewColumn(r, 18, 6)
	d.panel.Title(c.Row(28), "Lessons")
	if err != nil {
		d.panel.Paragraph(c.Row(40), err.Error())
	}
	list := c.Rest()
	list.H -= closeRoom
	c = panel.NewColumn(d.panel.Scroll("lessons list", list), 0, 6)
	if d.panel.Focus() == "" && len(infos) > 0 {
		d.panel.SetFocus("lesson " + infos[0].Name) // Enter begins the first
	}
	for _, l := range infos {
		words := d.atlas.ParagraphHeight(panel.Small, l.About, c.Width()-98)
		row := c.Row(math.Max(panel.ButtonHeight, 22+words+4))
		if d.panel.Button(panel.Control{ID: "lesson " + l.Name, At: panel.Rect{X: row.X, Y: row.Y + 2, W: 84, H: panel.ButtonHeight}, Label: "Begin"}) {
			if err := d.openLesson(l.Name); err != nil {
				d.fault = faultWords(err)
			}
			d.over = noSheet
		}
		at := panel.Rect{X: row.X + 98, Y: row.Y, W: row.W - 98, H: 20}
		d.panel.Heading(at, l.Title)
		d.panel.Note(panel.Rect{X: at.X, Y: row.Y + 22, W: at.W, H: words}, l.About)
	}
	d.panel.EndScroll(c.Used(0))
	if d.panel.Button(panel.Control{ID: "close", At: panel.Rect{X: r.Right() - 118, Y: r.Bottom() - 40, W: 100, H: panel.ButtonHeight}, Label: "Close", Key: "Esc"}) {
		d.over = noSheet
	}
}
