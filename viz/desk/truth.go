package desk

import (
	"fmt"
	"strings"

	"archload/viz/panel"
	"archload/viz/stage"
)

// warned are the warnings of a design at full load, as archload solve says them;
// nil as long as they are not worked out.
func warned(a *stage.Answered) []string {
	if a == nil || a.Report == nil {
		return nil
	}
	return a.Report.Warnings
}

// trust says in a line how far the numbers of a design can be trusted.
func trust(a *stage.Answered) string {
	if a == nil || a.Report == nil {
		return "the checks are being worked out"
	}
	r := a.Report
	words := fmt.Sprintf("%d nodes", r.Mesh.Nodes)
	if r.Error.Discretisation.Known() {
		words += fmt.Sprintf(", error from the mesh about %.1f %%", 100*float64(r.Error.Discretisation))
	}
	if bad := r.Error.Failed(); len(bad) > 0 {
		return words + "; BUILT-IN CHECKS FAILED: " + strings.Join(bad, ", ")
	}
	words += "; built-in checks passed"
	if b := r.Bridge; b != nil && b.RoughReport != nil {
		words += fmt.Sprintf("; friction %.2f under the foot", float64(b.Friction))
	} else if b != nil && b.FrictionNeeded.Known() {
		words += fmt.Sprintf("; the foot needs a friction of %.2f", float64(b.FrictionNeeded))
	}
	return words
}

// letter names design i among two.
func (d *Desk) letter(i int) string {
	if len(d.shown.Designs) < 2 {
		return ""
	}
	return string(rune('A'+i)) + ": "
}

// footLines are what stands under a saved picture: every warning, and how far
// the numbers can be trusted.
func (d *Desk) footLines(width float64) (lines []string, rust int) {
	if d.shown == nil {
		return nil, 0
	}
	for i, a := range d.shown.Designs {
		for _, w := range warned(a) {
			lines = append(lines, d.atlas.Wrap(panel.Small, d.letter(i)+w, width-28)...)
		}
	}
	rust = len(lines)
	for i, a := range d.shown.Designs {
		lines = append(lines, d.atlas.Wrap(panel.Small, d.letter(i)+trust(a), width-28)...)
	}
	return lines, rust
}

// footHeight is how high that stands, points.
func (d *Desk) footHeight(width float64) float64 {
	lines, _ := d.footLines(width)
	return 10 + float64(len(lines))*panel.Small.LineHeight()
}

// drawFootLines writes it at the foot of the page.
func (d *Desk) drawFootLines() {
	w := d.lay.page.W
	lines, rust := d.footLines(w)
	l := d.panel.List()
	y := d.lay.page.Bottom() - d.footHeight(w)
	l.Level(14, w-14, y+2, 1, panel.Hair())
	for i, t := range lines {
		k := panel.SoftInk()
		if i < rust {
			k = panel.Fault()
		}
		l.TextIn(panel.Rect{X: 14, Y: y + 5 + float64(i)*panel.Small.LineHeight(), W: w - 28, H: panel.Small.LineHeight()}, panel.Small, panel.Left, k, t)
	}
}

// drawWarnings lists at the side what is said to be too much, and how far the
// numbers can be trusted.
func (d *Desk) drawWarnings(c *panel.Column) {
	n := 0
	for _, a := range d.shown.Designs {
		n += len(warned(a))
	}
	name := "Warnings"
	if !d.fold(c, name, "what archload solve says is too much, or not sure, at full string load") {
		return
	}
	l := d.panel.List()
	for i, a := range d.shown.Designs {
		for _, w := range warned(a) {
			words := d.letter(i) + w
			row := c.Row(d.atlas.ParagraphHeight(panel.Small, words, c.Width()-8) + 2)
			l.Upright(row.X, row.Y+1, row.Bottom()-2, 2, panel.Fault())
			l.Paragraph(panel.Rect{X: row.X + 8, Y: row.Y, W: row.W - 8, H: row.H}, panel.Small, panel.Fault(), words)
		}
		words := d.letter(i) + trust(a)
		d.panel.Note(c.Row(d.atlas.ParagraphHeight(panel.Small, words, c.Width())), words)
	}
	if n == 0 && d.shown.Settled() {
		d.panel.Note(c.Row(16), "No warning.")
	}
}
