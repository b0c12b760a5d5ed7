package canvas

import "image/color"

// Tag is a piece of text with its place.
type Tag struct {
	Text string
	In   Style
	Box  Block
	Back *color.NRGBA // fill behind the text; nil: none
}

// Draw sets the text in its place.
func (t Tag) Draw(g *Page) {
	if t.Back != nil {
		g.patch(t.Box.Grown(1.2), *t.Back)
	}
	g.Put(t.Box, t.Text, t.In)
}

// Behind is the veil behind names, so that they can be read on any colour.
func Behind() *color.NRGBA {
	c := Faded(Paper(), 0.84)
	return &c
}

// patch fills a block.
func (g *Page) patch(b Block, c color.NRGBA) {
	q := b.Corners()
	g.Fill([][]Point{q[:]}, c)
}

// AvoidLine notes a line that text should keep clear of.
func (g *Page) AvoidLine(l []Point) {
	for i := 1; i < len(l); i++ {
		g.blocked = append(g.blocked, Around(l[i-1], l[i], 0.6))
	}
}
