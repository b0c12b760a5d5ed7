package main

import (
	"io"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/say"
	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"

	"github.com/spf13/cobra"
)

func newCheck(d *disk.Disk) *cobra.Command {
	return lookInto(d, &cobra.Command{
		Use:   "check CASE",
		Short: "Check a case and print the design as it will be computed",
		Long: "Check a case without solving it: every fault at once, with file, line and key; then the\n" +
			"design with its defaults filled in, masses, string forces, and what a solve will cost.",
		Example: "  archload check first\n  archload check mine/mine.toml",
	}, func(c *cases.Case) (page, error) {
		o, err := answer.Look(c)
		return page{o, func(w io.Writer) error { return say.WriteOverview(w, o) }}, err
	})
}

// page is what a command prints or writes as JSON.
type page struct {
	data  any // as JSON has it
	print func(io.Writer) error
}

// lookInto completes a command that says something of a case without solving
// it: as text, or with --json as JSON instead.
func lookInto(d *disk.Disk, cmd *cobra.Command, look func(*cases.Case) (page, error)) *cobra.Command {
	var jsonFile string
	cmd.Args, cmd.ValidArgsFunction = takes(1, 1, "one case"), completeCases
	cmd.RunE = func(cmd *cobra.Command, args []string) error {
		tell, done := shell.Progress(cmd.ErrOrStderr())
		tell(fileStem(args[0]) + ": looking it over")
		c, err := openCase(d, args[0])
		if err == nil {
			err = spare(d, jsonFile)
		}
		var p page
		if err == nil {
			p, err = look(c)
		}
		done()
		if err != nil {
			return err
		}
		if jsonFile != "" {
			return writeTo(d, jsonFile, cmd.OutOrStdout(), jsonOf(p.data))
		}
		return p.print(cmd.OutOrStdout())
	}
	cmd.Flags().StringVar(&jsonFile, "json", "", "write it as JSON to this `FILE` instead (\"-\": standard output)")
	return cmd
}
