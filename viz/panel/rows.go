package panel

import (
	"image/color"
	"strings"
)

// Title draws a bold line with a rule under it.
func (p *Panel) Title(at Rect, text string) {
	p.says(at, text, "")
	l := p.list
	l.TextIn(Rect{at.X, at.Y, at.W, at.H - 4}, TitleBold, Left, Ink(), text)
	l.Level(at.X, at.Right(), at.Bottom()-2, 1, Ink())
}

// Heading draws a bold line.
func (p *Panel) Heading(at Rect, text string) {
	p.says(at, text, "")
	p.list.TextIn(at, BodyBold, Left, Ink(), text)
}

// Paragraph writes a text in the body face wrapped to the width of at, and
// returns its height, points.
func (p *Panel) Paragraph(at Rect, text string) float64 {
	p.says(at, text, "")
	return p.list.Paragraph(at, Body, Ink(), text)
}

// Note writes a text in the small face and softer ink wrapped to the width of
// at, and returns its height, points.
func (p *Panel) Note(at Rect, text string) float64 {
	p.says(at, text, "")
	return p.list.Paragraph(at, Small, SoftInk(), text)
}

// KeyValue writes what is meant on the left and its value on the right, over
// a hair line.
func (p *Panel) KeyValue(at Rect, key, value string) {
	p.says(at, key, value)
	l := p.list
	l.Level(at.X, at.Right(), at.Bottom()-1, 1, faded(Hair(), 0.6))
	// A long value leaves room for what it is the value of.
	least := min(l.Atlas.TextWidth(Small, key), at.W/2)
	value = l.Atlas.Shortened(Body, value, at.W-least-8)
	l.TextIn(at, Body, Right, Ink(), value)
	at.W -= l.Atlas.TextWidth(Body, value) + 8
	l.TextIn(at, l.Atlas.fitting(key, at.W), Left, SoftInk(), key)
}

// says registers words for tests and scripts.
func (p *Panel) says(at Rect, label, value string) {
	p.place(Control{At: at, Label: label}, TextPlace, value)
}

// TableColumn is one column of a table.
type TableColumn struct {
	Head    string // a line end breaks it
	Numbers bool   // decimal points stand under each other, and so do signs
}

// TableRow is one row of a table.
type TableRow struct {
	Cells  []string
	Strong bool
	Paint  color.NRGBA // of the words; zero: ink
}

// Table is words and numbers in rows and columns.
type Table struct {
	Columns []TableColumn
	Rows    []TableRow
}

// numeral is a number cut at its sign and its decimal point.
type numeral struct{ sign, whole, rest string }

func cutNumber(t string) numeral {
	var n numeral
	for _, s := range []string{"−", "-", "+", "±"} {
		if strings.HasPrefix(t, s) {
			n.sign, t = strings.Replace(s, "-", "−", 1), strings.TrimPrefix(t, s)
			break
		}
	}
	end := strings.IndexFunc(t, func(r rune) bool { return r < '0' || r > '9' })
	if end < 0 {
		end = len(t)
	}
	n.whole, n.rest = t[:end], t[end:]
	return n
}

// tableWidths is what a column needs, points.
type tableWidths struct{ sign, whole, rest, all float64 }

func (t Table) widths(a *Atlas, j int) tableWidths {
	var w tableWidths
	for _, line := range strings.Split(t.Columns[j].Head, "\n") {
		w.all = max(w.all, a.TextWidth(SmallBold, line))
	}
	for _, row := range t.Rows {
		if j >= len(row.Cells) {
			continue
		}
		f := row.face()
		w.all = max(w.all, a.TextWidth(f, row.Cells[j]))
		if n := cutNumber(row.Cells[j]); n.whole != "" {
			w.sign = max(w.sign, a.TextWidth(f, n.sign))
			w.whole = max(w.whole, a.TextWidth(f, n.whole))
			w.rest = max(w.rest, a.TextWidth(f, n.rest))
		}
	}
	if t.Columns[j].Numbers {
		w.all = max(w.all, w.sign+w.whole+w.rest)
	}
	return w
}

func (r TableRow) face() Face {
	if r.Strong {
		return BodyBold
	}
	return Body
}

// headHeight returns the height of the head, points.
func (t Table) headHeight() float64 {
	lines := 0
	for _, c := range t.Columns {
		if c.Head != "" {
			lines = max(lines, 1+strings.Count(c.Head, "\n"))
		}
	}
	if lines == 0 {
		return 0
	}
	return float64(lines)*Small.LineHeight() + 6
}

// Height returns the height of the table, points.
func (t Table) Height() float64 {
	return t.headHeight() + float64(len(t.Rows))*RowHeight + 1
}

// Table draws a table from the top of at, as wide as it, and returns its
// height, points. Columns are as wide as they need; the first takes what is
// left, or gives what is missing.
func (p *Panel) Table(at Rect, t Table) float64 {
	const gap = 14.0
	n := len(t.Columns)
	if n == 0 {
		return 0
	}
	l := p.list
	widths := make([]tableWidths, n)
	left := at.W - gap*float64(n-1)
	for j := range widths {
		widths[j] = t.widths(l.Atlas, j)
		left -= widths[j].all
	}
	widths[0].all = max(0, widths[0].all+left)
	head, x := t.headHeight(), at.X
	for j, w := range widths {
		cell := Rect{x, at.Y, w.all, head}
		p.tableHead(cell, t.Columns[j])
		for i, row := range t.Rows {
			if j >= len(row.Cells) {
				continue
			}
			cell = Rect{x, at.Y + head + float64(i)*RowHeight, w.all, RowHeight}
			p.tableCell(cell, t.Columns[j], row, row.Cells[j], w)
		}
		x += w.all + gap
	}
	if head > 0 {
		l.Level(at.X, at.Right(), at.Y+head-1, 1, Ink())
	}
	for i, row := range t.Rows {
		y := at.Y + head + float64(i+1)*RowHeight
		l.Level(at.X, at.Right(), y-1, 1, faded(Hair(), 0.6))
		if len(row.Cells) > 0 {
			p.says(Rect{at.X, y - RowHeight, at.W, RowHeight}, row.Cells[0], strings.Join(row.Cells[1:], " | "))
		}
	}
	return t.Height()
}

// tableHead writes a column's head on its lowest lines.
func (p *Panel) tableHead(cell Rect, c TableColumn) {
	if c.Head == "" {
		return
	}
	lines := strings.Split(c.Head, "\n")
	h := Small.LineHeight()
	y := cell.Bottom() - 5 - h*float64(len(lines))
	for i, line := range lines {
		p.list.TextIn(Rect{cell.X, y + float64(i)*h, cell.W, h}, SmallBold, c.align(), SoftInk(), line)
	}
}

func (c TableColumn) align() Align {
	if c.Numbers {
		return Right
	}
	return Left
}

// tableCell writes one cell. Numbers end at the right with their decimal
// points under each other; signs stand under each other before the longest.
func (p *Panel) tableCell(cell Rect, c TableColumn, row TableRow, text string, w tableWidths) {
	l, f, k := p.list, row.face(), row.Paint
	if k == (color.NRGBA{}) {
		k = Ink()
	}
	n := cutNumber(text)
	if !c.Numbers || n.whole == "" {
		l.TextIn(cell, f, c.align(), k, text)
		return
	}
	base := cell.Y + (cell.H+l.Atlas.capHeight(f))/2
	point := cell.Right() - w.rest
	l.Text(Point{point - w.whole, base}, f, Right, k, n.sign)
	l.Text(Point{point, base}, f, Right, k, n.whole)
	l.Text(Point{point, base}, f, Left, k, n.rest)
}
