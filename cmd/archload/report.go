package main

import (
	"fmt"
	"io"
	"path/filepath"
	"runtime/debug"

	"github.com/spf13/cobra"

	"archload/cases/bench/effect"
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
	o.benchFlag(cmd)
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

// writeReport solves the cases and writes the report.
func (o *wanted) writeReport(cmd *cobra.Command, args []string) error {
	in := report.Input{Names: args, Version: shell.Version(debug.ReadBuildInfo())}
	for _, a := range args {
		sol, rep, err := o.solve(cmd, a)
		if err != nil {
			return err
		}
		in.Solutions, in.Reports = append(in.Solutions, sol), append(in.Reports, rep)
	}
	var err error
	if in.Spreads, err = spread(cmd, args, in.Solutions); err != nil {
		return err
	}
	for i, a := range args {
		e, err := o.effect(cmd, a, in.Solutions[i], effect.Solved{Report: in.Reports[i], Spread: in.Spreads[i]})
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
