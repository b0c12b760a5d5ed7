package stability

import (
	"math"
	"testing"

	"archload/cases/casetest"
)

// TestFind finds the factors of the guitar: ascending, of the load as it acts, and the second-order answer
// leans the way that the lowest one says: at a share of it, the sink grows by about that share or less.
func TestFind(t *testing.T) {
	c := casetest.Open(t, "course-guitar")
	once, err := Find(t.Context(), c, 2, coarse())
	if err != nil {
		t.Fatal(err)
	}
	r := SummarizeGiving(once, 1)
	f := r.Stability.Factors
	if len(f) != 2 || !(f[0] > 4 && f[0] < f[1]) || r.Stability.Bearing == 0 || !(float64(r.Stability.NoneBelow) > f[1]) {
		t.Fatalf("factors %v, %d points bear, none below %g", f, r.Stability.Bearing, float64(r.Stability.NoneBelow))
	}
	s, err := OnMovedShape(t.Context(), once.Linear)
	if err != nil {
		t.Fatal(err)
	}
	if share := float64(Summarize(s, 1).Second.Share); !(share > 0.2/f[0] && share < 1.2/f[0]) {
		t.Errorf("second order makes %.4f of the sink, the lowest factor is %.2f", share, f[0])
	}
}

// TestFindPlate: on a bare plate, whose contact does not change with the load, twice the load has half the
// factors.
func TestFindPlate(t *testing.T) {
	c := casetest.Open(t, "bench-plate")
	var first [2]float64
	for i, times := range []float64{1, 2} {
		g, err := Find(t.Context(), Times(c, times), 1, coarse())
		if err != nil {
			t.Fatal(err)
		}
		first[i] = g.Modes.Factors[0]
	}
	if math.Abs(first[0]/first[1]/2-1) > 1e-6 {
		t.Errorf("factors %.6f and, of twice the load, %.6f", first[0], first[1])
	}
}

// TestRaise follows a bare plate over its limit point and the guitar up to it: both give way before the linear
// factor, after sinking further at every step, and the plate's load falls behind the limit.
func TestRaise(t *testing.T) {
	for _, name := range []string{"bench-plate", "course-guitar"} {
		o := coarse()
		o.Refine = 0.25
		g, err := Find(t.Context(), casetest.Open(t, name), 1, o)
		if err != nil {
			t.Fatal(err)
		}
		p, err := Raise(t.Context(), g.Linear, g.Far())
		if err != nil {
			t.Fatal(err)
		}
		r := SummarizeGiving(g, 1)
		r.AddPath(p)
		if v := float64(r.Stability.Path.KnockDown); !(v > 0.25 && v < 0.95) {
			t.Errorf("%s: gives way at %.3f of the linear factor", name, v)
		}
		for i := 1; i < len(p.Points); i++ {
			if !(p.Points[i].Sink > p.Points[i-1].Sink) {
				t.Errorf("%s: sinks %.4f mm, then %.4f", name, p.Points[i-1].Sink, p.Points[i].Sink)
			}
		}
		if end := p.Points[len(p.Points)-1].Factor; name == "bench-plate" && !(end < 0.985*p.Limit) {
			t.Errorf("%s: the path ends at %.3f, want it to fall behind the limit %.3f", name, end, p.Limit)
		}
	}
}
