package main

import (
	"io"
	"math"
	"path/filepath"
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

func newSeasons(d *disk.Disk) *cobra.Command {
	o, cycle, second := wanted{disk: d}, false, false
	cmd := &cobra.Command{
		Use:   "seasons CASE",
		Short: "Say what moisture does to a design: arch, action, fit of the foot, stress",
		Long: "Take a design from the air in which it was made to that of each season of its table\n" +
			"[season], with the strings on, and say how the arch moves, how the action changes, where\n" +
			"the foot still bears, and what pulls across the grain and at the braces' glue. With --cycle\n" +
			"the seasons follow each other, so that what has slid in one stands so in the next.\n" +
			"With --second-order each season finds its equilibrium on the shape as it has moved, contact\n" +
			"and friction going on from the made state as a solve has it, with the linear numbers beside.",
		Example:           "  archload seasons course-guitar-seasons\n  archload seasons mine/mine.toml --json -",
		Args:              takes(1, 1, "one case"),
		ValidArgsFunction: completeCases,
		RunE: func(cmd *cobra.Command, args []string) error {
			rep, err := withCase(&o, cmd, args[0], func(c *cases.Case, opts design.Options) (*aging.SeasonsReport, error) {
				if cycle && c.Season != nil && len(c.Season.To) > 0 {
					year := *c.Season
					year.Cycle, c.Season = true, &year
				}
				return aging.Seasons(cmd.Context(), c, aging.Wish{SecondOrder: second}, opts)
			})
			if err = o.givesWay(err); err != nil {
				return err
			}
			stem := filepath.Join(o.dir, fileStem(args[0]))
			files := append(pictureFiles(stem, viz.SeasonPictures(rep)), output{stem + "-seasons", []string{"csv"}, seasonTable(rep).write}, timePage(stem+"-seasons", rep, report.WriteSeasons))
			if err := o.deliver(cmd, rep, func(w io.Writer) error { return say.WriteSeasons(w, rep) }, files); err != nil {
				return err
			}
			if bad := rep.Failed(); len(bad) > 0 {
				return shell.CheckError{What: strings.Join(bad, ", ")}
			}
			return nil
		},
	}
	o.flags(cmd)
	cmd.Flags().BoolVar(&second, "second-order", false, "find each season's equilibrium on the shape as it has moved, with the linear numbers beside")
	cmd.Flags().BoolVar(&cycle, "cycle", false, "let the seasons follow each other and end in the made air again, as with [season] cycle = true")
	return cmd
}

// seasonTable lists the seasons with their numbers.
func seasonTable(r *aging.SeasonsReport) table {
	t := table{head: []string{"season", "humidity_percent", "temperature_C", "moisture_percent", "change_outer", "change_inner", "arch_rise_mm",
		"action_change_mm", "bridge_sink_mm", "share_bass_end", "share_middle", "share_treble_end", "gap_left_mm", "across_used", "strength_used"}}
	for i := range r.Seasons {
		s := &r.Seasons[i]
		values := []float64{float64(s.Humidity), float64(s.Temperature), float64(s.Moisture), s.Change.Outer, s.Change.Inner, s.ArchRise}
		if b := s.Bridge; b != nil {
			values = append(values, b.ActionChange, b.Sink, b.Share.BassEnd, b.Share.Middle, b.Share.TrebleEnd, b.GapLeft)
		} else {
			values = append(values, missing(6)...)
		}
		t.rows = append(t.rows, row([]string{s.Name}, append(values, float64(s.Across.Used), float64(s.Strength.Used))...))
	}
	return t
}

// missing are so many numbers that cannot be had.
func missing(n int) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = math.NaN()
	}
	return out
}
