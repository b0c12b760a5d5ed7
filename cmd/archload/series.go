package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"archload/cases/say"
	"archload/cases/stability"
	"archload/cases/study"
	"archload/cases/tree"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
	"archload/cmd/internal/store"
	"archload/viz"
)

// seriesFlags is what the command series is asked for.
type seriesFlags struct {
	wanted
	changes []string
	part    string
	join    bool
}

func newSeries(d *disk.Disk) *cobra.Command {
	o := seriesFlags{wanted: wanted{disk: d}}
	cmd := &cobra.Command{
		Use:   "series CASE --change \"KEY = VALUES\"...",
		Short: "Solve a case for every combination of some keys' values",
		Long: "Solve a case for every combination of the values of some keys, on all cores. Each point\n" +
			"is a row in series.csv and series.jsonl, written as it is done. An interrupted series goes\n" +
			"on where it was when the same command is given again. A point that cannot be had is a row\n" +
			"that says why. One key is drawn as lines, two keys as maps.\n\n" +
			"VALUES are a range, 0..0.4 by 0.05 (with a unit behind it: 0..0.016 by 0.002 in), or a\n" +
			"list, [\"sitka-spruce\", \"engelmann-spruce\"]. Entries are counted from 1: brace[1].width.\n\n" +
			"--part 2/8 solves the second of eight parts, so that several machines can share the work;\n" +
			"--join puts the parts together from the folders that hold them.",
		Example: "  archload series course-guitar --change \"bridge.relief.depth = 0..0.4 by 0.05\" -o depths\n" +
			"  archload series first --change \"plate.thickness = 4..6 by 0.5\" --change \"plate.arch.formula.height = [16, 20, 24]\"\n" +
			"  archload series --join part1 part2 -o all",
		Args: func(cmd *cobra.Command, args []string) error {
			if o.join {
				return takes(1, -1, "the folders that hold the parts")(cmd, args)
			}
			return takes(1, 1, "one case")(cmd, args)
		},
		ValidArgsFunction: completeCases,
		RunE:              o.run,
	}
	o.flags(cmd)
	o.orderFlags(cmd)
	o.timeFlags(cmd)
	cmd.Flags().Lookup("out").Usage = "write the table and the pictures into the folder `DIR` (default: the case's name with -series)"
	cmd.Flags().StringArrayVar(&o.changes, "change", nil, "`\"KEY = VALUES\"`: let a key take these values; several keys: every combination")
	cmd.Flags().StringVar(&o.part, "part", "1/1", "solve part `I/N` of the series alone")
	cmd.Flags().BoolVar(&o.join, "join", false, "put the parts in the given folders together")
	return cmd
}

func (o *seriesFlags) run(cmd *cobra.Command, args []string) error {
	if err := errors.Join(o.check(), o.theory.check(cmd)); err != nil {
		return err
	}
	if o.join {
		if len(o.changes) > 0 || cmd.Flags().Changed("part") {
			return shell.Usagef("--join: want it with folders alone, without --change and --part")
		}
		return o.joinParts(cmd, args)
	}
	s, err := o.plan(cmd, args[0])
	if err != nil {
		return err
	}
	if err := spare(o.disk, o.json); err != nil {
		return err
	}
	if o.dir == "" {
		o.dir = fileStem(args[0]) + "-series"
	}
	if err := disk.Make(o.dir); err != nil {
		return err
	}
	st, err := store.Open(o.disk, o.dir, s.Head)
	if err != nil {
		return err
	}
	err = o.work(cmd, s, st)
	if cerr := st.Close(); err == nil {
		err = cerr
	}
	if err != nil {
		if errors.Is(err, context.Canceled) {
			fmt.Fprintf(cmd.ErrOrStderr(), "archload: %d of %d rows are in %s; the same command goes on from there\n", len(st.Rows), s.Head.Mine, st.Stem+".csv")
		}
		return err
	}
	return o.report(cmd, s.Head, st)
}

// joinParts puts the parts of a series together.
func (o *seriesFlags) joinParts(cmd *cobra.Command, dirs []string) error {
	if o.dir == "" {
		return shell.Usagef("--join: want a folder for the whole series with -o DIR")
	}
	st, err := store.Join(o.disk, o.dir, dirs)
	if err != nil {
		return err
	}
	return o.report(cmd, st.Head, st)
}

// plan reads the flags that say what to solve.
func (o *seriesFlags) plan(cmd *cobra.Command, arg string) (*study.Series, error) {
	if len(o.changes) == 0 {
		return nil, shell.Usagef("series: want at least one --change \"KEY = VALUES\"")
	}
	var changes []tree.Change
	for _, text := range o.changes {
		c, err := tree.ParseChange(text)
		if err != nil {
			return nil, shell.Usagef("--change: %w", err)
		}
		changes = append(changes, c)
	}
	var part [2]int
	if n, err := fmt.Sscanf(o.part+";", "%d/%d;", &part[0], &part[1]); n != 2 || err != nil {
		return nil, shell.Usagef("--part: want I/N as in 2/8, found %q", o.part)
	}
	tell, done := shell.Progress(cmd.ErrOrStderr())
	tell(fileStem(arg) + ": reading")
	defer done()
	opts := study.SeriesOptions{Refine: o.refine, Part: part, Program: "archload " + shell.Version(debug.ReadBuildInfo())}
	if o.isSecond() {
		opts.Order, opts.Answer = "second", stability.AnswerTop
	}
	if l := o.outlook; l.Asked() {
		l.SecondOrder = o.isSecond()
		opts.Ahead, opts.Further = l.Words(), l.AddTo
	}
	s, err := study.NewSeries(o.disk, filepath.ToSlash(arg), changes, opts)
	if err != nil && meant(arg) != "" {
		if _, other := openCase(o.disk, arg); other != nil {
			err = other // says which file was meant
		}
	}
	var file *tree.FileError
	if err != nil && !errors.As(err, &file) {
		err = shell.Usagef("series: %w", err)
	}
	return s, err
}

// work solves what the store does not hold yet, and tells the progress.
func (o *seriesFlags) work(cmd *cobra.Command, s *study.Series, st *store.Store) error {
	todo := st.Missing(s.Mine())
	tell, done := shell.Progress(cmd.ErrOrStderr())
	defer done()
	start, count := time.Now(), 0
	told := func() {
		left := ""
		if count > 0 {
			rest := time.Since(start) / time.Duration(count) * time.Duration(len(todo)-count)
			left = fmt.Sprintf(", about %s left", rest.Round(time.Second))
		}
		tell(fmt.Sprintf("%d of %d points%s", len(st.Rows), s.Head.Mine, left))
	}
	told()
	err := s.Run(cmd.Context(), todo, runtime.NumCPU(), func(r study.SeriesRow) error {
		if err := st.Add(r); err != nil {
			return err
		}
		count++
		told()
		return nil
	})
	if err != nil {
		return err
	}
	return st.Finish()
}

// report prints what came of it and draws it.
func (o *seriesFlags) report(cmd *cobra.Command, h study.SeriesHead, st *store.Store) error {
	var files []output
	if len(st.Rows) == h.Points {
		files = pictureFiles(filepath.Join(o.dir, "series"), viz.SeriesPictures(h, st.Rows))
	}
	all := struct {
		study.SeriesHead
		Rows []study.SeriesRow `json:"rows"`
	}{h, st.Rows}
	text := func(w io.Writer) error {
		_, err := io.WriteString(w, say.SeriesText(h, st.Rows)+"wrote "+st.Stem+".csv and .jsonl\n")
		return err
	}
	if err := o.deliver(cmd, all, text, files); err != nil {
		return err
	}
	return seriesOutcome(st.Rows)
}

// seriesOutcome is an error if a built-in check failed, or if no point at all
// could be had.
func seriesOutcome(rows []study.SeriesRow) error {
	failed := 0
	var bad []string
	for _, r := range rows {
		if r.Failed != "" {
			failed++
		}
		if r.Checks != "" {
			bad = append(bad, fmt.Sprintf("%s of point %d", r.Checks, r.Point))
		}
	}
	switch {
	case len(bad) > 0:
		return shell.CheckError{What: strings.Join(bad, ", ")}
	case failed > 0 && failed == len(rows):
		return fmt.Errorf("none of the %d points could be had; the first: %s", failed, rows[0].Failed)
	}
	return nil
}
