package say

import (
	"fmt"
	"io"
	"math"
	"strings"

	"archload/cases/stability"
)

// WriteMoved prints an answer on the moved shape in a maker's words, then what it differs in from
// the linear one by more than a hundredth.
func WriteMoved(w io.Writer, r *stability.Report) error {
	if err := WriteSummary(w, r.Report); err != nil {
		return err
	}
	b := &strings.Builder{}
	b.WriteByte('\n')
	section(b, "On its moved shape (second order)")
	if r.Times != 1 {
		line(b, "load", "%.3g times that of the case: every string, weight and force", r.Times)
	}
	if r.Second.Share.Known() {
		line(b, "by the movement itself", "%s", ByMovement(float64(r.Second.Share)))
	}
	changed := r.Changed(WorthTelling)
	if len(changed) == 0 {
		line(b, "beside linear", "nothing else differs by more than 1 %% from the answer on the shape as carved")
	} else {
		line(b, "beside linear", "these differ by more than 1 %% from the answer on the shape as carved:")
	}
	for _, m := range changed {
		line(b, "  "+m.Name, "%s instead of %s", said(m.Quantity, m.Second), numberText(m.Quantity, m.Linear))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// WorthTelling is the share by which linear and second order must differ to be set side by side.
const WorthTelling = 0.01

// ByMovement says what the movement of the shape does to the sink, by its share of it.
func ByMovement(share float64) string {
	switch {
	case math.Abs(share) < 0.0005:
		return "less than 0.1 % of the sink"
	case share < 0:
		return fmt.Sprintf("the top stiffens as it sinks: on the shape as carved it would sink %.1f %% further", -100*share)
	}
	return fmt.Sprintf("%.1f %% of the sink comes of forces that act on the shape as it has moved", 100*share)
}

// WriteMovedComparison prints a comparison of answers on their moved shapes, then what each design owes to
// the movement.
func WriteMovedComparison(w io.Writer, c *stability.Comparison) error {
	if err := WriteComparison(w, c.Comparison); err != nil {
		return err
	}
	b := &strings.Builder{}
	section(b, "\nAll on their moved shapes (second order); the wood's ranges are those of linear answers")
	if c.Times != 1 {
		line(b, "load", "%.3g times that of each case", c.Times)
	}
	for i, r := range c.Each() {
		if r.Second.Share.Known() {
			line(b, Letter(i), "%s", ByMovement(float64(r.Second.Share)))
		}
	}
	_, err := io.WriteString(w, b.String())
	return err
}
