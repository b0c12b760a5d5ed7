package sparse

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// The stages of a solution at three sizes. Run with
// go test -run=- -bench=. -benchtime=3x ./fem/sparse
func BenchmarkStages(b *testing.B) {
	for _, n := range []int{2000, 10000, 50000} {
		rng := rand.New(rand.NewPCG(1, uint64(n)))
		p := hexPlate(n, rng, nil)
		m := p.matrix(rng)
		b.Run(fmt.Sprintf("nodes=%d", n), func(b *testing.B) { benchStages(b, m, p) })
	}
}

func benchStages(b *testing.B, m *Matrix, p plate) {
	a, err := Analyse(m, p.xy, p.last)
	if err != nil {
		b.Fatal(err)
	}
	b.Run("analyse", func(b *testing.B) {
		for b.Loop() {
			_, err = Analyse(m, p.xy, p.last)
		}
		st := a.Stats()
		b.ReportMetric(st.NNZ/1e6, "Mnnz")
		b.ReportMetric(st.Stored/1e6, "Mstored")
		b.ReportMetric(st.Flops/1e9, "Gflop")
		b.ReportMetric(float64(st.Fronts), "fronts")
	})
	for _, kern := range []kernels{fastKernels(), {}} {
		for workers := 1; workers <= 2; workers++ {
			b.Run(fmt.Sprintf("factor/avx2=%t/workers=%d", kern.AVX2, workers), func(b *testing.B) {
				f, err := newFactor(a, workers, kern).first(m)
				for b.Loop() && err == nil {
					err = f.Refactor(m)
				}
				if err != nil {
					b.Fatal(err)
				}
				b.ReportMetric(a.Stats().Flops*float64(b.N)/b.Elapsed().Seconds()/1e9, "GFlop/s")
			})
		}
	}
	benchSolves(b, m, a)
}

func benchSolves(b *testing.B, m *Matrix, a *Analysis) {
	b.Run("factor/first", func(b *testing.B) {
		for b.Loop() {
			if _, err := Factorize(m, a, 2); err != nil {
				b.Fatal(err)
			}
		}
	})
	f, err := Factorize(m, a, 2)
	if err != nil {
		b.Fatal(err)
	}
	x := make([]float64, 200*Block*m.n)
	for i := range x {
		x[i] = float64(i % 17)
	}
	b.Run("solve", func(b *testing.B) {
		for b.Loop() {
			f.Solve(x[:Block*m.n])
		}
	})
	for f.workers = 1; f.workers <= 2; f.workers++ {
		b.Run(fmt.Sprintf("200rhs/workers=%d", f.workers), func(b *testing.B) {
			for b.Loop() {
				f.SolveMany(x, 200)
			}
		})
	}
}

// The same with 420 nodes under the bridge among the last, and their compliance
// for 1000 columns of 9 values.
func BenchmarkBridge(b *testing.B) {
	rng := rand.New(rand.NewPCG(1, 10))
	p := hexPlate(10000, rng, nil).bridge(420)
	m := p.matrix(rng)
	a, err := Analyse(m, p.xy, p.last)
	if err != nil {
		b.Fatal(err)
	}
	b.Run("analyse", func(b *testing.B) {
		for b.Loop() {
			_, err = Analyse(m, p.xy, p.last)
		}
		b.ReportMetric(a.Stats().NNZ/1e6, "Mnnz")
		b.ReportMetric(a.Stats().Flops/1e9, "Gflop")
	})
	cols := randomColumns(rng, p.last, 1000)
	for _, kern := range []kernels{fastKernels(), {}} {
		for workers := 1; workers <= 2; workers++ {
			f, err := newFactor(a, workers, kern).first(m)
			if err != nil {
				b.Fatal(err)
			}
			b.Run(fmt.Sprintf("factor/avx2=%t/workers=%d", kern.AVX2, workers), func(b *testing.B) {
				for b.Loop() {
					err = f.Refactor(m)
				}
			})
			b.Run(fmt.Sprintf("compliance/avx2=%t/workers=%d", kern.AVX2, workers), func(b *testing.B) {
				for b.Loop() {
					f.Compliance(cols)
				}
			})
		}
	}
}
