package main

import (
	"archload/cases"

	"github.com/spf13/cobra"
)

func newCheck() *cobra.Command {
	var jsonFile string
	cmd := &cobra.Command{
		Use:   "check CASE",
		Short: "Check a case and print the design as it will be computed",
		Long: "Check a case without solving it: every fault at once, with file, line and key; then the\n" +
			"design with its defaults filled in, masses, string forces, and what a solve will cost.",
		Example:           "  archload check first\n  archload check mine/mine.toml",
		Args:              takes(1, 1, "one case"),
		ValidArgsFunction: completeCases,
		RunE: func(cmd *cobra.Command, args []string) error {
			c, err := openCase(args[0])
			if err != nil {
				return err
			}
			ov, err := cases.Look(c)
			if err != nil {
				return err
			}
			if jsonFile != "" {
				return writeTo(jsonFile, cmd.OutOrStdout(), jsonOf(ov))
			}
			return ov.Write(cmd.OutOrStdout())
		},
	}
	cmd.Flags().StringVar(&jsonFile, "json", "", "write it as JSON to this `FILE` instead (\"-\": standard output)")
	return cmd
}
