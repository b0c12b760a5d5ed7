package verify

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"math"
	"regexp"
	"strings"
	"sync"

	"archload/cases/verify/movement"
	"archload/cases/verify/piece"
	"archload/cases/verify/problem"
	"archload/cases/verify/sliding"
	"archload/cases/verify/swelling"
	"archload/fem/parallel"
)

// Options steer a run; the zero value runs every check once.
type Options struct {
	Only     string            // regular expression, matched without case against check, quantity and mesh; empty: all
	Refine   bool              // also the coarser and the finer meshes, and the order of convergence
	Workers  int               // goroutines; 0 means 1. The answers do not depend on it
	Progress func(what string) // told what starts; may be nil; called by one goroutine at a time
}

// ErrNothing says that no check matches Options.Only.
var ErrNothing = errors.New("no check matches")

// usual is the finest density that an ordinary run meshes.
const usual = 48

// job is one problem at one mesh density.
type job struct {
	problem string
	at      problem.Density
	got     problem.Readings
	err     error
}

// key tells jobs apart.
type key struct {
	problem string
	at      problem.Density
}

// Run runs the checks and returns a row for each value and mesh, in the order
// of the tables. The error is for what cannot be computed at all; a check that
// misses is a row that does not pass.
func Run(ctx context.Context, o Options) ([]Row, error) {
	checks, err := Tables()
	if err != nil {
		return nil, err
	}
	only, err := regexp.Compile("(?i)" + o.Only)
	if err != nil {
		return nil, fmt.Errorf("pattern %q: %w", o.Only, err)
	}
	p := plan{only: only, refine: o.Refine, problems: problems(), jobs: map[key]*job{}}
	for i := range checks {
		if err := p.add(&checks[i]); err != nil {
			return nil, err
		}
	}
	if len(p.rows) == 0 {
		return nil, fmt.Errorf("%w %q", ErrNothing, o.Only)
	}
	if err := p.run(ctx, o); err != nil {
		return nil, err
	}
	return p.judge()
}

// problems are all problems by the name that the tables use.
func problems() map[string]problem.Problem {
	all := problem.All()
	maps.Copy(all, swelling.All())
	maps.Copy(all, piece.All())
	maps.Copy(all, movement.All())
	maps.Copy(all, sliding.All())
	return all
}

// want is one row to come.
type want struct {
	c       *Check
	at      problem.Density
	allowed float64
	mesh    string
	last    bool // the finest row of its case and kind of mesh
}

// plan is what a run has to do.
type plan struct {
	only     *regexp.Regexp
	refine   bool
	problems map[string]problem.Problem
	jobs     map[key]*job
	order    []*job
	rows     []want
}

// add plans the rows of a case.
func (p *plan) add(c *Check) error {
	of, ok := p.problems[c.Problem]
	if !ok {
		return fmt.Errorf("%s: check %d (%s): problem: there is none called %q", c.file, c.row, c.Name, c.Problem)
	}
	if !of.Meshed {
		p.addRow(want{c: c, allowed: c.Tolerance})
		return nil
	}
	if len(c.Bars) == 0 {
		return fmt.Errorf("%s: check %d (%s): want bars by mesh, found none", c.file, c.row, c.Name)
	}
	for _, shake := range []float64{0, problem.Distortion} {
		p.addMeshed(c, &of, shake)
	}
	return nil
}

// addMeshed plans the rows of a case on one kind of mesh.
func (p *plan) addMeshed(c *Check, of *problem.Problem, shake float64) {
	finest := -1
	for _, b := range c.Bars {
		allowed := b.Regular
		if shake > 0 {
			allowed = b.Distorted
		}
		if allowed == 0 || b.Divisions > usual && !p.refine {
			continue
		}
		at := problem.Density{N: b.Divisions, Shake: shake}
		if p.addRow(want{c: c, at: at, allowed: allowed, mesh: of.Label(at)}) {
			finest = len(p.rows) - 1
		}
	}
	if finest < 0 || !p.refine {
		return
	}
	p.rows[finest].last = true
	for _, n := range of.Steps {
		p.addJob(c.Problem, problem.Density{N: n, Shake: shake})
	}
}

// addRow plans a row if the pattern wants it.
func (p *plan) addRow(w want) bool {
	if !p.only.MatchString(strings.TrimSpace(w.c.Name + ", " + w.c.Quantity + " " + w.mesh)) {
		return false
	}
	p.rows = append(p.rows, w)
	p.addJob(w.c.Problem, w.at)
	return true
}

func (p *plan) addJob(name string, at problem.Density) {
	k := key{name, at}
	if p.jobs[k] == nil {
		p.jobs[k] = &job{problem: name, at: at}
		p.order = append(p.order, p.jobs[k])
	}
}

// run does all jobs. Each fills its own slot, so that the answers do not
// depend on the number of workers.
func (p *plan) run(ctx context.Context, o Options) error {
	var tell sync.Mutex
	parallel.Chunks(o.Workers, len(p.order), 1, func(i, _ int) {
		if ctx.Err() != nil {
			return
		}
		j := p.order[i]
		if o.Progress != nil {
			tell.Lock()
			o.Progress(j.problem)
			tell.Unlock()
		}
		j.got, j.err = p.problems[j.problem].Solve(ctx, j.at)
	})
	if err := ctx.Err(); err != nil {
		return err
	}
	for _, j := range p.order {
		if j.err != nil {
			return fmt.Errorf("check %s: %w", j.problem, j.err)
		}
	}
	return nil
}

// judge makes the rows.
func (p *plan) judge() ([]Row, error) {
	var rows []Row
	for _, w := range p.rows {
		got, err := p.read(w.c, w.at)
		if err != nil {
			return nil, err
		}
		r := w.c.judge(got, w.allowed, w.mesh)
		if w.last {
			if r.Trend, err = p.trend(w.c, w.at.Shake); err != nil {
				return nil, err
			}
			if w.c.Bound == "" {
				r.Order = order(r.Trend)
			}
		}
		rows = append(rows, r)
	}
	return rows, nil
}

// read finds the answer to a case.
func (p *plan) read(c *Check, at problem.Density) (float64, error) {
	got, ok := p.jobs[key{c.Problem, at}].got[c.Read]
	if !ok {
		return 0, fmt.Errorf("%s: check %d (%s): read: the problem %s has no reading %q", c.file, c.row, c.Name, c.Problem, c.Read)
	}
	if math.IsNaN(got) || math.IsInf(got, 0) {
		return 0, fmt.Errorf("%s: check %d (%s): the reading %q of %s is no number", c.file, c.row, c.Name, c.Read, c.Problem)
	}
	return got, nil
}

// trend lists the answers to a case by mesh density.
func (p *plan) trend(c *Check, shake float64) ([]Step, error) {
	of := p.problems[c.Problem]
	var steps []Step
	for _, n := range of.Steps {
		got, err := p.read(c, problem.Density{N: n, Shake: shake})
		if err != nil {
			return nil, err
		}
		steps = append(steps, Step{Mesh: of.Step(n), Got: got, Deviation: c.deviation(got)})
	}
	return steps, nil
}
