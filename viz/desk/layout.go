package desk

import (
	"image"
	"math"

	"archload/viz/panel"
)

// layout is where things stand on the page, points.
type layout struct {
	page    panel.Rect
	bar     panel.Rect // the fields, along the top
	legend  panel.Rect
	view    panel.Rect   // the drawing
	heads   []panel.Rect // of each design's title
	views   []panel.Rect // of each design's drawing
	inset   float64      // how much of a drawing's left side the legend takes
	caption panel.Rect   // of a lesson's step
	strip   panel.Rect   // the section
	ruler   panel.Rect   // string load
	side    panel.Rect   // numbers and tools
}

// Sizes, points.
const (
	legendWidth = 84
	rulerHeight = 58
	stripHeight = 186
	sideWidth   = 316
	sideNarrow  = 268
)

// sideWide is the width of the side on a page of w points.
func sideWide(w float64) float64 {
	if w < 1000 {
		return sideNarrow
	}
	return sideWidth
}

// parts says which parts of the page are wanted.
type parts struct {
	bar      float64 // height of the bar, points
	words    float64 // height of a lesson's words, points; 0: none
	head     float64 // height of a design's title over its drawing, points
	foot     float64 // height of what is said under a picture, points
	designs  int
	controls bool // bar and ruler
	side     bool // numbers and tools
	strip    bool
	bars     float64 // height of a strip with a lesson's bars alone, points; 0: of a section
	stacked  bool    // designs one above the other
}

// layOut divides a page of w × h points. The legend lies in the drawing; beside
// two drawings it has a column of its own.
func layOut(w, h float64, p parts) layout {
	l := layout{page: panel.Rect{W: w, H: h}}
	rest := l.page
	if p.side {
		side := sideWide(w)
		l.side = panel.Rect{X: w - side, W: side, H: h}
		rest.W -= side
	}
	if p.controls {
		l.bar = panel.Rect{X: rest.X, Y: rest.Y, W: rest.W, H: p.bar}
		rest.Y, rest.H = rest.Y+p.bar, rest.H-p.bar
		rest.H -= rulerHeight
		l.ruler = panel.Rect{X: rest.X, Y: rest.Bottom(), W: rest.W, H: rulerHeight}
	}
	rest.H -= p.foot
	if p.strip {
		tall := float64(stripHeight)
		if p.bars > 0 {
			tall = p.bars
		}
		tall = math.Min(tall, 0.4*rest.H)
		rest.H -= tall
		l.strip = panel.Rect{X: rest.X, Y: rest.Bottom(), W: rest.W, H: tall}
	}
	rest.H -= p.words
	l.caption = panel.Rect{X: rest.X, Y: rest.Bottom(), W: rest.W, H: p.words}
	l.view = rest
	n := max(1, p.designs)
	l.legend = panel.Rect{X: rest.X + 6, Y: rest.Y + p.head, W: legendWidth, H: rest.H - p.head}
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
		head := panel.Rect{X: cell.X, Y: cell.Y, W: cell.W, H: p.head}
		if p.stacked && i > 0 { // clear of the legend
			head.X, head.W = head.X+legendWidth, head.W-legendWidth
		}
		l.heads = append(l.heads, head)
		l.views = append(l.views, panel.Rect{X: cell.X, Y: cell.Y + p.head, W: cell.W, H: cell.H - p.head})
	}
	return l
}

// pixels is a rectangle of the page on the screen.
func pixels(r panel.Rect, density float64) image.Rectangle {
	at := func(v float64) int { return int(math.Round(v * density)) }
	return image.Rect(at(r.X), at(r.Y), at(r.Right()), at(r.Bottom()))
}
