package fem

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

// TestStateAt: the kept path gives at any load the contact that a stop there
// gives, the work of the loads included.
func TestStateAt(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 7))
	stops := []float64{0.05, 0.3, 0.31, 0.77, 1}
	for trial := range 40 {
		p := randomContact(r, 7)
		p.keep, p.stops = true, slices.Clone(stops)
		st, err := p.follow()
		if err != nil {
			t.Fatal(err)
		}
		for k, stop := range st.Stops {
			at := st.At(stop.Load)
			if d := apartBy(at.Lambda, stop.Lambda); d > 1e-9 {
				t.Errorf("trial %d at %g: forces differ by %.2g of the greatest, want 1e-9", trial, stops[k], d)
			}
			if d := math.Abs(at.Work - stop.Work); d > 1e-9*math.Abs(st.Work) {
				t.Errorf("trial %d at %g: work %.12g N mm, want %.12g", trial, stops[k], at.Work, stop.Work)
			}
			for i, g := range stop.Gap {
				if math.Abs(at.Gap[i]-g) > 1e-9 {
					t.Errorf("trial %d at %g: gap %d is %.12g mm, want %.12g", trial, stops[k], i, at.Gap[i], g)
				}
			}
			for _, e := range at.Events {
				if e.Load > stop.Load {
					t.Errorf("trial %d at %g: an event at %g", trial, stop.Load, e.Load)
				}
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
		p.keep = true
		st, err := p.follow()
		if err != nil {
			t.Fatal(err)
		}
		gap, force := 1+2*r.Float64(), 0.5+0.5*r.Float64()
		q := *p
		q.gap, q.b = slices.Clone(p.gap), slices.Clone(p.b)
		for i := range q.gap {
			q.gap[i] *= gap
		}
		for i := range q.b {
			q.b[i] *= force
		}
		for m := range q.f {
			q.f[m] *= force
		}
		for m := range q.down {
			q.down[m] *= force
		}
		q.self *= force * force
		want, err := q.follow()
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
		if trial == 0 && st.path == nil {
			t.Error("no path was kept")
		}
	}
}
