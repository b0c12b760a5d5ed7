package main

import (
	"io"
	"path/filepath"
	"runtime/debug"
	"strings"

	"github.com/spf13/cobra"

	"archload/cases"
	"archload/cases/aging"
	"archload/cases/design"
	"archload/cases/say"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/viz"
	"archload/viz/report"
)

func newYears(d *disk.Disk) *cobra.Command {
	o := wanted{disk: d}
	var at string
	var second bool
	cmd := &cobra.Command{
		Use:   "years CASE",
		Short: "Say what the strings do to a design over the years: sink, action, foot, strength",
		Long: "Let a design stand under its strings and loads, with wood that creeps as its cards say, and\n" +
			"tell for each age how far it has sunk, how the action has changed, how the foot stands, and\n" +
			"how much is used of the strength that a load of such duration leaves: each with its range.\n" +
			"If the case has a table [season] it begins in the air in which the top was made, and says\n" +
			"which season with which age asks most of it. With --second-order each age finds its\n" +
			"equilibrium on the shape as it has moved, with the linear numbers beside.",
		Example:           "  archload years course-guitar-relief\n  archload years mine/mine.toml --at 1d,1y,10y,50y --json -",
		Args:              takes(1, 1, "one case"),
		ValidArgsFunction: completeCases,
		RunE: func(cmd *cobra.Command, args []string) error {
			ages, err := aging.Ages(at)
			if err != nil {
				return shell.Usagef("--at: %v", err)
			}
			rep, err := withCase(&o, cmd, args[0], func(c *cases.Case, opts design.Options) (*aging.YearsReport, error) {
				return aging.Years(cmd.Context(), c, aging.Wish{Ages: ages, SecondOrder: second}, opts)
			})
			err = o.givesWay(err)
			if err != nil {
				return err
			}
			stem := filepath.Join(o.dir, fileStem(args[0]))
			files := append(pictureFiles(stem, []viz.Page{viz.YearsPicture(rep)}), output{stem + "-years", []string{"csv"}, yearTable(rep).write}, timePage(stem+"-years", rep, report.WriteYears))
			if err := o.deliver(cmd, rep, func(w io.Writer) error { return say.WriteYears(w, rep) }, files); err != nil {
				return err
			}
			if bad := rep.Failed(); len(bad) > 0 {
				return shell.CheckError{What: strings.Join(bad, ", ")}
			}
			return nil
		},
	}
	o.flags(cmd)
	cmd.Flags().BoolVar(&second, "second-order", false, "find each age's equilibrium on the shape as it has moved")
	cmd.Flags().StringVar(&at, "at", "1d,1y,10y,50y", "ages since the strings came on: s, h, d, w, m, y")
	return cmd
}

// yearTable lists the ages with their numbers.
func yearTable(r *aging.YearsReport) table {
	t := table{head: []string{"age", "years", "sink_low_mm", "sink_mm", "sink_high_mm", "action_low_mm", "action_mm", "action_high_mm",
		"gap_left_low_mm", "gap_left_mm", "gap_left_high_mm", "share_middle_low", "share_middle", "share_middle_high",
		"strength_left", "used_low", "used", "used_high"}}
	for _, a := range append([]aging.AgeReport{r.Strung}, r.Years...) {
		values := []float64{a.Years}
		for _, v := range []aging.Range{a.Sink, a.Action, a.GapLeft, a.Middle} {
			values = append(values, float64(v.Low), float64(v.Mid), float64(v.High))
		}
		u := a.Strength.Used
		t.rows = append(t.rows, row([]string{a.At}, append(values, float64(a.Strength.Left), float64(u.Low), float64(u.Mid), float64(u.High))...))
	}
	return t
}

// timePage is the page of seasons or years to print.
func timePage[R any](stem string, r R, write func(w io.Writer, r R, version string) error) output {
	return output{stem, []string{"html"}, func(w io.Writer, _ string) error {
		return write(w, r, shell.Version(debug.ReadBuildInfo()))
	}}
}
