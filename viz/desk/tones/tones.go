// Package tones lists the tones of what is shown beside the drawing, to choose from, and
// says which share of a swing is drawn at which moment.
package tones

import (
	"fmt"
	"math"
	"slices"

	"archload/cases/design"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/stage"
)

// List draws the tones of the first design, and of a second one those that swing most
// alike. It returns what of the want the hand has chosen anew.
func List(p *panel.Panel, c *panel.Column, s *stage.Shown, want stage.Display) stage.Display {
	want = states(p, c, s, want)
	a := s.Designs[0]
	if a.Sound == nil {
		words := "Finding the tones…"
		if a.Soundless != "" {
			words = a.Soundless
		}
		p.Note(c.Row(34), words)
		return want
	}
	for i := range a.Sound.Report.Tones {
		row := c.Row(p.Atlas().PickHeight(under(s, i), c.Width()))
		if p.Pick(panel.Control{ID: fmt.Sprintf("tone %d", i+1), At: row, Label: heads(s, i), Tip: tip(s, i)}, under(s, i), max(1, want.Tone) == i+1) {
			want.Tone = i + 1
		}
	}
	left := a.Sound.Report.LeftOut + ": a real instrument's tones lie elsewhere; how they stand to each other, and which way a change moves them, is better founded. ± by the triangles; wood adds some 10 %."
	p.Note(c.Row(p.Atlas().ParagraphHeight(panel.Small, left, c.Width())), left)
	return want
}

// states draws the choice of how the top is held.
func states(p *panel.Panel, c *panel.Column, s *stage.Shown, want stage.Display) stage.Display {
	all := stage.States(s.Designs[0].Live.Case())
	if len(all) < 2 {
		return want
	}
	names := map[design.State]string{design.Strung: "strung", design.Bare: "on its edge", design.Free: "in the hand"}
	var words []string
	for _, o := range all {
		words = append(words, names[o])
	}
	k := max(0, slices.Index(all, design.State(want.State)))
	choice := panel.Choice{Control: panel.Control{ID: "state", At: c.Row(17 + panel.ChoiceHeight), Label: "The top is",
		Tip: "strung: under its strings, which are muted; on its edge: without bridge and strings; in the hand: the plate alone, as one taps it"}, Words: words}
	if p.Choice(choice, &k) {
		want.State, want.Tone = string(all[k]), 0
	}
	return want
}

// heads is a tone's number and frequency, and that of the other design's.
func heads(s *stage.Shown, i int) string {
	if len(s.Designs) == 1 {
		return fmt.Sprintf("%d   %s Hz", i+1, hertz(s.Designs[0].Sound, i))
	}
	words := fmt.Sprintf("%d   A %s", i+1, scale.Fixed(s.Designs[0].Sound.Report.Tones[i].Hz, 1))
	for _, l := range s.Like {
		if l.First == i+1 {
			words += fmt.Sprintf("  B %s Hz", scale.Fixed(s.Designs[1].Sound.Report.Tones[l.Tone-1].Hz, 1))
			words += fmt.Sprintf(" (%s %%)", signed(100*float64(l.Rise)))
			return words
		}
	}
	return words + " Hz   B none alike"
}

func signed(v float64) string {
	t := scale.Fixed(v, 1)
	if v > 0 {
		t = "+" + t
	}
	return t
}

// hertz is a tone's frequency with what the triangles may cost it.
func hertz(o *stage.Sound, i int) string {
	t := &o.Report.Tones[i]
	words := scale.Fixed(t.Hz, 1)
	if e := float64(t.Error) * t.Hz; e >= 0.05 {
		words += " ± " + scale.Fixed(e, 1)
	}
	return words
}

// under is how it swings, in plain words.
func under(s *stage.Shown, i int) string {
	t := &s.Designs[0].Sound.Report.Tones[i]
	if t.Bridge != nil {
		return t.Pattern + "; the bridge " + t.Bridge.Words
	}
	return t.Pattern
}

// tip says what moves in it.
func tip(s *stage.Shown, i int) string {
	t := &s.Designs[0].Sound.Report.Tones[i]
	words := fmt.Sprintf("of the movement: plate %.0f %%", 100*t.Share.Plate)
	for _, part := range []struct {
		name  string
		share float64
	}{{"bars", t.Share.Braces}, {"sides", t.Share.Sides}, {"back", t.Share.Back}, {"bridge", t.Share.Bridge}} {
		if part.share >= 0.005 {
			words += fmt.Sprintf(", %s %.0f %%", part.name, 100*part.share)
		}
	}
	return fmt.Sprintf("%s; it weighs as much as %.0f g at the place that moves most, at x %.0f, y %.0f mm", words, t.ModalMass, t.X, t.Y)
}

// How a swing is played: how long it takes, s, and in how many steps from one end to
// the other it is drawn.
const (
	period = 2.4
	steps  = 16
)

// Swing plays a swing: its pictures are made once and kept as long as the same state is
// shown. The zero value is ready.
type Swing struct {
	of    *stage.Shown
	drawn map[int]*stage.Shown
}

// At is what is drawn at a moment, s: the same answer with its scenes at that share of
// the swing.
func (w *Swing) At(s *stage.Shown, now float64) *stage.Shown {
	if w.of != s {
		*w = Swing{of: s, drawn: map[int]*stage.Shown{}}
	}
	k := int(math.Round(steps * math.Cos(2*math.Pi*now/period)))
	if w.drawn[k] == nil {
		out := *s
		out.Scenes = s.Swung(float64(k) / steps)
		w.drawn[k] = &out
	}
	return w.drawn[k]
}
