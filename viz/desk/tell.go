package desk

import (
	"fmt"
	"math"
	"strings"

	"archload/cases/answer"
	"archload/viz/desk/looks"
)

// Line reports the last frame in one line of names and values, for tests and
// scripts that drive the window: what is shown, not what was asked.
func (d *Desk) Line() string {
	var b strings.Builder
	fmt.Fprintf(&b, "frame %d", d.frames)
	say := func(name string, v any) { fmt.Fprintf(&b, " %s=%v", name, v) }
	word := func(name, v string) { say(name, strings.ReplaceAll(v, " ", "_")) }
	say("busy", d.busy || d.eased)
	say("yaw", decimals(d.camera.Yaw))
	say("pitch", decimals(d.camera.Pitch))
	say("distance", decimals(d.camera.Distance))
	say("play", d.play.on)
	say("cursor", [...]string{"arrow", "hand", "cross"}[d.cursor()])
	if d.lesson != nil {
		say("step", fmt.Sprintf("%d/%d", d.lesson.At+1, len(d.lesson.Steps)))
	}
	if d.shown != nil {
		d.tellShown(say, word)
	}
	if d.note != "" {
		word("note", d.note)
	}
	if d.fault != "" {
		word("fault", d.fault)
	}
	return b.String()
}

func (d *Desk) tellShown(say func(string, any), word func(string, string)) {
	w := d.shown.Want
	word("field", w.Field.Word())
	word("section", looks.CutWords()[w.Cut.Kind])
	say("load", decimals(w.Load))
	say("scenes", len(d.shown.Scenes))
	say("settled", d.shown.Settled())
	say("ranged", d.shown.Ranged())
	if s := d.shown.Scenes[0].Scale; s != nil {
		say("legend", fmt.Sprintf("%.6g..%.6g", s.Lo, s.Hi))
	}
	for i, a := range d.shown.Designs {
		name := string(rune('A' + i))
		say(name+".keys", len(a.Live.Keys()))
		bridge, gauges := a.Bridge, a.Gauges
		say(name+".sure", a.Sure() != nil)
		if bridge != nil {
			say(name+".sink", decimal6(bridge.Sink))
			if bridge.TwoFeet() {
				say(name+".bass_foot", decimal6(bridge.Feet[0].Share))
				say(name+".treble_foot", decimal6(bridge.Feet[1].Share))
			} else {
				say(name+".middle", decimal6(bridge.Share.Middle))
			}
			say(name+".gap", decimal6(bridge.GapLeft))
		}
		for _, g := range append(append([]answer.GaugeReport{}, gauges...), a.Pins...) {
			word(name+".gauge", fmt.Sprintf("%s@%.1f,%.1f:%s", g.Name, g.X, g.Y, decimal6(g.Sink)))
		}
	}
}

func decimals(v float64) string { return fmt.Sprintf("%.4g", v) }

func decimal6(v float64) string {
	if math.IsNaN(v) {
		return "none"
	}
	return fmt.Sprintf("%.6f", v)
}

// Title names what is shown: the lesson, or the designs as they were opened.
func (d *Desk) Title() string {
	if d.lesson != nil {
		return d.lesson.Title
	}
	var names []string
	for _, one := range d.want.Designs {
		names = append(names, one.Name)
	}
	return strings.Join(names, ", ")
}

// Places lists where the controls of the last frame stand, a line each, for
// scripts that drive the window: id, then left, top, width and height of what
// can be seen of it, points; and what is written on the page, a line each, if it is watched.
func (d *Desk) Places() []string {
	var out []string
	for _, p := range d.panel.Places() {
		if p.ID == "" {
			continue
		}
		out = append(out, fmt.Sprintf("place %s %.0f %.0f %.0f %.0f", strings.ReplaceAll(p.ID, " ", "_"), p.Seen.X, p.Seen.Y, p.Seen.W, p.Seen.H))
	}
	for _, p := range d.grips.Places() {
		out = append(out, fmt.Sprintf("place grip_%s %.0f %.0f 1 1", strings.ReplaceAll(p.ID, " ", "_"), p.X, p.Y))
	}
	for _, w := range d.panel.List().Written() {
		out = append(out, "word "+w.String())
	}
	return out
}

// Watch lets Places tell what is written, too.
func (d *Desk) Watch() { d.panel.Watch() }

// remember tells the looks when they have changed.
func (d *Desk) remember() {
	l := d.looks
	if d.lesson != nil {
		return // a lesson's looks are its own
	}
	l.Field, l.Inside, l.Flow, l.Strings, l.Forces, l.Cut = d.want.Field, d.want.Inside, d.want.Flow, d.want.Strings, d.want.Forces, d.want.Cut.Kind
	if d.shown != nil && len(d.shown.Designs) > 0 {
		l = l.With(d.open.Whole(d.shown.Designs[0].Live.Name()))
		d.looks.Recent = l.Recent
	}
	if l != d.kept {
		d.kept = l
		d.o.Remember(l)
	}
}
