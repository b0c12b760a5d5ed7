package canvas

import "image/color"

// KeyItem is a sample with its meaning.
type KeyItem struct {
	Words  string
	Sample func(g *Page, r Rect)
}

// SampleRow draws samples with their meaning in a row from at to the right,
// within w; items that do not fit start another row below.
func (p *Page) SampleRow(at Point, w float64, items []KeyItem) {
	x, y := at.X, at.Y
	for _, it := range items {
		words := 22.0
		if it.Sample == nil {
			words = 0
		}
		need := words + p.TextWidth(it.Words, Label())
		if x > at.X && x+need > at.X+w {
			x, y = at.X, y-12
		}
		if it.Sample != nil {
			it.Sample(p, Rect{x, y, x + 17, y + 6})
		}
		p.Text(Point{x + words, y}, p.Shorten(it.Words, Label(), w-words), Label(), 0)
		x += need + 14
	}
}

// LineSample is a key's sample of a line.
func LineSample(by Pen) func(*Page, Rect) {
	return func(g *Page, r Rect) {
		y := (r.Y0 + r.Y1) / 2
		g.Line(Point{r.X0, y}, Point{r.X1, y}, by)
	}
}

// AreaSample is a key's sample of an area.
func AreaSample(k color.NRGBA, by Pen) func(*Page, Rect) {
	return func(g *Page, r Rect) {
		g.Fill([][]Point{Loop(r)}, k)
		g.Stroke([][]Point{Loop(r)}, true, by)
	}
}
