package friction

import (
	"errors"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"
)

// TestRandomFits: a thousand feet by lot are answered, and rest within the laws.
func TestRandomFits(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 13))
	for k := range 1000 {
		f := fit{columns: 3 + r.IntN(6), rows: 2 + r.IntN(2), slope: 0.4 * r.Float64(), coupling: 0.6 * r.Float64() * r.Float64(),
			relief: 0.1 * float64(r.IntN(2)), misfit: 0.03 * float64(r.IntN(2)), push: 0.15 * r.Float64() * float64(r.IntN(2)),
			mu: []float64{0, 0.05, 0.3, 0.4, 0.5, 1}[r.IntN(6)]}
		p := random(r, f)
		path, err := p.Follow()
		if err != nil {
			t.Errorf("fit %d, %+v: %v", k, f, err)
			continue
		}
		if v := p.Violation(path.Last()); v > 1e-9 {
			t.Errorf("fit %d, %+v: the laws are broken by %.1e of the load", k, f, v)
		}
	}
}

// TestEnergy: what the loads do is stored or lost to friction.
func TestEnergy(t *testing.T) {
	p := random(rand.New(rand.NewPCG(1, 2)), fit{columns: 12, rows: 3, slope: 0.2, coupling: 0.2, relief: 0.03, misfit: 0.01, push: 0.05, mu: 0.2})
	path, err := p.Follow()
	if err != nil {
		t.Fatal(err)
	}
	n := len(p.B)
	for _, m := range path.Moments[1:] {
		stored := p.Self * m.Load * m.Load / 2
		for i, f := range m.Force {
			for j, g := range m.Force {
				stored += f * p.A[i*n+j] * g / 2
			}
			stored += m.Load * p.B[i] * f
		}
		if off := m.Work - m.Lost - stored; math.Abs(off) > 1e-9*m.Work {
			t.Errorf("at %.3f of the load: work %g, lost %g, stored %g N·mm", m.Load, m.Work, m.Lost, stored)
		}
	}
	if m := path.Last(); !(m.Lost > 1e-3*m.Work) || m.Loose > 1e-4*m.Work {
		t.Errorf("lost %g, loose %g of %g N·mm: the problem tells nothing", m.Lost, m.Loose, m.Work)
	}
}

// TestShorterIncrements: the answer does not hang on the increments.
func TestShorterIncrements(t *testing.T) {
	p := random(rand.New(rand.NewPCG(1, 2)), fit{columns: 12, rows: 3, slope: 0.2, coupling: 0.2, relief: 0.03, misfit: 0.01, push: 0.05, mu: 0.2})
	path, err := p.Follow()
	if err != nil {
		t.Fatal(err)
	}
	p.Tolerance = 1e-7
	fine, err := p.Follow()
	if err != nil {
		t.Fatal(err)
	}
	off := 0.0
	for i, f := range path.Last().Force {
		off = max(off, math.Abs(f-fine.Last().Force[i]))
	}
	if off > 5e-4*160 || len(fine.Moments) < 2*len(path.Moments) {
		t.Errorf("%d increments and %d: forces differ by %.2g N of 160", len(path.Moments), len(fine.Moments), off)
	}
}

// TestLike: a problem that differs little, followed in the increments of another path, comes to what it comes to by
// itself; and its last increment alone to nearly that, exactly where nothing differs.
func TestLike(t *testing.T) {
	p := random(rand.New(rand.NewPCG(1, 2)), fit{columns: 12, rows: 3, slope: 0.2, coupling: 0.2, relief: 0.03, misfit: 0.01, push: 0.05, mu: 0.2})
	apart := func(a, b *Path) (most float64) {
		for j, f := range a.Last().Force {
			most = max(most, math.Abs(f-b.Last().Force[j])/160)
		}
		return most
	}
	whole := func(f func() (*Path, error)) *Path {
		path, err := f()
		if err != nil {
			t.Fatal(err)
		}
		return path
	}
	first := whole(p.Follow)
	if d := apart(whole(func() (*Path, error) { return p.Ends(first) }), first); d > 1e-10 {
		t.Errorf("the same increment once more: forces differ by %.1e", d)
	}
	for i := range p.Gap {
		p.Gap[i] *= 1 + 0.02*math.Sin(float64(i))
	}
	want, like, ends := whole(p.Follow), whole(func() (*Path, error) { return p.Like(first) }), whole(func() (*Path, error) { return p.Ends(first) })
	far, near, rough := apart(first, want), apart(like, want), apart(ends, want)
	if len(like.Moments) != len(first.Moments) || like.Solves >= want.Solves || p.Violation(like.Last()) > 1e-9 || p.Violation(ends.Last()) > 1e-9 {
		t.Errorf("%d increments like %d, %d systems like %d, laws broken by %.1e and %.1e", len(like.Moments), len(first.Moments),
			like.Solves, want.Solves, p.Violation(like.Last()), p.Violation(ends.Last()))
	}
	if near > 5e-4 || rough > 0.2*far || far < 1e-3 {
		t.Errorf("forces off by %.1e in the increments of another path, by %.1e in the last one alone, by %.1e before", near, rough, far)
	}
}

// TestSameBits: what follows the load twice, beside other work or not, gives the same bits.
func TestSameBits(t *testing.T) {
	follow := func() *Moment {
		p := random(rand.New(rand.NewPCG(5, 2)), fit{columns: 40, rows: 4, slope: 0.2, relief: 0.03, push: 0.03, mu: 0.4})
		path, err := p.Follow()
		if err != nil {
			t.Fatal(err)
		}
		return path.Last()
	}
	want := follow()
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	for _, procs := range []int{1, 3} {
		runtime.GOMAXPROCS(procs)
		if got := follow(); !slices.Equal(got.Force, want.Force) || got.Lost != want.Lost {
			t.Errorf("with %d processors the answer differs", procs)
		}
	}
}

// FuzzFollow: whatever the foot, it is answered within the laws or has no rest.
func FuzzFollow(f *testing.F) {
	f.Add(uint64(1), uint8(3), uint8(2), 0.2, 0.3, 0.05, 0.02, 0.1, 0.4)
	f.Add(uint64(2), uint8(5), uint8(3), 0.5, 0.9, 0.1, 0.02, 0.3, 0.0)
	f.Add(uint64(3), uint8(4), uint8(1), 0.0, 0.0, 0.0, 0.0, 0.0, 50.0)
	f.Fuzz(func(t *testing.T, seed uint64, columns, rows uint8, slope, coupling, relief, misfit, push, mu float64) {
		within := func(v, most float64) float64 {
			if !(math.Abs(v) <= most) {
				return most
			}
			return math.Abs(v)
		}
		p := random(rand.New(rand.NewPCG(seed, 1)), fit{columns: 2 + int(columns%6), rows: 1 + int(rows%3), slope: within(slope, 1),
			coupling: within(coupling, 1), relief: within(relief, 0.5), misfit: within(misfit, 0.5), push: within(push, 1), mu: within(mu, 1e4)})
		path, err := p.Follow()
		if err != nil {
			if !errors.Is(err, ErrNoRest) {
				t.Fatal(err)
			}
			return
		}
		if v := p.Violation(path.Last()); !(v < 1e-8) {
			t.Errorf("the laws are broken by %.1e of the load", v)
		}
	})
}

// BenchmarkFollow is a relieved foot as large as a guitar's.
func BenchmarkFollow(b *testing.B) {
	p := random(rand.New(rand.NewPCG(1, 2)), fit{columns: 70, rows: 4, slope: 0.2, relief: 0.03, push: 0.03, mu: 0.4})
	for b.Loop() {
		path, err := p.Follow()
		if err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(len(path.Moments)), "moments")
		b.ReportMetric(float64(path.Solves), "solves")
	}
}
