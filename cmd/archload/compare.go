package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/say"
	"archload/cases/stability"
	"archload/cases/study"
	"archload/cases/tree"

	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/viz"
)

func newCompare(d *disk.Disk) *cobra.Command {
	o := compared{wanted: wanted{disk: d}}
	cmd := &cobra.Command{
		Use:   "compare CASE [CASE...]",
		Short: "Solve several cases and set the same numbers side by side",
		Long: "Solve two or more cases and print what differs in the input, then the same numbers\n" +
			"side by side, each with its difference from the first case, the greatest change first.\n" +
			"Every number and every difference carries two ranges: the wood's (from plank to plank;\n" +
			"for a difference the same planks serve for both designs) and the mesh's.\n" +
			"With --change the last design is the first with some of its keys changed: another set of\n" +
			"strings, a thinner plate.",
		Example: "  archload compare course-guitar course-guitar-relief\n  archload compare first mine.toml --sample 300 --seed 7\n" +
			"  archload compare mine.toml --change 'strings.gauges = \"12 16 24w 32w 42w 53w\"'",
		Args:              takes(1, -1, "2 cases or more, or one and --change"),
		ValidArgsFunction: completeCases,
		RunE: func(cmd *cobra.Command, args []string) error {
			return o.compare(cmd, args, "compare")
		},
	}
	o.flags(cmd)
	o.motionFlag(cmd)
	o.timeFlags(cmd)
	o.benchFlag(cmd)
	o.theory.flags(cmd)
	cmd.Flags().BoolVar(&o.bare, "no-ranges", false, "leave out how sure each number is, which saves half of the time")
	cmd.Flags().StringArrayVar(&o.changes, "change", nil, "`\"KEY = VALUE\"`: compare with the first case changed so; several keys: all at once")
	cmd.Flags().IntVar(&o.sample, "sample", 0, "check the wood's ranges by solving `N` sets of planks drawn at random (30 to 10000)")
	cmd.Flags().Uint64Var(&o.seed, "seed", 1, "`NUMBER` that begins the draw of --sample; the same one gives the same planks")
	return cmd
}

// compared is what a comparison shall compute besides the cases.
type compared struct {
	wanted
	bare    bool     // without ranges
	sample  int      // sets of planks to draw; 0: none
	seed    uint64   // of the draw
	changes []string // of the first case, for one more design
}

// checkRanges refuses a sample that says nothing or takes for ever, and flags
// that exclude each other.
func (o *compared) checkRanges(cmd *cobra.Command) error {
	const least, most = 30, 10000
	asked := cmd.Flags().Changed("sample")
	switch {
	case asked && (o.sample < least || o.sample > most):
		return shell.Usagef("--sample: want %d to %d, found %d", least, most, o.sample)
	case asked && o.bare:
		return shell.Usagef("--sample checks the ranges that --no-ranges leaves out; want one of the two")
	case cmd.Flags().Changed("seed") && !asked:
		return shell.Usagef("--seed: want --sample beside it")
	}
	return nil
}

// compare solves the cases one after the other, each on all cores, and
// delivers them side by side; name begins the names of the common pictures.
func (o *compared) compare(cmd *cobra.Command, args []string, name string) error {
	if err := errors.Join(o.checkRanges(cmd), o.theory.check(cmd)); err != nil {
		return err
	}
	set, err := o.changed(args)
	if err != nil {
		return err
	}
	var linear, sols []*design.Solution
	var reps []*answer.Report
	var moved []*stability.Report
	if set != nil {
		args = append(slices.Clone(args), fileStem(args[0])+"-changed")
	}
	for i, a := range args {
		s, err := o.solveOne(cmd, args, i, set)
		if err != nil {
			return ofCase(a, err)
		}
		linear, sols, reps, moved = append(linear, s.linear), append(sols, s.shown), append(reps, s.report), append(moved, s.moved)
	}
	cmp, err := o.sideBySide(cmd, args, linear, reps)
	if err != nil {
		return err
	}
	files := pictureFiles(filepath.Join(o.dir, name), viz.ComparePictures(sols, cmp))
	for i, stem := range stems(args) {
		files = append(files, resultFiles(filepath.Join(o.dir, stem), sols[i], reps[i])...)
	}
	if o.isSecond() {
		both := stability.Compare(cmp, moved)
		if err := o.deliver(cmd, both, func(w io.Writer) error { return say.WriteMovedComparison(w, both) }, files); err != nil {
			return err
		}
		return checked(args, reps...)
	}
	if err := o.deliver(cmd, cmp, func(w io.Writer) error { return say.WriteComparison(w, cmp) }, files); err != nil {
		return err
	}
	return checked(args, reps...)
}

// changed reads the keys that --change sets; nil without any.
func (o *compared) changed(args []string) ([]tree.KeyValue, error) {
	if len(o.changes) == 0 && len(args) < 2 {
		return nil, shell.Usagef("compare: want 2 cases or more, or one and --change, found %d", len(args))
	}
	var set []tree.KeyValue
	for _, text := range o.changes {
		c, err := tree.ParseChange(text)
		switch {
		case err != nil:
			return nil, shell.Usagef("--change: %w", err)
		case len(c.Values) != 1:
			return nil, shell.Usagef("--change: want one value of %s, found %d; archload series tries many", c.Key, len(c.Values))
		}
		set = append(set, tree.KeyValue{Key: c.Key, Value: c.Values[0]})
	}
	return set, nil
}

// solveOne solves a case of a comparison; the last one is the first with some keys changed, if any are.
func (o *compared) solveOne(cmd *cobra.Command, args []string, i int, set []tree.KeyValue) (*solved, error) {
	if set == nil || i < len(args)-1 {
		c, err := o.open(cmd, args[i])
		if err != nil {
			return nil, err
		}
		return o.either(cmd, args[i], c)
	}
	first, err := openCase(o.disk, args[0])
	if err != nil {
		return nil, err
	}
	c, err := o.cut(cmd, args[0], first, "--change", set)
	if err != nil {
		return nil, err
	}
	return o.either(cmd, args[i], stability.Times(c, o.load()))
}

// sideBySide sets solved cases side by side, with the ranges that are wanted. sols are the linear
// answers, by which the ranges are found; reps are those that are shown.
func (o *compared) sideBySide(cmd *cobra.Command, args []string, sols []*design.Solution, reps []*answer.Report) (*study.Comparison, error) {
	if o.bare {
		return study.Compare(args, sols, reps), nil
	}
	spreads, err := o.spread(cmd, args, sols)
	if err != nil {
		return nil, err
	}
	c := study.CompareRanged(args, sols, reps, spreads)
	if o.sample > 0 {
		opts, done := telling(cmd, "drawn")
		defer done()
		s, err := study.DrawSample(cmd.Context(), sols, o.sample, o.seed, opts)
		if err != nil {
			return nil, err
		}
		c.AddSample(s)
	}
	return c, nil
}

// spread works out how each solved case answers to its wood.
func (o *wanted) spread(cmd *cobra.Command, args []string, sols []*design.Solution) ([]*study.Spread, error) {
	var out []*study.Spread
	for i, s := range sols {
		opts, done := telling(cmd, fileStem(args[i]))
		sp, err := study.FindSpreadAhead(cmd.Context(), s, o.ahead(), opts)
		done()
		if err != nil {
			return nil, err
		}
		out = append(out, sp)
	}
	return out, nil
}

// telling are options on all cores that tell their progress behind a name.
func telling(cmd *cobra.Command, name string) (o design.Options, done func()) {
	tell, done := shell.Progress(cmd.ErrOrStderr())
	return design.Options{Workers: runtime.NumCPU(), Progress: func(stage string) { tell(name + ": " + stage) }}, done
}

// ofCase says which of several cases an error belongs to, unless it says so
// itself or belongs to the command line.
func ofCase(name string, err error) error {
	var usage shell.UsageError
	if errors.As(err, &usage) || strings.HasPrefix(err.Error(), name+":") {
		return err
	}
	return fmt.Errorf("%s: %w", name, err)
}

// stems names the files of each case; cases of the same name get their letter
// in the table as well.
func stems(args []string) []string {
	count := map[string]int{}
	for _, a := range args {
		count[fileStem(a)]++
	}
	out := make([]string, len(args))
	for i, a := range args {
		out[i] = fileStem(a)
		if count[out[i]] > 1 {
			out[i] += "-" + say.Letter(i)
		}
	}
	return out
}
