package desk

import (
	"image"
	"math"

	"archload/viz/panel"
)

// barForm is how what is seen, and from where, has room on a page.
type barForm uint8

const (
	barBeside barForm = iota // two rows beside the panel, each word with its key
	barAcross                // two rows over the whole page
	barPlain                 // the same without the keys
	barFolded                // one row of buttons, each of which opens a list
)

const barPadding = 4.0

// keyed tells whether the words stand with their keys.
func (f barForm) keyed() bool { return f == barBeside || f == barAcross }

// height is how high the bar is, points.
func (f barForm) height() float64 {
	if f == barFolded {
		return 2*barPadding + panel.ButtonHeight
	}
	return 2*barPadding + 2*panel.ChoiceHeight
}

// headTall is how high the parts of the headings are, the greatest of all designs, points.
type headTall struct {
	title, shared, said, remark float64
}

// all is the height of a head, points.
func (t headTall) all() float64 { return headTop + t.title + t.shared + t.said + t.remark + 4 }

// Room about a heading's words, points: above, at the left, and at the right, where the panel
// is folded away.
const (
	headTop   = 8.0
	headLeft  = 14.0
	headRight = 34.0
)

// headWide is the width for words over each drawing, and for those over all of them, points.
type headWide struct {
	one, all float64
	brief    bool // warnings are only counted: there is no room for them
	line     bool // what is seen has one line, and goes on in a note at the pointer
}

// headWidth is that of n drawings in a width that they share, points.
func headWidth(free float64, n int, stacked bool) headWide {
	w := headWide{one: free, all: free}
	if n > 1 {
		w.all -= legendWidth // clear of the legend
		if w.one = w.all; !stacked {
			w.one /= float64(n)
		}
	}
	return headWide{one: w.one - headLeft - headRight, all: w.all - headLeft - headRight}
}

// layout is where things stand on the page, points.
type layout struct {
	page    panel.Rect
	bar     panel.Rect // the fields, along the top
	form    barForm
	legend  panel.Rect
	view    panel.Rect   // the drawing
	heads   []panel.Rect // of each design's title, over its drawing
	views   []panel.Rect // of each design's drawing, which goes on under its title
	head    headTall
	wide    headWide
	inset   float64    // how much of a drawing's left side the legend takes
	caption panel.Rect // of a lesson's step
	strip   panel.Rect // the section
	ruler   panel.Rect // string load
	side    panel.Rect // numbers and tools
}

// stacked tells whether two drawings stand one above the other.
func (l *layout) stacked() bool { return len(l.views) > 1 && l.views[1].Y > l.views[0].Y }

// Sizes, points.
const (
	legendWidth = 84
	rulerHeight = 58
	stripHeight = 186
	sideWidth   = 316
	sideNarrow  = 268
)

// narrowPage is the width below which the panel stands beside the drawing only if it is
// asked for, points.
const narrowPage = 640.0

// tallPage is the height from which a strip may take what a level view leaves, points.
const tallPage = 780.0

// A lesson's page needs more: below narrowLesson points the panel yields, and where the drawing
// would be lower than leastLesson points the words stand beside it, on so great a share of the
// width.
const (
	narrowLesson = 1000.0
	leastLesson  = 250.0
	asideShare   = 0.42
)

// sideWide is the width of the side on a page of w points.
func sideWide(w float64) float64 {
	switch {
	case w < narrowPage:
		return math.Min(sideNarrow, math.Round(0.62*w))
	case w < 1000:
		return sideNarrow
	}
	return sideWidth
}

// parts says which parts of the page are wanted.
type parts struct {
	form     barForm
	words    float64 // height of a lesson's words, points; 0: none
	aside    float64 // width of a column for them beside the drawing, points; 0: they stand below it
	head     headTall
	wide     headWide
	foot     float64 // height of what is said under a picture, points
	designs  int
	controls bool // bar and ruler
	side     bool // numbers and tools
	strip    bool
	low      bool    // the strip takes less of the height
	bars     float64 // height of a strip with a lesson's bars alone, points; 0: of a section
	more     float64 // by which the strip of a section is higher where the drawings leave room, points
	stacked  bool    // designs one above the other
}

// yield is what a page gives up for its drawing.
type yield struct {
	brief bool // warnings are only counted
	aside bool // the strip stands in a column beside the drawing
	line  bool // what is seen has one line
	low   bool // the strip is low
}

// yields are the ways to give up something, that which costs the eye least first.
func yields() []yield {
	return []yield{{}, {brief: true}, {brief: true, aside: true}, {brief: true, line: true}, {brief: true, aside: true, line: true},
		{brief: true, line: true, low: true}}
}

// mostHead is the share of a drawing's height that its head may take before the page yields.
const mostHead = 0.36

// Least height and width for the plate in a drawing, points, for which a page yields.
const (
	leastPlate     = 150.0
	leastPlateWide = 110.0
)

// room is how well such a page shows its drawings, 1: as well as need be.
func (p parts) room(free, h float64) float64 {
	wide, tall := p.plate(free, h)
	return math.Min(1, math.Max(0, wide)/leastPlateWide) * math.Min(1, math.Max(0, tall)/leastPlate) * math.Min(1, mostHead*p.cellTall(h)/p.head.all())
}

// plate is the room for the plate in each drawing on a page of free × h points beside the panel and a lesson's words, points.
func (p parts) plate(free, h float64) (wide, tall float64) {
	if p.words == 0 { // else a lesson's words stand there
		free -= p.aside
	}
	wide, tall = free-legendWidth, p.cellTall(h)-p.head.all()-2*roomAbove
	if p.designs > 1 && !p.stacked {
		wide /= float64(p.designs)
	}
	return wide - 2*roomBeside, tall
}

// across tells whether the bar runs over the panel, too.
func (p parts) across() bool { return p.controls && p.form != barBeside }

// stripTall is how much of a height the strip takes, points.
func (p parts) stripTall(of float64) float64 {
	if !p.strip {
		return 0
	}
	tall := stripHeight + p.more
	if p.bars > 0 {
		tall = p.bars
	}
	if p.low {
		return math.Min(tall, 0.34*of)
	}
	return math.Min(tall, 0.42*of)
}

// drawingTall is what is left of a page's height for the drawings and their titles, points.
func (p parts) drawingTall(h float64) float64 {
	if p.controls {
		h -= p.form.height() + rulerHeight
	}
	h -= p.foot
	if p.aside > 0 {
		if p.bars > 0 || p.words == 0 {
			return h // all stands in the column
		}
		return h - p.stripTall(h)
	}
	return h - p.stripTall(h) - p.words
}

// cellTall is the height for each of the drawings, points.
func (p parts) cellTall(h float64) float64 {
	if p.stacked {
		return p.drawingTall(h) / float64(p.designs)
	}
	return p.drawingTall(h)
}

// layOut divides a page of w × h points. The legend lies in the drawing; beside
// two drawings it has a column of its own.
func layOut(w, h float64, p parts) layout {
	l := layout{page: panel.Rect{W: w, H: h}, form: p.form, head: p.head, wide: p.wide}
	rest := l.page
	bar := 0.0
	if p.controls {
		bar = p.form.height()
	}
	if p.side {
		l.side = panel.Rect{X: w - sideWide(w), W: sideWide(w), H: h}
		rest.W -= l.side.W
	}
	if p.across() {
		l.side.Y, l.side.H = bar, h-bar
	}
	if p.controls {
		l.bar = panel.Rect{W: rest.W, H: bar}
		if p.across() {
			l.bar.W = w
		}
		rest.Y, rest.H = bar, rest.H-bar-rulerHeight
		l.ruler = panel.Rect{X: rest.X, Y: rest.Bottom(), W: rest.W, H: rulerHeight}
	}
	rest.H -= p.foot
	rest = l.belowDrawing(rest, p)
	l.view = rest
	n := max(1, p.designs)
	l.legend = panel.Rect{X: rest.X + 6, Y: rest.Y + p.head.all(), W: legendWidth, H: rest.H - p.head.all()}
	if n > 1 && !p.stacked {
		rest.X, rest.W = rest.X+legendWidth, rest.W-legendWidth
	} else {
		l.inset = legendWidth
	}
	for i := range n {
		cell := panel.Rect{X: rest.X + rest.W*float64(i)/float64(n), Y: rest.Y, W: rest.W / float64(n), H: rest.H}
		if p.stacked {
			cell = panel.Rect{X: rest.X, Y: rest.Y + rest.H*float64(i)/float64(n), W: rest.W, H: rest.H / float64(n)}
		}
		head := panel.Rect{X: cell.X, Y: cell.Y, W: cell.W, H: p.head.all()}
		if n == 1 && p.words == 0 {
			head.W += p.aside // which begins below it
		}
		if p.stacked && i > 0 { // clear of the legend
			head.X, head.W = head.X+legendWidth, head.W-legendWidth
		}
		l.heads = append(l.heads, head)
		l.views = append(l.views, cell)
	}
	return l
}

// belowDrawing places a strip and a lesson's words, below the drawing or in a column beside it,
// and returns what is left.
func (l *layout) belowDrawing(rest panel.Rect, p parts) panel.Rect {
	column := panel.Rect{}
	if p.aside > 0 {
		rest.W -= p.aside
		column = panel.Rect{X: rest.Right(), Y: rest.Y, W: p.aside, H: rest.H}
	}
	tall := p.stripTall(rest.H)
	switch {
	case p.aside > 0 && p.words == 0: // the strip alone, under a head that runs over both
		if p.designs == 1 {
			column.Y, column.H = column.Y+p.head.all(), column.H-p.head.all()
		}
		l.strip = column
		return rest
	case tall > 0 && p.aside > 0 && p.bars > 0:
		column.H -= tall
		l.strip = panel.Rect{X: column.X, Y: column.Bottom(), W: column.W, H: tall}
	case tall > 0:
		rest.H -= tall
		l.strip = panel.Rect{X: rest.X, Y: rest.Bottom(), W: rest.W, H: tall}
	}
	if p.aside > 0 {
		l.caption = column
		return rest
	}
	rest.H -= p.words
	l.caption = panel.Rect{X: rest.X, Y: rest.Bottom(), W: rest.W, H: p.words}
	return rest
}

// pixels is a rectangle of the page on the screen.
func pixels(r panel.Rect, density float64) image.Rectangle {
	at := func(v float64) int { return int(math.Round(v * density)) }
	return image.Rect(at(r.X), at(r.Y), at(r.Right()), at(r.Bottom()))
}
