package main

import (
	"fmt"
	"runtime"
	"testing"

	"archload/fem"
	"archload/fem/sparse"
)

// Every stage of the carved model plate at three sizes, on 1 and 2 cores.
func BenchmarkPlate(b *testing.B) {
	before := runtime.GOMAXPROCS(0)
	defer runtime.GOMAXPROCS(before)
	for _, n := range []int{2000, 10000, 50000} {
		for cores := 1; cores <= 2; cores++ {
			runtime.GOMAXPROCS(cores)
			b.Run(fmt.Sprintf("nodes=%d/cores=%d", n, cores), func(b *testing.B) { benchPlate(b, n, cores) })
		}
	}
}

func benchPlate(b *testing.B, n, cores int) {
	var m *fem.Model
	var sys *fem.System
	var a *sparse.Analysis
	var f *sparse.Factor
	var err error
	stage := func(name string, do func()) {
		do() // the next stage wants it even if this one is not chosen
		if err != nil {
			b.Fatal(name, err)
		}
		b.Run(name, func(b *testing.B) {
			for b.Loop() {
				do()
			}
		})
	}
	stage("mesh", func() { m, err = carved(n) })
	stage("assemble", func() { sys, err = fem.Assemble(m, cores) })
	stage("order", func() { a, err = sys.Analyse() })
	stage("factor first", func() { f, err = sparse.Factorize(sys.K, a, cores) })
	stage("factor again", func() { err = f.Refactor(sys.K) })
	x := make([]float64, 200*block*len(m.Nodes))
	for i := range x {
		x[i] = float64(i % 17)
	}
	stage("1 right-hand side", func() { f.Solve(x[:block*len(m.Nodes)]) })
	stage("200 right-hand sides", func() { f.SolveMany(x, 200) })
}
