package sparse

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// Octets give what single vectors give, and the same bits with any number of workers.
func TestOctets(t *testing.T) {
	rng := rand.New(rand.NewPCG(11, 5))
	p := hexPlate(700, rng, nil)
	m := p.matrix(rng)
	a, err := Analyse(m, p.xy, nil)
	if err != nil {
		t.Fatal(err)
	}
	f, err := Factorize(m, a, 2)
	if err != nil {
		t.Fatal(err)
	}
	n := Block * m.n
	x := make([]float64, Octet*n)
	for i := range x {
		x[i] = rng.NormFloat64()
	}
	y := make([]float64, len(x))
	m.Octets(1).MulTo(y, x)
	y3 := make([]float64, len(x))
	m.Octets(3).MulTo(y3, x)
	if !slices.Equal(y, y3) {
		t.Error("products: 3 workers give other bits than one")
	}
	for _, r := range []int{0, 3, 7} {
		one, want := make([]float64, n), make([]float64, n)
		for i := range one {
			one[i] = x[Octet*i+r]
		}
		m.MulTo(want, one)
		for i := range want {
			if math.Abs(y[Octet*i+r]-want[i]) > 1e-12*math.Abs(want[i])+1e-10 {
				t.Fatalf("product %d: row %d: %g, want %g", r, i, y[Octet*i+r], want[i])
			}
		}
	}
	s := f.Octets()
	s.Solve(y)
	for i := range x {
		if math.Abs(y[i]-x[i]) > 1e-6 {
			t.Fatalf("solution %d: %g, want %g", i, y[i], x[i])
		}
	}
}

func TestOctetAlgebra(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 9))
	const nodes = 333
	o, o3 := NewOctetAlgebra(nodes, 1), NewOctetAlgebra(nodes, 3)
	n := o.Len() / Octet
	for _, octets := range []int{0, 1, 2, 3, 5} {
		v, z := make([]float64, octets*o.Len()), make([]float64, o.Len())
		for i := range v {
			v[i] = rng.NormFloat64()
		}
		for i := range z {
			z[i] = rng.NormFloat64()
		}
		h := o.Dots(v, z)
		if !slices.Equal(h, o3.Dots(v, z)) {
			t.Error("3 workers give other bits than one")
		}
		w := slices.Clone(z)
		o.Subtract(w, v, h)
		for j := range Octet * octets {
			for r := range Octet {
				want := 0.0
				for i := range n {
					want += v[j/Octet*o.Len()+Octet*i+j%Octet] * z[Octet*i+r]
				}
				if got := h[Octet*j+r]; math.Abs(got-want) > 1e-11 {
					t.Fatalf("%d octets: product (%d, %d) is %g, want %g", octets, j, r, got, want)
				}
			}
		}
		for i := range n {
			for r := range Octet {
				want := z[Octet*i+r]
				for j := range Octet * octets {
					want -= v[j/Octet*o.Len()+Octet*i+j%Octet] * h[Octet*j+r]
				}
				if got := w[Octet*i+r]; math.Abs(got-want) > 1e-9 {
					t.Fatalf("%d octets: rest (%d, %d) is %g, want %g", octets, i, r, got, want)
				}
			}
		}
	}
}
