package main

import (
	"cmp"
	"fmt"
	"runtime"
	"time"

	"github.com/spf13/cobra"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/stability"
	"archload/cases/tone"
	"archload/cmd/internal/shell"
)

// secondByDefault says whether answers are those on the moved shape where the user does not say.
const secondByDefault = true

// theory is how an answer takes the movement of the shape, and how much of the load acts.
type theory struct {
	second, linear bool
	times          float64
}

func (t *theory) flags(cmd *cobra.Command) {
	t.timesFlag(cmd)
	t.orderFlags(cmd)
}

// orderFlags are those of a command whose load is the case's.
func (t *theory) orderFlags(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&t.second, "second-order", false, "find the equilibrium on the shape as it has moved, with the linear numbers beside (the default)")
	cmd.Flags().BoolVar(&t.linear, "linear", false, "take the forces on the shape as carved: sooner, and a few percent stiffer")
}

func (t *theory) timesFlag(cmd *cobra.Command) {
	cmd.Flags().Float64Var(&t.times, "times", 1, "let every string, weight and force of the case act `N` times as strongly")
}

// isSecond says whether the moved shape is asked for.
func (t *theory) isSecond() bool { return t.second || secondByDefault && !t.linear }

// load is how many times the case's load acts.
func (t *theory) load() float64 { return cmp.Or(t.times, 1) }

// check refuses both theories at once, and a load that says nothing.
func (t *theory) check(cmd *cobra.Command) error {
	if t.second && t.linear {
		return shell.Usagef("--second-order: want it or --linear, found both")
	}
	if cmd.Flags().Changed("times") && !(t.times >= 0.01 && t.times <= 100) {
		return shell.Usagef("--times: want 0.01 to 100, found %g", t.times)
	}
	return nil
}

// options are those of a solve, which tell the stages of a named case.
func (o *wanted) options(name string, tell func(string)) design.Options {
	return design.Options{Workers: runtime.NumCPU(), Refine: o.refine, Clock: time.Now,
		Progress: func(stage string) { tell(name + ": " + stage) }}
}

// solveMoved solves an opened case on its moved shape, telling its progress under a name.
func (o *wanted) solveMoved(cmd *cobra.Command, name string, c *cases.Case) (*stability.Solution, *stability.Report, error) {
	o.judge(c)
	tell, done := shell.Progress(cmd.ErrOrStderr())
	defer done()
	how := o.options(fileStem(name), tell)
	sol, err := stability.Solve(cmd.Context(), c, how)
	if err != nil {
		return nil, nil, o.givesWay(err)
	}
	r := stability.Summarize(sol, o.load())
	how.Say("how it swings")
	tone.Judge(r.Report, sol.Linear, how.WorkerCount()) // small movements about the linear state
	return sol, r, o.lookAhead(cmd, r.Report, sol.Top, how)
}

// solved is an answer by one theory or the other.
type solved struct {
	shown, linear *design.Solution // the same one by linear theory
	report        *answer.Report   // of the one shown
	moved         *stability.Report
}

// either solves an opened case by the theory that is asked for.
func (o *wanted) either(cmd *cobra.Command, name string, c *cases.Case) (*solved, error) {
	if !o.isSecond() {
		sol, rep, err := o.solveCase(cmd, name, c)
		return &solved{sol, sol, rep, nil}, err
	}
	sol, rep, err := o.solveMoved(cmd, name, c)
	if err != nil {
		return nil, err
	}
	return &solved{sol.Solution, sol.Linear, rep.Report, rep}, nil
}

// solve opens a case and solves it by the theory that is asked for.
func (o *wanted) solve(cmd *cobra.Command, name string) (*solved, error) {
	c, err := o.open(cmd, name)
	if err != nil {
		return nil, err
	}
	return o.either(cmd, name, c)
}

// givesWay says in terms of the case's own load where no equilibrium was found.
func (o *wanted) givesWay(err error) error {
	if stability.ChangeGivesWay(err) {
		return fmt.Errorf("%w; without --second-order there are the numbers on the shape as carved", err)
	}
	share, is := stability.GivesWay(err)
	if !is {
		return err
	}
	return fmt.Errorf("the top finds no equilibrium on its moved shape beyond %.3g times the load of the case: there it gives way; --linear has the numbers on the shape as carved", share*o.load())
}
