package sparse

import (
	"errors"
	"math/rand/v2"
	"slices"
	"testing"
)

// TestRenew: after changes here and there, and back, the renewed factor has the bits of a
// fresh one, with any number of workers, and the one that it came from has kept its own.
func TestRenew(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 2))
	p := hexPlate(900, rng, nil).withWall(2).bridge(40)
	m := p.matrix(rng)
	a := mustAnalyse(t, m, p)
	for workers := 1; workers <= 3; workers++ {
		was := &Matrix{n: m.n, ptr: m.ptr, col: m.col, val: slices.Clone(m.val)}
		f := mustFactorize(t, was, a, workers, fastKernels())
		for step := range 9 {
			is := &Matrix{n: m.n, ptr: m.ptr, col: m.col, val: slices.Clone(was.val)}
			line := p.tris[100*(step/3):][:12] // the same place three times, then another
			for _, tri := range line {
				is.Add(tri, randomElement(rng, len(tri)))
			}
			if step == 8 {
				p.fill(is, rng) // everywhere
			}
			before := f.values()
			g, err := f.Renew(was, is, workers)
			if err != nil {
				t.Fatal(err)
			}
			want := mustFactorize(t, is, a, workers, fastKernels())
			if !slices.Equal(g.values(), want.values()) || !slices.Equal(g.tri, want.tri) {
				t.Fatalf("%d workers, step %d: other bits than a fresh factor", workers, step)
			}
			if !slices.Equal(before, f.values()) {
				t.Fatalf("%d workers, step %d: the factor that was renewed has changed", workers, step)
			}
			was, f = is, g
		}
	}
}

// TestRenewLess: the second change at a place computes but a part of the fronts.
func TestRenewLess(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 2))
	p := hexPlate(900, rng, nil)
	m := p.matrix(rng)
	was := mustFactorize(t, m, mustAnalyse(t, m, p), 1, fastKernels())
	for step := range 3 {
		is := &Matrix{n: m.n, ptr: m.ptr, col: m.col, val: slices.Clone(m.val)}
		is.Add(p.tris[7], randomElement(rng, 3))
		f, err := was.Renew(m, is, 2)
		if err != nil {
			t.Fatal(err)
		}
		shared := 0
		for k := range f.parts {
			if &f.parts[k][0] == &was.parts[k][0] {
				shared += len(f.parts[k])
			}
		}
		if half := len(f.values()) / 2; step > 0 && shared < half {
			t.Errorf("step %d: %d values of the factor are shared, want at least %d", step, shared, half)
		}
		m, was = is, f
	}
	again := mustFactorize(t, m, was.a, 1, fastKernels())
	if err := was.Refactor(m); err != nil || !slices.Equal(was.values(), again.values()) {
		t.Errorf("computed again in place: %v, or other bits", err)
	}
	bad := m.Like()
	var pivot *PivotError
	if _, err := was.Renew(m, bad, 1); !errors.As(err, &pivot) {
		t.Errorf("of a matrix of zeros: got %v, want a pivot error", err)
	}
}
