package cases

import (
	"testing"

	"archload/cases/tree"
)

func TestGap(t *testing.T) {
	foot := []Foot{{From: -60, To: 40}}
	for _, c := range []struct {
		relief Relief
		x, y   float64 // mm
		want   float64 // mm
		source string
	}{
		{Relief{Depth: 0.1, Shape: "parabola"}, 0, 0, 0.1, "depth at the middle"},
		{Relief{Depth: 0.1, Shape: "parabola"}, -30, 5, 0.075, "u = 1/2: 1 - 1/4"},
		{Relief{Depth: 0.1, Shape: "parabola"}, 20, 0, 0.075, "u = 1/2 on the shorter side"},
		{Relief{Depth: 0.1, Shape: "parabola"}, 40, 0, 0, "zero at the outer end"},
		{Relief{Depth: 0.1, Shape: "cosine"}, -30, 0, 0.05, "u = 1/2: (1 + cos 90°)/2"},
		{Relief{Depth: 0.1, Shape: "wedge"}, -15, 0, 0.075, "u = 1/4"},
		{Relief{Depth: 0.1, Shape: "flat", Ends: 15}, 24, 0, 0.1, "inside the ends"},
		{Relief{Depth: 0.1, Shape: "flat", Ends: 15}, 26, 0, 0, "on the end"},
		{Relief{Depth: 0.1, Shape: "parabola", Across: 0.04}, 0, 0, 0.14, "both at the middle"},
		{Relief{Depth: 0.1, Shape: "parabola", Across: 0.04}, 0, 3.25, 0.13, "half way to the edge: 3/4 of across"},
		{Relief{Depth: 0.1, Shape: "parabola", Across: 0.04}, 0, 6.5, 0.1, "nothing at the edge"},
		{Relief{Stations: Stations{{-60, 0}, {0, 0.2}, {40, 0}}}, 10, 0, 0.15, "straight between stations"},
		{Relief{Stations: Stations{{-60, 0.1}, {40, 0.2}}}, 80, 0, 0.2, "constant beyond the last"},
	} {
		b := Bridge{Width: 13, Feet: foot, Relief: c.relief}
		if got := b.Gap(c.x, c.y); !near(got, c.want, 1e-12) {
			t.Errorf("%+v: gap at (%g, %g) = %g mm, want %g (%s)", c.relief, c.x, c.y, got, c.want, c.source)
		}
		b.Misfit = Stations{{-60, 0.01}, {40, 0.01}}
		if got := b.Gap(c.x, c.y); !near(got, c.want+0.01, 1e-12) {
			t.Errorf("with a misfit of 0.01 mm: gap %g mm, want %g", got, c.want+0.01)
		}
	}
}

func TestProfile(t *testing.T) {
	p := Profile{Stations: Stations{{0, 3}, {0.2, 13}, {1, 5}}}
	for _, c := range []struct{ at, want float64 }{{-1, 3}, {0, 3}, {0.1, 8}, {0.2, 13}, {0.6, 9}, {1, 5}, {2, 5}} {
		if got := p.Value(c.at); !near(got, c.want, 1e-12) {
			t.Errorf("profile at %g = %g mm, want %g", c.at, got, c.want)
		}
	}
	if got := p.Max(); got != 13 {
		t.Errorf("greatest height %g mm, want 13", got)
	}
	if got := (Profile{Const: 7}).Value(0.3); got != 7 {
		t.Errorf("constant profile = %g mm, want 7", got)
	}
}

func TestNearest(t *testing.T) {
	known := []string{"thickness", "outline", "wood"}
	for _, c := range []struct{ found, want string }{
		{"thicknes", "thickness"}, {"Outline", "outline"}, {"wod", "wood"}, {"colour", ""}, {"x", ""},
	} {
		if got := tree.Nearest(c.found, known); got != c.want {
			t.Errorf("nearest to %q is %q, want %q", c.found, got, c.want)
		}
	}
}
