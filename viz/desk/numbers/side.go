package numbers

import (
	"fmt"
	"math"
	"strings"

	"archload/cases/answer"
	"archload/cases/glossary"
	"archload/cases/quantity"
	"archload/cases/study"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/stage"
)

// Side is the column of numbers of one frame.
type Side struct {
	Panel *panel.Panel
	Atlas *panel.Atlas
	Shown *stage.Shown
}

// Now shows the numbers at the load that is shown: once the case is solved afresh those of that answer,
// with their margins.
func (s Side) Now(c *panel.Column) {
	w := s.Shown.Want
	t := panel.Table{Columns: s.heads(fmt.Sprintf("at %s load", scale.Percent(w.Load)))}
	words := fmt.Sprintf("at %s of string load", scale.Percent(w.Load))
	if len(s.Shown.Designs) == 2 {
		words += "; at the right B less A"
	}
	s.Panel.Note(c.Row(16), words)
	var tips []string
	old := false
	for _, q := range quantity.Shown() {
		var values []float64
		known := false
		for _, a := range s.Shown.Designs {
			v := q.Get(s.report(a))
			values, known = append(values, float64(v)), known || v.Known()
		}
		if !known {
			continue
		}
		m := apart(s.Shown.HereRanges, q)
		if len(values) == 1 {
			a := s.Shown.Designs[0]
			m = margin(a, a.Sure(), w.Load, q, q.Key)
		}
		old = old || m.old && m.text() != ""
		row := cells(q, values, m)
		if b := s.Shown.Designs[0].Before; b != nil && len(values) == 1 {
			row[1] = changed(row[1], q, float64(q.Get(&answer.Report{Bridge: s.Shown.Designs[0].Bridge})), float64(q.Get(&answer.Report{Bridge: b.Bridge})))
		}
		t.Rows, tips = append(t.Rows, panel.TableRow{Cells: row}), append(tips, tipOf(q, m))
	}
	if len(t.Rows) == 0 {
		s.Panel.Note(c.Row(20), "There is no bridge on this top.")
		return
	}
	s.rows(c, "now", t, tips)
	s.legend(c, old)
}

// tipOf says what a number tells, in which unit, and how sure it is.
func tipOf(q quantity.Quantity, m Margin) string {
	unit, _, _ := strings.Cut(q.Unit, " of ")
	words := q.Means
	if u := glossary.UnitWords(unit); u != "" {
		words += "\n" + unit + ": " + u
	}
	return strings.TrimSpace(words + "\n" + m.words)
}

// report is what a design's numbers at the load that is shown are read from.
func (s Side) report(a *stage.Answered) *answer.Report {
	if c := a.Sure(); c != nil {
		return c.Report
	}
	return &answer.Report{Bridge: a.Bridge}
}

// legend says what stands behind ±; old: some of them are those of the design before the last change.
func (s Side) legend(c *panel.Column, old bool) {
	words := "± is worked out when the hand rests."
	switch {
	case s.Shown.Want.Load < least:
		return
	case s.Shown.HereRanges != nil:
		words = "±: another plank, the edge, the triangles; rest on a number for each. Not in it: what the model leaves out."
	case old:
		words = "(±) is that of the design before the last change, until its own is worked out."
	case s.Shown.Confirmed():
		words = "± so far: the triangles alone; the wood's is being worked out."
	}
	s.Panel.Note(c.Row(s.Atlas.ParagraphHeight(panel.Small, words, c.Width())), words)
}

// least is the share of the load below which nothing moves.
const least = 0.01

// changed writes a number with how much it differs from what the design's file
// gives.
func changed(text string, q quantity.Quantity, v, before float64) string {
	diff := scale.Fixed(v-before, q.Digits)
	if strings.Trim(diff, "−0.") == "" || math.IsNaN(before) {
		return text
	}
	if v > before {
		diff = "+" + diff
	}
	return "(" + diff + ")   " + text
}

// rows draws a table of numbers under and beside their names; a pointer that rests on
// one reads its tip.
func (s Side) rows(c *panel.Column, id string, t panel.Table, tips []string) {
	for i, r := range t.Rows {
		from := c.Next()
		if len(r.Cells) > 3 {
			s.Panel.Note(c.Row(13), strings.TrimSpace(r.Cells[0]))
			s.Panel.KeyValue(c.Row(panel.RowHeight-2), "A "+r.Cells[1]+"   B "+r.Cells[2], r.Cells[3])
		} else {
			s.keyValue(c, r.Cells[0], r.Cells[1]+" "+r.Cells[2])
		}
		if i < len(tips) && tips[i] != "" {
			s.Panel.Hint(fmt.Sprintf("%s of number %d", id, i), panel.Rect{X: c.Rest().X, Y: from, W: c.Width(), H: c.Next() - from - 2}, tips[i])
		}
	}
}

// keyValue writes a name and its value in one line, or the name over the value where
// there is no room beside it.
func (s Side) keyValue(c *panel.Column, name, value string) {
	if s.Atlas.TextWidth(panel.Small, name)+s.Atlas.TextWidth(panel.Body, value)+8 > c.Width() {
		s.Panel.Note(c.Row(13), name)
		name = ""
	}
	s.Panel.KeyValue(c.Row(panel.RowHeight-2), name, value)
}

// heads are the columns of a table of numbers.
func (s Side) heads(first string) []panel.TableColumn {
	if len(s.Shown.Designs) == 1 {
		return []panel.TableColumn{{Head: first}, {Numbers: true}, {Head: ""}}
	}
	return []panel.TableColumn{{Head: first}, {Head: "A", Numbers: true}, {Head: "B", Numbers: true}, {Head: "B less A", Numbers: true}}
}

// cells are a row of numbers; for two designs with their difference. The margin is that
// of the one number, or of the difference.
func cells(q quantity.Quantity, values []float64, m Margin) []string {
	unit, _, _ := strings.Cut(q.Unit, " of ")
	if len(values) == 1 {
		return []string{q.Title(), scale.Fixed(values[0], q.Digits) + m.text(), unit}
	}
	out := []string{q.Title() + ", " + unit}
	for _, v := range values {
		out = append(out, scale.Fixed(v, q.Digits))
	}
	diff := scale.Fixed(values[1]-values[0], q.Digits)
	if v := values[1] - values[0]; v > 0 && strings.Trim(diff, "0.") != "" {
		diff = "+" + diff
	}
	return append(out, diff+m.text())
}

// AtPitch shows the headline numbers at full load, as archload compare has them.
func (s Side) AtPitch(c *panel.Column) {
	if s.Shown.Table == nil {
		s.Panel.Note(c.Row(20), "Working…")
		return
	}
	t := panel.Table{Columns: s.heads("")}
	var tips []string
	for _, r := range s.Shown.Table.Rows {
		q := r.Quantity()
		var values []float64
		for _, v := range r.Values {
			values = append(values, float64(v))
		}
		m := Margin{all: math.NaN()}
		tip := ""
		switch {
		case r.Bare():
		case len(values) == 1:
			m = margin(s.Shown.Designs[0], s.Shown.Designs[0].Pitch, 1, q, q.Key)
			tip = tipOf(q, m)
		default:
			for i, a := range s.Shown.Designs {
				one := margin(a, a.Pitch, 1, q, q.Key)
				if one.words != "" {
					tip += string(rune('A'+i)) + one.text() + "; " + one.words + "\n"
				}
			}
			m = apart(s.Shown.Ranges, q)
			tip = tipOf(q, Margin{}) + "\n" + tip + m.words
		}
		t.Rows, tips = append(t.Rows, panel.TableRow{Cells: cells(q, values, m)}), append(tips, strings.TrimSpace(tip))
	}
	s.rows(c, "at pitch", t, tips)
}

// apart is the margin of what B has more than A, both from the same planks; nothing
// is known before the ranges are worked out.
func apart(ranges *study.Comparison, q quantity.Quantity) Margin {
	m := Margin{all: math.NaN(), digits: q.Digits}
	if ranges == nil {
		return m
	}
	for _, r := range ranges.Rows {
		if r.Key != q.Key || len(r.Ranges) == 0 || len(r.Differences) == 0 {
			continue
		}
		d := r.Differences[0]
		m = marginOf(q, study.Range{Wood: d.Wood, Mesh: d.Mesh, Edge: answer.None()})
		m.words += "\nB less A, both from the same planks"
		if d.Within {
			m.words += ": another pair of planks may turn it round"
		}
	}
	return m
}

// gaugeDigits are the decimals of a gauge's reading in mm: tenths of what a dial
// of hundredths shows.
const gaugeDigits = 3

// Gauges lists the gauges of a design's case, and the pins; unpin takes out pin i.
func (s Side) Gauges(c *panel.Column, a *stage.Answered, unpin func(i int)) {
	for i, g := range a.Gauges {
		m := margin(a, a.Sure(), s.Shown.Want.Load, quantity.OfGauge(i, g.Name), quantity.GaugeKey(i))
		m.digits = gaugeDigits
		value := scale.Fixed(g.Sink, gaugeDigits) + m.text() + " mm"
		if g.Measured.Known() {
			value += " (bench " + scale.Fixed(float64(g.Measured), 2) + ")"
		}
		s.keyValue(c, g.Name, value)
	}
	for i, g := range a.Pins {
		if g.Name == "" {
			continue // a lesson points there
		}
		row := c.Row(panel.ToggleHeight)
		name := fmt.Sprintf("%s at x %s, y %s mm", strings.TrimSuffix(g.Name, ":"), scale.Fixed(g.X, 0), scale.Fixed(g.Y, 0))
		s.Panel.KeyValue(panel.Rect{X: row.X, Y: row.Y, W: row.W - 30, H: row.H}, name, scale.Fixed(g.Sink, gaugeDigits)+" mm")
		if s.Panel.Button(panel.Control{ID: fmt.Sprintf("unpin %d", i), At: panel.Rect{X: row.Right() - 24, Y: row.Y, W: 24, H: row.H - 2},
			Label: "×", Tip: "takes the pin out"}) {
			unpin(i)
		}
	}
	if len(a.Gauges)+len(a.Pins) == 0 {
		s.Panel.Note(c.Row(34), "No gauge in this case. Click on the plate to pin a place and read it here.")
	}
}
