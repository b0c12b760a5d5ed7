package main

import (
	"fmt"

	"archload/cases"

	"github.com/spf13/cobra"
)

func newCheck() *cobra.Command {
	var jsonFile string
	cmd := &cobra.Command{
		Use:   "check CASE",
		Short: "Check a case and print the resolved design",
		Long: "Check a case without solving it: every fault at once, with file, line and key; then the\n" +
			"resolved design with its defaults, masses, string forces, and what a solve will cost.",
		Args: cobra.ExactArgs(1),
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
				return writeFile(jsonFile, cmd.OutOrStdout(), jsonOf(ov))
			}
			return ov.Write(cmd.OutOrStdout())
		},
	}
	cmd.Flags().StringVar(&jsonFile, "json", "", "write it as JSON to this file instead (\"-\": standard output)")
	return cmd
}

func newCases() *cobra.Command {
	return &cobra.Command{
		Use:   "cases",
		Short: "List the bundled cases",
		Args:  cobra.NoArgs,
		RunE: func(cmd *cobra.Command, _ []string) error {
			infos, err := cases.Bundled()
			if err != nil {
				return err
			}
			for _, i := range infos {
				fmt.Fprintf(cmd.OutOrStdout(), "%s: %s\n    %s\n", i.Name, i.Title, i.Shows)
			}
			return nil
		},
	}
}
