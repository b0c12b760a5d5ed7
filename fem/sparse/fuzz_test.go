package sparse

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// FuzzGraph builds a matrix on a graph read from data, two bytes an edge, and
// expects a solution with a small residual. With spoil a diagonal becomes
// negative, and a PivotError is expected.
func FuzzGraph(f *testing.F) {
	f.Add(uint64(1), uint8(1), uint8(0), false, []byte{})
	f.Add(uint64(2), uint8(40), uint8(5), false, []byte{0, 1, 1, 2, 2, 3, 3, 0, 9, 8})
	f.Add(uint64(3), uint8(200), uint8(200), true, []byte("a random graph of some letters, for what it is worth"))
	f.Add(uint64(4), uint8(90), uint8(3), false, slices.Repeat([]byte{7, 1, 7, 80, 7, 33, 5, 6, 6, 5}, 9))
	f.Fuzz(func(t *testing.T, seed uint64, size, last uint8, spoil bool, data []byte) {
		rng := rand.New(rand.NewPCG(seed, 7))
		n := int(size) + 1
		p := plate{last: sequence(min(int(last), n))}
		for i := 0; i+1 < min(len(data), 400); i += 2 {
			p.tris = append(p.tris, []int32{int32(int(data[i]) % n), int32(int(data[i+1]) % n)})
		}
		for i := range n {
			p.xy = append(p.xy, fuzzPoint(rng, seed, i))
		}
		m := p.matrix(rng)
		if spoil {
			m.val[blockLen*int(m.ptr[1]-1)] = -1
		}
		fac, err := Factorize(m, mustAnalyse(t, m, p), 2)
		if (err != nil) != spoil {
			t.Fatalf("error %v, spoiled %t", err, spoil)
		}
		if err != nil {
			return
		}
		b := randomVector(rng, Block*n)
		x := slices.Clone(b)
		fac.Solve(x)
		if r := residual(m, x, b); !(r < 1e-12) {
			t.Errorf("residual %g", r)
		}
	})
}

// fuzzPoint gives scattered, equal, aligned, huge or missing coordinates.
func fuzzPoint(rng *rand.Rand, seed uint64, i int) [2]float64 {
	switch seed % 6 {
	case 0:
		return [2]float64{5, 5}
	case 1:
		return [2]float64{float64(i), 0}
	case 2:
		return [2]float64{math.NaN(), float64(i)}
	case 3:
		return [2]float64{1e308 * (rng.Float64() - 0.5), 1e308 * (rng.Float64() - 0.5)}
	case 4:
		return [2]float64{math.SmallestNonzeroFloat64 * float64(i%3), 0}
	}
	return [2]float64{rng.Float64(), rng.Float64()}
}
