package main

import (
	"io"
	"path/filepath"
	"runtime"
	"strings"

	"github.com/spf13/cobra"

	"archload/cases"
	"archload/cases/aging"
	"archload/cases/answer"
	"archload/cases/bench/fit"
	"archload/cases/design"
	"archload/cases/quantity"
	"archload/cases/say"
	"archload/cases/study"
	"archload/cases/tone"

	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/viz"
	"archload/viz/canvas"
)

// wanted is what a command shall compute and where the results go.
type wanted struct {
	disk    *disk.Disk
	json    string      // file, "-" for standard output, or "" for none
	report  string      // file of the report, or "" for none
	onePage bool        // of it: a page for each design
	dir     string      // folder for pictures and tables, or ""
	refine  float64     // 1; how many times smaller the triangles shall be
	motion  bool        // how the top swings stands among the answers, whatever the case says
	bench   string      // file of what was measured on the top's wood, or ""
	piece   *fit.Report // what it says; nil before it is asked
	outlook aging.Outlook
	theory
}

func (o *wanted) flags(cmd *cobra.Command) {
	cmd.Flags().StringVar(&o.json, "json", "", "write all results as JSON to `FILE` (\"-\": standard output, in place of the text)")
	cmd.Flags().StringVarP(&o.dir, "out", "o", "", "write pictures (PNG and SVG) and tables (CSV) into the folder `DIR`")
	cmd.Flags().Float64Var(&o.refine, "refine", 1, "make every triangle this many `TIMES` smaller, to see how much the mesh matters")
}

// motionFlag is the flag of commands whose answers may include how the top swings.
func (o *wanted) motionFlag(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&o.motion, "motion", false, "tones and levels of the strung top among the answers, as with [motion] judged = true; takes longer")
}

// timeFlags are the flags of commands whose answers may include what seasons and years do.
func (o *wanted) timeFlags(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&o.outlook.Seasons, "seasons", false, "what the seasons of [season] do among the answers (without: made at 45 %, winter 25 %, summer 75 %); takes longer")
	cmd.Flags().BoolVar(&o.outlook.Years, "years", false, "what ten and fifty years under the strings do among the answers; takes longer")
}

// lookAhead puts seasons and years among the answers of a solved case, if that is asked for.
func (o *wanted) lookAhead(cmd *cobra.Command, r *answer.Report, t *design.Top, how design.Options) error {
	if !o.outlook.Asked() {
		return nil
	}
	how.Say("seasons and years")
	how.Progress = nil
	l := o.outlook
	l.SecondOrder = o.isSecond()
	return l.AddTo(cmd.Context(), r, t, how)
}

// ahead is what finds the linear numbers of seasons and years; nil where they are not asked for.
func (o *wanted) ahead() study.Ahead {
	if !o.outlook.Asked() {
		return nil
	}
	l := o.outlook
	l.SecondOrder = false
	return l.AddTo
}

// check refuses a refinement that no machine or no plate can bear.
func (o *wanted) check() error {
	if !(o.refine >= 0.25 && o.refine <= 8) {
		return shell.Usagef("--refine: want 0.25 to 8, found %g", o.refine)
	}
	return nil
}

// deliver writes the JSON, the text and the files that were asked for.
func (o *wanted) deliver(cmd *cobra.Command, v any, text func(io.Writer) error, files []output) error {
	out := cmd.OutOrStdout()
	if o.json != "" {
		if err := writeTo(o.disk, o.json, out, jsonOf(v)); err != nil {
			return err
		}
	}
	if o.json == "-" {
		out = io.Discard
	}
	if err := text(out); err != nil {
		return err
	}
	if o.dir == "" {
		return nil
	}
	return writeAll(cmd, o.disk, out, files)
}

func newSolve(d *disk.Disk) *cobra.Command {
	o, edge := wanted{disk: d}, false
	cmd := &cobra.Command{
		Use:   "solve CASE",
		Short: "Solve one case and say what it does",
		Long: "Solve one case and print a summary in a maker's words: what sinks, where the foot\n" +
			"presses, what carries the load, how much strength is used, how far to trust it.\n" +
			"The forces act on the shape as it has moved (second order); where the linear numbers, on\n" +
			"the shape as carved, differ by more than 1 %, they stand beside. With --linear they stand\n" +
			"alone. With --times the case bears more or less.\n" +
			"With --edge it says too what the making of sides, lining and back leaves open.",
		Example:           "  archload solve first\n  archload solve mine/mine.toml -o pictures --json mine.json\n  archload solve mine/mine.toml --times 2",
		Args:              takes(1, 1, "one case"),
		ValidArgsFunction: completeCases,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := o.theory.check(cmd); err != nil {
				return err
			}
			return o.runSolve(cmd, args, edge)
		},
	}
	o.flags(cmd)
	o.motionFlag(cmd)
	o.timeFlags(cmd)
	o.theory.flags(cmd)
	cmd.Flags().BoolVar(&edge, "edge", false, "say too what the making of sides, lining and back leaves open of the numbers")
	return cmd
}

// runSolve is the command.
func (o *wanted) runSolve(cmd *cobra.Command, args []string, edge bool) error {
	s, err := o.solve(cmd, args[0])
	if err != nil {
		return err
	}
	if edge {
		tell, done := shell.Progress(cmd.ErrOrStderr())
		tell(fileStem(args[0]) + ": range by the edge")
		s.report.Error.Edge, err = study.EdgeRanges(cmd.Context(), s.linear, design.Options{Workers: runtime.NumCPU()})
		done()
		if err != nil {
			return err
		}
	}
	files := resultFiles(filepath.Join(o.dir, fileStem(args[0])), s.shown, s.report)
	if s.moved != nil {
		err = o.deliver(cmd, s.moved, func(w io.Writer) error { return say.WriteMoved(w, s.moved) }, files)
	} else {
		err = o.deliver(cmd, s.report, func(w io.Writer) error { return say.WriteSummary(w, s.report) }, files)
	}
	if err != nil {
		return err
	}
	return checked(args, s.report)
}

// solveCase solves an opened case, telling its progress under a name.
func (o *wanted) solveCase(cmd *cobra.Command, name string, c *cases.Case) (*design.Solution, *answer.Report, error) {
	o.judge(c)
	tell, done := shell.Progress(cmd.ErrOrStderr())
	defer done()
	how := o.options(fileStem(name), tell)
	sol, err := design.Solve(cmd.Context(), c, how)
	if err != nil {
		return nil, nil, err
	}
	r := quantity.Summarize(sol)
	how.Say("how it swings")
	tone.Judge(r, sol, how.WorkerCount())
	return sol, r, o.lookAhead(cmd, r, sol.Top, how)
}

// judge has how the top swings stand among the answers of a case, if that is asked for.
func (o *wanted) judge(c *cases.Case) {
	if o.motion {
		judged := c.Moving()
		judged.Judged = true
		c.Motion = &judged
	}
}

// checked turns failed built-in checks of the named cases into the error that
// sets the exit code.
func checked(names []string, reports ...*answer.Report) error {
	var bad []string
	for i, rep := range reports {
		for _, what := range rep.Error.Failed() {
			bad = append(bad, what+" of "+names[i])
		}
	}
	if len(bad) > 0 {
		return shell.CheckError{What: strings.Join(bad, ", ")}
	}
	return nil
}

// resultFiles lists the pictures and tables of one solved case.
func resultFiles(stem string, sol *design.Solution, rep *answer.Report) []output {
	return append(pictureFiles(stem, viz.Pictures(sol, rep)), tableFiles(stem, rep)...)
}

func pictureFiles(stem string, pages []viz.Page) []output {
	var out []output
	for _, p := range pages {
		out = append(out, output{stem + "-" + p.Name, canvas.Formats(), p.Write})
	}
	return out
}
