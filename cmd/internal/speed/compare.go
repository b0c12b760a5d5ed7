package main

import (
	"errors"
	"fmt"
	"io"
	"os/exec"
	"path/filepath"
	"strconv"
)

// subject is one matrix of the comparison.
type subject struct {
	name     string   // in the table
	file     string   // matrix without .mtx; empty: to be written
	export   []string // flags that write it
	portable bool     // measure the portable kernels too
}

// result gathers the least times of all rounds.
type result struct {
	subject
	ours     [2]*figures // with 1 and 2 workers
	general  [4]*figures // node order with 1 and 2 threads, dof order with 1 and 2
	portable *figures
}

// best keeps the least of each time and the largest memory.
func best(a, b *figures) (*figures, error) {
	if a == nil {
		return b, nil
	}
	if a.Bits != b.Bits || a.NNZ != b.NNZ {
		return nil, fmt.Errorf("two runs differ: solution %s and %s, %.0f and %.0f nonzeros", a.Bits, b.Bits, a.NNZ, b.NNZ)
	}
	c := *b
	c.Analyse, c.First, c.Factor = least(a.Analyse, b.Analyse), least(a.First, b.First), least(a.Factor, b.Factor)
	c.One, c.Many = least(a.One, b.One), least(a.Many, b.Many)
	c.Peak = max(a.Peak, b.Peak)
	return &c, nil
}

// compare measures one matrix, rounds times with every program in turn.
func compare(s subject, p programs, dir string, rounds int) (*result, error) {
	r := &result{subject: s}
	if r.file == "" {
		r.file = filepath.Join(dir, "matrix")
		if out, err := exec.Command(p.ours, append(s.export, "-export", r.file)...).CombinedOutput(); err != nil {
			return nil, fmt.Errorf("%w: %s", err, out)
		}
	}
	var err error
	keep := func(into **figures, program string, threads int, args ...string) {
		if err != nil {
			return
		}
		var f *figures
		if f, err = run(program, threads, args...); err == nil {
			*into, err = best(*into, f)
		}
	}
	const many, repeats = "200", "5"
	for round := range rounds {
		for t := 1; t <= 2; t++ {
			keep(&r.ours[t-1], p.ours, t, "-measure", r.file, "-workers", strconv.Itoa(t), "-repeats", repeats, "-many", many)
			keep(&r.general[t-1], p.general, t, r.file+".mtx", "node", many, repeats)
			keep(&r.general[t+1], p.general, t, r.file+".mtx", "dof", many, repeats)
		}
		if s.portable && round == 0 {
			keep(&r.portable, p.portable, 1, "-measure", r.file, "-workers", "1", "-repeats", "2", "-many", "0")
		}
	}
	if err == nil && r.ours[0].Bits != r.ours[1].Bits {
		err = errors.New("1 and 2 workers give different bits")
	}
	return r, err
}

// row is one line of the table: a stage, our time and the general library's best.
type row struct {
	stage        string
	ours, theirs float64 // s
}

// clock picks what counts: processor time on one core, the clock on two.
type clock func(stamp) float64

func cpu(s stamp) float64  { return s.CPU }
func wall(s stamp) float64 { return s.Wall }

// least over the given runs of the general library of the sum of some stages.
func leastOf(runs []*figures, t clock, stages ...func(*figures) stamp) float64 {
	shortest := t(never())
	for _, f := range runs {
		sum := stamp{}
		for _, stage := range stages {
			sum = plus(sum, stage(f))
		}
		shortest = min(shortest, t(sum))
	}
	return shortest
}

func analyseTime(f *figures) stamp { return f.Analyse }
func factorTime(f *figures) stamp  { return f.Factor }
func oneTime(f *figures) stamp     { return f.One }
func manyTime(f *figures) stamp    { return f.Many }

// rows compares stage by stage: on one core with the best of the general library
// on one thread, on two with its best on one or two.
func (r *result) rows() []row {
	one := []*figures{r.general[0], r.general[2]}
	all := r.general[:]
	line := func(stage string, mine *figures, runs []*figures, t clock, stages ...func(*figures) stamp) row {
		return row{stage: stage, ours: leastOf([]*figures{mine}, t, stages...), theirs: leastOf(runs, t, stages...)}
	}
	ours1, ours2 := r.ours[0], r.ours[1]
	list := []row{
		line("order and symbolic, 1 core", ours1, one, cpu, analyseTime),
		line("factor, 1 core", ours1, one, cpu, factorTime),
		line("factor, 2 cores", ours2, all, wall, factorTime),
		line("all with 1 solve, 1 core", ours1, one, cpu, analyseTime, factorTime, oneTime),
		line("all with 1 solve, 2 cores", ours2, all, wall, analyseTime, factorTime, oneTime),
		line("1 right-hand side, 1 core", ours1, one, cpu, oneTime),
		line("200 right-hand sides, 1 core", ours1, one, cpu, manyTime),
		line("200 right-hand sides, 2 cores", ours2, all, wall, manyTime),
	}
	if r.portable != nil {
		list = append(list, line("factor without assembly, 1 core", r.portable, one, cpu, factorTime))
	}
	return list
}

// print writes the table of one matrix.
func (r *result) print(w io.Writer) {
	fmt.Fprintf(w, "\n### %s: %d nodes\n\n", r.name, r.ours[0].Nodes)
	fmt.Fprintf(w, "| stage | archload, s | general library, s | ratio |\n|---|---|---|---|\n")
	for _, l := range r.rows() {
		fmt.Fprintf(w, "| %s | %.4f | %.4f | %.2f |\n", l.stage, l.ours, l.theirs, l.ours/l.theirs)
	}
	fmt.Fprintf(w, "| nonzeros of L, 10⁶ | %.2f | node METIS %.2f, dof METIS %.2f | %.3f |\n",
		r.ours[0].NNZ/1e6, r.general[0].NNZ/1e6, r.general[2].NNZ/1e6, r.ours[0].NNZ/r.general[0].NNZ)
	fmt.Fprintf(w, "| operations, 10⁹ | %.2f | %.2f | %.2f |\n", r.ours[0].Flops/1e9, r.general[0].Flops/1e9, r.ours[0].Flops/r.general[0].Flops)
	fmt.Fprintf(w, "| peak memory, MB, 1 and 2 cores | %.0f, %.0f | %.0f, %.0f | %.2f |\n", r.ours[0].Peak, r.ours[1].Peak,
		r.general[0].Peak, r.general[1].Peak, r.ours[1].Peak/r.general[1].Peak)
	fmt.Fprintf(w, "\nFirst factor, memory untouched: %.4f s, the general library %.4f s. Residual %.1g. Same bits in all runs: %s.\n",
		r.ours[0].First.CPU, r.general[0].First.CPU, r.ours[0].Residual, r.ours[0].Bits)
}
