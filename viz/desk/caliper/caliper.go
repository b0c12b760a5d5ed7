// Package caliper is the top's graduation under the hand: a table of its thickness at places, from neck to
// tail and from the bass to the treble side, whose numbers are typed, and the same places in the picture, dragged up
// and down.
package caliper

import (
	"fmt"
	"math"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/tree"
	"archload/mesh"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/stage"
	"archload/viz/tool"
)

// Table is what stays from frame to frame. The zero value takes both sides alike.
type Table struct {
	Apart bool // each side by itself
}

// Of is the graduation of a design as the hand has set it, which may be ahead of what is shown.
func Of(one *stage.Answered, ahead *cases.Case) tool.Graduation {
	b := one.Full.Top.Built
	edge, _ := answer.Outlines(one.Full)
	return tool.GraduationOf(ahead, b.Case, edge, func(p mesh.Point) (float64, bool) {
		_, inside := b.OnOuter(p)
		return b.Plate.Thickness.At(p).Z, inside
	})
}

// Ends of a thickness that can be typed, mm.
const (
	thinnest = 0.5
	thickest = 20
)

// Draw draws the table and gives the keys that the hand sets.
func (t *Table) Draw(p *panel.Panel, c *panel.Column, g tool.Graduation) (set []tree.KeyValue, changed bool) {
	const words = "Thickness in mm, wood taken off or left on inside. Type a number, or drag a ring in the drawing up and down."
	p.Note(c.Row(p.Atlas().ParagraphHeight(panel.Small, words, c.Width())), words)
	alike := !t.Apart
	p.Toggle(panel.Control{ID: "thickness alike", At: c.Row(panel.ToggleHeight), Label: "Both sides alike", Tip: "what is set on one side is set on the other too"}, &alike)
	t.Apart = !alike
	const name = 50.0 // points
	heads := c.Row(15)
	for k, w := range []string{"bass", "", "middle", "", "treble"} {
		p.List().TextIn(cell(heads, name, k), panel.Small, panel.Middle, panel.SoftInk(), w)
	}
	var row panel.Rect
	for i, q := range g {
		if i == 0 || q.Line != g[i-1].Line {
			row = c.Row(panel.NumberHeight - 2)
			p.List().TextIn(panel.Rect{X: row.X, Y: row.Y, W: name, H: row.H}, panel.Small, panel.Left, panel.SoftInk(), "y "+scale.Fixed(q.At[1], 0))
		}
		at := cell(row, name, q.Column)
		v := math.Round(1e3*(q.Base+q.Change)) / 1e3
		was := v
		tip := fmt.Sprintf("at x %s, y %s mm; as graduated %s mm", scale.Fixed(q.At[0], 0), scale.Fixed(q.At[1], 0), scale.Fixed(q.Base, 2))
		if p.Number(panel.Number{Control: panel.Control{ID: ID(i), At: at, Tip: tip}, Min: thinnest, Max: thickest, Step: 0.05, Decimals: 2, Cell: true, Parse: tool.Parser("mm")}, &v) && v != was {
			set, changed = []tree.KeyValue{g.With(i, v, alike)}, true
		}
		if q.Change != 0 {
			p.List().Level(at.X+2, at.Right()-2, at.Bottom()-2, 2, panel.Rust())
		}
	}
	return set, changed
}

// ID is the name of the number at place i.
func ID(i int) string { return fmt.Sprintf("thickness %d", i) }

// cell is that of a column in a row of the table.
func cell(row panel.Rect, name float64, k int) panel.Rect {
	w := (row.W - name) / 5
	return panel.Rect{X: row.X + name + float64(k)*w + 1, Y: row.Y, W: w - 2, H: row.H}
}

// Grips are the places in the picture.
func (t *Table) Grips(g tool.Graduation) []tool.Grip {
	var out []tool.Grip
	for i, q := range g {
		out = append(out, tool.Grip{ID: ID(i), Name: "thickness here", At: q.At, Outer: true, Lifts: true, Now: q.Base + q.Change,
			Set: func(by mesh.Point) []tree.KeyValue {
				return []tree.KeyValue{g.With(i, math.Max(thinnest, math.Round(1e3*(q.Base+q.Change+by[1]))/1e3), !t.Apart)}
			}})
	}
	return out
}
