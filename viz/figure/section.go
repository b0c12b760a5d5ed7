package figure

import (
	"fmt"
	"math"

	"archload/mesh"
)

// Section is a cross-arch: the plate cut across at one place along it. All
// lists but Bridge have one value per station.
type Section struct {
	Name   string
	X      []float64      // place across, mm, rising from the bass to the treble side
	Outer  []float64      // height of the carved outer surface, mm; NaN over an opening
	Inner  []float64      // height of the inner surface, mm; NaN over an opening
	Sink   []float64      // at full string load, mm, positive down
	Across []float64      // movement toward the treble side, mm; nil: not drawn
	Bridge [][]mesh.Point // outlines of the bridge in the cut, unloaded: across and height, mm
}

func (s Section) check() error {
	n := len(s.X)
	if n < 2 {
		return fmt.Errorf("section %q: want at least 2 stations, found %d", s.Name, n)
	}
	for _, l := range []struct {
		what string
		v    []float64
		need bool
	}{{"outer heights", s.Outer, true}, {"inner heights", s.Inner, true}, {"sinks", s.Sink, true}, {"movements across", s.Across, false}} {
		if len(l.v) != n && (l.need || l.v != nil) {
			return fmt.Errorf("section %q: %d %s for %d stations", s.Name, len(l.v), l.what, n)
		}
	}
	for i := 1; i < n; i++ {
		if !(s.X[i] > s.X[i-1]) {
			return fmt.Errorf("section %q: station %d at %g mm does not follow %g mm", s.Name, i, s.X[i], s.X[i-1])
		}
	}
	return nil
}

// heights returns the lowest and highest place of plate and bridge, mm.
func (s Section) heights() (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	see := func(v float64) {
		if !math.IsNaN(v) {
			lo, hi = math.Min(lo, v), math.Max(hi, v)
		}
	}
	for i := range s.X {
		see(s.Inner[i])
		see(s.Outer[i])
	}
	for _, l := range s.Bridge {
		for _, q := range l {
			see(q[1])
		}
	}
	if lo > hi {
		return 0, 0
	}
	return lo, hi
}

// deepest returns the station of the greatest movement down or up and its
// sink, mm.
func (s Section) deepest() (at int, sink float64) {
	for i, v := range s.Sink {
		if math.Abs(v) > math.Abs(sink) && !math.IsNaN(s.Outer[i]) {
			at, sink = i, v
		}
	}
	return at, sink
}

// nought is v, or 0 for a missing value.
func nought(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return v
}
