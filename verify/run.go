package verify

import (
	"context"
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"sync"
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

// readings are what a solved problem says, by the name of the reading.
type readings map[string]float64

// job is one problem at one mesh density.
type job struct {
	check string
	at    density
	got   readings
	err   error
}

// key tells jobs apart.
type key struct {
	check string
	at    density
}

// Run runs the checks and returns a row for each value and mesh, in the order
// of the tables. The error is for what cannot be computed at all; a check that
// misses is a row that does not pass.
func Run(ctx context.Context, o Options) ([]Row, error) {
	cases, err := Tables()
	if err != nil {
		return nil, err
	}
	only, err := regexp.Compile("(?i)" + o.Only)
	if err != nil {
		return nil, fmt.Errorf("pattern %q: %w", o.Only, err)
	}
	p := plan{only: only, refine: o.Refine, problems: problems(), jobs: map[key]*job{}}
	for i := range cases {
		if err := p.add(&cases[i]); err != nil {
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

// want is one row to come.
type want struct {
	c       *Case
	at      density
	allowed float64
	mesh    string
	last    bool // the finest row of its case and kind of mesh
}

// plan is what a run has to do.
type plan struct {
	only     *regexp.Regexp
	refine   bool
	problems map[string]check
	jobs     map[key]*job
	order    []*job
	rows     []want
}

// add plans the rows of a case.
func (p *plan) add(c *Case) error {
	check, ok := p.problems[c.Check]
	if !ok {
		return fmt.Errorf("%s: case %d (%s): check: there is no problem %q", c.file, c.row, c.Name, c.Check)
	}
	if check.meshed == nil {
		p.addRow(want{c: c, allowed: c.Tolerance})
		return nil
	}
	if len(c.Bars) == 0 {
		return fmt.Errorf("%s: case %d (%s): want bars by mesh, found none", c.file, c.row, c.Name)
	}
	for _, shake := range []float64{0, distortion} {
		p.addMeshed(c, &check, shake)
	}
	return nil
}

// addMeshed plans the rows of a case on one kind of mesh.
func (p *plan) addMeshed(c *Case, check *check, shake float64) {
	finest := -1
	for _, b := range c.Bars {
		allowed := b.Regular
		if shake > 0 {
			allowed = b.Distorted
		}
		if allowed == 0 || b.Divisions > usual && !p.refine {
			continue
		}
		if p.addRow(want{c: c, at: density{b.Divisions, shake}, allowed: allowed, mesh: check.label(b.Divisions, shake)}) {
			finest = len(p.rows) - 1
		}
	}
	if finest < 0 || !p.refine {
		return
	}
	p.rows[finest].last = true
	for _, n := range check.steps {
		p.addJob(c.Check, density{n, shake})
	}
}

// addRow plans a row if the pattern wants it.
func (p *plan) addRow(w want) bool {
	if !p.only.MatchString(strings.TrimSpace(w.c.Name + ", " + w.c.Quantity + " " + w.mesh)) {
		return false
	}
	p.rows = append(p.rows, w)
	p.addJob(w.c.Check, w.at)
	return true
}

func (p *plan) addJob(check string, at density) {
	k := key{check, at}
	if p.jobs[k] == nil {
		p.jobs[k] = &job{check: check, at: at}
		p.order = append(p.order, p.jobs[k])
	}
}

// run does all jobs. Each fills its own slot, so that the answers do not
// depend on the number of workers.
func (p *plan) run(ctx context.Context, o Options) error {
	left := slices.Clone(p.order)
	var mu sync.Mutex
	next := func() *job {
		mu.Lock()
		defer mu.Unlock()
		if len(left) == 0 || ctx.Err() != nil {
			return nil
		}
		j := left[0]
		left = left[1:]
		if o.Progress != nil {
			o.Progress(j.check)
		}
		return j
	}
	var wg sync.WaitGroup
	for range max(1, o.Workers) {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for j := next(); j != nil; j = next() {
				j.do(ctx, p.problems[j.check])
			}
		}()
	}
	wg.Wait()
	if err := ctx.Err(); err != nil {
		return err
	}
	for _, j := range p.order {
		if j.err != nil {
			return fmt.Errorf("check %s: %w", j.check, j.err)
		}
	}
	return nil
}

func (j *job) do(ctx context.Context, c check) {
	if c.meshed != nil {
		j.got, j.err = c.meshed(ctx, j.at)
		return
	}
	j.got, j.err = c.single(ctx)
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
			if r.Trend, err = p.trend(w.c, w.at.shake); err != nil {
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
func (p *plan) read(c *Case, at density) (float64, error) {
	got, ok := p.jobs[key{c.Check, at}].got[c.Read]
	if !ok {
		return 0, fmt.Errorf("%s: case %d (%s): read: the problem %s has no reading %q", c.file, c.row, c.Name, c.Check, c.Read)
	}
	if math.IsNaN(got) || math.IsInf(got, 0) {
		return 0, fmt.Errorf("%s: case %d (%s): the reading %q of %s is no number", c.file, c.row, c.Name, c.Read, c.Check)
	}
	return got, nil
}

// trend lists the answers to a case by mesh density.
func (p *plan) trend(c *Case, shake float64) ([]Step, error) {
	check := p.problems[c.Check]
	var steps []Step
	for _, n := range check.steps {
		got, err := p.read(c, density{n, shake})
		if err != nil {
			return nil, err
		}
		steps = append(steps, Step{Mesh: check.step(n), Got: got, Deviation: c.deviation(got)})
	}
	return steps, nil
}
