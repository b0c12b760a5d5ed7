package main

import (
	"errors"
	"io"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/say"
	"archload/cases/stability"
	"archload/cases/study"
	"archload/cases/tree"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/viz"
	"archload/viz/sheet"
)

// mostDepths is how many depths one trial may take.
const mostDepths = 1000

// reliefFlags is what the command relief is asked for.
type reliefFlags struct {
	wanted
	depths, shapes, depth, paper string
}

func newRelief(d *disk.Disk) *cobra.Command {
	o := reliefFlags{wanted: wanted{disk: d}}
	cmd := &cobra.Command{
		Use:   "relief CASE",
		Short: "Try how much wood to take from under the middle of the foot, before cutting",
		Long: "Try reliefs of the foot on one top: how the ends and the middle share the load, when the\n" +
			"middle touches and closes, what gap is left, how hard the foot presses, what the bridge\n" +
			"sinks and how the top bends under it. The top is solved once, so that hundreds of depths\n" +
			"cost little more than one.\n\n" +
			"For the case's own relief, or the one of --depth, it says what to take off and how to\n" +
			"check it; with -o it draws that as a bench sheet in true size.",
		Example: "  archload relief course-guitar-relief\n" +
			"  archload relief course-guitar --depths \"0..0.012 by 0.001 in\" --shapes parabola,flat --depth 0.1 -o bench",
		Args:              takes(1, 1, "one case"),
		ValidArgsFunction: completeCases,
		RunE:              func(cmd *cobra.Command, args []string) error { return o.run(cmd, args[0]) },
	}
	o.flags(cmd)
	o.orderFlags(cmd)
	o.benchFlag(cmd)
	cmd.Flags().StringVar(&o.depths, "depths", "0..0.3 by 0.02", "try these `DEPTHS` in mm: a range, or a list [0, 0.05, 0.12]")
	cmd.Flags().StringVar(&o.shapes, "shapes", "", "try these `SHAPES`, commas between: "+strings.Join(study.Shapes(), ", ")+" (default: the case's own)")
	cmd.Flags().StringVar(&o.depth, "depth", "", "make the bench sheet for this `DEPTH` in the first shape (default: the case's own relief)")
	cmd.Flags().StringVar(&o.paper, "paper", string(sheet.A4), "`PAPER` of the bench sheet: a4, letter, or roll")
	return cmd
}

func (o *reliefFlags) run(cmd *cobra.Command, arg string) error {
	if err := errors.Join(checkPaper(o.paper), o.theory.check(cmd)); err != nil {
		return err
	}
	c, err := o.open(cmd, arg)
	if err != nil {
		return err
	}
	tell, done := shell.Progress(cmd.ErrOrStderr())
	defer done()
	if c.Bridge == nil {
		return c.Fault("bridge", "a relief lies under a bridge; want the tables [bridge] and [strings]")
	}
	opt, err := o.options(c)
	if err != nil {
		return err
	}
	sheetCase, err := o.admit(cmd, c, arg, opt)
	if err != nil {
		return err
	}
	p, err := design.Prepare(cmd.Context(), c, design.Options{Workers: runtime.NumCPU(), Refine: o.refine,
		Progress: func(stage string) { tell(fileStem(arg) + ": " + stage) }})
	if err == nil {
		tell(fileStem(arg) + ": reliefs")
	}
	var t *study.Trial
	if err == nil {
		t, err = o.try(cmd, p, opt)
	}
	done()
	if err != nil {
		return err
	}
	t.Command = o.again(arg)
	if err := o.deliver(cmd, t, func(w io.Writer) error { return say.WriteTrial(w, t) }, o.files(arg, sheetCase, t)); err != nil {
		return err
	}
	if bad := t.Failed(); len(bad) > 0 {
		return shell.CheckError{What: strings.Join(bad, ", ")}
	}
	return nil
}

// try tries the reliefs by the theory that is asked for.
func (o *reliefFlags) try(cmd *cobra.Command, top *design.Top, opt study.TrialOptions) (*study.Trial, error) {
	if !o.isSecond() {
		return study.Try(cmd.Context(), top, opt)
	}
	t, err := stability.Try(cmd.Context(), top, opt)
	return t, o.givesWay(err)
}

// again is the command line without a depth, for the next run; none once the
// bench sheet is drawn.
func (o *reliefFlags) again(arg string) string {
	if o.dir != "" && o.depth != "" {
		return ""
	}
	s := "archload relief " + arg
	if strings.ContainsAny(arg, " \t") {
		s = "archload relief \"" + arg + "\""
	}
	if o.theory.second {
		s += " --second-order"
	}
	if o.theory.linear {
		s += " --linear"
	}
	if o.shapes != "" {
		s += " --shapes " + strings.ReplaceAll(o.shapes, " ", "")
	}
	return s
}

// options reads the flags that say what to try.
func (o *reliefFlags) options(c *cases.Case) (study.TrialOptions, error) {
	var opt study.TrialOptions
	var err error
	if opt.Depths, err = depthsOf(o.depths); err != nil {
		return opt, shell.Usagef("--depths: %w", err)
	}
	for _, s := range strings.Split(o.shapes, ",") {
		if s = strings.TrimSpace(s); o.shapes == "" {
			s = c.Bridge.Relief.Shape
		}
		if !slices.Contains(study.Shapes(), s) || slices.Contains(opt.Shapes, s) {
			return opt, shell.Usagef("--shapes: want some of %s, each once, found %q", strings.Join(study.Shapes(), ", "), o.shapes)
		}
		opt.Shapes = append(opt.Shapes, s)
	}
	if o.depth == "" {
		return opt, nil
	}
	one, err := depthsOf(o.depth)
	if err != nil || len(one) != 1 || one[0] == 0 {
		return opt, shell.Usagef("--depth: want one depth in mm above 0, or \"0.005 in\", found %q", o.depth)
	}
	opt.Sheet = &one[0]
	return opt, nil
}

// depthsOf reads depths in mm and puts them in order.
func depthsOf(text string) ([]float64, error) {
	if text != "" && !strings.ContainsAny(text, `["'.`) || strings.HasSuffix(strings.TrimSpace(text), "in") && !strings.Contains(text, "..") && !strings.ContainsAny(text, `["'`) {
		text = `"` + strings.TrimSpace(text) + `"`
	}
	values, err := tree.ParseValues(text)
	if err != nil {
		return nil, err
	}
	out, err := tree.Lengths(values)
	if err != nil {
		return nil, err
	}
	slices.Sort(out)
	out = slices.Compact(out)
	if out[0] < 0 || len(out) > mostDepths {
		return nil, shell.Usagef("want 1 to %d depths, none below 0, found %q", mostDepths, text)
	}
	return out, nil
}

// admit lets the case's own checks pass the deepest relief of each shape, and
// returns the case with the relief of the bench sheet.
func (o *reliefFlags) admit(cmd *cobra.Command, c *cases.Case, arg string, opt study.TrialOptions) (*cases.Case, error) {
	with := func(from, shape string, depth float64) (*cases.Case, error) {
		return o.cut(cmd, arg, c, from, []tree.KeyValue{
			{Key: "bridge.relief.depth", Value: tree.Valued(depth)}, {Key: "bridge.relief.shape", Value: tree.Valued(shape)}})
	}
	for _, s := range opt.Shapes {
		if _, err := with("--depths", s, opt.Depths[len(opt.Depths)-1]); err != nil {
			return nil, err
		}
	}
	if opt.Sheet == nil {
		return c, nil
	}
	return with("--depth", opt.Shapes[0], *opt.Sheet)
}

// files lists the plot, the table and the bench sheet.
func (o *reliefFlags) files(arg string, c *cases.Case, t *study.Trial) []output {
	stem := filepath.Join(o.dir, fileStem(arg))
	files := pictureFiles(stem, viz.TrialPictures(t))
	files = append(files, output{stem + "-depths", []string{"csv"}, trialTable(t).write})
	if s := sheet.Bench(c, t, sheet.Paper(o.paper)); s != nil {
		files = append(files, output{stem + "-" + s.Name, s.Formats(), s.Write})
	}
	return files
}

func trialTable(t *study.Trial) table {
	out := table{head: []string{"shape", "depth_mm", "bass_end_1", "middle_1", "treble_end_1", "middle_touches_at_1", "middle_closes_at_1",
		"gap_left_mm", "foot_pressure_MPa", "foot_used_1", "sink_mm", "top_bend_mm", "top_curvature_per_m", "strength_used_1"}}
	for _, p := range t.Points {
		out.rows = append(out.rows, row([]string{p.Shape}, p.Depth, p.Share.BassEnd, p.Share.Middle, p.Share.TrebleEnd,
			float64(p.MiddleTouchesAt), float64(p.MiddleClosesAt), p.GapLeft, float64(p.FootPressure), float64(p.FootUsed),
			p.Sink, p.TopBend, p.TopCurvature, float64(p.StrengthUsed)))
	}
	return out
}
