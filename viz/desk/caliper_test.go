package desk

import (
	"fmt"
	"math"
	"testing"

	"archload/cases/design"
	"archload/viz/desk/caliper"
	"archload/viz/panel"
)

// The graduation is a table: a number typed on one side is set on both, a ring in the drawing is dragged
// down to take wood off, and the case that is kept gives the same numbers.
func TestGraduationByTable(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar"}, OnMovedShape: true, Solve: design.Options{Workers: 2, Refine: 0.25, NoError: true}})
	h.d.folded[foldGraduation] = false
	h.key(panel.LetterKey('o'))
	g := caliper.Of(h.d.design(), h.d.design().Live.Case())
	at := -1
	for i, q := range g {
		if q.Line == 4 && q.Column == 1 {
			at = i
		}
	}
	thick := func(x, y float64) float64 {
		return h.d.shown.Designs[0].Now.Top.Built.Plate.Thickness.At([2]float64{x, y}).Z
	}
	sink := h.d.shown.Designs[0].Bridge.Sink
	h.scrollTo(caliper.ID(at))
	x, y := h.middle(caliper.ID(at))
	h.click(x, y)
	h.in.Text = []rune("4.4")
	h.frame()
	h.in.Text = nil
	h.key(panel.KeyEnter)
	p := g[at].At
	if l, r := thick(p[0], p[1]), thick(-p[0], p[1]); math.Abs(l-4.4) > 1e-3 || math.Abs(r-4.4) > 1e-3 {
		t.Errorf("4.4 mm was typed; it is %g mm there and %g on the other side", l, r)
	}
	if !(h.d.shown.Designs[0].Bridge.Sink > sink) {
		t.Error("a thinner top sinks no more")
	}
	ring := h.grip(caliper.ID(at + 1)) // the middle of the same line
	h.drag(panel.LeftButton, ring.X, ring.Y, ring.X+3, ring.Y+30)
	h.settle()
	q := g[at+1].At
	if got := thick(q[0], q[1]); math.Abs(got-4.7) > 1e-3 {
		t.Errorf("dragged down by 30 points it is %g mm thick, want 4.7", got)
	}
	h.asSolved(fmt.Sprintf("%g mm at %v", 4.4, p))
	for range 2 {
		h.in.Keys = []panel.KeyPress{{Key: panel.LetterKey('z'), Ctrl: true}}
		h.frame()
		h.settle()
	}
	if n := len(h.d.want.Designs[0].Keys); n != 0 || thick(p[0], p[1]) != 5 {
		t.Errorf("two steps back leave %d keys and %g mm", n, thick(p[0], p[1]))
	}
}
