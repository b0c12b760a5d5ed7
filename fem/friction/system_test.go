package friction

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestExchange: the system's factor with rows exchanged solves as the one that takes its pivots as they come, for pads
// that stand off, stick and slide; and a compliance that wants its rows exchanged gets them.
func TestExchange(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	p := random(rng, fit{columns: 9, rows: 3, slope: 0.2, coupling: 0.2, relief: 0.03, misfit: 0.01, push: 0.05, mu: 0.4})
	s := p.increment(p.rest(), 1)
	for i := range s.states {
		s.states[i] = state{kind: Kind(i % 3), n: [2]float64{0.6, 0.8}, soft: 1e-4}
	}
	list := s.unknowns()
	if !s.factorize(list) || p.factor.rows != nil {
		t.Fatal("the system has no factor without exchanging rows")
	}
	other := &factor{n: p.factor.n}
	if !other.exchange(s, list) {
		t.Fatal("the system has no factor with rows exchanged")
	}
	a, b := make([]float64, other.n), make([]float64, other.n)
	most := 0.0
	for i := range a {
		a[i] = rng.Float64() - 0.5
		b[i] = a[i]
	}
	p.factor.solve(a)
	other.solve(b)
	for i, v := range b {
		most = max(most, math.Abs(v))
		if math.Abs(a[i]-v) > 1e-9*most {
			t.Fatalf("unknown %d is %g without and %g with rows exchanged", i, a[i], v)
		}
	}
	rows := len(p.B) // the first pad sticks and gives way to the second's force alone, and the other way round
	for a := range 3 {
		s.states[0], s.states[1] = state{kind: Sticks}, state{kind: Sticks}
		p.A[a*rows+a], p.A[(3+a)*rows+3+a] = 0, 0
	}
	for a := range 3 {
		for b := range 3 {
			if a != b {
				p.A[a*rows+b], p.A[(3+a)*rows+3+b] = 0, 0
			}
		}
	}
	if !s.factorize(s.unknowns()) || p.factor.rows == nil {
		t.Error("a first pad without any compliance of its own: want a factor with rows exchanged")
	}
}
