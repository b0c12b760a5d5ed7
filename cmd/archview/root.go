package main

import (
	"runtime/debug"

	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"

	"github.com/spf13/cobra"
)

func newRoot() *cobra.Command {
	o := options{disk: &disk.Disk{}}
	root := &cobra.Command{
		Use:   "archview [CASE [CASE]]",
		Short: "See the load run through a carved top, and try relief, bridge, strings and wood by hand",
		Long: "archview draws a design and answers the hand: turn it, bring the strings up to pitch,\n" +
			"relieve the foot, change bridge, strings, bars or wood, cut it, pin gauges. Two cases stand\n" +
			"side by side under one scale. A CASE is a TOML file or the name of a bundled case;\n" +
			"archload cases lists those. Without a case it begins with a page to choose from.\n\n" +
			"With --snapshot it writes the same drawing as a PNG and needs no display.",
		Example: "  archview course-guitar-relief\n  archview course-guitar course-guitar-treble\n" +
			"  archview course-guitar --snapshot sink.png --field sink --view \"from outside\"\n" +
			"  archview --lesson 2-relief",
		Version:       shell.Version(debug.ReadBuildInfo()),
		SilenceErrors: true,
		SilenceUsage:  true,
		Args: func(_ *cobra.Command, args []string) error {
			return o.fits(len(args))
		},
		RunE: o.run,
	}
	root.SetVersionTemplate("archview {{.Version}}\n")
	root.SetFlagErrorFunc(shell.FlagError)
	root.CompletionOptions.DisableDefaultCmd = true
	o.flags(root)
	return root
}
