package say

import (
	"fmt"
	"io"
	"math"
	"strings"

	"archload/cases/pull"
)

// WriteStrings prints the table of the strings as text.
func WriteStrings(w io.Writer, t *pull.StringTable) error {
	var b strings.Builder
	if t.Title != "" {
		fmt.Fprintf(&b, "%s\n\n", t.Title)
	}
	if p := t.Path; p != nil {
		fmt.Fprintf(&b, "Break angles from the strings' path: over the saddle's middle, %.1f mm above the rim\n(the top stands there at %.1f)\n\n", p.Saddle, p.Top)
	} else {
		b.WriteString("Break angles as given\n\n")
	}
	sayEach(&b, t.StringsReport)
	b.WriteByte('\n')
	sayPush(&b, t.StringsReport)
	b.WriteString("\nWhat a small change does            presses N   pushes N   shifts the downforce mm\n")
	for _, c := range t.Changes {
		fmt.Fprintf(&b, "  %-32s %+8.2f   %+8.2f   %+8.2f\n", fmt.Sprintf("%s + %g %s", c.Key, c.Step, c.Unit), c.Downforce, c.Along, c.Shift)
	}
	b.WriteString("\nPush and shift are positive toward the neck; angles are below the top's plane. Tension is as\n" +
		"tuned: what it loses as the top sinks (about 1 %) is left out.\n")
	if t.Wound != "" {
		b.WriteString(folded(t.Wound+".", 98) + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// sayEach prints the strings one a line, and their sum.
func sayEach(b *strings.Builder, s *pull.StringsReport) {
	fmt.Fprintf(b, "  %-10s %7s %7s %9s %7s %7s %10s %9s %9s\n", "string", "x mm", "z mm", "tension N", "front°", "back°", "presses N", "pushes N", "grip N")
	for _, e := range s.Each {
		fmt.Fprintf(b, "  %-10s %+7.1f %7.1f %9.1f %7.2f %7.2f %10.2f %+9.2f %9s\n", e.Name, e.X, e.Height, e.Tension,
			e.FrontAngle, e.BackAngle, e.Downforce, e.Along, gripText(e.Grip))
	}
	fmt.Fprintf(b, "  %-10s %7s %7s %9.1f %7s %7s %10.2f %+9.2f %9s\n", "in all", "", "", s.Tension, "", "", s.Downforce, s.Along, gripText(s.Grip))
	for _, e := range s.Each {
		if e.Rise > 0 {
			fmt.Fprintf(b, "  %s is plucked: %.1f N more in the speaking length alone\n", e.Name, e.Rise)
		}
	}
}

func gripText(grip float64) string {
	if grip == 0 {
		return "-"
	}
	return fmt.Sprintf("± %.2f", grip)
}

// sayPush prints the range of the push and what it does to the bridge.
func sayPush(b *strings.Builder, s *pull.StringsReport) {
	if s.Grip > 0 {
		line(b, "friction lets the push lie", "between %+.1f and %+.1f N (toward the neck)", s.Along-s.Grip, s.Along+s.Grip)
	}
	r := s.Rocking
	if r == nil {
		return
	}
	text := fmt.Sprintf("%.0f N mm toward the %s: shifts the downforce by %.2f of %.1f mm, %.0f %% of tipping",
		math.Abs(r.Moment), ends(r.Moment, "neck", "tail"), math.Abs(r.Shift), r.HalfWidth, 100*r.Used)
	if s.Grip > 0 {
		text += fmt.Sprintf(" (at most %.0f %%)", 100*r.UsedMost)
	}
	line(b, "rocking", "%s", text)
}
