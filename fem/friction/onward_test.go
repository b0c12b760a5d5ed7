package friction

import (
	"math/rand/v2"
	"testing"
)

// bent is a problem whose foot has been bent by a height in its middle, as swelling does, and pulled sideways.
func bent(p *Problem, height, along float64) *Problem {
	q := *p
	q.B = append([]float64(nil), p.B...)
	n := p.pads()
	for i := range n {
		x := 2*float64(i)/float64(n-1) - 1
		q.B[3*i] += height * x * x
		q.B[3*i+2] += along * x
	}
	return &q
}

// follows is the moment at the end of a change.
func follows(t *testing.T, p *Problem, from *Moment) *Moment {
	t.Helper()
	path, err := p.Onward(from)
	if err != nil {
		t.Fatal(err)
	}
	if v := p.Violation(path.Last()); v > 1e-9 {
		t.Errorf("the laws are broken by %.1e of the load", v)
	}
	return path.Last()
}

// TestOnwardStays: a problem that has not changed leaves every force where it was.
func TestOnwardStays(t *testing.T) {
	for seed := range uint64(20) {
		p := random(rand.New(rand.NewPCG(1, seed)), fit{columns: 8, rows: 3, slope: 0.2, coupling: 0.2, relief: 0.03, misfit: 0.01, push: 0.05, mu: 0.2})
		path, err := p.Follow()
		if err != nil {
			t.Fatal(err)
		}
		m := path.Last()
		if off := apart(m, follows(t, p, m)); off > 1e-8 {
			t.Errorf("problem %d: forces differ by %.1e", seed, off)
		}
	}
}

// TestOnwardSteps: a change that makes pads slide is met as by many small changes, and one to and fro leaves what
// has slid. One increment alone would be off by more.
func TestOnwardSteps(t *testing.T) {
	p := random(rand.New(rand.NewPCG(1, 2)), fit{columns: 12, rows: 3, slope: 0.2, coupling: 0.2, relief: 0.03, misfit: 0.01, push: 0.05, mu: 0.2})
	path, err := p.Follow()
	if err != nil {
		t.Fatal(err)
	}
	const height, along = 0.05, 0.1
	start := path.Last()
	got := follows(t, bent(p, height, along), start)
	fine := start
	for k := range 200 {
		s := float64(k+1) / 200
		fine = follows(t, bent(p, s*height, s*along), fine)
	}
	if off := apart(got, fine); off > 2e-3 {
		t.Errorf("forces differ by %.1e from those of many small changes", off)
	}
	from := *start
	from.Load, from.rise, from.rate = 0, nil, make([][3]float64, p.pads())
	s, ok := bent(p, height, along).rests(&from, 1, nil, true)
	if !ok {
		t.Fatal("one increment finds no rest")
	}
	if off := apart(s.moment(), fine); off < 2e-2 {
		t.Errorf("one increment is off by %.1e alone: the test tells nothing", off)
	}
	back := follows(t, p, got)
	if off := apart(back, start); off < 0.1 {
		t.Errorf("there and back the forces differ by %.1e, want what slid to stay", off)
	}
	for i, s := range back.Slid {
		if s < got.Slid[i]-1e-12 || got.Slid[i] < start.Slid[i]-1e-12 {
			t.Errorf("pad %d has slid by %g, %g, then %g mm", i, start.Slid[i], got.Slid[i], s)
		}
	}
}
