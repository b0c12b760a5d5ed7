package say

import (
	"fmt"
	"io"
	"strings"

	"archload/cases/bench/fit"
)

// WritePiece prints what a piece of wood is by what was measured on it.
func WritePiece(w io.Writer, r *fit.Report) error {
	b := &strings.Builder{}
	fmt.Fprintf(b, "%s\n\n", r.Title)
	writeConstants(b, r)
	writeReadings(b, r)
	if len(r.LeftOut) > 0 {
		section(b, "Left out: look at these again")
		for _, s := range r.LeftOut {
			fmt.Fprintf(b, "  %s\n", s)
		}
	}
	if len(r.Expected) > 0 {
		section(b, "What the gauges will show")
		for _, e := range r.Expected {
			line(b, e.Words, "%.3f mm ± %.3f", e.Value, e.SD)
			switch t := e.Thickness; {
			case t == nil:
			case t.Far:
				line(b, "", "%.3f mm would ask for more than a quarter of the thickness", t.Target)
			default:
				line(b, "", "%.3f mm with %.3f of the thickness (%+.1f %%); a fresh solve gives %.3f", t.Target, t.Times, 100*(t.Times-1), float64(t.Sink))
			}
		}
	}
	if len(r.Next) > 0 {
		section(b, "What would help most next")
		for _, n := range r.Next {
			fmt.Fprintf(b, "  %s: %s from ± %.3g %% to ± %.2g %%\n", n.Words, n.Constant, 100*n.From, 100*n.To)
		}
	}
	section(b, "How far to trust it")
	for _, d := range r.Doubt {
		line(b, "in doubt", "%s", d)
	}
	for _, t := range r.Thickness {
		line(b, t.Piece, "%+.2f %% of the caliper's, ± %.2f %%", 100*(t.Times-1), 100*t.SD)
	}
	for _, c := range r.Cautions {
		line(b, "mind", "%s", c)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// fourDigits writes a number with four figures, all of those before the point.
func fourDigits(v float64) string {
	if v >= 1e4 {
		return fmt.Sprintf("%.0f", v)
	}
	return fmt.Sprintf("%.4g", v)
}

// pieceKeys are the constants in the order of a card, with their units.
func pieceKeys() [][2]string {
	return [][2]string{{"density", "kg/m3"}, {"EL", "MPa"}, {"ER", "MPa"}, {"ET", "MPa"}, {"GLR", "MPa"}, {"GLT", "MPa"}, {"GRT", "MPa"}, {"nuLR", ""}, {"nuLT", ""}, {"nuRT", ""}}
}

func writeConstants(b *strings.Builder, r *fit.Report) {
	section(b, fmt.Sprintf("This wood, %s, by what was measured on it (± one standard deviation)", r.Name))
	fmt.Fprintf(b, "  %-10s %10s %9s   %s\n", "", "found", "±", "the card of "+r.Like+" says")
	for _, k := range pieceKeys() {
		c := r.Wood[r.Name][k[0]]
		fmt.Fprintf(b, "  %-10s %10s %7.2g %%   %s ± %.2g %%  %s\n", k[0], fourDigits(c.Value), 100*c.SD/c.Value, fourDigits(c.Card), 100*c.CardSD/c.Card, k[1])
	}
	if len(r.Unknown) > 0 {
		line(b, "no better known than before", "%s", strings.Join(r.Unknown, ", "))
	}
}

func writeReadings(b *strings.Builder, r *fit.Report) {
	section(b, "Readings beside the fit")
	fmt.Fprintf(b, "  %-44s %9s %9s %6s\n", "", "read", "fitted", "off")
	counted := false // patterns told by two numbers
	for _, x := range r.Readings {
		counted = counted || !x.LeftOut && strings.ContainsAny(x.Pattern, "0123456789")
		if x.LeftOut {
			fmt.Fprintf(b, "  %-44s %9s %9s %6s  left out\n", x.Words, fourDigits(x.Value), "-", "-")
			continue
		}
		fmt.Fprintf(b, "  %-44s %9s %9s %s  %s\n", x.Words, fourDigits(x.Value), fourDigits(float64(x.Fitted)), plainZeros(fmt.Sprintf("%+6.1f", float64(x.Off))), x.Pattern)
	}
	fmt.Fprintln(b, "  off: read less fitted, in standard deviations of the reading; beyond 2 it deserves a second look")
	if counted {
		fmt.Fprintln(b, "  1 2: so many lines stand still across and along the length of the blank")
	}
}
