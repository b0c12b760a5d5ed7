package main

import (
	"runtime"

	"archload/cases"

	"github.com/spf13/cobra"
)

func newCompare() *cobra.Command {
	var jsonFile string
	cmd := &cobra.Command{
		Use:   "compare CASE CASE...",
		Short: "Solve several cases and set the same numbers side by side",
		Args:  cobra.MinimumNArgs(2),
		RunE: func(cmd *cobra.Command, args []string) error {
			if err := needFew(args); err != nil {
				return err
			}
			cmp, _, err := compareCases(cmd, args)
			if err != nil {
				return err
			}
			if jsonFile != "" {
				if err := writeFile(jsonFile, cmd.OutOrStdout(), jsonOf(cmp)); err != nil {
					return err
				}
			}
			if jsonFile != "-" {
				if err := cmp.Write(cmd.OutOrStdout()); err != nil {
					return err
				}
			}
			return checkedAll(cmp)
		},
	}
	cmd.Flags().StringVar(&jsonFile, "json", "", "write the comparison as JSON to this file (\"-\": standard output)")
	return cmd
}

// compareCases solves the cases one after the other, each on all cores.
func compareCases(cmd *cobra.Command, args []string) (*cases.Comparison, []*cases.Solution, error) {
	var sols []*cases.Solution
	var reps []*cases.Report
	for _, a := range args {
		sol, rep, err := solveCase(cmd, a, 1)
		if err != nil {
			return nil, nil, err
		}
		sols, reps = append(sols, sol), append(reps, rep)
		runtime.GC() // the factor of the last case is no longer needed
	}
	return cases.Compare(args, sols, reps), sols, nil
}

func checkedAll(c *cases.Comparison) error {
	for _, r := range c.Reports {
		if err := checked(r); err != nil {
			return err
		}
	}
	return nil
}
