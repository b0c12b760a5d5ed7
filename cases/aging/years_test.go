package aging

import (
	"context"
	"math"
	"strings"
	"testing"

	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/materials"
)

// TestAges reads lists of ages.
func TestAges(t *testing.T) {
	got, err := Ages("50y, 1d,12m,8h ,1y")
	if err != nil {
		t.Fatal(err)
	}
	want := []float64{8 / 24.0 / 365.25, 1 / 365.25, 1, 50}
	if len(got) != len(want) {
		t.Fatalf("%v, want %d ages", got, len(want))
	}
	for i, a := range got {
		if !casetest.Near(a.Years, want[i], 1e-12) {
			t.Errorf("age %d is %g years, want %g", i, a.Years, want[i])
		}
	}
	for _, bad := range []string{"", "1", "-1y", "0d", "1y,,2y", "y", "600y", "NaNy", "ten years", strings.Repeat("1y,", 24) + "2y"} {
		if _, err := Ages(bad); err == nil || !strings.Contains(err.Error(), "want ages") {
			t.Errorf("%q: error %v, want what would be right", bad, err)
		}
	}
}

// TestSlipForgets compares a relieved foot without friction, whose contact was followed through the years, with
// the elastic answer of the softened design: without friction the way there does not matter.
func TestSlipForgets(t *testing.T) {
	c := opened(t, "format = 1\nbase = \"course-guitar-relief\"\n[bridge]\nhold = \"slip\"\n[bridge.relief]\ndepth = 0.3\n")
	ages, err := Ages("1y,20y")
	if err != nil {
		t.Fatal(err)
	}
	o := design.Options{Workers: 2, Refine: 0.5, NoError: true, NoFlow: true}
	r, err := Years(context.Background(), c, Wish{Ages: ages}, o)
	if err != nil {
		t.Fatal(err)
	}
	if bad := r.Failed(); len(bad) > 0 {
		t.Errorf("built-in checks failed: %v", bad)
	}
	s, err := design.Solve(context.Background(), c.WithCards(func(m materials.Card) materials.Card { return m.Crept(20, 1) }), o)
	if err != nil {
		t.Fatal(err)
	}
	want, got := answer.Summarize(s).Bridge, r.Years[1].Bridge
	if !casetest.Near(got.Sink, want.Sink, 1e-7) {
		t.Errorf("sinks %.9f mm, want %.9f", got.Sink, want.Sink)
	}
	for i, p := range want.Contact {
		if math.Abs(got.Contact[i].Force-p.Force) > 1e-6 {
			t.Fatalf("point %d carries %.8f N, want %.8f", i, got.Contact[i].Force, p.Force)
		}
	}
	if len(r.Moments) == 0 {
		t.Error("the foot never changes, want a case in which it does")
	}
}

// TestYearsRange wants a range about each number, nothing without creep, and a named wood whose creep is not known.
func TestYearsRange(t *testing.T) {
	o := design.Options{Workers: 2, Refine: 0.5, NoError: true}
	ages := []Age{{"1y", 1}, {"50y", 50}}
	r, err := Years(context.Background(), opened(t, "format = 1\nbase = \"course-guitar\"\n"), Wish{Ages: ages}, o)
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range r.Years {
		if s := a.Sink; !(r.Strung.Sink.Mid < s.Low && s.Low < s.Mid && s.Mid < s.High) {
			t.Errorf("%s: sinks %v from %v, want a range below it", a.At, s, r.Strung.Sink.Mid)
		}
		if want := materials.LastingShare(a.Years); float64(a.Strength.Left) != want {
			t.Errorf("%s: %v of the strength is left, want %v", a.At, a.Strength.Left, want)
		}
	}
	own := `format = 1
base = "bench-plate"
[plate]
wood = "own"
` + ownWood
	if _, err := Years(context.Background(), opened(t, own), Wish{Ages: ages}, o); err == nil || !strings.Contains(err.Error(), `plate.wood: the creep of "own" is not known; want creep_along, creep_across`) {
		t.Errorf("error %v, want the wood and its missing keys", err)
	}
	r, err = Years(context.Background(), opened(t, own+"creep_along = 0\ncreep_across = 0\ncreep_shear = 0\ncreep_rolling_shear = 0\ncreep_power = 0.3\n"), Wish{Ages: ages}, o)
	if err != nil {
		t.Fatal(err)
	}
	if a, b := r.Years[1].Sink.High, r.Strung.Sink.Mid; !casetest.Near(float64(a), float64(b), 1e-9) {
		t.Errorf("without creep it sinks %v, then %v", b, a)
	}
}
