// Command speed measures archload's sparse solver against a general library, CHOLMOD
// with OpenBLAS, on the same matrices in the same run, how cost grows with the mesh,
// and `archload solve` as a whole:
//
//	go run ./cmd/internal/speed                 # everything; some ten minutes
//	go run ./cmd/internal/speed -only compare   # or scale, whole, tones
//	go run ./cmd/internal/speed -matrix NAME    # one matrix from NAME.mtx and NAME.xy.mtx
//	go run ./cmd/internal/speed -export NAME -case course-guitar -refine 2.7
//
// The last writes an assembled stiffness in the Matrix Market's format and measures
// nothing. Everything else goes to a folder of its own that is removed in the end.
// The comparison wants gcc and the Debian packages libsuitesparse-dev,
// libopenblas-dev and libarpack2-dev; it installs nothing. Each process runs several times in turn
// with the others and the least time counts: of the processor for one core, of
// the clock for two, which needs a machine with nothing else to do.
package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"strings"
)

// options are the flags of the command.
type options struct {
	only    string
	matrix  string
	export  string
	name    string // of a case
	refine  float64
	nodes   int  // of the model plate to export
	random  bool // values instead of stiffness
	rounds  int
	largest int
	job     job
}

func main() {
	if err := speed(os.Args[1:], os.Stdout, os.Stderr); err != nil {
		fmt.Fprintln(os.Stderr, "speed:", err)
		os.Exit(1)
	}
}

func parse(args []string) (*options, error) {
	o := &options{}
	f := flag.NewFlagSet("speed", flag.ContinueOnError)
	f.StringVar(&o.only, "only", "compare,scale,whole,tones", "what to measure: compare, scale, whole, tones")
	f.StringVar(&o.matrix, "matrix", "", "compare on `NAME`.mtx alone")
	f.StringVar(&o.export, "export", "", "write a stiffness to `NAME`.mtx and measure nothing")
	f.StringVar(&o.name, "case", "", "case to export; without one, the model plate")
	f.Float64Var(&o.refine, "refine", 1, "make the triangles of the case this many times smaller")
	f.IntVar(&o.nodes, "nodes", 10000, "about so many nodes for the model plate to export")
	f.BoolVar(&o.random, "random", false, "export random values on the mesh of the model plate")
	f.IntVar(&o.rounds, "rounds", 3, "how often each process runs")
	f.IntVar(&o.largest, "largest", 190000, "nodes of the largest plate of the scale")
	f.StringVar(&o.job.matrix, "measure", "", "used by the program itself: measure one matrix")
	f.IntVar(&o.job.plate, "plate", 0, "used by the program itself: solve one plate of so many nodes")
	f.StringVar(&o.job.tonesOf, "find", "", "used by the program itself: tones of one matrix and mass")
	f.IntVar(&o.job.tones, "count", 30, "used by the program itself: tones")
	f.IntVar(&o.job.workers, "workers", 1, "used by the program itself: goroutines")
	f.IntVar(&o.job.repeats, "repeats", 3, "used by the program itself: repetitions")
	f.IntVar(&o.job.many, "many", 200, "used by the program itself: right-hand sides at once")
	err := f.Parse(args)
	if err == nil && f.NArg() > 0 {
		err = fmt.Errorf("want flags alone, found %q", f.Args())
	}
	return o, err
}

func speed(args []string, stdout, stderr io.Writer) error {
	o, err := parse(args)
	if errors.Is(err, flag.ErrHelp) {
		return nil
	}
	if err != nil {
		return err
	}
	switch {
	case o.job.matrix != "":
		f, err := measureOurs(o.job)
		return errors.Join(err, json.NewEncoder(stdout).Encode(f))
	case o.job.tonesOf != "":
		r, err := sparseTones(o.job)
		return errors.Join(err, json.NewEncoder(stdout).Encode(r))
	case o.job.plate != 0:
		s, err := solvePlate(o.job)
		return errors.Join(err, json.NewEncoder(stdout).Encode(s))
	case o.export != "":
		return o.exportOne()
	}
	return o.measureAll(stdout, stderr)
}

func (o *options) exportOne() error {
	var p *problem
	var err error
	switch {
	case o.name != "":
		p, err = instrument(os.DirFS("."), o.name, o.refine)
	case o.random:
		p, err = random(o.nodes)
	default:
		p, err = shell(o.nodes)
	}
	if err != nil {
		return err
	}
	return p.save(o.export)
}

func (o *options) measureAll(stdout, stderr io.Writer) error {
	dir, err := os.MkdirTemp("", "archload-speed-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	fmt.Fprintf(stdout, "%s; load average at the beginning %s\n", machine(), busy())
	if strings.Contains(o.only, "compare") {
		if err := o.compareAll(dir, stdout, stderr); err != nil {
			return err
		}
	}
	if strings.Contains(o.only, "scale") && o.matrix == "" {
		if err := o.scale(stdout, stderr); err != nil {
			return err
		}
	}
	if strings.Contains(o.only, "tones") && o.matrix == "" {
		if err := o.tonesAll(dir, stdout, stderr); err != nil {
			return err
		}
	}
	if strings.Contains(o.only, "whole") && o.matrix == "" {
		if err := o.whole(dir, stdout, stderr); err != nil {
			return err
		}
	}
	fmt.Fprintf(stdout, "\nLoad average at the end %s.\n", busy())
	return nil
}

// subjects are the matrices of the comparison.
func (o *options) subjects() []subject {
	if o.matrix != "" {
		return []subject{{name: o.matrix, file: o.matrix, portable: true}}
	}
	var list []subject
	for _, n := range []string{"2000", "10000", "50000"} {
		list = append(list,
			subject{name: "random values on the mesh of a plate, " + n, export: []string{"-nodes", n, "-random"}, portable: n == "10000"},
			subject{name: "carved plate, " + n, export: []string{"-nodes", n}, portable: n == "10000"})
	}
	for _, refine := range []string{"1", "2.7"} {
		list = append(list, subject{name: "course guitar, refined " + refine + " times", export: []string{"-case", "course-guitar", "-refine", refine}})
	}
	return list
}

func (o *options) compareAll(dir string, stdout, stderr io.Writer) error {
	p, err := buildAll(dir)
	if err != nil {
		return err
	}
	for _, s := range o.subjects() {
		fmt.Fprintln(stderr, "comparing:", s.name)
		r, err := compare(s, p, dir, o.rounds)
		if err != nil {
			return fmt.Errorf("%s: %w", s.name, err)
		}
		r.print(stdout)
	}
	return nil
}
