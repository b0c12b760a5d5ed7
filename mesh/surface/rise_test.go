package surface

import (
	"math"
	"testing"
)

// TestRimRaised: with the same smoothness and the same trust in the data, a fit to a rim that is higher is
// the fit moved by its lift; data that stand off the outline do not rise along.
func TestRimRaised(t *testing.T) {
	const log, by = 2.0, 0.5
	f, err := newFitter(&Data{Outline: plateOval, Points: gridOf(oval{60, 80}, 15, quadratic), Noise: 0.01, Rim: height(5), Cell: 12}, nil)
	if err != nil {
		t.Fatal(err)
	}
	fine, err := f.fine()
	if err != nil {
		t.Fatal(err)
	}
	l := f.on(fine)
	low := l.try(log)
	s := low.spline
	s.lift = func() []float64 { return l.lift(log) }
	raised, rims := s.RimRaised(by), 0
	for i := range f.data {
		if f.data[i].follows {
			f.data[i].z += by
			rims++
		}
	}
	want := f.on(fine).try(log).spline
	if rims < 12 {
		t.Fatalf("%d rim points follow the rim's height, want 12 at least", rims)
	}
	moved := 0.0
	for _, p := range gridOf(plateOval, 10, quadratic) {
		z := want.At(p.At).Z
		moved = max(moved, math.Abs(z-s.At(p.At).Z))
		if d := raised.At(p.At).Z - z; math.Abs(d) > 1e-9 {
			t.Fatalf("at %v the raised fit is off by %g mm", p.At, d)
		}
	}
	if moved < by/2 {
		t.Errorf("the rim's rise by %g mm moves the surface by %g mm at most", by, moved)
	}
	if raised.AsFitted() != s || raised.RimRaised(0) != s || s.RimRaised(0) != s {
		t.Error("a raised surface does not know the one that was fitted")
	}
}
