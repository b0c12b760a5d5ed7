package desk

import (
	"fmt"

	"archload/cases/lesson"

	"archload/viz/panel"
	"archload/viz/scene"
	"archload/viz/stage"
)

// openLesson begins a lesson.
func (d *Desk) openLesson(name string) error {
	l, err := lesson.Open(d.o.FS, name)
	if err != nil {
		return err
	}
	d.lesson, d.over = &walk{Lesson: l}, noSheet
	d.showStep()
	return nil
}

// walk goes to the next step of the lesson, or to the one before.
func (d *Desk) walk(by int) {
	if d.lesson == nil {
		return
	}
	at := d.lesson.at + by
	if at < 0 || at >= len(d.lesson.Steps) {
		return
	}
	d.lesson.at = at
	d.showStep()
}

// showStep sets everything as the step wants it.
func (d *Desk) showStep() {
	s := d.lesson.step()
	w := stage.Want{Display: stage.Display{Load: s.Load, Strings: true, Inside: s.Face == "inside"}}
	w.Designs = []stage.Design{{Name: s.Case, Keys: s.Set}}
	if s.Beside != "" {
		w.Designs = append(w.Designs, stage.Design{Name: s.Beside})
	}
	// Words that a lesson may use are checked when it is read.
	w.Field, _ = FieldNamed(s.Field)
	w.Cut.Kind, _ = CutNamed(s.Section)
	for _, p := range s.Points {
		w.Pins = append(w.Pins, scene.Pin{Text: p.Words, At: p.At})
	}
	d.want, d.edit = w, 0
	d.look(s.View)
	d.play.on = false
	if s.Play {
		d.want.Load = 0
		d.play = play{on: true, since: d.now, from: 0, to: s.Load}
	}
}

// drawCaption draws the words of a lesson's step, and the way through it.
func (d *Desk) drawCaption(controls bool) {
	if d.lesson == nil {
		return
	}
	d.panel.Sheet(d.lay.caption)
	in := d.lay.caption.Inset(14, 8)
	s := d.lesson.step()
	l := d.panel.List()
	head := fmt.Sprintf("%s: step %d of %d", d.lesson.Title, d.lesson.at+1, len(d.lesson.Steps))
	words := in
	if controls {
		words.W -= wayWidth
		d.drawWay(panel.Rect{X: words.Right() + 10, Y: in.Y, W: wayWidth - 10, H: in.H}) // may end the lesson
	}
	l.TextIn(panel.Rect{X: words.X, Y: words.Y, W: words.W, H: 15}, panel.SmallBold, panel.Left, panel.SoftInk(), head)
	h := l.Paragraph(panel.Rect{X: words.X, Y: words.Y + 17, W: words.W, H: 40}, panel.Body, panel.Ink(), s.Caption)
	if s.Caution != "" {
		l.Paragraph(panel.Rect{X: words.X, Y: words.Y + 19 + h, W: words.W, H: 30}, panel.Small, panel.Fault(), s.Caution)
	}
}

// wayWidth is the width of the buttons beside a step's words, points.
const wayWidth = 150.0

// captionHeight is how high the words of a step stand in a width, points; 0
// without a lesson.
func (d *Desk) captionHeight(width float64) float64 {
	if d.lesson == nil {
		return 0
	}
	s := d.lesson.step()
	w := width - 28 - wayWidth
	h := 8 + 17 + d.atlas.ParagraphHeight(panel.Body, s.Caption, w) + 10
	if s.Caution != "" {
		h += 2 + d.atlas.ParagraphHeight(panel.Small, s.Caution, w)
	}
	return max(h, 16+2*panel.ButtonHeight+4)
}

// drawWay draws the buttons that lead through the lesson.
func (d *Desk) drawWay(r panel.Rect) {
	c := panel.NewColumn(r, 0, 4)
	pair := c.Cells(panel.ButtonHeight, 2)
	first, last := "", ""
	if d.lesson.at == 0 {
		first = "this is the first step"
	}
	if d.lesson.at == len(d.lesson.Steps)-1 {
		last = "this is the last step"
	}
	if d.panel.Button(panel.Control{ID: "step back", At: pair[0], Label: "Back", Key: ",", Off: first}) {
		d.walk(-1)
	}
	if d.panel.Button(panel.Control{ID: "step on", At: pair[1], Label: "Next", Key: ".", Off: last}) {
		d.walk(1)
	}
	if d.panel.Button(panel.Control{ID: "end lesson", At: c.Row(panel.ButtonHeight), Label: "End the lesson", Key: "Esc"}) {
		d.escape()
	}
}
