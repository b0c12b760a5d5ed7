package carve

import (
	"context"
	"fmt"
	"math"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases/bench"
	"archload/cases/design"
)

// TestLook: a plate 5 mm thick all over that is read as 6 mm but for a hollow of 4.7 mm is 1 mm too thick, and too thin by
// 0.3 mm in the hollow; its weight goes by the mean, and the target swings lower and sinks more.
func TestLook(t *testing.T) {
	var csv strings.Builder
	csv.WriteString("x_mm,y_mm,thickness_mm\n")
	count, sum := 0, 0.0
	for y := -150; y <= 150; y += 30 {
		for x := -100; x <= 100; x += 25 {
			h := 6 - 1.3*math.Exp(-(math.Pow(float64(x-50)/45, 2)+math.Pow(float64(y)/45, 2)))
			fmt.Fprintf(&csv, "%d,%d,%.2f\n", x, y, h)
			count, sum = count+1, sum+h
		}
	}
	f, err := bench.Load(fstest.MapFS{
		"now.toml":    {Data: []byte("format = 1\nlike = \"sitka-spruce\"\n[carving]\ntarget = \"course-guitar\"\nreadings = \"caliper.csv\"\n")},
		"caliper.csv": {Data: []byte(csv.String())},
	}, "now.toml")
	if err != nil {
		t.Fatal(err)
	}
	r, err := Look(context.Background(), f, f.Card, design.Options{Workers: 2, Refine: 0.4})
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Places) != count || r.Most == nil || r.Thin == nil {
		t.Fatalf("%d places, most %v, thin %v; want %d and both", len(r.Places), r.Most, r.Thin, count)
	}
	if math.Abs(r.Most.TakeOff-1) > 0.01 || r.Thin.X != 50 || r.Thin.Y != 0 || math.Abs(r.Thin.TakeOff+0.3) > 1e-9 || r.Thinnest != 4.7 {
		t.Errorf("most %+v, thin %+v, thinnest %g; want 1 mm, -0.3 mm at (50, 0), 4.7", *r.Most, *r.Thin, r.Thinnest)
	}
	if ratio := float64(r.Weight.Now / r.Weight.Target); math.Abs(ratio-1.17) > 0.03 { // 6 mm less the hollow, over 5
		t.Errorf("weighs %.3f times the target, want 1.17 to 0.03", ratio)
	}
	if !(r.Tones[0].Now > r.Tones[0].Target) || !(r.Sink.Now < r.Sink.Target) {
		t.Errorf("first tone %v, sink %v: want a thinner plate lower and softer", r.Tones[0], r.Sink)
	}
	for _, p := range r.Map {
		if p.Now < r.Thinnest-1e-9 {
			t.Errorf("at (%g, %g) %g mm, thinner than the thinnest reading", p.X, p.Y, p.Now)
		}
	}
}
