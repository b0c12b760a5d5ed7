package tone

import (
	"context"
	"math"
	"testing"

	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
)

// TestJudgeHeavierWood: a top that takes over the stiffness of another one of lighter wood swings with
// its own weight, as if it had been prepared afresh.
func TestJudgeHeavierWood(t *testing.T) {
	ctx, o := context.Background(), design.Options{Workers: 1, Refine: 0.5, NoFlow: true, NoError: true}
	c := casetest.Open(t, "course-guitar")
	m := c.Moving()
	m.Judged = true
	c.Motion = &m
	top, err := design.Prepare(ctx, c, o)
	if err != nil {
		t.Fatal(err)
	}
	l := lever{woods: []string{"plate.wood", "brace[1].wood"}, constants: []string{"density"}}
	heavy := l.with(c, 1.2)
	adapted, err := design.Adapt(ctx, top, heavy, o)
	if err != nil {
		t.Fatal(err)
	}
	judge := func(top *design.Top) *answer.Motion {
		sol, err := top.Answer()
		if err != nil {
			t.Fatal(err)
		}
		var r answer.Report
		if Judge(&r, sol, 1); r.Motion == nil {
			t.Fatalf("no motion: %v", r.Warnings)
		}
		return r.Motion
	}
	fresh, err := design.Prepare(ctx, heavy, o)
	if err != nil {
		t.Fatal(err)
	}
	light, got, want := judge(top), judge(adapted), judge(fresh)
	if d := float64(got.LowestTone/want.LowestTone) - 1; math.Abs(d) > 1e-9 {
		t.Errorf("lowest tone of the adapted top %.9g Hz, prepared afresh %.9g", got.LowestTone, want.LowestTone)
	}
	if d := float64(got.AirLow - want.AirLow); math.Abs(d) > 1e-6 {
		t.Errorf("air shifted by the adapted top %.9g dB, prepared afresh %.9g", got.AirLow, want.AirLow)
	}
	if got.LowestTone >= 0.97*light.LowestTone {
		t.Errorf("lowest tone %.4g Hz of a top that is a fifth heavier, %.4g before", got.LowestTone, light.LowestTone)
	}
}
