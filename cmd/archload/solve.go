package main

import (
	"context"
	"encoding/json"
	"fmt"
	"io"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"archload/cases"
	"archload/viz"

	"github.com/spf13/cobra"
)

func newSolve() *cobra.Command {
	var jsonFile, dir string
	var refine float64
	cmd := &cobra.Command{
		Use:   "solve CASE",
		Short: "Solve one case and say what it does",
		Long: "Solve one case: geometry, mesh, stiffness, contact of the bridge, results. Prints a\n" +
			"summary in a maker's words; --json writes every number, -o makes pictures.",
		Args: cobra.ExactArgs(1),
		RunE: func(cmd *cobra.Command, args []string) error {
			sol, rep, err := solveCase(cmd, args[0], refine)
			if err != nil {
				return err
			}
			if jsonFile != "" {
				if err := writeFile(jsonFile, cmd.OutOrStdout(), jsonOf(rep)); err != nil {
					return err
				}
			}
			if jsonFile != "-" {
				if err := rep.WriteSummary(cmd.OutOrStdout()); err != nil {
					return err
				}
			}
			if dir != "" {
				if err := writePictures(cmd.OutOrStdout(), filepath.Join(dir, fileStem(args[0])), viz.Pictures(sol, rep), jsonFile != "-"); err != nil {
					return err
				}
			}
			return checked(rep)
		},
	}
	cmd.Flags().StringVar(&jsonFile, "json", "", "write all results as JSON to this file (\"-\": standard output)")
	cmd.Flags().StringVarP(&dir, "out", "o", "", "write pictures into this folder")
	cmd.Flags().Float64Var(&refine, "refine", 1, "divide every triangle size by this, to see how much the mesh matters")
	return cmd
}

// solveCase loads and solves one case, telling its progress.
func solveCase(cmd *cobra.Command, arg string, refine float64) (*cases.Solution, *cases.Report, error) {
	if !(refine >= 0.25 && refine <= 8) {
		return nil, nil, usageError{fmt.Errorf("solve: --refine: want 0.25 to 8, found %g", refine)}
	}
	c, err := openCase(arg)
	if err != nil {
		return nil, nil, err
	}
	return solveLoaded(cmd.Context(), c, refine, cmd.ErrOrStderr())
}

func solveLoaded(ctx context.Context, c *cases.Case, refine float64, stderr io.Writer) (*cases.Solution, *cases.Report, error) {
	say, done := progress(stderr)
	sol, err := cases.Solve(ctx, c, cases.Options{
		Workers: runtime.NumCPU(), Refine: refine, Clock: time.Now,
		Progress: func(stage string) { say(c.Title + ": " + stage) },
	})
	done()
	if err != nil {
		return nil, nil, err
	}
	return sol, cases.Summarize(sol), nil
}

func jsonOf(v any) func(io.Writer) error {
	return func(w io.Writer) error {
		e := json.NewEncoder(w)
		e.SetIndent("", "  ")
		return e.Encode(v)
	}
}

// checked turns failed built-in checks into the error that sets the exit code.
func checked(rep *cases.Report) error {
	if bad := rep.Error.Failed(); len(bad) > 0 {
		return checkError{strings.Join(bad, ", ")}
	}
	return nil
}

// writePictures draws pages into files that begin with stem.
func writePictures(stdout io.Writer, stem string, pages []viz.Page, tell bool) error {
	if err := makeDir(filepath.Dir(stem)); err != nil {
		return err
	}
	for _, p := range pages {
		for _, format := range viz.Formats() {
			name := stem + "-" + p.Name + "." + format
			if err := writeFile(name, nil, func(w io.Writer) error { return p.Write(w, format) }); err != nil {
				return err
			}
			if tell {
				fmt.Fprintf(stdout, "wrote %s\n", name)
			}
		}
	}
	return nil
}
