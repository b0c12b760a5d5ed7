package main

import (
	"encoding/json"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"syscall"

	"archload/fem"
	"archload/fem/sparse"
	"archload/mesh"
)

// plateRun is one solve of the model plate, from outline to displacement.
type plateRun struct {
	Nodes    int     `json:"nodes"`
	Mesh     stamp   `json:"mesh"` // triangles and lifting
	Assemble stamp   `json:"assemble"`
	Analyse  stamp   `json:"analyse"`
	Factor   stamp   `json:"factor"`
	Solve    stamp   `json:"solve"`
	Total    stamp   `json:"total"`
	Peak     float64 `json:"peak"` // MB
	Sink     float64 `json:"sink"` // of the middle under 100 N, mm
	NNZ      float64 `json:"nnz"`
}

// solvePlate meshes, assembles, factorises and solves the model plate under 100 N
// on its middle.
func solvePlate(j job) (*plateRun, error) {
	runtime.GOMAXPROCS(j.workers)
	r := &plateRun{}
	var err error
	var plan *mesh.Plan
	var m *fem.Model
	var sys *fem.System
	var a *sparse.Analysis
	var f *sparse.Factor
	steps := []struct {
		time *stamp
		do   func()
	}{
		{&r.Mesh, func() {
			if plan, err = meshed(j.plate); err == nil {
				m, err = carvedOn(plan)
			}
		}},
		{&r.Assemble, func() { sys, err = fem.Assemble(m, j.workers) }},
		{&r.Analyse, func() { a, err = sys.Analyse() }},
		{&r.Factor, func() { f, err = sparse.Factorize(sys.K, a, j.workers) }},
		{&r.Solve, func() { r.Sink = sinkUnder(100, f, m) }},
	}
	for _, s := range steps {
		*s.time = measured(s.do)
		if err != nil {
			return nil, err
		}
		r.Total = plus(r.Total, *s.time)
	}
	r.Nodes, r.Peak, r.NNZ = len(m.Nodes), peakMemory(), a.Stats().NNZ
	return r, nil
}

// sinkUnder presses on the node nearest to the middle, N, and returns its sink, mm.
func sinkUnder(force float64, f *sparse.Factor, m *fem.Model) float64 {
	middle, nearest := 0, math.Inf(1)
	for i := range m.Nodes {
		p := m.Nodes[i].P
		if d := math.Hypot(p[0], p[1]); d < nearest {
			middle, nearest = i, d
		}
	}
	u := make([]float64, block*len(m.Nodes))
	u[block*middle+2] = -force
	f.Solve(u)
	return -u[block*middle+2]
}

// plateOnce starts a process for one plate.
func plateOnce(program string, nodes, workers int) (*plateRun, error) {
	cmd := exec.Command(program, "-plate", strconv.Itoa(nodes), "-workers", strconv.Itoa(workers))
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		return nil, err
	}
	r := &plateRun{}
	return r, json.Unmarshal(out, r)
}

// scale prints how cost grows with the mesh, and falls with the cores.
func (o *options) scale(stdout, stderr io.Writer) error {
	program, err := os.Executable()
	if err != nil {
		return err
	}
	fmt.Fprintf(stdout, "\n### Carved plate from outline to displacement\n\n"+
		"| nodes | cores | mesh, s | assemble, s | order, s | factor, s | solve, s | all, s | all, processor s | peak, MB | sink, mm | exponent |\n"+
		"|---|---|---|---|---|---|---|---|---|---|---|---|\n")
	before := map[int]*plateRun{}
	for _, n := range []int{2000, 10000, 50000, 190000} { // the mesher stops at 400000 triangles
		for workers := 1; workers <= max(2, runtime.NumCPU()) && n <= o.largest; workers *= 2 {
			fmt.Fprintln(stderr, "plate:", n, "nodes,", workers, "cores")
			r, err := plateOften(program, n, workers, min(o.rounds, max(1, 190000/n)))
			if err != nil {
				return fmt.Errorf("plate of %d nodes: %w", n, err)
			}
			r.print(stdout, workers, before[workers])
			before[workers] = r
		}
	}
	return nil
}

// plateOften is the least of several runs, stage by stage.
func plateOften(program string, nodes, workers, rounds int) (*plateRun, error) {
	best, err := plateOnce(program, nodes, workers)
	for k := 1; k < rounds && err == nil; k++ {
		var r *plateRun
		if r, err = plateOnce(program, nodes, workers); err != nil {
			break
		}
		best.Total = stamp{}
		for _, s := range [][2]*stamp{{&best.Mesh, &r.Mesh}, {&best.Assemble, &r.Assemble}, {&best.Analyse, &r.Analyse}, {&best.Factor, &r.Factor}, {&best.Solve, &r.Solve}} {
			*s[0] = least(*s[0], *s[1])
			best.Total = plus(best.Total, *s[0])
		}
		best.Peak = max(best.Peak, r.Peak)
	}
	return best, err
}

// print writes one line; the exponent is that of processor time against nodes
// since the line before.
func (r *plateRun) print(w io.Writer, workers int, before *plateRun) {
	exponent := ""
	if before != nil {
		grown := math.Log(float64(r.Nodes) / float64(before.Nodes))
		exponent = fmt.Sprintf("time %.2f, nonzeros of L %.2f", math.Log(r.Total.CPU/before.Total.CPU)/grown, math.Log(r.NNZ/before.NNZ)/grown)
	}
	fmt.Fprintf(w, "| %d | %d | %.3f | %.3f | %.3f | %.3f | %.4f | %.2f | %.2f | %.0f | %.6f | %s |\n", r.Nodes, workers,
		r.Mesh.Wall, r.Assemble.Wall, r.Analyse.Wall, r.Factor.Wall, r.Solve.Wall, r.Total.Wall, r.Total.CPU, r.Peak, r.Sink, exponent)
}

// wholeRun is one run of `archload solve`.
type wholeRun struct {
	Timing map[string]float64 `json:"timing"` // s, by stage
	time   stamp
	peak   float64 // MB
}

// whole prints the least of several runs of `archload solve course-guitar`.
func (o *options) whole(dir string, stdout, stderr io.Writer) error {
	program := filepath.Join(dir, "archload")
	if out, err := exec.Command("go", "build", "-o", program, "archload/cmd/archload").CombinedOutput(); err != nil {
		return fmt.Errorf("go build: %w\n%s", err, out)
	}
	fmt.Fprintf(stdout, "\n### archload solve course-guitar\n\n| cores | whole process, s | processor, s | peak, MB | stages, s |\n|---|---|---|---|---|\n")
	for cores := 1; cores <= 2; cores++ {
		fmt.Fprintln(stderr, "archload solve course-guitar:", cores, "cores")
		shortest := &wholeRun{time: never(), Timing: map[string]float64{}}
		for range 5 {
			if err := shortest.again(program, cores); err != nil {
				return err
			}
		}
		var stages []string
		for _, s := range []string{"mesh", "assemble", "factor", "condense", "contact", "flow", "total"} {
			stages = append(stages, fmt.Sprintf("%s %.3f", s, shortest.Timing[s]))
		}
		fmt.Fprintf(stdout, "| %d | %.2f | %.2f | %.0f | %s |\n", cores, shortest.time.Wall, shortest.time.CPU, shortest.peak, strings.Join(stages, ", "))
	}
	return nil
}

// again runs the program once more and keeps the least times and the largest memory.
func (w *wholeRun) again(program string, cores int) error {
	cmd := exec.Command(program, "solve", "course-guitar", "--linear", "--json", "-")
	cmd.Env = append(os.Environ(), "GOMAXPROCS="+strconv.Itoa(cores))
	var out []byte
	var err error
	t := measured(func() { out, err = cmd.Output() })
	if err != nil {
		return fmt.Errorf("archload solve: %w", err)
	}
	t.CPU = (cmd.ProcessState.UserTime() + cmd.ProcessState.SystemTime()).Seconds()
	w.time = least(w.time, t)
	if u, ok := cmd.ProcessState.SysUsage().(*syscall.Rusage); ok {
		w.peak = max(w.peak, float64(u.Maxrss)/1e3)
	}
	var run wholeRun
	if err := json.Unmarshal(out, &run); err != nil {
		return fmt.Errorf("archload solve --json: %w", err)
	}
	for name, s := range run.Timing {
		if old, ok := w.Timing[name]; !ok || s < old {
			w.Timing[name] = s
		}
	}
	return nil
}
