package study

import (
	"math"
	"slices"
	"testing"

	"archload/cases/tree"

	"archload/cases/answer"
	"archload/cases/design"
)

// TestHypercube: every value once, and no two quantities go together.
func TestHypercube(t *testing.T) {
	const n, quantities = 200, 20
	all := hypercube(quantities, n, 7)
	first := slices.Sorted(slices.Values(all[0]))
	for k, z := range all {
		if !slices.Equal(slices.Sorted(slices.Values(z)), first) {
			t.Fatalf("quantity %d has other values than the first", k)
		}
		for j := range k {
			sum, size := 0.0, 0.0
			for i := range z {
				sum += z[i] * all[j][i]
				size += z[i] * z[i]
			}
			if r := sum / size; math.Abs(r) > 0.01 {
				t.Errorf("quantities %d and %d: correlation %.3f, want at most 0.01", j, k, r)
			}
		}
	}
	if sd := float64(deviation(first)); math.Abs(sd-1) > 0.01 {
		t.Errorf("standard deviation %.4f, want 1 within a hundredth", sd)
	}
	if other := hypercube(quantities, n, 8); slices.Equal(other[3], all[3]) {
		t.Error("another seed gives the same order")
	}
}

// TestSampleRepeats: a seed gives the same bits with one goroutine and with
// two, and another seed others.
func TestSampleRepeats(t *testing.T) {
	t.Parallel()
	sols := roughly(t, "course-guitar-two-feet", "course-guitar")
	take := func(seed uint64, workers int) *Sample {
		s, err := DrawSample(t.Context(), sols, 6, seed, design.Options{Workers: workers})
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	one, two, other := take(3, 1), take(3, 2), take(4, 2)
	same := func(a, b *Sample) bool {
		for i := range a.values {
			for d := range a.values[i] {
				for h, v := range a.values[i][d] {
					if math.Float64bits(v) != math.Float64bits(b.values[i][d][h]) {
						return false
					}
				}
			}
		}
		return true
	}
	if !same(one, two) {
		t.Error("one goroutine and two give other numbers")
	}
	if same(one, other) {
		t.Error("another seed gives the same numbers")
	}
	if one.failed != 0 {
		t.Errorf("%d draws without an answer, want none", one.failed)
	}
}

// TestSampledRanges: ranges of first order agree with those of planks drawn at
// random within a tenth, or within half of the last digit that is printed. Where
// most of two numbers' scatter falls out of their difference, what first order
// leaves out is no longer small beside the rest: there a thirtieth of the
// numbers' own ranges counts as agreement. The friction needed is the greatest
// of three thirds; it and its difference bend where another third takes over, as on
// a symmetric foot, whose outer thirds are alike, every plank makes one do: the
// number is held to a fifth, the difference not at all.
func TestSampledRanges(t *testing.T) {
	t.Parallel()
	const planks, seed = 150, 1
	short := []tree.KeyValue{{Key: "bridge.foot[1].from", Value: tree.Valued(-33.0)}, {Key: "bridge.foot[1].to", Value: tree.Valued(33.0)}}
	tight := caseWith(t, "course-guitar-treble", short...)
	relieved := caseWith(t, "course-guitar-treble", append(short, tree.KeyValue{Key: "bridge.relief.depth", Value: tree.Valued(0.03)})...)
	other := caseWith(t, "course-guitar", short...)
	o := rough()
	sols := solveAll(t, o, tight, relieved, other)
	c := compareAll(t, sols)
	s, err := DrawSample(t.Context(), sols, planks, seed, design.Options{Workers: 2})
	if err != nil {
		t.Fatal(err)
	}
	c.AddSample(s)
	for _, r := range c.Rows {
		if r.Bare() {
			continue
		}
		half := 0.5 * math.Pow10(-r.of.Digits)
		within := 0.1
		if r.Key == "friction_needed" {
			within = 0.2
		}
		check := func(what string, first answer.Num, d *Drawn, least float64) {
			if d.Known != planks {
				t.Errorf("%s, %s: known in %d of %d planks", r.Name, what, d.Known, planks)
			}
			if off := math.Abs(float64(first - d.Deviation)); !(off <= math.Max(within*float64(d.Deviation), least)) {
				t.Errorf("%s, %s: first order ±%.5g %s, drawn ±%.5g", r.Name, what, first, r.Unit, d.Deviation)
			}
		}
		for k := range c.Cases {
			check(c.Cases[k], r.Ranges[k].Wood, r.Ranges[k].Drawn, half)
			if k == 0 || r.Key == "friction_needed" {
				continue
			}
			own := math.Max(float64(r.Ranges[0].Drawn.Deviation), float64(r.Ranges[k].Drawn.Deviation))
			check(c.Cases[k]+" less a", r.Differences[k-1].Wood, r.Differences[k-1].Drawn, math.Max(half, own/30))
		}
	}
}
