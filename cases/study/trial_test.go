package study

import (
	"context"
	"math"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/tree"
	"archload/fem/contact"
	"archload/materials"
)

// steps are n depths from zero on, mm.
func steps(n int, step float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = float64(i) * step
	}
	return out
}

// TestTry compares reliefs read off one path with a refit of each: with grip,
// with slip, and with a gap that is not the depth times a shape.
func TestTry(t *testing.T) {
	t.Parallel()
	for name, set := range map[string][]tree.KeyValue{
		"grip":            nil,
		"slip":            {{Key: "bridge.hold", Value: tree.Valued("slip")}},
		"hollowed across": {{Key: "bridge.relief.across", Value: tree.Valued(0.05)}},
	} {
		c, err := cases.OpenChanged(nil, "course-guitar-relief", name, set)
		if err != nil {
			t.Fatal(err)
		}
		p, err := design.Prepare(t.Context(), c, design.Options{Workers: 2, Refine: 0.25})
		if err != nil {
			t.Fatal(err)
		}
		tr, err := Try(t.Context(), p, TrialOptions{Depths: []float64{0, 0.03, 0.12, 0.6, 3}, Shapes: []string{"parabola", "flat"}})
		if err != nil {
			t.Fatal(err)
		}
		if len(tr.Points) != 10 || Scales(p) != (name != "hollowed across") {
			t.Fatalf("%s: %d points, want 10", name, len(tr.Points))
		}
		if slips := p.Built.Bridge.Hold == contact.Slip; slips != (name == "slip") {
			t.Fatalf("%s: the foot slips: %v", name, slips)
		}
		for _, got := range tr.Points {
			sameAsRefit(t, name, p, got)
		}
	}
}

func sameAsRefit(t *testing.T, name string, p *design.Top, got TrialPoint) {
	t.Helper()
	c := *p.Built.Case
	b := *c.Bridge
	b.Relief.Shape, b.Relief.Depth = got.Shape, tree.Length(got.Depth)
	c.Bridge = &b
	sol, err := refit(p, &c)
	if err != nil {
		t.Fatal(err)
	}
	r := answer.Summarize(sol)
	if want := strings.Join(r.Error.Failed(), "; "); got.Checks != want {
		t.Errorf("%s, %s of %g mm: failed checks %q, a refit's %q", name, got.Shape, got.Depth, got.Checks, want)
	}
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
			t.Errorf("%s, %s of %g mm: %s %.10g, a refit gives %.10g", name, got.Shape, got.Depth, v.what, v.got, v.want)
		}
	}
}

func BenchmarkTry200(b *testing.B) {
	p := mustPrepare(b, "course-guitar-relief", 1)
	o := TrialOptions{Depths: steps(201, 0.002), Shapes: []string{"parabola"}}
	for b.Loop() {
		if _, err := Try(b.Context(), p, o); err != nil {
			b.Fatal(err)
		}
	}
}

// TestTrialWood compares the sheet's wood that is all softer with a case whose
// woods are.
func TestTrialWood(t *testing.T) {
	own := func(card string, k float64) tree.ChangeValue {
		c, err := materials.Find(card)
		if err != nil {
			t.Fatal(err)
		}
		return tree.ChangeValue{Value: map[string]any{"like": card, "EL": k * c.Wood.EL}}
	}
	try := func(k float64) *Trial {
		c, err := cases.OpenChanged(nil, "first", "test", []tree.KeyValue{
			{Key: "wood.top", Value: own("sitka-spruce", k)}, {Key: "wood.foot", Value: own("ebony", k)}, {Key: "rim.support", Value: tree.Valued("hinged")},
			{Key: "plate.wood", Value: tree.Valued("top")}, {Key: "bridge.wood", Value: tree.Valued("foot")}, {Key: "bridge.relief.depth", Value: tree.Valued(0.3)}})
		if err != nil {
			t.Fatal(err)
		}
		p, err := design.Prepare(t.Context(), c, design.Options{Refine: 0.25})
		if err != nil {
			t.Fatal(err)
		}
		tr, err := Try(t.Context(), p, TrialOptions{})
		if err != nil {
			t.Fatal(err)
		}
		return tr
	}
	got, want := try(1).Wood.Softer, *try(1 - materials.StiffnessScatter).Sheet
	for _, v := range []struct {
		what      string
		got, want float64
	}{
		{"sink, mm", got.Sink, want.Sink},
		{"middle's share", got.Share.Middle, want.Share.Middle},
		{"closes at", float64(got.MiddleClosesAt), float64(want.MiddleClosesAt)},
		{"gap left, mm", got.GapLeft, want.GapLeft},
		{"top's bend, mm", got.TopBend, want.TopBend},
		{"strength used", float64(got.StrengthUsed), float64(want.StrengthUsed)},
		{"depth, mm", got.Depth, want.Depth},
	} {
		if !(math.Abs(v.got-v.want) <= 1e-6*math.Abs(v.want)) {
			t.Errorf("%s %.10g, in softer wood %.10g", v.what, v.got, v.want)
		}
	}
}

// TestTopUnderFoot finds the parabola it is given.
func TestTopUnderFoot(t *testing.T) {
	var m [5]float64
	var f [3]float64
	for _, u := range []float64{-1, -0.4, 0.1, 0.5, 1} {
		for k, v := 0, 1.0; k < 5; k, v = k+1, v*u {
			m[k] += v
			if k < 3 {
				f[k] += v * (0.3 - 0.2*u + 0.07*u*u)
			}
		}
	}
	if got, want := square(m, f), 0.07; math.Abs(got-want) > 1e-12 {
		t.Errorf("square term %g, want %g", got, want)
	}
}

func mustPrepare(t testing.TB, name string, refine float64) *design.Top {
	t.Helper()
	p, err := design.Prepare(context.Background(), casetest.Open(t, name), design.Options{Workers: 2, Refine: refine})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// refit answers another case on the top that serves it.
func refit(t *design.Top, c *cases.Case) (*design.Solution, error) {
	q, err := design.Adapt(context.Background(), t, c, design.Options{Workers: t.Workers})
	if err != nil {
		return nil, err
	}
	return q.Answer()
}
