package say

import (
	"fmt"
	"io"
	"math"
	"strings"

	"archload/cases/aging"
	"archload/cases/answer"
	"archload/cases/body"
)

// WriteSeasons prints what moisture does to a design in a maker's words.
func WriteSeasons(w io.Writer, r *aging.SeasonsReport) error {
	b := &strings.Builder{}
	if r.Title != "" {
		fmt.Fprintf(b, "%s\n\n", r.Title)
	}
	section(b, "Seasons, from the made state"+heldAside(r)+r.OrderAside())
	if m := r.Made; m != nil {
		line(b, "made", "in air of %.0f %% at %.0f °C: wood at %.1f %%", m.Humidity, m.Temperature, m.Moisture)
		if m.Bridge != nil {
			line(b, "bridge sinks when made", "%.3f mm under the strings, in wood so dry; a solve counts with the moisture of the wood cards", m.Bridge.Sink)
		}
	}
	if m := r.Made; m != nil && m.Thrust != nil {
		line(b, "lengthwise thrust", "%s", thrustText(m.Thrust))
	}
	sideBySide(b, r)
	for i := range r.Seasons {
		writeSeason(b, &r.Seasons[i])
	}
	section(b, "How far to trust it")
	for _, s := range r.Seasons {
		if e := s.Error.Discretisation; e.Known() {
			line(b, s.Name, "movements within about %.1f %% by the triangles", 100*float64(e))
		}
	}
	line(b, "relative to", "%s", r.Held)
	for _, c := range r.Cautions {
		line(b, "caution", "%s", c)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// heldAside says in a heading that strings are on.
func heldAside(r *aging.SeasonsReport) string {
	for _, s := range r.Seasons {
		if s.Bridge != nil {
			return ", strings on"
		}
	}
	return ""
}

// sideBySide sets the seasons' main numbers in a table.
func sideBySide(b *strings.Builder, r *aging.SeasonsReport) {
	if len(r.Seasons) < 2 {
		return
	}
	fmt.Fprintf(b, "  %-14s %6s %8s %9s %8s %8s %8s %8s %8s\n", "", "wood %", "arch mm", "lower mm", "middle %", "gap mm", "across %", "glue %", "used %")
	for i := range r.Seasons {
		s := &r.Seasons[i]
		cells := []string{"-", "-", "-"}
		if br := s.Bridge; br != nil {
			cells = []string{fmt.Sprintf("%+.2f", br.ActionChange), fmt.Sprintf("%.0f", 100*br.Share.Middle), fmt.Sprintf("%.3f", br.GapLeft)}
			if br.TwoFeet() {
				cells[1] = "-"
			}
		}
		fmt.Fprintf(b, "  %-14s %6s %8s %9s %8s %8s %8s %8s %8s\n", s.Name, Number(s.Moisture, "%.1f"), plainZeros(fmt.Sprintf("%+.2f", s.ArchRise)), plainZeros(cells[0]), cells[1], cells[2],
			Number(100*s.Across.Used, "%.0f"), Number(100*s.MostGlue(), "%.0f"), Number(100*s.Strength.Used, "%.0f"))
	}
	fmt.Fprint(b, "  arch: rises over the rim; lower: strings at the octave; across, glue, used: of the strength, if the change came at once\n")
}

// thrustText says what the body's parts carry lengthwise.
func thrustText(t *body.Thrust) string {
	out := fmt.Sprintf("top %.0f N", t.Top)
	if sides := t.BassSide + t.TrebleSide; sides != 0 {
		out += fmt.Sprintf(", sides %.0f N", sides)
	}
	if t.Back != 0 {
		out += fmt.Sprintf(", back %.0f N", t.Back)
	}
	return out + "; pressed positive"
}

func writeSeason(b *strings.Builder, s *aging.SeasonReport) {
	section(b, upperFirst(s.Name))
	if s.Humidity.Known() {
		line(b, "air", "%.0f %% at %.0f °C: wood at %.1f %%, %+.1f points from the made state", float64(s.Humidity), float64(s.Temperature), float64(s.Moisture), s.Change.Outer)
	} else if s.Change.Outer != s.Change.Inner {
		line(b, "wood", "%+.1f points at the outer face, %+.1f at the inner one", s.Change.Outer, s.Change.Inner)
	}
	line(b, "the arch", "%s %.2f mm over the rim, at (%.0f, %.0f)", ends(s.ArchRise, "rises", "falls"), math.Abs(s.ArchRise), s.Apex[0], s.Apex[1])
	if br := s.Bridge; br != nil {
		line(b, "action at the octave", "%s by %.2f mm", ends(br.ActionChange, "lower", "higher"), math.Abs(br.ActionChange))
		line(b, "the foot", "bass end %.0f %%, middle %.0f %%, treble end %.0f %%; greatest gap left %.3f mm", 100*br.Share.BassEnd, 100*br.Share.Middle, 100*br.Share.TrebleEnd, br.GapLeft)
		if br.RoughReport != nil {
			line(b, "the foot slides", "%.3f mm at most since slack strings", float64(br.Slid))
		}
	}
	if l := s.Linear; l != nil {
		line(b, "by linear theory", "the arch %+.2f mm, strings lower by %s mm, the middle of the foot carries %s", l.ArchRise, Number(l.Action, "%+.2f"), percent(l.Middle))
	}
	if s.NeckTurn.Known() {
		line(b, "the neck block turns", "%+.3f degrees, upper part inward positive", float64(s.NeckTurn))
	}
	if s.Thrust != nil {
		line(b, "lengthwise thrust", "%s", thrustText(s.Thrust))
	}
	for _, t := range s.Strings {
		line(b, "string "+t.Name, "%.1f N, %+.1f", t.Tension, t.Change)
	}
	for _, g := range s.Gauges {
		line(b, g.Name, "%+.3f mm upward, %+.3f across, %+.3f along", g.Displacement[2], g.Displacement[0], g.Displacement[1])
	}
	line(b, "pull across the grain", "%s MPa at most, at (%s, %s), %s face: %s of the strength across it", Number(s.Across.Stress, "%.2f"), Number(s.Across.X, "%.0f"), Number(s.Across.Y, "%.0f"), s.Across.Surface, percent(s.Across.Used))
	line(b, "strength used", "%s of the plate's", percent(s.Strength.Used))
	for _, g := range s.Braces {
		line(b, "glue of "+g.Name, "shear %s, peel %s of the wood beside it", percent(g.ShearUsed), percent(g.PeelUsed))
	}
	if s.CracksAtOnce() {
		line(b, "warning", "more than the wood bears if the change came at once: it may crack")
	}
}

// Number prints a number that may not be had.
func Number(n answer.Num, form string) string {
	if !n.Known() {
		return "unknown"
	}
	return fmt.Sprintf(form, float64(n))
}

// Season says in one sentence what a season does.
func Season(s *aging.SeasonReport) string {
	out := fmt.Sprintf("%s: the arch %s %.2f mm over the rim", upperFirst(s.Name), ends(s.ArchRise, "rises", "falls"), math.Abs(s.ArchRise))
	if b := s.Bridge; b != nil {
		out += fmt.Sprintf(", the strings come %s by %.2f mm at the octave", ends(b.ActionChange, "lower", "higher"), math.Abs(b.ActionChange))
		if !b.TwoFeet() {
			out += fmt.Sprintf(", the middle of the foot carries %.0f %%", 100*b.Share.Middle)
		}
	}
	if s.CracksAtOnce() {
		out += "; if the change came at once it may crack"
	}
	return out + "."
}
