package passage

import (
	"cmp"
	"math"
	"slices"
)

// Course is the load's way from one share of it to another, with places where
// something happens: the load rises evenly, slows down before each of them and halts there.
type Course struct {
	From, To float64   // of the full load
	Halts    []float64 // likewise; those outside From..To are passed over
}

// How a course goes.
const (
	WholeTime = 7.0  // s, from 0 to 1 without halts
	HaltTime  = 1.5  // s
	slowPart  = 0.04 // of the full load, before a halt
	slowBy    = 4.0  // times as slow there
)

// leg is a stretch of the course, in time.
type leg struct {
	from, to float64 // load
	takes    float64 // s
	halt     int     // in Halts; -1: the load moves
}

// At is the load so many seconds after the start, the halt at which it stands (-1: it moves), and whether the course
// is at its end.
func (c Course) At(t float64) (load float64, halt int, done bool) {
	for _, l := range c.legs() {
		if t < l.takes {
			return l.from + (l.to-l.from)*math.Max(0, t)/l.takes, l.halt, false
		}
		t -= l.takes
	}
	return c.To, -1, true
}

// legs are the stretches of the course, in their order.
func (c Course) legs() (out []leg) {
	at := c.From
	move := func(to, slower float64) {
		if to > at {
			out = append(out, leg{at, to, WholeTime * (to - at) * slower, -1})
			at = to
		}
	}
	order := make([]int, 0, len(c.Halts))
	for i, h := range c.Halts {
		if h > c.From && h < c.To {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(c.Halts[a], c.Halts[b]) })
	for _, i := range order {
		move(c.Halts[i]-slowPart, 1)
		move(c.Halts[i], slowBy)
		out = append(out, leg{at, at, HaltTime, i})
	}
	move(c.To, 1)
	return out
}
