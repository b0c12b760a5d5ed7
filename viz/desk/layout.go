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
	caption panel.Rect   // of a lesson's step
	strip   panel.Rect   // the section
	ruler   panel.Rect   // string load
	side    panel.Rect   // numbers and tools
}

// Sizes, points.
const (
	legendWidth = 78
	rulerHeight = 58
	stripHeight = 178
	sideWidth   = 316
	sideNarrow  = 284
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
	bar                        float64 // height of the bar, points
	words                      float64 // height of a lesson's words, points; 0: none
	head                       float64 // height of a design's title over its drawing, points
	designs                    int
	controls, strip, legendish bool
}

// layOut divides a page of w × h points.
func layOut(w, h float64, p parts) layout {
	l := layout{page: panel.Rect{W: w, H: h}}
	rest := l.page
	if p.controls {
		side := sideWide(w)
		l.side = panel.Rect{X: w - side, W: side, H: h}
		rest.W -= side
		l.bar = panel.Rect{X: rest.X, Y: rest.Y, W: rest.W, H: p.bar}
		rest.Y, rest.H = rest.Y+p.bar, rest.H-p.bar
		rest.H -= rulerHeight
		l.ruler = panel.Rect{X: rest.X, Y: rest.Bottom(), W: rest.W, H: rulerHeight}
	}
	if p.strip {
		tall := math.Min(stripHeight, 0.4*rest.H)
		rest.H -= tall
		l.strip = panel.Rect{X: rest.X, Y: rest.Bottom(), W: rest.W, H: tall}
	}
	rest.H -= p.words
	l.caption = panel.Rect{X: rest.X, Y: rest.Bottom(), W: rest.W, H: p.words}
	if p.legendish {
		l.legend = panel.Rect{X: rest.X, Y: rest.Y, W: legendWidth, H: rest.H}
		rest.X, rest.W = rest.X+legendWidth, rest.W-legendWidth
	}
	l.view = rest
	n := max(1, p.designs)
	for i := range n {
		x, w := rest.X+rest.W*float64(i)/float64(n), rest.W/float64(n)
		l.heads = append(l.heads, panel.Rect{X: x, Y: rest.Y, W: w, H: p.head})
		l.views = append(l.views, panel.Rect{X: x, Y: rest.Y + p.head, W: w, H: rest.H - p.head})
	}
	return l
}

// pixels is a rectangle of the page on the screen.
func pixels(r panel.Rect, density float64) image.Rectangle {
	at := func(v float64) int { return int(math.Round(v * density)) }
	return image.Rect(at(r.X), at(r.Y), at(r.Right()), at(r.Bottom()))
}
