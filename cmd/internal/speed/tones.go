package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os/exec"
	"path/filepath"
	"strconv"

	"archload/fem"
	"archload/fem/eigen"
	"archload/fem/sparse"
)

// tonesRun is one search for the lowest tones of a matrix and a mass.
type tonesRun struct {
	Nodes    int       `json:"nodes"` // ours alone
	Analyse  stamp     `json:"analyse"`
	Factor   stamp     `json:"factor"` // the general library's; ours is in the search
	Search   stamp     `json:"search"` // ours: with residuals and the count of the tones
	All      stamp     `json:"all"`
	Solves   int       `json:"solves"` // right-hand sides
	Peak     float64   `json:"peak"`   // MB
	Values   []float64 `json:"values"` // lambda
	Residual float64   `json:"residual"`
	Growth   float64   `json:"growth"`
}

// sparseTones finds the lowest tones of the matrix and mass of a job.
func sparseTones(j job) (*tonesRun, error) {
	p, err := load(j.tonesOf)
	if err != nil {
		return nil, err
	}
	m, err := load(j.tonesOf + ".mass")
	if err != nil {
		return nil, err
	}
	forgetPeak()
	r := &tonesRun{Nodes: p.k.Nodes()}
	var a *sparse.Analysis
	r.All = measured(func() {
		r.Analyse = measured(func() { a, err = sparse.Analyse(p.k, p.xy, p.last) })
		if err != nil {
			return
		}
		r.Search = measured(func() {
			var modes *eigen.Modes
			modes, err = eigen.Lowest(&eigen.Problem{K: p.k, M: m.k, Plan: a},
				eigen.Options{Count: j.tones, Tolerance: tonesTolerance, Workers: j.workers})
			if err != nil {
				return
			}
			r.Values, r.Solves, r.Growth = modes.Values, eigenWidth*modes.Blocks, modes.Proof.Growth
			for _, v := range modes.Residuals {
				r.Residual = max(r.Residual, v)
			}
		})
	})
	r.Peak = peakMemory()
	return r, err
}

const (
	tonesTolerance = 1e-9
	eigenWidth     = sparse.Octet
)

// massOf is the consistent mass of the shells of a system, with its pattern.
func massOf(s *fem.System, density float64) *sparse.Matrix {
	m := s.K.Like()
	var me [324]float64
	for i := range s.Shells {
		s.Shells[i].MassTo(&me, density)
		m.Add(s.Model.Shells[i].Nodes[:], me[:])
	}
	var fixed []int32
	for _, f := range s.Model.Fixed {
		fixed = append(fixed, block*f.Node+int32(f.Dof))
	}
	m.Fix(fixed)
	return m
}

// tonesAll compares the search for the lowest tones of the model plate with a general
// library's: ARPACK with CHOLMOD, on one core.
func (o *options) tonesAll(dir string, stdout, stderr io.Writer) error {
	p, err := buildAll(dir)
	if err != nil {
		return err
	}
	fmt.Fprintf(stdout, "\n### %d tones of the carved plate, residuals and count included in ours; s of the processor, 1 core\n\n", o.job.tones)
	fmt.Fprintf(stdout, "| nodes | archload | general library (best of %v vectors) | ratio | largest difference of a value | solves | peak, MB |\n|---|---|---|---|---|---|---|\n", lanczosVectors)
	for _, n := range []string{"10000", "50000"} {
		fmt.Fprintln(stderr, "tones of", n)
		file := filepath.Join(dir, "tones"+n)
		if out, err := exec.Command(p.ours, "-nodes", n, "-export", file).CombinedOutput(); err != nil {
			return fmt.Errorf("%w: %s", err, out)
		}
		if err := o.tonesOf(file, p, stdout); err != nil {
			return err
		}
	}
	return nil
}

// lanczosVectors are the sizes of the general library's basis that are tried.
var lanczosVectors = []int{45, 60, 75}

// tonesOf compares on one matrix and prints its row.
func (o *options) tonesOf(file string, p programs, stdout io.Writer) error {
	count := strconv.Itoa(o.job.tones)
	var ours, theirs *tonesRun
	for range o.rounds {
		mine, err := runTones(p.ours, "-find", file, "-count", count, "-workers", "1")
		if err != nil {
			return err
		}
		ours = faster(ours, mine)
		for _, ncv := range lanczosVectors {
			other, err := runTones(p.tones, file+".mtx", file+".mass.mtx", count, strconv.Itoa(ncv), fmt.Sprint(tonesTolerance))
			if err != nil {
				return err
			}
			theirs = faster(theirs, other)
		}
	}
	worst := 0.0
	for i, v := range theirs.Values {
		worst = max(worst, math.Abs(ours.Values[i]/v-1))
	}
	fmt.Fprintf(stdout, "| %d | %.3f | %.3f | **%.2f** | %.1g | %d / %d | %.0f / %.0f |\n", ours.Nodes, ours.All.CPU, theirs.All.CPU,
		ours.All.CPU/theirs.All.CPU, worst, ours.Solves, theirs.Solves, ours.Peak, theirs.Peak)
	return nil
}

// faster returns the run that took less of the processor.
func faster(a, b *tonesRun) *tonesRun {
	if a != nil && a.All.CPU <= b.All.CPU {
		return a
	}
	return b
}

// runTones runs one search.
func runTones(program string, args ...string) (*tonesRun, error) {
	out, err := output(program, 1, args...)
	if err != nil {
		return nil, err
	}
	r := &tonesRun{}
	return r, json.Unmarshal(out, r)
}
