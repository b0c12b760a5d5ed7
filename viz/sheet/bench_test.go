package sheet

import (
	"bytes"
	"math"
	"testing"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/study"
)

// TestBenchSheetScale: the foot on the bench sheet has its true size.
func TestBenchSheetScale(t *testing.T) {
	c, err := cases.Open(nil, "course-guitar-relief")
	if err != nil {
		t.Fatal(err)
	}
	tr := &study.Trial{Title: c.Title, Sheet: &study.TrialPoint{Shape: "parabola", Depth: 0.12, MiddleTouchesAt: 0.16, MiddleClosesAt: answer.None()},
		Wood: &study.TrialWood{Scatter: 0.22}, Bench: []study.BenchStation{{X: -66}, {X: 0, Remove: 0.12, Gap: 0.12}, {X: 66}}}
	var b bytes.Buffer
	s := Bench(c, tr, A4)
	if err := s.Write(&b, "pdf"); err != nil {
		t.Fatal(err)
	}
	pages := readPDF(t, b.Bytes())
	if len(pages) != 1 {
		t.Fatalf("%d sheets, want 1", len(pages))
	}
	feet := 0
	for _, m := range pages[0].paths {
		lo, hi := m.box()
		if w, h := hi[0]-lo[0], hi[1]-lo[1]; math.Abs(w-132) < 0.03 && math.Abs(h-13) < 0.03 {
			feet++
		}
	}
	if feet != 1 || len(squares(pages[0], 100)) == 0 {
		t.Errorf("%d feet of 132 x 13 mm and %d check squares of 100 mm, want one of each", feet, len(squares(pages[0], 100)))
	}
	tr.Sheet = nil
	if Bench(c, tr, A4) != nil {
		t.Error("a trial without a relief has a bench sheet")
	}
}
