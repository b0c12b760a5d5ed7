// Package air draws what other air does to a design beside its drawing: the slider of the
// humidity, and what moves.
package air

import (
	"fmt"
	"math"
	"strings"

	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/stage"
)

// List draws the slider and the numbers of each design; it returns what of the want the
// hand has chosen anew.
func List(p *panel.Panel, at *panel.Atlas, c *panel.Column, s *stage.Shown, want stage.Display) stage.Display {
	made := 45.0
	if a := s.Designs[0].Air; a != nil {
		made = a.Of.Made.Humidity
	}
	v := want.Humid()
	if p.Slider(panel.Slider{Control: panel.Control{ID: "humidity", At: c.Row(panel.SliderHeight), Label: "Humidity",
		Tip: "relative humidity of the air; worked out when the hand rests: the wood takes weeks to follow"}, Unit: "%", Min: 10, Max: 90, Step: 1, Default: made, Typed: true}, &v) {
		want.Air = v
	}
	for i, d := range s.Designs {
		if len(s.Designs) > 1 {
			p.Note(c.Row(16), "design "+string(rune('A'+i)))
		}
		if d.Air == nil {
			p.Note(c.Row(34), words(d))
			continue
		}
		for _, r := range rows(d.Air) {
			p.KeyValue(c.Row(panel.RowHeight-2), r[0], r[1])
		}
	}
	if a := s.Designs[0].Air; a != nil {
		all := fmt.Sprintf("From air of %s %%, in which it was made, relative to %s.", scale.Fixed(made, 0), a.Of.Held)
		for _, w := range a.Of.Cautions {
			all += " " + upper(w) + "."
		}
		p.Note(c.Row(at.ParagraphHeight(panel.Small, all, c.Width())), all)
	}
	return want
}

// words say why nothing is shown.
func words(d *stage.Answered) string {
	if d.Airless != "" {
		return d.Airless
	}
	return "Working…"
}

func upper(t string) string { return strings.ToUpper(t[:1]) + t[1:] }

// rows are the numbers of a design in other air, as archload seasons has them.
func rows(a *stage.Air) [][2]string {
	r := a.Report
	out := [][2]string{
		{"moisture of the wood", scale.Fixed(float64(r.Moisture), 1) + " % (" + signed(r.Change.Outer, 1) + ")"},
		{"arch rises at its apex", signed(r.ArchRise, 3) + " mm"},
	}
	if b := r.Bridge; b != nil {
		out = append(out, [2]string{"bridge sinks by", signed(b.Sink, 3) + " mm"},
			[2]string{"strings lower at the octave by", signed(b.ActionChange, 3) + " mm"})
	}
	if r.NeckTurn.Known() {
		out = append(out, [2]string{"neck turns, the nut up", signed(float64(r.NeckTurn), 3) + " degrees"})
	}
	if r.Across.Used.Known() {
		out = append(out, [2]string{"pull across the grain uses", scale.Fixed(100*float64(r.Across.Used), 0) + " %"})
	}
	if r.Strength.Used.Known() {
		out = append(out, [2]string{"strength used", scale.Fixed(100*float64(r.Strength.Used), 0) + " %"})
	}
	return out
}

func signed(v float64, digits int) string {
	t := scale.Fixed(v, digits)
	if v > 0 && math.Abs(v) >= 0.5*math.Pow10(-digits) {
		t = "+" + t
	}
	return t
}
