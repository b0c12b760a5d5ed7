package desk

import (
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
	page := d.lay.page
	w, h = min(w, page.W-40), min(h, page.H-40)
	r := panel.Rect{X: (page.W - w) / 2, Y: (page.H - h) / 2, W: w, H: h}
	d.panel.Lid(r)
	return r
}

// drawHelp lists the hand's ways and the keys.
func (d *Desk) drawHelp() {
	r := d.lid(720, 640)
	in := panel.NewColumn(r, 18, 3)
	d.panel.Title(in.Row(28), "What the hand can do")
	const words = "Drag the drawing to turn it, with the right or middle button to shift it; the wheel or two fingers bring it nearer. " +
		"Rest the pointer on the plate to read it there; click to pin the place. Hold Shift and drag across the plate to cut it along that line. " +
		"Rings show what can be taken: drag the end or the middle of a bar, a post or the apex to move it, with Shift along or across alone. " +
		"Drag a slider, or press Tab to reach it and use the arrow keys; a double click sets it back to what the case file says."
	d.panel.Paragraph(in.Row(d.atlas.ParagraphHeight(panel.Body, words, in.Width())+6), words)
	in.Row(2)
	halves := in.Cells(in.Rest().H-44, 2)
	var keys []shortcut
	for _, s := range shortcuts() {
		if s.name != "" {
			keys = append(keys, s)
		}
	}
	half := (len(keys) + 1) / 2
	for i, s := range keys {
		at := halves[i/half]
		row := panel.Rect{X: at.X, Y: at.Y + float64(i%half)*panel.RowHeight, W: at.W, H: panel.RowHeight}
		d.panel.List().TextIn(panel.Rect{X: row.X, Y: row.Y, W: 44, H: row.H}, panel.BodyBold, panel.Left, panel.Ink(), s.name)
		d.panel.List().TextIn(panel.Rect{X: row.X + 50, Y: row.Y, W: row.W - 50, H: row.H}, panel.Body, panel.Left, panel.SoftInk(), s.words)
	}
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
	r := d.lid(560, 120+78*float64(len(infos)))
	c := panel.NewColumn(r, 18, 6)
	d.panel.Title(c.Row(28), "Lessons")
	if err != nil {
		d.panel.Paragraph(c.Row(40), err.Error())
	}
	for _, l := range infos {
		row := c.Row(70)
		if d.panel.Button(panel.Control{ID: "lesson " + l.Name, At: panel.Rect{X: row.X, Y: row.Y + 2, W: 84, H: panel.ButtonHeight}, Label: "Begin"}) {
			if err := d.openLesson(l.Name); err != nil {
				d.fault = faultWords(err)
			}
			d.over = noSheet
		}
		words := panel.Rect{X: row.X + 98, Y: row.Y, W: row.W - 98, H: row.H}
		d.panel.Heading(panel.Rect{X: words.X, Y: words.Y, W: words.W, H: 20}, l.Title)
		d.panel.Note(panel.Rect{X: words.X, Y: words.Y + 22, W: words.W, H: 44}, l.About)
	}
	if d.panel.Button(panel.Control{ID: "close", At: panel.Rect{X: r.Right() - 118, Y: r.Bottom() - 40, W: 100, H: panel.ButtonHeight}, Label: "Close", Key: "Esc"}) {
		d.over = noSheet
	}
}
