package scene

import (
	"math"
	"testing"
)

// The mean darkness of a stretch is that of its halves; the two halves of a billet are each
// other's mirror, their joint is dark, and rings are narrower beside it than at the edge.
func TestLateWood(t *testing.T) {
	for _, x := range []float64{-150, -3, 0.4, 17, 200} {
		whole, left, right := lateMean(x, 4), lateMean(x-1, 2), lateMean(x+1, 2)
		if math.Abs(whole-(left+right)/2) > 1e-4 || !(whole > 0.05 && whole < 0.95) {
			t.Errorf("at %g mm the mean is %g, of its halves %g and %g", x, whole, left, right)
		}
		if math.Abs(lateMean(x, 0.3)-lateMean(-x, 0.3)) > 1e-9 {
			t.Errorf("%g mm to the left the wood is not what it is to the right", x)
		}
	}
	if j, b := lateMean(0, 0.3), lateMean(0.6, 0.3); j < 1 || b > 0.6 {
		t.Errorf("the joint is %g dark, the wood beside it %g", j, b)
	}
	rings := func(from, to float64) (n int) {
		for x := from; x < to; x += lateStep {
			if d := lateMean(x, lateStep); d > lateMean(x-lateStep, lateStep) && d >= lateMean(x+lateStep, lateStep) && d > 0.3 {
				n++
			}
		}
		return n
	}
	near, far := rings(1, 41), rings(190, 230)
	if near < 20 || near > 50 || far < 10 || far > 30 || near <= far {
		t.Errorf("%d rings in 40 mm beside the joint and %d at the edge", near, far)
	}
}

// The shadow on the bench is whole under the plate, gone where it ends, and never darker
// farther out.
func TestShadowFades(t *testing.T) {
	if shadowAt(shadowCore) != 1 || shadowAt(shadowFar) != 0 {
		t.Errorf("the shadow is %g at its core and %g at its end", shadowAt(shadowCore), shadowAt(shadowFar))
	}
	for by := shadowCore; by < shadowFar; by += 0.01 {
		if shadowAt(by+0.01) > shadowAt(by) {
			t.Errorf("at %g the shadow grows outward", by)
		}
	}
}
