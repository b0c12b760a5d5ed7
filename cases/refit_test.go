package cases

import (
	"context"
	"math"
	"testing"
)

func mustOpen(t testing.TB, name string) *Case {
	t.Helper()
	c, err := Open(nil, name)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func mustPrepare(t testing.TB, name string, refine float64) *Top {
	t.Helper()
	p, err := Prepare(context.Background(), mustOpen(t, name), Options{Workers: 2, Refine: refine})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// TestRefit: a relief tried on a prepared top gives what a solve of its own
// gives.
func TestRefit(t *testing.T) {
	tight := mustPrepare(t, "course-guitar", 0.5)
	got, err := refit(tight, mustOpen(t, "course-guitar-relief"))
	if err != nil {
		t.Fatal(err)
	}
	want, err := mustPrepare(t, "course-guitar-relief", 0.5).Answer()
	if err != nil {
		t.Fatal(err)
	}
	if g, w := got.sink(), want.sink(); math.Abs(g-w) > 1e-9*w {
		t.Errorf("sink after refit %.12g mm, want %.12g mm as solved afresh", g, w)
	}
}

// refit answers another case on the top that serves it.
func refit(t *Top, c *Case) (*Solution, error) {
	q, err := Adapt(context.Background(), t, c, Options{Workers: t.workers})
	if err != nil {
		return nil, err
	}
	return q.Answer()
}

func BenchmarkRefit(b *testing.B) {
	p := mustPrepare(b, "course-guitar", 1)
	relieved := mustOpen(b, "course-guitar-relief")
	for b.Loop() {
		if _, err := refit(p, relieved); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkRefitTight(b *testing.B) {
	p := mustPrepare(b, "course-guitar-relief", 1)
	tight := mustOpen(b, "course-guitar")
	for b.Loop() {
		if _, err := refit(p, tight); err != nil {
			b.Fatal(err)
		}
	}
}
