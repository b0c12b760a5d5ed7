package figure

import (
	"math"
	"testing"
)

func TestExtents(t *testing.T) {
	nan := math.NaN()
	f := Field{Nodal: []float64{nan, 2, -1, math.Inf(1)}}
	if lo, hi, ok := f.Extent(); lo != -1 || hi != 2 || !ok {
		t.Errorf("Extent = %g, %g, %v; want -1, 2, true", lo, hi, ok)
	}
	empty := Field{PerTriangle: []float64{nan}}
	if _, _, ok := empty.Extent(); ok {
		t.Errorf("Extent of no values is ok")
	}
	if got, want := SharedRange(empty, f, Field{PerTriangle: []float64{5}}), [2]float64{-1, 5}; got != want {
		t.Errorf("SharedRange = %v, want %v", got, want)
	}
	f.Range = &[2]float64{0, 10}
	if s := f.Scale(); s.Lo != 0 || s.Hi != 10 {
		t.Errorf("scale %g..%g, want the given range 0..10", s.Lo, s.Hi)
	}
}
