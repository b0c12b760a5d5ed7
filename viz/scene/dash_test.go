package scene

import (
	"testing"

	"archload/viz/scale"
)

// Lines below zero are broken, those above are not, so that
// pull and push stay apart in grey print.
func TestLinesBelowZeroAreBroken(t *testing.T) {
	s := scale.New(-3, 3, scale.Signed)
	f := newFieldPaint(&s, PaintOptions{Contours: true}, 1)
	if f.cell == 0 || f.step == 0 {
		t.Fatalf("no dashes on %+v", s)
	}
	for _, k := range []float64{f.zero - 1, f.zero + 1} {
		drawn, n := 0, 84
		ground := lit(f.tone[int(k*(tones/f.bands)+0.5)], 256)
		for i := range n {
			if f.at(k, 0.01, 256, i) != ground {
				drawn++
			}
		}
		if below := k < f.zero; below && (drawn < n/3 || drawn > 2*n/3) || !below && drawn != n {
			t.Errorf("line %g: %d of %d samples drawn", k-f.zero, drawn, n)
		}
	}
}
