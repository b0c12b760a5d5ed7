// Package layout divides a page of the window: where bar, drawings, legend, strip, a lesson's words, ruler and panel
// stand, and what a small page gives up for its drawings (Yields). It draws nothing; all lengths are points.
package layout

import (
	"image"
	"math"

	"archload/viz/panel"
)

// Form is how what is seen, and from where, has room on a page.
type Form uint8

// The forms of the bar, the fullest first.
const (
	Beside Form = iota // two rows beside the panel, each word with its key
	Across             // two rows over the whole page
	Plain              // the same without the keys
	Folded             // one row of buttons, each of which opens a list
)

// BarPadding is the room about the bar's rows, points.
const BarPadding = 4.0

// Keyed tells whether the words stand with their keys.
func (f Form) Keyed() bool { return f == Beside || f == Across }

// Height is how high the bar is, points.
func (f Form) Height() float64 {
	if f == Folded {
		return 2*BarPadding + panel.ButtonHeight
	}
	return 2*BarPadding + 2*panel.ChoiceHeight
}

// HeadTall is how high the parts of the headings are, the greatest of all designs, points.
type HeadTall struct {
	Title, Shared, Said, Remark float64
}

// All is the height of a head, points.
func (t HeadTall) All() float64 { return HeadTop + t.Title + t.Shared + t.Said + t.Remark + 4 }

// Room about a heading's words, points: above, at the left, and at the right, where the panel
// is folded away.
const (
	HeadTop   = 8.0
	HeadLeft  = 14.0
	HeadRight = 34.0
)

// HeadWide is the width for words over each drawing, and for those over all of them, points.
type HeadWide struct {
	One, All float64
	Brief    bool // warnings are only counted: there is no room for them
	Line     bool // what is seen has one line, and goes on in a note at the pointer
}

// HeadWidth is that of n drawings in a width that they share, points.
func HeadWidth(free float64, n int, stacked bool) HeadWide {
	w := HeadWide{One: free, All: free}
	if n > 1 {
		w.All -= LegendWidth // clear of the legend
		if w.One = w.All; !stacked {
			w.One /= float64(n)
		}
	}
	return HeadWide{One: w.One - HeadLeft - HeadRight, All: w.All - HeadLeft - HeadRight}
}

// Page is where things stand on the page, points.
type Page struct {
	Page    panel.Rect
	Bar     panel.Rect // the fields, along the top
	Form    Form
	Legend  panel.Rect
	View    panel.Rect   // the drawing
	Heads   []panel.Rect // of each design's title, over its drawing
	Views   []panel.Rect // of each design's drawing, which goes on under its title
	Head    HeadTall
	Wide    HeadWide
	Inset   float64    // how much of a drawing's left side the legend takes
	Caption panel.Rect // of a lesson's step
	Strip   panel.Rect // the section
	Bars    bool       // the strip has a lesson's bars alone
	Ruler   panel.Rect // string load
	Side    panel.Rect // numbers and tools
}

// Stacked tells whether two drawings stand one above the other.
func (l *Page) Stacked() bool { return len(l.Views) > 1 && l.Views[1].Y > l.Views[0].Y }

// LegendWidth is how much of a drawing's side the legend takes, points.
const LegendWidth = 84.0

// Room in a view for the words outside the plate, points.
const (
	RoomBeside = 34.0
	RoomAbove  = 10.0
)

// StripHeight is the usual height of the strip, points.
const StripHeight = 186.0

// stripShare is the share of the height between bar and ruler that it has on a larger page.
const stripShare = 0.17

// Sizes, points.
const (
	rulerHeight = 58
	sideWidth   = 316
	sideNarrow  = 268
)

// NarrowPage is the width below which the panel stands beside the drawing only if it is
// asked for, points.
const NarrowPage = 640.0

// TallPage is the height from which a strip may take what a level view leaves, points.
const TallPage = 780.0

// A lesson's page needs more: below NarrowLesson points the panel yields, and where the drawing
// would be lower than LeastLesson points the words stand beside it, on so great a share of the
// width.
const (
	NarrowLesson = 1000.0
	LeastLesson  = 250.0
	AsideShare   = 0.42
)

// SideWide is the width of the side on a page of w points.
func SideWide(w float64) float64 {
	switch {
	case w < NarrowPage:
		return math.Min(sideNarrow, math.Round(0.62*w))
	case w < 1000:
		return sideNarrow
	}
	return sideWidth
}

// Parts says which parts of the page are wanted.
type Parts struct {
	Form     Form
	Words    float64 // height of a lesson's words, points; 0: none
	Aside    float64 // width of a column for them beside the drawing, points; 0: they stand below it
	Head     HeadTall
	Wide     HeadWide
	Foot     float64 // height of what is said under a picture, points
	Designs  int
	Controls bool // bar and ruler
	Side     bool // numbers and tools
	Strip    bool
	Low      bool    // the strip takes less of the height
	Bars     float64 // height of a strip with a lesson's bars alone, points; 0: of a section
	More     float64 // by which the strip of a section is higher where the drawings leave room, points
	Stacked  bool    // designs one above the other
	Level    bool    // they are seen from their edge: wide and low
}

// Yield is what a page gives up for its drawing.
type Yield struct {
	Brief bool // warnings are only counted
	Aside bool // the strip stands in a column beside the drawing
	Line  bool // what is seen has one line
	Low   bool // the strip is low
}

// Yields are the ways to give up something, that which costs the eye least first.
func Yields() []Yield {
	return []Yield{{}, {Brief: true}, {Brief: true, Aside: true}, {Brief: true, Line: true}, {Brief: true, Aside: true, Line: true},
		{Brief: true, Line: true, Low: true}}
}

// mostHead is the share of a drawing's height that its head may take before the page yields.
const mostHead = 0.36

// leastPlate is the least width and height for the plate in a drawing, points, for which a page yields.
func (p Parts) leastPlate() (wide, tall float64) {
	if p.Level {
		return 230, 70
	}
	return 110, 100
}

// Room is how well such a page shows its drawings, 1: as well as need be.
func (p Parts) Room(free, h float64) float64 {
	const least = 0.05 // one that is missing leaves the others to be weighed
	wide, tall := p.Plate(free, h)
	leastWide, leastTall := p.leastPlate()
	return math.Min(1, math.Max(least, wide/leastWide)) * math.Min(1, math.Max(least, tall/leastTall)) * math.Min(1, mostHead*p.CellTall(h)/p.Head.All())
}

// Plate is the room for the plate in each drawing on a page of free × h points beside the panel and a lesson's words, points.
func (p Parts) Plate(free, h float64) (wide, tall float64) {
	if p.Words == 0 { // else a lesson's words stand there
		free -= p.Aside
	}
	wide, tall = free-LegendWidth, p.CellTall(h)-p.Head.All()-2*RoomAbove
	if p.Designs > 1 && !p.Stacked {
		wide /= float64(p.Designs)
	}
	return wide - 2*RoomBeside, tall
}

// across tells whether the bar runs over the panel, too.
func (p Parts) across() bool { return p.Controls && p.Form != Beside }

// StripTall is how much of a height the strip takes, points.
func (p Parts) StripTall(of float64) float64 {
	if !p.Strip {
		return 0
	}
	tall := math.Max(StripHeight, stripShare*of) + p.More
	if p.Bars > 0 {
		tall = p.Bars
	}
	switch {
	case p.Low:
		return math.Min(tall, 0.34*of)
	case p.Aside > 0 && p.Bars > 0: // under the words, in a column of their own
		return math.Min(tall, math.Max(0.42*of, of-p.Words))
	}
	return math.Min(tall, 0.42*of)
}

// DrawingTall is what is left of a page's height for the drawings and their titles, points.
func (p Parts) DrawingTall(h float64) float64 {
	if p.Controls {
		h -= p.Form.Height() + rulerHeight
	}
	h -= p.Foot
	if p.Aside > 0 {
		if p.Bars > 0 || p.Words == 0 {
			return h // all stands in the column
		}
		return h - p.StripTall(h)
	}
	return h - p.StripTall(h) - p.Words
}

// CellTall is the height for each of the drawings, points.
func (p Parts) CellTall(h float64) float64 {
	if p.Stacked {
		return p.DrawingTall(h) / float64(p.Designs)
	}
	return p.DrawingTall(h)
}

// Of divides a page of w × h points. The legend lies in the drawing; beside
// two drawings it has a column of its own.
func Of(w, h float64, p Parts) Page {
	l := Page{Page: panel.Rect{W: w, H: h}, Form: p.Form, Head: p.Head, Wide: p.Wide, Bars: p.Bars > 0}
	rest := l.Page
	bar := 0.0
	if p.Controls {
		bar = p.Form.Height()
	}
	if p.Side {
		l.Side = panel.Rect{X: w - SideWide(w), W: SideWide(w), H: h}
		rest.W -= l.Side.W
	}
	if p.across() {
		l.Side.Y, l.Side.H = bar, h-bar
	}
	if p.Controls {
		l.Bar = panel.Rect{W: rest.W, H: bar}
		if p.across() {
			l.Bar.W = w
		}
		rest.Y, rest.H = bar, rest.H-bar-rulerHeight
		l.Ruler = panel.Rect{X: rest.X, Y: rest.Bottom(), W: rest.W, H: rulerHeight}
	}
	rest.H -= p.Foot
	rest = l.belowDrawing(rest, p)
	l.View = rest
	n := max(1, p.Designs)
	l.Legend = panel.Rect{X: rest.X + 6, Y: rest.Y + p.Head.All(), W: LegendWidth, H: rest.H - p.Head.All()}
	if n > 1 && !p.Stacked { // a column of its own, beside the heads, too
		l.Legend.Y, l.Legend.H = rest.Y, rest.H
		rest.X, rest.W = rest.X+LegendWidth, rest.W-LegendWidth
	} else {
		l.Inset = LegendWidth
	}
	for i := range n {
		cell := panel.Rect{X: rest.X + rest.W*float64(i)/float64(n), Y: rest.Y, W: rest.W / float64(n), H: rest.H}
		if p.Stacked {
			cell = panel.Rect{X: rest.X, Y: rest.Y + rest.H*float64(i)/float64(n), W: rest.W, H: rest.H / float64(n)}
		}
		head := panel.Rect{X: cell.X, Y: cell.Y, W: cell.W, H: p.Head.All()}
		if n == 1 && p.Words == 0 {
			head.W += p.Aside // which begins below it
		}
		if p.Stacked && i > 0 { // clear of the legend
			head.X, head.W = head.X+LegendWidth, head.W-LegendWidth
		}
		l.Heads = append(l.Heads, head)
		l.Views = append(l.Views, cell)
	}
	return l
}

// belowDrawing places a strip and a lesson's words, below the drawing or in a column beside it,
// and returns what is left.
func (l *Page) belowDrawing(rest panel.Rect, p Parts) panel.Rect {
	column := panel.Rect{}
	if p.Aside > 0 {
		rest.W -= p.Aside
		column = panel.Rect{X: rest.Right(), Y: rest.Y, W: p.Aside, H: rest.H}
	}
	tall := p.StripTall(rest.H)
	switch {
	case p.Aside > 0 && p.Words == 0: // the strip alone, under a head that runs over both
		if p.Designs == 1 {
			column.Y, column.H = column.Y+p.Head.All(), column.H-p.Head.All()
		}
		l.Strip = column
		return rest
	case tall > 0 && p.Aside > 0 && p.Bars > 0:
		column.H -= tall
		l.Strip = panel.Rect{X: column.X, Y: column.Bottom(), W: column.W, H: tall}
	case tall > 0:
		rest.H -= tall
		l.Strip = panel.Rect{X: rest.X, Y: rest.Bottom(), W: rest.W, H: tall}
	}
	if p.Aside > 0 {
		l.Caption = column
		return rest
	}
	rest.H -= p.Words
	l.Caption = panel.Rect{X: rest.X, Y: rest.Bottom(), W: rest.W, H: p.Words}
	return rest
}

// Pixels is a rectangle of the page on the screen.
func Pixels(r panel.Rect, density float64) image.Rectangle {
	at := func(v float64) int { return int(math.Round(v * density)) }
	return image.Rect(at(r.X), at(r.Y), at(r.Right()), at(r.Bottom()))
}
