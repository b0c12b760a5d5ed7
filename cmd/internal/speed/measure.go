package main

import (
	"fmt"
	"hash/fnv"
	"math"
	"os"
	"runtime"
	"runtime/debug"
	"syscall"
	"time"

	"archload/fem/sparse"
)

// stamp is a time of the clock and of the processor, s.
type stamp struct {
	Wall float64 `json:"wall"`
	CPU  float64 `json:"cpu"`
}

func least(a, b stamp) stamp { return stamp{min(a.Wall, b.Wall), min(a.CPU, b.CPU)} }

func plus(a, b stamp) stamp { return stamp{a.Wall + b.Wall, a.CPU + b.CPU} }

// never is later than every time measured.
func never() stamp { return stamp{math.Inf(1), math.Inf(1)} }

// figures are what one process finds out about one matrix.
type figures struct {
	Nodes    int     `json:"nodes"`   // ours alone
	Analyse  stamp   `json:"analyse"` // order and symbolic factorisation
	First    stamp   `json:"first"`   // factor, memory not yet touched
	Factor   stamp   `json:"factor"`  // factor again in the same memory
	One      stamp   `json:"one"`     // one right-hand side
	Many     stamp   `json:"many"`    // 200 right-hand sides together
	NNZ      float64 `json:"nnz"`     // of L
	Flops    float64 `json:"flops"`
	Peak     float64 `json:"peak"`     // memory, MB
	Residual float64 `json:"residual"` // ours: largest |b - K x| over largest |b|
	Bits     string  `json:"bits"`     // of one solution; empty for the general library
}

// job says how one matrix is measured.
type job struct {
	matrix  string // file without .mtx
	plate   int    // nodes of a model plate, instead
	tonesOf string // file of a stiffness, whose mass is beside it
	tones   int    // to find
	workers int
	repeats int
	many    int // right-hand sides at once
}

// usedTime returns the processor time of the process so far, s.
func usedTime() float64 {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return seconds(u.Utime) + seconds(u.Stime)
}

func seconds(t syscall.Timeval) float64 { return float64(t.Sec) + 1e-6*float64(t.Usec) }

// measured times one call.
func measured(f func()) stamp {
	cpu, wall := usedTime(), time.Now()
	f()
	return stamp{time.Since(wall).Seconds(), usedTime() - cpu}
}

// peakMemory returns the largest memory of the process, MB.
func peakMemory() float64 {
	var u syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &u); err != nil {
		return 0
	}
	return float64(u.Maxrss) / 1e3
}

// forgetPeak gives back what reading the matrix took and, on Linux, starts the
// peak afresh (proc(5), clear_refs).
func forgetPeak() {
	debug.FreeOSMemory()
	if f, err := os.OpenFile("/proc/self/clear_refs", os.O_WRONLY, 0); err == nil {
		fmt.Fprintln(f, 5)
		f.Close()
	}
}

// measureOurs runs every stage of our solver on one matrix.
func measureOurs(j job) (*figures, error) {
	runtime.GOMAXPROCS(j.workers)
	p, err := load(j.matrix)
	if err != nil {
		return nil, err
	}
	forgetPeak()
	r := &figures{Analyse: never(), Factor: never(), One: never()}
	var a *sparse.Analysis
	for range j.repeats {
		r.Analyse = least(r.Analyse, measured(func() { a, err = sparse.Analyse(p.k, p.xy, p.last) }))
		if err != nil {
			return nil, err
		}
	}
	var f *sparse.Factor
	r.First = measured(func() { f, err = sparse.Factorize(p.k, a, j.workers) })
	for range j.repeats {
		if err == nil {
			r.Factor = least(r.Factor, measured(func() { err = f.Refactor(p.k) }))
		}
	}
	if err != nil {
		return nil, err
	}
	r.solves(p.k, f, j)
	r.Nodes = p.k.Nodes()
	r.NNZ, r.Flops, r.Peak = a.Stats().NNZ, a.Stats().Flops, peakMemory()
	return r, nil
}

// solves times the right-hand sides; column k holds (i mod 17) + k.
func (r *figures) solves(k *sparse.Matrix, f *sparse.Factor, j job) {
	n := block * k.Nodes()
	b, x := make([]float64, n), make([]float64, n)
	for i := range b {
		b[i] = float64(i % 17)
	}
	for range j.repeats + 1 {
		copy(x, b)
		r.One = least(r.One, measured(func() { f.Solve(x) }))
	}
	h := fnv.New64a()
	for _, v := range x {
		fmt.Fprintf(h, "%x ", math.Float64bits(v))
	}
	r.Bits = fmt.Sprintf("%x", h.Sum64())
	y := make([]float64, n)
	k.MulTo(y, x)
	for i := range y {
		r.Residual = max(r.Residual, math.Abs(b[i]-y[i])/16)
	}
	if j.many == 0 {
		return
	}
	many := make([]float64, n*j.many)
	for i := range many {
		many[i] = float64(i%n%17) + float64(i/n)
	}
	r.Many = measured(func() { f.SolveMany(many, j.many) })
}
