package main

import (
	"io"

	"archload/cases"
	"archload/cases/pull"

	"archload/cases/say"
	"archload/cmd/internal/disk"

	"github.com/spf13/cobra"
)

func newStrings(d *disk.Disk) *cobra.Command {
	return lookInto(d, &cobra.Command{
		Use:   "strings CASE",
		Short: "Print what each string does to the bridge, and what a small change would do",
		Long: "Print the strings' forces on the bridge without solving the top: tension, break angles,\n" +
			"downforce and push of each string and in sum, the range of the push by friction in the\n" +
			"saddle's slots, how near the bridge is to tipping, and what one degree more in each angle\n" +
			"or one millimetre more in each height would change.",
		Example: "  archload strings course-guitar\n  archload strings mine/mine.toml --json -",
	}, func(c *cases.Case) (page, error) {
		t, err := pull.StringTableOf(c)
		return page{t, func(w io.Writer) error { return say.WriteStrings(w, t) }}, err
	})
}
