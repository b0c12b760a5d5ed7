package main

import (
	"io"
	"path/filepath"

	"github.com/spf13/cobra"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/say"
	"archload/cases/stability"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/viz"
)

// mostFactors is how many factors may be asked for.
const mostFactors = 40

func newStability(d *disk.Disk) *cobra.Command {
	o := wanted{disk: d}
	var count int
	var path bool
	cmd := &cobra.Command{
		Use:   "stability CASE",
		Short: "Find at how many times its load the top would give way",
		Long: "Find the lowest factors on the strings' load (or on the loads of a bare plate) at which the\n" +
			"top would lose its stability: linear theory about the contact at full load, none missing.\n" +
			"It is an indication: a top that bends on its way gives way before, and --path says when.",
		Example:           "  archload stability course-guitar\n  archload stability mine/mine.toml --count 6 --json mine.json",
		Args:              takes(1, 1, "one case"),
		ValidArgsFunction: completeCases,
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := o.theory.check(cmd); err != nil {
				return err
			}
			if count < 1 || count > mostFactors {
				return shell.Usagef("--count: want 1 to %d, found %d", mostFactors, count)
			}
			g, rep, err := o.givingWay(cmd, args[0], count, path)
			if err != nil {
				return err
			}
			files := pictureFiles(filepath.Join(o.dir, fileStem(args[0])), viz.GivingPictures(g, rep))
			return o.deliver(cmd, rep, func(w io.Writer) error { return say.WriteGiving(w, rep) }, files)
		},
	}
	o.flags(cmd)
	cmd.Flags().Lookup("out").Usage = "write pictures of the shapes (PNG and SVG) into the folder `DIR`"
	cmd.Flags().IntVar(&count, "count", 3, "how many factors to find, lowest first")
	cmd.Flags().BoolVar(&path, "path", false, "follow the load on the moved shape until the top gives way (tens of seconds)")
	o.timesFlag(cmd)
	return cmd
}

// givingWay loads a case and finds its factors, telling its progress.
func (o *wanted) givingWay(cmd *cobra.Command, arg string, count int, path bool) (*stability.Giving, *stability.GivingReport, error) {
	var g *stability.Giving
	rep, err := withCase(o, cmd, arg, func(c *cases.Case, how design.Options) (*stability.GivingReport, error) {
		var err error
		if g, err = stability.Find(cmd.Context(), c, count, how); err != nil {
			return nil, err
		}
		rep := stability.SummarizeGiving(g, o.load())
		if !path {
			return rep, nil
		}
		how.Say("path on the moved shape")
		raised, err := stability.Raise(cmd.Context(), g.Linear, g.Far())
		if err != nil {
			return nil, err
		}
		rep.AddPath(raised)
		return rep, nil
	})
	return g, rep, err
}
