package say

import (
	"fmt"
	"io"
	"math"
	"strings"

	"archload/cases/answer"
	"archload/cases/setup"
)

// WriteSetup prints an action sheet as text.
func WriteSetup(w io.Writer, s *setup.Sheet) error {
	var b strings.Builder
	if s.Title != "" {
		fmt.Fprintf(&b, "%s\n\n", s.Title)
	}
	if q := s.Wish; q != nil {
		fmt.Fprintf(&b, "Wanted at pitch, at the octave: bass string %.2f mm, treble string %.2f mm over the frets, %s\n\n", q.Bass, q.Treble, wishedPressure(q))
	}
	setupTable(&b, s.Ways)
	for _, l := range SetupNotes(s) {
		fmt.Fprintf(&b, "%s\n", folded(l, 96))
	}
	b.WriteString("\nWhat a small change does, as it is    bass mm   treble mm   presses N   shifts the downforce mm\n")
	for _, c := range s.Changes {
		fmt.Fprintf(&b, "  %-32s %+10.2f  %+10.2f  %+10.2f  %+10.2f\n", fmt.Sprintf("%s + %g %s", c.Key, c.Step, c.Unit),
			c.AtPitch[0], c.AtPitch[1], c.Downforce, c.Shift)
	}
	b.WriteString("\nBass and treble: the outer strings over the frets at the octave, at pitch. The shift of the\ndownforce at the foot is positive toward the neck: beyond half the bridge's width it tips.\n")
	for _, c := range s.Cautions {
		fmt.Fprintf(&b, "%s\n", folded(c, 96))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func wishedPressure(q *setup.Wish) string {
	if q.Downforce > 0 {
		return fmt.Sprintf("%.0f N on the bridge", q.Downforce)
	}
	return fmt.Sprintf("strings bent %.1f degrees over the saddle", q.BreakAngle)
}

// setupTable sets the ways side by side.
func setupTable(b *strings.Builder, ways []setup.Way) {
	row := func(name string, text func(*setup.Way) string) {
		fmt.Fprintf(b, "  %-38s", name)
		for i := range ways {
			fmt.Fprintf(b, "%16s", text(&ways[i]))
		}
		b.WriteByte('\n')
	}
	row("", func(w *setup.Way) string { return w.Name })
	for _, r := range SetupRows() {
		row(r.Name, r.Text)
	}
}

// SetupRow is one line of an action sheet's table.
type SetupRow struct {
	Name string
	Text func(*setup.Way) string
}

// SetupRows are the lines of an action sheet's table.
func SetupRows() []SetupRow {
	number := func(form string, of func(*setup.Way) float64) func(*setup.Way) string {
		return func(w *setup.Way) string { return plainZeros(fmt.Sprintf(form, of(w))) }
	}
	return []SetupRow{
		{"neck angle, degrees", number("%.2f", func(w *setup.Way) float64 { return w.NeckAngle })},
		{"frets' plane over the top, mm", number("%.2f", func(w *setup.Way) float64 { return w.FretPlane })},
		{"saddle height, mm", number("%.2f", func(w *setup.Way) float64 { return w.SaddleHeight })},
		{"saddle higher under the bass string, mm", number("%.2f", func(w *setup.Way) float64 { return w.Slant })},
		{"anchor height, mm", number("%.2f", func(w *setup.Way) float64 { return w.AnchorHeight })},
		{"bridge presses, N", number("%.1f", func(w *setup.Way) float64 { return w.Downforce })},
		{"strings bend over the saddle, degrees", number("%.2f", func(w *setup.Way) float64 { return w.BreakAngle })},
		{"downforce shifted to the neck, mm", number("%+.2f", func(w *setup.Way) float64 { return w.Shift })},
		{"bridge sinks, mm", number("%.2f", func(w *setup.Way) float64 { return w.Sink })},
		{"bridge weighs, g", func(w *setup.Way) string {
			if !w.BridgeMass.Known() {
				return "-"
			}
			return fmt.Sprintf("%.1f", float64(w.BridgeMass))
		}},
		{"bass string, slack, mm", number("%.2f", func(w *setup.Way) float64 { return w.Slack[0] })},
		{"bass string, at pitch, mm", number("%.2f", func(w *setup.Way) float64 { return w.AtPitch[0] })},
		{"bass string, after decades, mm", func(w *setup.Way) string { return settledText(w.Settled[0]) }},
		{"treble string, slack, mm", number("%.2f", func(w *setup.Way) float64 { return w.Slack[1] })},
		{"treble string, at pitch, mm", number("%.2f", func(w *setup.Way) float64 { return w.AtPitch[1] })},
		{"treble string, after decades, mm", func(w *setup.Way) string { return settledText(w.Settled[1]) }},
	}
}

// SetupNotes say in words what an action sheet asks for.
func SetupNotes(s *setup.Sheet) []string {
	if len(s.Ways) < 3 {
		return []string{"Ask for heights and a pressure to see which neck angle or which saddle gives them: --bass, --treble, and --downforce or --break-angle."}
	}
	was, neck, bridge := s.Ways[0], s.Ways[1], s.Ways[2]
	return []string{
		fmt.Sprintf("By the neck: set it %s by %.2f degrees (it turns %.0f mm before the saddle), the bridge stays %.1f mm high.",
			ends(neck.NeckAngle-was.NeckAngle, "steeper", "flatter"), math.Abs(neck.NeckAngle-was.NeckAngle), s.Joint, neck.SaddleHeight),
		fmt.Sprintf("By the bridge: make the saddle %s by %.2f mm, the neck stays as it is.",
			ends(bridge.SaddleHeight-was.SaddleHeight, "higher", "lower"), math.Abs(bridge.SaddleHeight-was.SaddleHeight)),
	}
}

// settledText is a string's height after decades.
func settledText(s [2]answer.Num) string {
	if !s[0].Known() {
		return "unknown"
	}
	return fmt.Sprintf("%.2f to %.2f", float64(s[0]), float64(s[1]))
}
