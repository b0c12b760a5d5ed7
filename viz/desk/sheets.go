package desk

import "archload/viz/panel"

// sheets draws what lies over the page: help, or the list of lessons.
func (d *Desk) sheets() {
	switch d.over {
	case helpSheet:
		d.drawHelp()
	case lessonSheet:
		d.opens(d.open.Lessons(d.openOn()))
	case startSheet:
		d.opens(d.open.Start(d.openOn()))
	case fileSheet:
		d.opens(d.open.Files(d.openOn()))
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
