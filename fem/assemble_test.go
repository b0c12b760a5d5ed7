package fem

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// TestAssembleWorkers: who sums which rows moves no bit; some of the elements hang on a block.
func TestAssembleWorkers(t *testing.T) {
	m, _ := blockedStrip()
	dice := rand.New(rand.NewPCG(5, 7))
	x := make([]float64, 6*len(m.Nodes))
	for i := range x {
		x[i] = dice.NormFloat64()
	}
	want := make([]float64, len(x))
	for _, workers := range []int{1, 2, 3, 16} {
		s, err := Assemble(m, workers)
		if err != nil {
			t.Fatal(err)
		}
		got := make([]float64, len(x))
		if s.K.MulTo(got, x); workers == 1 {
			want = got
			continue
		}
		if !slices.Equal(got, want) {
			t.Errorf("%d workers: K x differs from that of one: got %v, want %v", workers, got, want)
		}
	}
}

// TestStrips: every element stands in the strip of each of its nodes, once, and every node in one.
func TestStrips(t *testing.T) {
	m, _ := blockedStrip()
	s, err := Assemble(m, 1)
	if err != nil {
		t.Fatal(err)
	}
	for _, count := range []int{1, 3, 100} {
		strip, elements := s.strips(count)
		for i, e := range s.Elements {
			for k, list := range elements {
				found := 0
				for _, at := range list {
					if at == int32(i) {
						found++
					}
				}
				meets := slices.ContainsFunc(e.Nodes(), func(n int32) bool { return strip[n] == int32(k) })
				if want := map[bool]int{true: 1}[meets]; found != want {
					t.Errorf("%d strips: element %d stands %d times in strip %d, want %d", count, i, found, k, want)
				}
			}
		}
	}
}
