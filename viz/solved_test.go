package viz

import (
	"context"
	"math"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/study"
	"archload/viz/canvas/canvastest"
)

// solved answers a bundled case on a coarse mesh.
func solved(t *testing.T, name string) (*design.Solution, *answer.Report) {
	t.Helper()
	c, err := cases.Open(nil, name)
	if err != nil {
		t.Fatal(err)
	}
	s, err := design.Solve(context.Background(), c, design.Options{Workers: 2, Refine: 0.4, NoError: true})
	if err != nil {
		t.Fatal(err)
	}
	return s, answer.Summarize(s)
}

// TestSolvedPages draws all pages of two solved cases and of their comparison:
// every page has its text clear, and none is missing.
func TestSolvedPages(t *testing.T) {
	a, ra := solved(t, "course-guitar")
	b, rb := solved(t, "bowed-layout")
	sols := []*design.Solution{a, b}
	cmp := study.Compare([]string{"a", "b"}, sols, []*answer.Report{ra, rb})
	lists := map[string][]Page{"one": Pictures(a, ra), "two": Pictures(b, rb), "both": ComparePictures(sols, cmp)}
	want := "sink stress-along stress-across stress-along-inner stress-across-inner strength-used load-flow rim-reaction foot-pressure"
	for name, wanted := range map[string]string{"one": want, "two": want,
		"both": "sink-A sink-B sink-difference strength-used-A strength-used-B strength-used-difference"} {
		have := map[string]bool{}
		for _, p := range lists[name] {
			have[p.Name] = true
			pic, err := p.draw(false)
			if err != nil {
				t.Errorf("%s %s: %v", name, p.Name, err)
				continue
			}
			canvastest.StandsClear(t, pic)
		}
		for _, w := range strings.Fields(wanted) {
			if !have[w] {
				t.Errorf("%s: no page %s", name, w)
			}
		}
	}
}

// TestDifference: a case differs from itself nowhere, and from another by what
// a gauge reads in both.
func TestDifference(t *testing.T) {
	a, _ := solved(t, "course-guitar")
	b, _ := solved(t, "course-guitar-treble")
	va, vb := answer.SinkField(a), answer.SinkField(b)
	for n, v := range Difference(a, a, va, va) {
		if math.Abs(v) > 1e-12 {
			t.Fatalf("node %d differs from itself by %g mm", n, v)
		}
	}
	d := Difference(a, b, va, vb)
	worst := 0.0
	for n, q := range a.Top.Built.Mesh.Points {
		m, at := math.Inf(1), 0
		for k, p := range b.Top.Built.Mesh.Points {
			if l := math.Hypot(p[0]-q[0], p[1]-q[1]); l < m {
				m, at = l, k
			}
		}
		if m < 0.3 && !math.IsNaN(d[n]) {
			worst = math.Max(worst, math.Abs(d[n]-(vb[at]-va[n])))
		}
	}
	if worst > 0.005 {
		t.Errorf("where nodes nearly meet, the difference is off by %.4f mm", worst)
	}
	if hole := Difference(a, b, va, vb); len(hole) != len(va) {
		t.Errorf("%d values for %d nodes", len(hole), len(va))
	}
}
