package main

import (
	"io"
	"path/filepath"
	"runtime"
	"strings"

	"github.com/spf13/cobra"

	"archload/cases/bench"
	"archload/cases/bench/fit"
	"archload/cases/say"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"
)

func newBench(d *disk.Disk) *cobra.Command {
	var json, wood string
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
			"With --wood the piece is written as a table [wood.NAME] for a case; compare, relief and\n" +
			"report then take its narrower ranges.",
		Example: "  archload bench spruce-blank\n  archload bench half-3.toml --wood half-3-wood.toml",
		Args:    takes(1, 1, "one bench file"),
		ValidArgsFunction: func(*cobra.Command, []string, string) ([]string, cobra.ShellCompDirective) {
			return bench.Names(), cobra.ShellCompDirectiveDefault
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			r, err := fitBench(cmd, d, args[0], json, wood)
			if err != nil {
				return err
			}
			o := wanted{disk: d, json: json}
			var files []output
			if err := o.deliver(cmd, r, func(w io.Writer) error { return say.WritePiece(w, r) }, files); err != nil || wood == "" {
				return err
			}
			return writeTo(d, wood, cmd.OutOrStdout(), func(w io.Writer) error {
				_, err := io.WriteString(w, r.Table(true))
				return err
			})
		},
	}
	cmd.Flags().StringVar(&json, "json", "", "write all results as JSON to `FILE` (\"-\": standard output, in place of the text)")
	cmd.Flags().StringVar(&wood, "wood", "", "write the wood as a table [wood.NAME] for a case into `FILE` (\"-\": standard output)")
	return cmd
}

// fitBench reads a bench file and fits it, telling its progress.
func fitBench(cmd *cobra.Command, d *disk.Disk, file, json, wood string) (*fit.Report, error) {
	tell, done := shell.Progress(cmd.ErrOrStderr())
	defer done()
	f, err := bench.Open(d, filepath.ToSlash(file))
	if err != nil {
		return nil, err
	}
	for _, name := range []string{json, wood} {
		if err := spare(d, name); err != nil {
			return nil, err
		}
	}
	return fit.Fit(cmd.Context(), f, fit.Options{Workers: runtime.NumCPU(), Progress: func(stage string) { tell(fileStem(file) + ": " + stage) }})
}
