package contact

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// apartBy is the greatest difference of two lists over the greatest value of the
// second.
func apartBy(a, b []float64) float64 {
	worst, scale := 0.0, 1e-300
	for i, v := range b {
		worst = math.Max(worst, math.Abs(a[i]-v))
		scale = math.Max(scale, math.Abs(v))
	}
	return worst / scale
}

// underLoad is the same problem under a multiple of its loads.
func (p *lcp) underLoad(k float64) *lcp {
	q := *p
	q.b = slices.Clone(p.b)
	for i := range q.b {
		q.b[i] *= k
	}
	for m := range q.f {
		q.f[m] *= k
	}
	for m := range q.down {
		q.down[m] *= k
	}
	q.self *= k * k
	return &q
}

// TestStateAt: the kept path gives at any load the contact that this load gives as
// full load, its work included.
func TestStateAt(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 7))
	for trial := range 40 {
		p := randomContact(r, 7)
		p.history = true
		st, err := p.trace()
		if err != nil {
			t.Fatal(err)
		}
		for _, load := range []float64{0.05, 0.3, 0.31, 0.77} {
			at := st.At(load)
			want, err := p.underLoad(load).trace()
			if err != nil {
				t.Fatal(err)
			}
			if d := apartBy(at.Lambda, want.Lambda); d > 1e-9 {
				t.Errorf("trial %d at %g: forces differ by %.2g of the greatest, want 1e-9", trial, load, d)
			}
			if d := math.Abs(at.Work - want.Work); d > 1e-9*math.Abs(st.Work) {
				t.Errorf("trial %d at %g: work %.12g N mm, want %.12g", trial, load, at.Work, want.Work)
			}
			for i, g := range want.Gap {
				if math.Abs(at.Gap[i]-g) > 1e-9 {
					t.Errorf("trial %d at %g: gap %d is %.12g mm, want %.12g", trial, load, i, at.Gap[i], g)
				}
			}
			if len(at.Events) != len(want.Events) {
				t.Errorf("trial %d at %g: %d events, want %d", trial, load, len(at.Events), len(want.Events))
			}
		}
		if st.At(1) != st {
			t.Errorf("trial %d: full load is another state than the path's end", trial)
		}
	}
}

// TestLikewise: with gaps and loads in other sizes the path is the same one in
// other sizes.
func TestLikewise(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 15))
	for trial := range 40 {
		p := randomContact(r, 7)
		p.history = true
		st, err := p.trace()
		if err != nil {
			t.Fatal(err)
		}
		gap, force := 1+2*r.Float64(), 0.5+0.5*r.Float64()
		q := p.underLoad(force)
		q.gap = slices.Clone(p.gap)
		for i := range q.gap {
			q.gap[i] *= gap
		}
		want, err := q.trace()
		if err != nil {
			t.Fatal(err)
		}
		for _, load := range []float64{0.4, 1} {
			got, w := st.Likewise(gap, force, load), want.At(load)
			if d := apartBy(got.Lambda, w.Lambda); d > 1e-8 {
				t.Errorf("trial %d at %g: forces differ by %.2g of the greatest, want 1e-8", trial, load, d)
			}
			if len(got.Events) != len(w.Events) {
				t.Errorf("trial %d at %g: %d events, want %d", trial, load, len(got.Events), len(w.Events))
			}
			if d := math.Abs(got.Work - w.Work); d > 1e-8*math.Abs(w.Work)+1e-12 {
				t.Errorf("trial %d at %g: work %.12g N mm, want %.12g", trial, load, got.Work, w.Work)
			}
		}
		if trial == 0 && st.history == nil {
			t.Error("no path was kept")
		}
	}
}
