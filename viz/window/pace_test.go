package window

import (
	"math"
	"testing"
)

func TestTurn(t *testing.T) {
	for _, c := range []struct {
		what              string
		r                 reasons
		turned, shown, to float64 // s
	}{
		{"nothing", reasons{}, 1, 1, math.Inf(1)},
		{"something that moves, long after the last page", reasons{any: true}, 1, 1, 0},
		{"something that moves, soon after it: 60 pages a second at most", reasons{any: true}, 1, 0.005, 1.0/60 - 0.005},
		{"the pointer, soon after a page, long after a turn", reasons{hands: true}, 1, 0.001, 0},
		{"the pointer, soon after a turn", reasons{hands: true, any: true}, 0.001, 1, 0.003},
		{"a press, soon after all", reasons{hands: true, edges: true}, 0, 0, 0},
		{"news, soon after all", reasons{any: true, news: true}, 0, 0, 0},
	} {
		if got := toTurn(c.r, c.turned, c.shown); got != c.to && !(math.Abs(got-c.to) < 1e-12) {
			t.Errorf("%s: in %g s, want %g", c.what, got, c.to)
		}
	}
}

func TestShow(t *testing.T) {
	const now = 10.0
	for _, c := range []struct {
		what                   string
		once                   bool
		soon, since, shown, at float64 // s
	}{
		{"a press", true, 0, now, now, now},
		{"a page, long after the last", false, 0, now, 1, 1 + 1.0/60},
		{"a page, soon after the last", false, 0, now, now - 0.004, now - 0.004 + 1.0/60},
		{"a press, and a better page soon", true, 0.02, now, 1, now + 0.02},
		{"a better one soon", false, 0.02, now, 1, now + 0.02},
		{"a better one sooner than the next page", false, 0.001, now, now, now + 1.0/60},
		{"kept back for a while", false, 0.02, now - 0.045, 1, now + 0.005},
		{"kept back long enough", false, 0.02, now - 0.07, now - 0.04, now - 0.02},
	} {
		if got := toShow(c.once, c.soon, now, c.since, c.shown); math.Abs(got-c.at) > 1e-12 {
			t.Errorf("%s: at %g s, want %g", c.what, got, c.at)
		}
	}
}
