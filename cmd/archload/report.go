package main

import (
	"fmt"
	"io"
	"path/filepath"
	"runtime/debug"

	"github.com/spf13/cobra"

	"archload/cases/bench/effect"
	"archload/cases/design"
	"archload/cases/stability"
	"archload/cases/study"

	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/viz/report"
)

// mostCases is how many designs one report can show.
const mostCases = 8

func newReport(d *disk.Disk) *cobra.Command {
	o := wanted{disk: d}
	cmd := &cobra.Command{
		Use:   "report CASE [CASE...]",
		Short: "Solve one case or several and write a report to read, keep and print",
		Long: "Solve one case, or up to eight side by side, and write one HTML file that needs nothing\n" +
			"else: the answers in plain words with how sure each is, pictures, tables, where the load\n" +
			"goes, checks, what is left out, and the case itself. Open it in any browser; it prints on\n" +
			"A4 and Letter paper. Gauges that the case says were read, and with --bench what was measured\n" +
			"on the top's wood, narrow the ranges; the report says which. With --one-page it is a page for\n" +
			"each design, for a customer: the answers, two pictures, the measures, what deserves a second look.",
		Example: "  archload report course-guitar-relief\n  archload report first course-guitar --out two-tops.html\n" +
			"  archload report mine/mine.toml --one-page --out for-the-customer.html\n  archload report course-guitar --bench course-top",
		Args:              takes(1, mostCases, fmt.Sprintf("1 to %d cases", mostCases)),
		ValidArgsFunction: completeCases,
		RunE: func(cmd *cobra.Command, args []string) error {
			if o.report == "" {
				o.report = reportName(args)
			}
			return o.writeReport(cmd, args)
		},
	}
	cmd.Flags().StringVarP(&o.report, "out", "o", "", "write the report to `FILE` (\"-\": standard output; default: NAME-report.html here)")
	o.motionFlag(cmd)
	o.timeFlags(cmd)
	o.benchFlag(cmd)
	o.theory.flags(cmd)
	cmd.Flags().BoolVar(&o.onePage, "one-page", false, "a page for each design, for a customer, in place of the whole report")
	cmd.Flags().Float64Var(&o.refine, "refine", 1, "make every triangle this many `TIMES` smaller, to see how much the mesh matters")
	return cmd
}

// reportName is the file of a report that was given no name.
func reportName(args []string) string {
	if len(args) == 1 {
		return fileStem(args[0]) + "-report.html"
	}
	return "report.html"
}

// standing solves a case, and finds how far it is from giving way.
func (o *wanted) standing(cmd *cobra.Command, name string) (*solved, *stability.Stands, error) {
	s, err := o.solve(cmd, name)
	if err != nil {
		return nil, nil, err
	}
	tell, done := shell.Progress(cmd.ErrOrStderr())
	defer done()
	tell(fileStem(name) + ": stability")
	g, err := stability.FindOn(cmd.Context(), s.linear, 1)
	if err != nil {
		return nil, nil, err
	}
	return s, &stability.Stands{Moved: s.moved, Giving: stability.SummarizeGiving(g, o.load()), Shape: g}, nil
}

// writeReport solves the cases and writes the report.
func (o *wanted) writeReport(cmd *cobra.Command, args []string) error {
	if err := o.theory.check(cmd); err != nil {
		return err
	}
	in := report.Input{Names: args, Version: shell.Version(debug.ReadBuildInfo())}
	var linear []*design.Solution
	for _, a := range args {
		s, stands, err := o.standing(cmd, a)
		if err != nil {
			return ofCase(a, err)
		}
		linear = append(linear, s.linear)
		in.Solutions, in.Reports, in.Stands = append(in.Solutions, s.shown), append(in.Reports, s.report), append(in.Stands, stands)
	}
	var err error
	if in.Spreads, err = o.spread(cmd, args, linear); err != nil {
		return err
	}
	for i, a := range args {
		e, err := o.effect(cmd, a, linear[i], effect.Solved{Report: in.Reports[i], Spread: in.Spreads[i]})
		if err != nil {
			return err
		}
		in.Effects = append(in.Effects, e)
	}
	if len(args) > 1 {
		in.Comparison = study.CompareRanged(args, in.Solutions, in.Reports, in.Spreads)
	}
	if err := disk.Make(filepath.Dir(o.report)); err != nil {
		return err
	}
	write := report.Write
	if o.onePage {
		write = report.WritePage
	}
	tell, done := shell.Progress(cmd.ErrOrStderr())
	if o.report != "-" {
		tell("writing " + o.report)
	}
	err = writeTo(o.disk, o.report, cmd.OutOrStdout(), func(w io.Writer) error { return write(w, in) })
	done()
	if err != nil {
		return err
	}
	if o.report != "-" {
		if _, err := fmt.Fprintf(cmd.OutOrStdout(), "wrote %s\n", o.report); err != nil {
			return err
		}
	}
	return checked(args, in.Reports...)
}
