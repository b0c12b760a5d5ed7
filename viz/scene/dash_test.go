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
			if f.at(k, 0.01, 256, i, 0) != ground {
				drawn++
			}
		}
		if below := k < f.zero; below && (drawn < n/3 || drawn > 2*n/3) || !below && drawn != n {
			t.Errorf("line %g: %d of %d samples drawn", k-f.zero, drawn, n)
		}
	}
}

// One side of zero is hatched, pull or what has come up: without colours the sign shows.
func TestOneSideIsHatched(t *testing.T) {
	for _, c := range []struct {
		kind         scale.Kind
		below, above bool
	}{{scale.Signed, false, true}, {scale.Sinking, true, false}, {scale.Counting, false, false}} {
		s := scale.New(-3, 3, c.kind)
		for _, lines := range []bool{true, false} {
			f := newFieldPaint(&s, PaintOptions{Contours: lines}, 1)
			for _, side := range []struct {
				v    float64 // steps from zero, clear of the lines
				want bool
			}{{-1.4, c.below}, {1.4, c.above}} {
				v, drawn, n := f.zero+side.v, 0, len(f.hatch)
				ground := lit(f.tone[int(v*(tones/f.bands)+0.5)], 256)
				for i := range n {
					if f.at(v, 0.001, 256, i, 3) != ground {
						drawn++
					}
				}
				if want := side.want && lines; want != (drawn > 0) || drawn > n/2 {
					t.Errorf("kind %d, %g steps from zero, lines %v: %d of %d samples hatched, want %v", c.kind, side.v, lines, drawn, n, want)
				}
			}
		}
	}
}
