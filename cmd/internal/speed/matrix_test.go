package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A matrix and its plan come back from their files to the last bit.
func TestSaveAndLoad(t *testing.T) {
	for name, build := range map[string]func(int) (*problem, error){"random": random, "shell": shell} {
		p, err := build(200)
		if err != nil {
			t.Fatal(name, err)
		}
		file := filepath.Join(t.TempDir(), name)
		if err := p.save(file); err != nil {
			t.Fatal(name, err)
		}
		q, err := load(file)
		if err != nil {
			t.Fatal(name, err)
		}
		var want, got bytes.Buffer
		if p.k.WriteMatrixMarket(&want) != nil || q.k.WriteMatrixMarket(&got) != nil || !bytes.Equal(got.Bytes(), want.Bytes()) {
			t.Errorf("%s: the matrix comes back changed", name)
		}
		for i := range p.xy {
			if q.xy[i] != p.xy[i] {
				t.Fatalf("%s: node %d at %v, want %v", name, i, q.xy[i], p.xy[i])
			}
		}
	}
}

func TestReadBlocksRefuses(t *testing.T) {
	const head = "%%MatrixMarket matrix coordinate real symmetric\n"
	for _, c := range []struct{ text, want string }{
		{"6 6 1\n1 1 1\n", "begins with"},
		{head + "6 6\n", "rows, columns and entries"},
		{head + "7 7 1\n1 1 1\n", "whole nodes"},
		{head + "6 6 2\n1 1 1\n", "too early"},
		{head + "6 6 1\n1 2 1\n", "lower triangle"},
		{head + "12 12 2\n7 1 1\n1 1 1\n", "rows ascending"},
		{head + "6 6 1\n1 1 one\n", "one"},
	} {
		if _, err := readBlocks(strings.NewReader(c.text)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: got error %v, want one with %q", c.text, err, c.want)
		}
	}
}

// Both numbers of workers give the same bits, and the solution is one.
func TestMeasureOurs(t *testing.T) {
	p, err := random(400)
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "m")
	if err := p.save(file); err != nil {
		t.Fatal(err)
	}
	one, err := measureOurs(job{matrix: file, workers: 1, repeats: 2, many: 9})
	if err != nil {
		t.Fatal(err)
	}
	two, err := measureOurs(job{matrix: file, workers: 2, repeats: 1})
	if err != nil {
		t.Fatal(err)
	}
	if one.Bits != two.Bits || !(one.Residual < 1e-9) || !(one.Factor.Wall > 0) {
		t.Errorf("got bits %s and %s, residual %g, factor %g s; want equal bits, less than 1e-9, some time",
			one.Bits, two.Bits, one.Residual, one.Factor.Wall)
	}
	if _, err := best(one, &figures{Bits: "other", NNZ: one.NNZ}); err == nil {
		t.Error("two runs with different bits pass")
	}
}

// The model plate answers, and more nodes change the answer little.
func TestSolvePlate(t *testing.T) {
	coarse, err := solvePlate(job{plate: 500, workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	fine, err := solvePlate(job{plate: 2000, workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	if d := coarse.Sink/fine.Sink - 1; !(fine.Sink > 0) || d < -0.2 || d > 0.2 {
		t.Errorf("sink %g mm with %d nodes, %g mm with %d", coarse.Sink, coarse.Nodes, fine.Sink, fine.Nodes)
	}
}

func TestExport(t *testing.T) {
	name := filepath.Join(t.TempDir(), "plate")
	var out bytes.Buffer
	if err := speed([]string{"-export", name, "-nodes", "200"}, &out, &out); err != nil {
		t.Fatal(err)
	}
	for _, ending := range []string{".mtx", ".xy.mtx"} {
		if info, err := os.Stat(name + ending); err != nil || info.Size() == 0 {
			t.Errorf("%s%s: %v", name, ending, err)
		}
	}
	if err := speed([]string{"extra"}, &out, &out); err == nil {
		t.Error("an argument that is no flag passes")
	}
}
