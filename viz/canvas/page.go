package canvas

import (
	"image/color"
	"math"
	"strings"

	xfont "golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goitalic"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
)

// Point is a place on the page in points (1/72 inch): x to the right, y up,
// origin at the lower left corner.
type Point struct{ X, Y float64 }

// At is the place x points from the left and y from the lower edge.
func At(x, y float64) Point { return Point{x, y} }

// Add moves the point by x and y, points.
func (p Point) Add(x, y float64) Point { return Point{p.X + x, p.Y + y} }

func (p Point) vg() vg.Point { return vg.Point{X: vg.Length(p.X), Y: vg.Length(p.Y)} }

// Rect is an upright rectangle on the page, points.
type Rect struct{ X0, Y0, X1, Y1 float64 }

// Box is the rectangle from the corner x0, y0 to the corner x1, y1.
func Box(x0, y0, x1, y1 float64) Rect { return Rect{x0, y0, x1, y1} }

// Width is the rectangle's extent across, points.
func (r Rect) Width() float64 { return r.X1 - r.X0 }

// Height is the rectangle's extent upward, points.
func (r Rect) Height() float64 { return r.Y1 - r.Y0 }

// Face is one of the three faces of the type on a page.
type Face int

// The faces.
const (
	Regular Face = iota
	Bold
	italic
)

// Style is how a piece of text is set.
type Style struct {
	Size  float64 // points, at least smallest
	Face  Face
	Color color.NRGBA
}

// Smallest is the least text size on a page, points.
const Smallest = 8

// Small is the style of notes and facts.
func Small() Style { return Style{Smallest, Regular, SoftInk()} }

// Label is the style of numbers and names in a picture.
func Label() Style { return Style{Smallest, Regular, Ink()} }

// Rim is the style of the words around a plate.
func Rim() Style { return Style{9.5, italic, Ink()} }

// Page draws on a canvas and remembers where text stands, so that later text
// can keep clear of it.
type Page struct {
	c       vg.Canvas
	W, h    float64 // points
	faces   [3]*opentype.Font
	texts   []Block
	blocked []Block // marks and edges that text should keep clear of
	labels  []Block // places taken by labels not yet drawn, no leader may cross them
}

// PageWidth is the width of a page of a picture, points: 7 in.
const PageWidth = 504

// Margin is the white edge of a page, points.
const Margin = 20

// newPage covers the canvas with paper.
func newPage(c vg.Canvas, w, h float64) *Page {
	p := NewMeasure(w, h)
	p.c = c
	p.Fill([][]Point{{{0, 0}, {w, 0}, {w, h}, {0, h}}}, Paper())
	return p
}

// NewBare draws on the canvas as it is, without paper.
func NewBare(c vg.Canvas, w, h float64) *Page {
	p := NewMeasure(w, h)
	p.c = c
	return p
}

// NewMeasure is a page without a canvas: text can be measured on it, not
// drawn.
func NewMeasure(w, h float64) *Page {
	p := &Page{W: w, h: h}
	for i, ttf := range [][]byte{goregular.TTF, gobold.TTF, goitalic.TTF} {
		f, err := opentype.Parse(ttf)
		if err != nil {
			panic("canvas: embedded font does not parse: " + err.Error()) // fixed bytes, cannot fail
		}
		p.faces[i] = f
	}
	return p
}

func (p *Page) font(s Style) font.Face {
	f := font.Font{Typeface: "Go", Size: vg.Length(s.Size)}
	switch s.Face {
	case Bold:
		f.Weight = xfont.WeightBold
	case italic:
		f.Style = xfont.StyleItalic
	}
	return font.Face{Font: f, Face: p.faces[s.Face]}
}

// TextWidth returns the width of a line of text, points.
func (p *Page) TextWidth(text string, s Style) float64 {
	f := p.font(s)
	return float64(f.Width(text))
}

// Text sets one line with its baseline through at; align 0 starts there, 0.5
// is centred, 1 ends there.
func (p *Page) Text(at Point, text string, s Style, align float64) {
	p.Put(p.Place(at, text, s, align, 0), text, s)
}

// Turned sets one line turned by angle (radians, anticlockwise) about at.
func (p *Page) Turned(at Point, text string, s Style, angle float64) {
	p.Put(p.Place(at, text, s, 0.5, angle), text, s)
}

// Place returns the box that a line of text would fill.
func (p *Page) Place(at Point, text string, s Style, align, angle float64) Block {
	w := p.TextWidth(text, s)
	sin, cos := math.Sincos(angle)
	return Block{
		At: Point{at.X - align*w*cos, at.Y - align*w*sin}, W: w,
		Up: 0.74 * s.Size, down: 0.22 * s.Size, angle: angle,
	}
}

// Put draws text into its box and remembers the box.
func (p *Page) Put(b Block, text string, s Style) {
	if text == "" {
		return
	}
	p.texts = append(p.texts, b)
	p.c.SetColor(s.Color)
	if b.angle == 0 {
		p.c.FillString(p.font(s), b.At.vg(), text)
		return
	}
	p.c.Push()
	p.c.Translate(b.At.vg())
	p.c.Rotate(b.angle)
	if _, ok := p.c.(*SVG); ok {
		p.c.FillString(p.font(s), vg.Point{}, text)
	} else { // sharper than turning the pixels of upright glyphs
		p.c.Fill(glyphPath(p.font(s), vg.Point{}, text))
	}
	p.c.Pop()
}

// Avoid notes marks that text should keep clear of.
func (p *Page) Avoid(b ...Block) { p.blocked = append(p.blocked, b...) }

// Reserve notes the place of a label not yet drawn: text keeps clear of it, and
// no leader crosses it.
func (p *Page) Reserve(b Block) {
	p.Avoid(b)
	p.labels = append(p.labels, b)
}

// Texts are the places of the text drawn so far.
func (p *Page) Texts() []Block { return p.texts }

// Free tells whether a box keeps clear of all text and marks and stays on the
// page.
func (p *Page) Free(b Block) bool {
	for _, c := range b.Corners() {
		if c.X < Margin/2 || c.Y < Margin/2 || c.X > p.W-Margin/2 || c.Y > p.h-Margin/2 {
			return false
		}
	}
	for _, list := range [][]Block{p.texts, p.blocked} {
		for _, o := range list {
			if b.Overlaps(o) {
				return false
			}
		}
	}
	return true
}

// Wrap breaks text into lines no wider than w; a word that is wider alone is
// broken between letters.
func (p *Page) Wrap(text string, s Style, w float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		joined := strings.TrimPrefix(line+" "+word, " ")
		if p.TextWidth(joined, s) <= w {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		line = word
		for p.TextWidth(line, s) > w {
			n := p.fitting(line, s, w)
			lines = append(lines, line[:n])
			line = line[n:]
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// fitting returns how many bytes of word fit into w, at least one letter.
func (p *Page) fitting(word string, s Style, w float64) int {
	n := 0
	for i, r := range word {
		end := i + len(string(r))
		if n > 0 && p.TextWidth(word[:end], s) > w {
			break
		}
		n = end
	}
	return n
}

// Shorten cuts text with an ellipsis if it is wider than w.
func (p *Page) Shorten(text string, s Style, w float64) string {
	if p.TextWidth(text, s) <= w {
		return text
	}
	n := p.fitting(text, s, w-p.TextWidth("…", s))
	return strings.TrimRight(text[:n], " ") + "…"
}
