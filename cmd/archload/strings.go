package main

import (
	"archload/cases"

	"github.com/spf13/cobra"
)

func newStrings() *cobra.Command {
	var jsonFile string
	cmd := &cobra.Command{
		Use:   "strings CASE",
		Short: "Print what each string does to the bridge, and what a small change would do",
		Long: "Print the strings' forces on the bridge without solving the top: tension, break angles,\n" +
			"downforce and push of each string and in sum, the range of the push by friction in the\n" +
			"saddle's slots, how near the bridge is to tipping, and what one degree more in each angle\n" +
			"or one millimetre more in each height would change.",
		Example:           "  archload strings course-guitar\n  archload strings mine/mine.toml --json -",
		Args:              takes(1, 1, "one case"),
		ValidArgsFunction: completeCases,
		RunE: func(cmd *cobra.Command, args []string) error {
			c, err := openCase(args[0])
			if err != nil {
				return err
			}
			t, err := cases.StringTableOf(c)
			if err != nil {
				return err
			}
			if jsonFile != "" {
				return writeTo(jsonFile, cmd.OutOrStdout(), jsonOf(t))
			}
			return t.Write(cmd.OutOrStdout())
		},
	}
	cmd.Flags().StringVar(&jsonFile, "json", "", "write it as JSON to this `FILE` instead (\"-\": standard output)")
	return cmd
}
