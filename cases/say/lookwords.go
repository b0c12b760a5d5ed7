package say

import (
	"fmt"
	"io"
	"math"

	"archload/cases/answer"
)

// WriteOverview prints an overview as text.
func WriteOverview(w io.Writer, o *answer.Overview) error {
	fmt.Fprintf(w, "%s\n\nThe design as it will be computed (defaults filled in)\n", o.Title)
	for _, kv := range o.Keys {
		fmt.Fprintf(w, "  %-30s %s\n", kv.Key, kv.Value)
	}
	fmt.Fprintf(w, "\nThe top\n")
	fmt.Fprintf(w, "  plate %.0f g, braces %.1f g", o.Mass.Plate, o.Mass.Braces)
	if o.Mass.Bridge.Known() {
		fmt.Fprintf(w, ", bridge %.1f g", float64(o.Mass.Bridge))
	}
	fmt.Fprint(w, plainZeros(fmt.Sprintf("\n  apex %.1f mm high at (%.0f, %.0f); thickness %.1f to %.1f mm; steepest slope %.1f degrees\n", o.Top.Apex.Value,
		o.Top.Apex.X, o.Top.Apex.Y, o.Top.Thinnest.Value, o.Top.Thickest.Value, o.Top.Steepest.Value)))
	if s := o.Strings; s != nil {
		fmt.Fprintf(w, "\nThe strings: %.0f N of tension press down with %.1f N and push %.1f N toward the %s\n", s.Tension, s.Downforce,
			math.Abs(s.Along), ends(s.Along, "neck", "tail"))
	}
	if len(o.Assumed) > 0 {
		fmt.Fprintf(w, "\nThe body: the back weighs %.0f g with its bars. Taken where the case does not say:\n", o.Mass.Back)
		for _, s := range o.Assumed {
			fmt.Fprintf(w, "  %s\n", s)
		}
	}
	fmt.Fprintf(w, "\nA solve has %d nodes, about %.0f MB and %.1f thousand million operations to factorise\n", o.Nodes, o.Memory, o.Work)
	for _, s := range o.Warnings {
		fmt.Fprintf(w, "warning: %s\n", s)
	}
	_, err := fmt.Fprintln(w, "the case is sound")
	return err
}
