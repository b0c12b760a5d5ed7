package answer

import (
	"context"
	"math"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/design"
)

func mustPrepare(t testing.TB, name string, refine float64) *design.Top {
	t.Helper()
	p, err := design.Prepare(context.Background(), casetest.Open(t, name), design.Options{Workers: 2, Refine: refine})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestRefit: a relief tried on a prepared top gives what a solve of its own
// gives.
func TestRefit(t *testing.T) {
	t.Parallel()
	tight := mustPrepare(t, "course-guitar", 0.5)
	got, err := refit(tight, casetest.Open(t, "course-guitar-relief"))
	if err != nil {
		t.Fatal(err)
	}
	want, err := mustPrepare(t, "course-guitar-relief", 0.5).Answer()
	if err != nil {
		t.Fatal(err)
	}
	if g, w := Sink(got), Sink(want); math.Abs(g-w) > 1e-9*w {
		t.Errorf("sink after refit %.12g mm, want %.12g mm as solved afresh", g, w)
	}
}

// refit answers another case on the top that serves it.
func refit(t *design.Top, c *cases.Case) (*design.Solution, error) {
	q, err := design.Adapt(context.Background(), t, c, design.Options{Workers: t.Workers})
	if err != nil {
		return nil, err
	}
	return q.Answer()
}

func BenchmarkRefit(b *testing.B) {
	p := mustPrepare(b, "course-guitar", 1)
	relieved := casetest.Open(b, "course-guitar-relief")
	for b.Loop() {
		if _, err := refit(p, relieved); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRefitTight(b *testing.B) {
	p := mustPrepare(b, "course-guitar-relief", 1)
	tight := casetest.Open(b, "course-guitar")
	for b.Loop() {
		if _, err := refit(p, tight); err != nil {
			b.Fatal(err)
		}
	}
}
