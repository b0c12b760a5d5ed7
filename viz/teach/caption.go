package teach

import (
	"fmt"
	"strings"

	"archload/cases/glossary"
	"archload/viz/panel"
)

// Wish is what the hand asks of a lesson by its buttons.
type Wish uint8

// The wishes.
const (
	Nothing Wish = iota
	Back
	On
	End
)

// wayWidth is the width of the buttons beside a step's words, points.
const wayWidth = 150.0

// narrow is the width below which the buttons stand under a step's words, points.
const narrow = 400.0

// wayHeight is the height of the buttons, points.
const wayHeight = 2*panel.ButtonHeight + 4

// CaptionHeight is how high the words of the step stand in a width, both in points.
func (w *Walk) CaptionHeight(a *panel.Atlas, width float64) float64 {
	words, caution := w.words()
	in := width - 28
	if width >= narrow {
		in -= wayWidth
	}
	h := 8 + a.ParagraphHeight(panel.SmallBold, w.head(), in) + 2 + a.ParagraphHeight(panel.Body, words, in) + 10
	if asked := w.asked(); asked != "" {
		h += a.ParagraphHeight(panel.Body, asked, in)
	}
	if caution != "" {
		h += 2 + a.ParagraphHeight(panel.Small, caution, in)
	}
	if width < narrow {
		return h + wayHeight + 8
	}
	return max(h, 16+wayHeight)
}

// head names the lesson and its step.
func (w *Walk) head() string {
	return fmt.Sprintf("%s: step %d of %d", w.Title, w.At+1, len(w.Steps))
}

// words are what stands under the picture, and the caution.
func (w *Walk) words() (caption, caution string) {
	s := w.Step()
	if w.Asking {
		if strings.Contains(strings.ToLower(s.Ask), "where") { // a place is an answer
			return s.Ask + " Go on to see; a click in the picture marks your guess.", ""
		}
		return s.Ask + " Go on to see.", ""
	}
	return s.Caption, s.Caution
}

// asked is the question that the step answers, as it stands over the answer; "": none.
func (w *Walk) asked() string {
	if w.Asking || w.Step().Ask == "" {
		return ""
	}
	return w.Step().Ask
}

// told says which commands print the step's numbers, in so few words as fit; "" while it asks, and without any.
func (w *Walk) told(fits func(string) bool) string {
	by := w.Step().Commands()
	if w.Asking || len(by) == 0 {
		return ""
	}
	told := "numbers as in " + strings.Join(by, ", ")
	if full := "reckoned on the shape as carved: " + told; strings.Contains(told, "--linear") && fits(full) {
		return full
	}
	if fits(told) {
		return told
	}
	return ""
}

// DrawCaption draws the words of the step, and with controls the way through the lesson.
func (w *Walk) DrawCaption(p *panel.Panel, at panel.Rect, controls bool) (wish Wish) {
	p.Sheet(at)
	in := at.Inset(14, 8)
	l := p.List()
	words := in
	switch {
	case controls && at.W < narrow:
		wish = w.drawWay(p, panel.Rect{X: in.X, Y: in.Bottom() - wayHeight, W: in.W, H: wayHeight})
	case controls:
		words.W -= wayWidth
		wish = w.drawWay(p, panel.Rect{X: words.Right() + 10, Y: in.Y, W: wayWidth - 10, H: in.H})
	}
	if w.CaptionHeight(l.Atlas, at.W) <= at.H+0.5 {
		w.drawWords(p, words)
		return wish
	}
	if controls && at.W < narrow { // a small page with large letters
		words.H -= wayHeight + 6
	}
	in = p.Scroll("lesson words", words)
	p.EndScroll(w.drawWords(p, in) - in.Y)
	return wish
}

// drawWords writes the words of the step, and returns where they end, points.
func (w *Walk) drawWords(p *panel.Panel, words panel.Rect) (bottom float64) {
	caption, caution := w.words()
	l := p.List()
	free := words.W - l.Atlas.TextWidth(panel.SmallBold, w.head()) - 20
	if told := w.told(func(s string) bool { return l.Atlas.TextWidth(panel.Small, s) < free }); told != "" {
		l.TextIn(panel.Rect{X: words.X, Y: words.Y, W: words.W, H: 15}, panel.Small, panel.Right, panel.SoftInk(), told)
	}
	y := words.Y
	y += 2 + l.Paragraph(panel.Rect{X: words.X, Y: y, W: words.W, H: 15}, panel.SmallBold, panel.SoftInk(), w.head())
	if asked := w.asked(); asked != "" {
		y += l.Paragraph(panel.Rect{X: words.X, Y: y, W: words.W, H: 40}, panel.Body, panel.SoftInk(), asked)
	}
	told := panel.Rect{X: words.X, Y: y, W: words.W, H: 40}
	y += 2 + l.Paragraph(told, panel.Body, panel.Ink(), caption)
	w.explain(p, told, caption)
	if caution != "" {
		y += l.Paragraph(panel.Rect{X: words.X, Y: y, W: words.W, H: 30}, panel.Small, panel.Fault(), caution)
	}
	return y
}

// explain underlines the words of a caption that the glossary has, each once: the pointer on one
// tells what it means.
func (w *Walk) explain(p *panel.Panel, at panel.Rect, caption string) {
	l := p.List()
	tall := panel.Body.LineHeight()
	known := map[string]bool{}
	for i, line := range l.Atlas.Wrap(panel.Body, caption, at.W) {
		x, y := at.X, at.Y+float64(i)*tall
		for _, piece := range w.marked(line) {
			wide := l.Atlas.TextWidth(panel.Body, piece.Text)
			if piece.Means != "" && !known[piece.Means] {
				known[piece.Means] = true
				l.Level(x, x+wide, y+tall-2, 1, panel.Pencil())
				p.Hint("word "+piece.Text, panel.Rect{X: x, Y: y, W: wide, H: tall}, piece.Means)
			}
			x += wide
		}
	}
}

// marked are the words of the glossary in a line, looked for once.
func (w *Walk) marked(line string) []glossary.Piece {
	if pieces, seen := w.lines[line]; seen {
		return pieces
	}
	if w.lines == nil {
		w.lines = map[string][]glossary.Piece{}
	}
	w.lines[line] = glossary.Marked(line)
	return w.lines[line]
}

// drawWay draws the buttons that lead through the lesson.
func (w *Walk) drawWay(p *panel.Panel, r panel.Rect) (wish Wish) {
	c := panel.NewColumn(r, 0, 4)
	pair := c.Cells(panel.ButtonHeight, 2)
	first, last, next := "", "", "Next"
	if w.At == 0 {
		first = "this is the first step"
	}
	if w.At == len(w.Steps)-1 {
		last = "this is the last step"
	}
	if w.Asking {
		last, next = "", "See"
	}
	if p.Button(panel.Control{ID: "step back", At: pair[0], Label: "Back", Key: ",", Off: first}) {
		wish = Back
	}
	if p.Button(panel.Control{ID: "step on", At: pair[1], Label: next, Key: ".", Off: last}) {
		wish = On
	}
	if p.Button(panel.Control{ID: "end lesson", At: c.Row(panel.ButtonHeight), Label: "End the lesson", Key: "Esc"}) {
		wish = End
	}
	return wish
}
