package answer

import (
	"math"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/design"
)

// TestFeetShares sums the contact forces by the sign of x and by distance, which
// is what feet and heels come to where both feet are alike.
func TestFeetShares(t *testing.T) {
	c := casetest.Open(t, "course-guitar-two-feet")
	sol, err := design.Solve(t.Context(), c, design.Options{Workers: 2, Refine: 0.3, NoFlow: true, NoError: true})
	if err != nil {
		t.Fatal(err)
	}
	b := Summarize(sol).Bridge
	if !b.TwoFeet() || b.Feet[0].From != -66 || b.Feet[1].To != 66 {
		t.Fatalf("feet %+v, want two from -66 to 66 mm", b.Feet)
	}
	var bass, inner, all float64
	for _, p := range b.Contact {
		x := p.X - c.Bridge.At[0]
		all += p.Force
		if x < 0 {
			bass += p.Force
		}
		switch past := math.Abs(x) - 45; { // the feet reach from 24 to 66 mm
		case math.Abs(past) < 0.1: // the points of contact lie some hundredths beside their stations
			inner += p.Force / 2
		case past < 0:
			inner += p.Force
		}
	}
	for _, q := range []struct {
		name      string
		got, want float64
	}{
		{"bass foot", b.Feet[0].Share, bass / all}, {"both feet", b.Feet[0].Share + b.Feet[1].Share, 1},
		{"inner heels", InnerHeels(b.Feet), inner / all}, {"outer heel", b.Feet[0].Outer + b.Feet[0].Inner, b.Feet[0].Share},
	} {
		if math.Abs(q.got-q.want) > 1e-12 {
			t.Errorf("%s: %g, want %g", q.name, q.got, q.want)
		}
	}
	last := b.ByLoad[len(b.ByLoad)-1].Heels
	if got, want := last[bassOuter]/all, b.Feet[0].Outer; math.Abs(got-want) > 1e-9 {
		t.Errorf("outer heel at full load %g, want %g", got, want)
	}
}

// TestHeelEvents: heels touch with the first and have closed with the last.
func TestHeelEvents(t *testing.T) {
	two := []FootReport{{InnerTouchesAt: 0.3, InnerClosesAt: 0.5}, {InnerTouchesAt: 0.2, InnerClosesAt: 0.4}}
	if touch, closed := HeelsTouchAt(two), HeelsCloseAt(two); touch != 0.2 || closed != 0.5 {
		t.Errorf("touch at %g, closed at %g, want 0.2 and 0.5", touch, closed)
	}
	two[1].InnerClosesAt = None()
	if closed := HeelsCloseAt(two); closed.Known() {
		t.Errorf("closed at %g though one never closes", closed)
	}
	two[0].InnerTouchesAt = None()
	if touch := HeelsTouchAt(two); touch != 0.2 {
		t.Errorf("touch at %g, want 0.2", touch)
	}
}

// TestInnerPart: a station in the middle of a foot belongs to both of its heels,
// and the treble foot mirrors the bass foot.
func TestInnerPart(t *testing.T) {
	feet := []cases.Foot{{From: -60, To: -20}, {From: 20, To: 60}}
	for _, c := range []struct{ x, want float64 }{{-50, 0}, {-40, 0.5}, {-30, 1}} {
		if got := innerPart(feet, 0, c.x); got != c.want {
			t.Errorf("bass foot at %g: %g, want %g", c.x, got, c.want)
		}
		if got := innerPart(feet, 1, -c.x); got != c.want {
			t.Errorf("treble foot at %g: %g, want %g", -c.x, got, c.want)
		}
	}
}
