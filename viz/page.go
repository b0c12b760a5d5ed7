package viz

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

// pt is a place on the page in points (1/72 inch): x to the right, y up,
// origin at the lower left corner.
type pt struct{ X, Y float64 }

func (p pt) add(x, y float64) pt { return pt{p.X + x, p.Y + y} }

func (p pt) vg() vg.Point { return vg.Point{X: vg.Length(p.X), Y: vg.Length(p.Y)} }

// rect is an upright rectangle on the page, points.
type rect struct{ X0, Y0, X1, Y1 float64 }

func (r rect) width() float64  { return r.X1 - r.X0 }
func (r rect) height() float64 { return r.Y1 - r.Y0 }

// The three faces of the type on a page.
type face int

const (
	regular face = iota
	bold
	italic
)

// style is how a piece of text is set.
type style struct {
	size  float64 // points, at least smallest
	face  face
	color color.NRGBA
}

// smallest is the least text size on a page, points.
const smallest = 8

func small() style { return style{smallest, regular, softInkColor()} }
func label() style { return style{smallest, regular, inkColor()} }
func rim() style   { return style{9.5, italic, inkColor()} }

// page draws on a canvas and remembers where text stands, so that later text
// can keep clear of it.
type page struct {
	c       vg.Canvas
	w, h    float64 // points
	faces   [3]*opentype.Font
	texts   []block
	blocked []block // marks and edges that text should keep clear of
	labels  []block // places taken by labels not yet drawn, no leader may cross them
}

// margin is the white edge of a page, points.
const margin = 20

// newPage covers the canvas with paper.
func newPage(c vg.Canvas, w, h float64) *page {
	p := newMeasure(w, h)
	p.c = c
	p.fill([][]pt{{{0, 0}, {w, 0}, {w, h}, {0, h}}}, paperColor())
	return p
}

// newMeasure is a page without a canvas: text can be measured on it, not
// drawn.
func newMeasure(w, h float64) *page {
	p := &page{w: w, h: h}
	for i, ttf := range [][]byte{goregular.TTF, gobold.TTF, goitalic.TTF} {
		f, err := opentype.Parse(ttf)
		if err != nil {
			panic("viz: embedded font does not parse: " + err.Error()) // fixed bytes, cannot fail
		}
		p.faces[i] = f
	}
	return p
}

func (p *page) font(s style) font.Face {
	f := font.Font{Typeface: "Go", Size: vg.Length(s.size)}
	switch s.face {
	case bold:
		f.Weight = xfont.WeightBold
	case italic:
		f.Style = xfont.StyleItalic
	}
	return font.Face{Font: f, Face: p.faces[s.face]}
}

// width returns the width of a line of text, points.
func (p *page) width(text string, s style) float64 {
	f := p.font(s)
	return float64(f.Width(text))
}

// text sets one line with its baseline through at; align 0 starts there, 0.5
// is centred, 1 ends there.
func (p *page) text(at pt, text string, s style, align float64) {
	p.put(p.place(at, text, s, align, 0), text, s)
}

// turned sets one line turned by angle (radians, anticlockwise) about at.
func (p *page) turned(at pt, text string, s style, angle float64) {
	p.put(p.place(at, text, s, 0.5, angle), text, s)
}

// place returns the box that a line of text would fill.
func (p *page) place(at pt, text string, s style, align, angle float64) block {
	w := p.width(text, s)
	sin, cos := math.Sincos(angle)
	return block{
		at: pt{at.X - align*w*cos, at.Y - align*w*sin}, w: w,
		up: 0.74 * s.size, down: 0.22 * s.size, angle: angle,
	}
}

// put draws text into its box and remembers the box.
func (p *page) put(b block, text string, s style) {
	if text == "" {
		return
	}
	p.texts = append(p.texts, b)
	p.c.SetColor(s.color)
	if b.angle == 0 {
		p.c.FillString(p.font(s), b.at.vg(), text)
		return
	}
	p.c.Push()
	p.c.Translate(b.at.vg())
	p.c.Rotate(b.angle)
	if _, ok := p.c.(*svgCanvas); ok {
		p.c.FillString(p.font(s), vg.Point{}, text)
	} else { // sharper than turning the pixels of upright glyphs
		p.c.Fill(glyphPath(p.font(s), vg.Point{}, text))
	}
	p.c.Pop()
}

// free tells whether a box keeps clear of all text and marks and stays on the
// page.
func (p *page) free(b block) bool {
	for _, c := range b.corners() {
		if c.X < margin/2 || c.Y < margin/2 || c.X > p.w-margin/2 || c.Y > p.h-margin/2 {
			return false
		}
	}
	for _, list := range [][]block{p.texts, p.blocked} {
		for _, o := range list {
			if b.overlaps(o) {
				return false
			}
		}
	}
	return true
}

// wrap breaks text into lines no wider than w; a word that is wider alone is
// broken between letters.
func (p *page) wrap(text string, s style, w float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		joined := strings.TrimPrefix(line+" "+word, " ")
		if p.width(joined, s) <= w {
			line = joined
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		line = word
		for p.width(line, s) > w {
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
func (p *page) fitting(word string, s style, w float64) int {
	n := 0
	for i, r := range word {
		end := i + len(string(r))
		if n > 0 && p.width(word[:end], s) > w {
			break
		}
		n = end
	}
	return n
}

// shorten cuts text with an ellipsis if it is wider than w.
func (p *page) shorten(text string, s style, w float64) string {
	if p.width(text, s) <= w {
		return text
	}
	n := p.fitting(text, s, w-p.width("…", s))
	return strings.TrimRight(text[:n], " ") + "…"
}
