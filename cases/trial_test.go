package cases

import (
	"math"
	"testing"
)

// steps are n depths from zero on, mm.
func steps(n int, step float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = float64(i) * step
	}
	return out
}

// TestTry compares reliefs read off one path with a refit of each.
func TestTry(t *testing.T) {
	p := mustPrepare(t, "course-guitar-relief", 0.25)
	tr, err := p.Try(t.Context(), TrialOptions{Depths: []float64{0, 0.03, 0.12, 0.6, 3}, Shapes: []string{"parabola", "flat"}})
	if err != nil {
		t.Fatal(err)
	}
	if len(tr.Points) != 10 {
		t.Fatalf("%d points, want 10", len(tr.Points))
	}
	for _, got := range tr.Points {
		c := *p.Case
		b := *c.Bridge
		b.Relief.Shape, b.Relief.Depth = got.Shape, Length(got.Depth)
		c.Bridge = &b
		sol, err := p.Refit(&c)
		if err != nil {
			t.Fatal(err)
		}
		r := Summarize(sol)
		for _, v := range []struct {
			what      string
			got, want float64
		}{
			{"sink, mm", got.Sink, r.Bridge.Sink},
			{"bass end's share", got.Share.BassEnd, r.Bridge.Share.BassEnd},
			{"middle's share", got.Share.Middle, r.Bridge.Share.Middle},
			{"touches at", float64(got.MiddleTouchesAt), float64(r.Bridge.MiddleTouchesAt)},
			{"closes at", float64(got.MiddleClosesAt), float64(r.Bridge.MiddleClosesAt)},
			{"gap left, mm", got.GapLeft, r.Bridge.GapLeft},
			{"foot pressure, MPa", float64(got.FootPressure), float64(r.Strength.FootPressure)},
			{"strength used", float64(got.StrengthUsed), float64(r.Strength.Used)},
		} {
			if math.IsNaN(v.got) != math.IsNaN(v.want) || math.Abs(v.got-v.want) > 1e-7*math.Max(math.Abs(v.want), 1e-2) {
				t.Errorf("%s of %g mm: %s %.10g, a refit gives %.10g", got.Shape, got.Depth, v.what, v.got, v.want)
			}
		}
	}
}

func BenchmarkTry200(b *testing.B) {
	p := mustPrepare(b, "course-guitar-relief", 1)
	o := TrialOptions{Depths: steps(201, 0.002), Shapes: []string{"parabola"}}
	for b.Loop() {
		if _, err := p.Try(b.Context(), o); err != nil {
			b.Fatal(err)
		}
	}
}
