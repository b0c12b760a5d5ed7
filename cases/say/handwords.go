package say

import (
	"fmt"
	"io"
	"strings"

	"archload/cases/bench"
	"archload/cases/bench/hand"
)

// WriteHand prints how far a top gives way under a weight, and what to change for a target.
func WriteHand(w io.Writer, rows []hand.Row) error {
	b := &strings.Builder{}
	section(b, "Stiffness by hand: how far gauges go under the weight alone, mm (± what the wood leaves open; mesh)")
	last := ""
	for i := range rows {
		r := &rows[i]
		if head := fmt.Sprintf("%s, %s, %.3g kg", r.Press, r.State, r.Force/bench.StandardGravity); head != last {
			fmt.Fprintf(b, "  %s\n", head)
			last = head
		}
		text := rangedText(r.Sink, 3)
		if r.Mesh.Known() {
			text += fmt.Sprintf("; mesh %.3f", float64(r.Mesh))
		}
		line(b, "  "+r.Gauge, "%s; %.4f a kilogram", text, float64(r.PerKilo))
		if !r.Target.Known() {
			continue
		}
		fmt.Fprintf(b, "      to make it %.3f mm, one of:\n", float64(r.Target))
		for _, c := range r.Changes {
			if c.Far {
				fmt.Fprintf(b, "      %-52s more than a quarter of what is there: not by this alone\n", c.What)
				continue
			}
			fmt.Fprintf(b, "      %-52s %+.2f mm; a fresh solve gives %.3f\n", c.What, c.By, float64(c.Sink))
		}
	}
	b.WriteString("  Another weight moves a bare top in proportion. A small set of gauge and hand, 0.005 mm and one percent, comes on top.\n")
	_, err := io.WriteString(w, b.String())
	return err
}
