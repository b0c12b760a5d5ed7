package answer

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"archload/cases/casetest"
	"archload/cases/tree"
)

// TestGripTolerance: what counts as touching, halved, changes nothing beyond
// 1e-6 of the load, though grip follows a path.
func TestGripTolerance(t *testing.T) {
	t.Parallel()
	p := mustPrepare(t, "course-guitar-relief", 0.6)
	fit := p.Fit()
	a, err := p.Stand.Follow(fit)
	if err != nil {
		t.Fatal(err)
	}
	fit.Tolerance = 0.5e-11
	b, err := p.Stand.Follow(fit)
	if err != nil {
		t.Fatal(err)
	}
	load := p.Built.Geometry.StringSum().Downforce
	for i := range a.Lambda {
		if d := math.Abs(a.Lambda[i] - b.Lambda[i]); d > 1e-6*load {
			t.Fatalf("row %d: %.9g N and %.9g N with half the tolerance", i, a.Lambda[i], b.Lambda[i])
		}
	}
}

// TestGripStringOrder: the same strings listed from the bass side press the
// same.
func TestGripStringOrder(t *testing.T) {
	t.Parallel()
	p := mustPrepare(t, "course-guitar-relief", 0.6)
	want, err := p.Answer()
	if err != nil {
		t.Fatal(err)
	}
	c := *p.Built.Case
	s := *c.Strings
	s.Each = slices.Clone(s.Each)
	for i := range s.Each {
		x := s.Spread/2 - s.Spread*tree.Length(i)/tree.Length(len(s.Each)-1)
		s.Each[i].X = &x
	}
	slices.Reverse(s.Each)
	c.Strings = &s
	got, err := refit(p, &c)
	if err != nil {
		t.Fatal(err)
	}
	load := c.StringSum(0).Downforce
	for i, v := range want.Result.State.Lambda {
		if d := math.Abs(v - got.Result.State.Lambda[i]); d > 1e-6*load {
			t.Fatalf("row %d: %.9g N, and %.9g N in the other order", i, v, got.Result.State.Lambda[i])
		}
	}
}

// padCase is a short foot on a stiff dome or a flat plate.
const padCase = `format = 1
[plate]
wood = "sitka-spruce"
outline = "o.csv"
thickness = 8
arch.formula = { height = %g, recurve_depth = 0 }
[rim]
support = "clamped"
[strings]
front_angle = 7
back_angle = 7
spread = 0
each = [{ tension = 200 }]
[bridge]
at = [%g, 0]
length = 12
width = 12
height = 12
saddle_height = 14
`

// TestFrictionNeeded: a short foot needs next to no friction on a flat place,
// and about the tangent of the slope where the plate slopes, because the load
// comes straight down. Statics: a weight on an incline.
func TestFrictionNeeded(t *testing.T) {
	t.Parallel()
	table := "x_mm,y_mm,corner\n-150,-200,1\n150,-200,1\n150,200,1\n-150,200,1\n"
	for _, c := range []struct{ height, x float64 }{{8, 0}, {40, 70}} {
		s := answered(t, casetest.Load(t, casetest.Files("a.toml", fmt.Sprintf(padCase, c.height, c.x), "o.csv", table), "a.toml"), 0.7)
		j := s.Top.Built.Plate.Outer.At(s.Top.Built.Case.Bridge.At)
		want := math.Hypot(j.Zx, j.Zy)
		normal, drag := 0.0, [2]float64{}
		for i := range s.Top.Built.Bridge.Pads {
			f, d := padForce(s, i)
			normal, drag[0], drag[1] = normal+f, drag[0]+d[0], drag[1]+d[1]
		}
		got := math.Hypot(drag[0], drag[1]) / normal
		if math.Abs(got-want) > 0.02+0.02*want {
			t.Errorf("slope %.4f: the foot drags %.4f of what it presses", want, got)
		}
		t.Logf("slope %.4f, the whole foot drags %.4f, by thirds %.4f", want, got, float64(friction(s)))
	}
}
