package opening

import "archload/viz/panel"

// Help draws what the hand can do, and the keys, each with what it does.
func Help(on On, keys [][2]string) (chosen Choice) {
	p := on.Panel
	r := lid(p, 720, 640)
	in := panel.NewColumn(r, 18, 3)
	p.Title(in.Row(28), "What the hand can do")
	const words = "Drag the drawing to turn it, with the right or middle button to shift it; the wheel or two fingers bring it nearer. " +
		"Rest the pointer on the plate to read it there; click to pin the place. Hold Shift and drag across the plate to cut it along that line. " +
		"Drag a slider, or press Tab to reach it and use the arrow keys; a double click sets it back to what the case file says."
	list := in.Rest()
	list.H -= closeRoom
	in = panel.NewColumn(p.Scroll("help", list), 0, 3)
	p.Paragraph(in.Row(p.Atlas().ParagraphHeight(panel.Body, words, in.Width())+6), words)
	columns := 2
	if in.Width() < 560 {
		columns = 1
	}
	high := (len(keys) + columns - 1) / columns
	cells := in.Cells(panel.RowHeight*float64(high), columns)
	for i, s := range keys {
		at := cells[i/high]
		row := panel.Rect{X: at.X, Y: at.Y + float64(i%high)*panel.RowHeight, W: at.W, H: panel.RowHeight}
		p.List().TextIn(panel.Rect{X: row.X, Y: row.Y, W: 44, H: row.H}, panel.BodyBold, panel.Left, panel.Ink(), s[0])
		p.List().TextIn(panel.Rect{X: row.X + 50, Y: row.Y, W: row.W - 56, H: row.H}, panel.Body, panel.Left, panel.SoftInk(), s[1])
	}
	p.EndScroll(in.Used(0))
	if closes(p, r) {
		chosen = Choice{Wish: ToClose}
	}
	return chosen
}
