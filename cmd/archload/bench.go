package main

import (
	"io"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"archload/cases"
	"archload/cases/bench"
	"archload/cases/bench/carve"
	"archload/cases/bench/effect"
	"archload/cases/bench/fit"
	"archload/cases/bench/form"
	"archload/cases/bench/hand"
	"archload/cases/design"
	"archload/cases/say"
	"archload/cases/tree"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/viz"
)

func newBench(d *disk.Disk) *cobra.Command {
	o := wanted{disk: d}
	var wood, forCase string
	var blankForm bool
	cmd := &cobra.Command{
		Use:   "bench FILE",
		Short: "Find the constants of one piece of wood from what was measured on it",
		Long: "Read a bench file, what was measured on one piece of wood, and find its constants: weight\n" +
			"and size, the tones of a blank or of a plate at any stage of carving, bars that were tapped,\n" +
			"weights put on with dial gauges beside. The model of the program is fitted to all readings\n" +
			"at once; what is known before is the wood card and how much its species scatters. Told are\n" +
			"the constants with their ranges, what stays unknown, readings that fit nothing, and which\n" +
			"measurement would help most next. docs/bench.md explains the file.\n" +
			"Bundled ones: " + strings.Join(bench.Names(), ", ") + ".\n\n" +
			"With --wood the piece is written as a table [wood.NAME] for a case; or compare, relief and\n" +
			"report take the file with --bench. --for says which answers of a case got surer.",
		Example: "  archload bench spruce-blank\n  archload bench half-3.toml --wood half-3-wood.toml\n  archload bench course-guitar --form\n  archload bench course-top --for course-guitar",
		Args:    takes(1, 1, "one bench file"),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return bench.Names(), cobra.ShellCompDirectiveDefault
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if blankForm {
				return o.writeForm(cmd, args[0])
			}
			r, err := o.fitBench(cmd, args[0], wood)
			if err == nil && forCase != "" {
				r.Effect, err = o.effectOn(cmd, forCase, args[0], r.Report)
			}
			if err != nil {
				return err
			}
			if err := o.deliver(cmd, r, r.text, r.files(filepath.Join(o.dir, fileStem(args[0])))); err != nil || wood == "" {
				return err
			}
			return writeTo(d, wood, cmd.OutOrStdout(), func(w io.Writer) error {
				_, err := io.WriteString(w, r.Table(true))
				return err
			})
		},
	}
	cmd.Flags().StringVar(&o.json, "json", "", "write all results as JSON to `FILE` (\"-\": standard output, in place of the text)")
	cmd.Flags().BoolVar(&blankForm, "form", false, "print the bench file to be filled in for the plate of a CASE, given in place of FILE")
	cmd.Flags().StringVarP(&o.dir, "out", "o", "", "write pictures (PNG and SVG) and tables (CSV) into the folder `DIR`")
	cmd.Flags().StringVar(&forCase, "for", "", "say as well what the readings did to the answers of this `CASE`, its top cut from the piece")
	cmd.Flags().StringVar(&wood, "wood", "", "write the wood as a table [wood.NAME] for a case into `FILE` (\"-\": standard output)")
	return cmd
}

// writeForm prints the form for a case.
func (o *wanted) writeForm(cmd *cobra.Command, arg string) error {
	c, err := openCase(o.disk, arg)
	if err != nil {
		return err
	}
	tell, done := shell.Progress(cmd.ErrOrStderr())
	tell(fileStem(arg) + ": tones")
	text, err := form.Of(cmd.Context(), c, filepath.ToSlash(arg), design.Options{Workers: runtime.NumCPU()})
	done()
	if err != nil {
		return err
	}
	_, err = io.WriteString(cmd.OutOrStdout(), text)
	return err
}

// benched is the answer to a bench file.
type benched struct {
	*fit.Report
	Effect  *effect.Report `json:"effect"`    // on the case of --for; null without one
	Hand    []hand.Row     `json:"stiffness"` // by hand, of a case's plate
	Carving *carve.Report  `json:"carving"`   // null without a [carving]
}

// text prints it.
func (r *benched) text(w io.Writer) error {
	if len(r.Readings)+len(r.Expected) > 0 || r.Carving == nil && len(r.Hand) == 0 {
		if err := say.WritePiece(w, r.Report); err != nil {
			return err
		}
	}
	if len(r.Hand) > 0 {
		if err := say.WriteHand(w, r.Hand); err != nil {
			return err
		}
	}
	if r.Carving != nil {
		if err := say.WriteCarving(w, r.Carving); err != nil {
			return err
		}
	}
	if r.Effect == nil {
		return nil
	}
	return say.WriteEffect(w, r.Effect)
}

// files are its tables.
func (r *benched) files(stem string) []output {
	readings := table{head: []string{"reading", "key", "unit", "pattern", "read", "sd", "fitted", "off_sd"}}
	for _, x := range r.Readings {
		readings.rows = append(readings.rows, row([]string{x.Words, x.Key, x.Unit, x.Pattern}, x.Value, x.SD, float64(x.Fitted), float64(x.Off)))
	}
	var list []output
	if len(r.Readings) > 0 {
		list = append(pictureFiles(stem, viz.PiecePictures(r.Report)), output{stem + "-readings", []string{"csv"}, readings.write})
	}
	if r.Carving == nil {
		return list
	}
	for name, places := range map[string][]carve.Place{"-caliper": r.Carving.Places, "-carving": r.Carving.Map} {
		t := table{head: []string{"x_mm", "y_mm", "now_mm", "target_mm", "take_off_mm"}}
		for _, p := range places {
			t.rows = append(t.rows, row(nil, p.X, p.Y, p.Now, p.Target, p.TakeOff))
		}
		list = append(list, output{stem + name, []string{"csv"}, t.write})
	}
	list = append(list, pictureFiles(stem, viz.CarvingPictures(r.Carving, r.Title))...)
	slices.SortFunc(list, func(a, b output) int { return strings.Compare(a.stem, b.stem) })
	return list
}

// fitBench reads a bench file and fits it, telling its progress.
func (o *wanted) fitBench(cmd *cobra.Command, file, wood string) (*benched, error) {
	tell, done := shell.Progress(cmd.ErrOrStderr())
	defer done()
	f, err := bench.Open(o.disk, filepath.ToSlash(file))
	if err != nil {
		return nil, err
	}
	for _, name := range []string{o.json, wood} {
		if err := spare(o.disk, name); err != nil {
			return nil, err
		}
	}
	say := func(stage string) { tell(fileStem(file) + ": " + stage) }
	r, err := fit.Fit(cmd.Context(), f, fit.Options{Workers: runtime.NumCPU(), Progress: say})
	if err != nil {
		return nil, err
	}
	how := design.Options{Workers: runtime.NumCPU(), Progress: say}
	out := &benched{Report: r, Hand: []hand.Row{}}
	rows, err := hand.Look(cmd.Context(), f, r.Card(), how)
	out.Hand = append(out.Hand, rows...)
	if err != nil || f.Carving == nil {
		return out, err
	}
	out.Carving, err = carve.Look(cmd.Context(), f, r.Card(), how)
	return out, err
}

// benchFlag is the flag of commands whose top may be cut from a piece that was measured.
func (o *wanted) benchFlag(cmd *cobra.Command) {
	cmd.Flags().StringVar(&o.bench, "bench", "", "the top is of the piece that this bench `FILE` measured, with what that leaves open in place of its card's scatter")
}

// cut is a case with its top of the piece that --bench measured, and with some keys changed; the case itself if
// neither is asked for. from names where the keys come from.
func (o *wanted) cut(cmd *cobra.Command, arg string, c *cases.Case, from string, set []tree.KeyValue) (*cases.Case, error) {
	if o.bench != "" {
		if o.piece == nil {
			r, err := o.fitBench(cmd, o.bench, "")
			if err != nil {
				return nil, err
			}
			if len(r.Readings) == 0 {
				return nil, shell.Usagef("--bench: %s has no readings of the wood; want a weight, a tone, a bar or a gauge", o.bench)
			}
			o.piece = r.Report
		}
		set = append(o.piece.Into(c), set...)
	}
	if len(set) == 0 {
		return c, nil
	}
	return cases.OpenChanged(o.disk, filepath.ToSlash(arg), from, set)
}

// effect says what measurements did to a solved design: --bench, and gauges of its own; nil without any.
func (o *wanted) effect(cmd *cobra.Command, arg string, s *design.Solution, now effect.Solved) (*effect.Report, error) {
	c := s.Top.Built.Case
	if o.bench == "" {
		return effect.Of(fileStem(arg), nil, c, now, now), nil
	}
	card := *o
	card.bench, card.piece = "", nil
	by, told, err := card.solveSpread(cmd, arg)
	if err != nil {
		return nil, err
	}
	return effect.Of(fileStem(arg), o.piece, by.Top.Built.Case, told, now), nil
}

// solveSpread is the linear solution of a case, and what is told of it with the ranges of its wood.
func (o *wanted) solveSpread(cmd *cobra.Command, arg string) (*design.Solution, effect.Solved, error) {
	s, err := o.solve(cmd, arg)
	if err != nil {
		return nil, effect.Solved{}, err
	}
	spreads, err := o.spread(cmd, []string{arg}, []*design.Solution{s.linear})
	if err != nil {
		return nil, effect.Solved{}, err
	}
	return s.linear, effect.Solved{Report: s.report, Spread: spreads[0]}, nil
}

// effectOn says what a piece, and gauges of its own, did to the answers of a case.
func (o *wanted) effectOn(cmd *cobra.Command, arg, file string, piece *fit.Report) (*effect.Report, error) {
	if len(piece.Readings) == 0 {
		return nil, shell.Usagef("--for: %s has no readings of the wood; want a weight, a tone, a bar or a gauge", file)
	}
	in := wanted{disk: o.disk, refine: 1, bench: file, piece: piece}
	s, told, err := in.solveSpread(cmd, arg)
	if err != nil {
		return nil, err
	}
	return in.effect(cmd, arg, s, told)
}
