package panel

import (
	"image/color"
	"math"
	"sort"
	"strings"
)

// Align says which part of a text stands at its place.
type Align uint8

// The alignments.
const (
	Left Align = iota
	Middle
	Right
)

// Text writes one line whose baseline runs through at.
func (l *List) Text(at Point, f Face, to Align, k color.NRGBA, s string) {
	l.write(at, f, to, k, s, s)
}

// write writes a line in place of a whole one.
func (l *List) write(at Point, f Face, to Align, k color.NRGBA, s, whole string) {
	d := l.Atlas.Density
	x := at.X * d
	switch w := l.Atlas.TextWidth(f, s) * d; to {
	case Middle:
		x -= w / 2
	case Right:
		x -= w
	}
	x, y := math.Round(x), math.Round(at.Y*d)
	if math.IsNaN(x+y) || math.IsInf(x+y, 0) {
		return
	}
	l.note(x, y, f, s, whole)
	for _, r := range s {
		g := l.Atlas.glyph(f, r)
		l.letter(g, x, y, k)
		x += float64(g.advance)
	}
}

// letter adds a glyph with the pen at x, y, whole pixels.
func (l *List) letter(g glyph, x, y float64, k color.NRGBA) {
	if g.from.Empty() {
		return
	}
	w, h := float64(l.Atlas.Image.Rect.Dx()), float64(l.Atlas.Image.Rect.Dy())
	x0, y0 := x+float64(g.offset.X), y+float64(g.offset.Y)
	x1, y1 := x0+float64(g.from.Dx()), y0+float64(g.from.Dy())
	u0, v0 := float64(g.from.Min.X)/w, float64(g.from.Min.Y)/h
	u1, v1 := float64(g.from.Max.X)/w, float64(g.from.Max.Y)/h
	a, b := Vertex{x0, y0, u0, v0, k}, Vertex{x1, y0, u1, v0, k}
	c, e := Vertex{x1, y1, u1, v1, k}, Vertex{x0, y1, u0, v1, k}
	l.emit([3]Vertex{a, b, c})
	l.emit([3]Vertex{a, c, e})
}

// TextIn writes one line in the middle of the height of r, shortened if r is
// narrower than the text.
func (l *List) TextIn(r Rect, f Face, to Align, k color.NRGBA, s string) {
	at := Point{r.X, r.Y + (r.H+l.Atlas.capHeight(f))/2}
	switch to {
	case Middle:
		at.X = r.X + r.W/2
	case Right:
		at.X = r.Right()
	}
	l.write(at, f, to, k, l.Atlas.Shortened(f, s, r.W), s)
}

// fitting returns the face of a control's words: the usual one, or the small one where the usual has
// no room within the width, points.
func (a *Atlas) fitting(s string, width float64) Face {
	if a.TextWidth(Body, s) <= width+1e-9 {
		return Body
	}
	return Small
}

// capHeight returns the height of a capital, points.
func (a *Atlas) capHeight(f Face) float64 { return math.Round(a.faces[f].capHeight) / a.Density }

// Shortened returns s, or as much of it as fits in the width, points, with an
// ellipsis.
func (a *Atlas) Shortened(f Face, s string, width float64) string {
	if a.TextWidth(f, s) <= width+1e-9 {
		return s
	}
	letters := []rune(s)
	cut := func(n int) string { return strings.TrimRight(string(letters[:n]), " ") + "…" }
	n := sort.Search(len(letters)-1, func(i int) bool { return a.TextWidth(f, cut(i+1)) > width })
	if n == 0 {
		return ""
	}
	return cut(n)
}

// Wrap breaks a text into lines no wider than width, points, at spaces and
// where it has line ends; a word that is wider is broken.
func (a *Atlas) Wrap(f Face, s string, width float64) []string {
	var out []string
	for _, line := range strings.Split(s, "\n") {
		at := ""
		for _, word := range pieces(line) {
			joined := word
			if at != "" {
				joined = at + " " + word
			}
			if a.TextWidth(f, joined) <= width {
				at = joined
				continue
			}
			if at != "" {
				out = append(out, at)
			}
			var whole []string
			whole, at = a.breakWord(f, word, width)
			out = append(out, whole...)
		}
		out = append(out, at)
	}
	return out
}

// pieces are the words of a line, a number and its unit together.
func pieces(line string) []string {
	var out []string
	for _, word := range strings.Fields(line) {
		if n := len(out); n > 0 && units[strings.TrimRight(word, ".,;:)")] && strings.ContainsAny(out[n-1][len(out[n-1])-1:], "0123456789") {
			out[n-1] += " " + word
			continue
		}
		out = append(out, word)
	}
	return out
}

// units are what is never parted from the number before it.
var units = map[string]bool{"mm": true, "N": true, "%": true, "MPa": true, "GPa": true, "Hz": true, "g": true, "kg": true, "degrees": true, "deg": true, "N/mm": true, "×": true}

// breakWord breaks a word that is wider than a line; rest is its last part.
func (a *Atlas) breakWord(f Face, word string, width float64) (whole []string, rest string) {
	for _, r := range word {
		if rest != "" && a.TextWidth(f, rest+string(r)) > width {
			whole = append(whole, rest)
			rest = ""
		}
		rest += string(r)
	}
	return whole, rest
}

// ParagraphHeight returns the height of a text wrapped to width, points.
func (a *Atlas) ParagraphHeight(f Face, s string, width float64) float64 {
	return float64(len(a.Wrap(f, s, width))) * f.LineHeight()
}

// Paragraph writes a text wrapped to the width of r from its top, and returns
// its height, points. It does not stop at the lower edge.
func (l *List) Paragraph(r Rect, f Face, k color.NRGBA, s string) float64 {
	h := f.LineHeight()
	lines := l.Atlas.Wrap(f, s, r.W)
	for i, line := range lines {
		l.TextIn(Rect{r.X, r.Y + float64(i)*h, r.W, h}, f, Left, k, line)
	}
	return float64(len(lines)) * h
}
