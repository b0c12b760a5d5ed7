package main

import (
	"runtime/debug"

	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"

	"github.com/spf13/cobra"
)

// The groups of commands in the help text.
const (
	groupStart  = "start"
	groupDesign = "design"
	groupLook   = "look"
)

func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:   "archload",
		Short: "How a carved, arched top carries the strings through a floating bridge",
		Long: "archload computes, before any wood is cut, how a carved, arched top and its floating\n" +
			"bridge carry the strings: what sinks, where the foot presses and how hard, when a\n" +
			"relieved foot closes, and where the load goes.\n\n" +
			"A CASE is a TOML file that describes one design, or the name of a bundled case.",
		Example: "  archload demo\n  archload new mine\n  archload solve mine/mine.toml -o pictures",
		Version: shell.Version(debug.ReadBuildInfo()),

		SilenceErrors:              true,
		SilenceUsage:               true,
		SuggestionsMinimumDistance: 2,

		Args: noSuchCommand,
		RunE: func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.SetVersionTemplate("archload {{.Version}}\n")
	root.SetFlagErrorFunc(shell.FlagError)
	root.AddGroup(&cobra.Group{ID: groupStart, Title: "To start:"}, &cobra.Group{ID: groupDesign, Title: "For a design:"},
		&cobra.Group{ID: groupLook, Title: "To look things up:"})
	d := &disk.Disk{}
	addGroup(root, groupStart, newDemo(d), newCases(), newNew())
	addGroup(root, groupDesign, newCheck(d), newStrings(d), newSolve(d), newCompare(d), newRelief(d), newAction(d), newSeries(d), newTones(d), newResponse(d), newStability(d), newSeasons(d), newYears(d), newBench(d), newReport(d), newSheets(d))
	addGroup(root, groupLook, newKeys(), newWords(), newWood(d), newLesson(d), newVerify(d))
	addHelpers(root)
	wrapArgs(root)
	return root
}

func addGroup(root *cobra.Command, group string, cmds ...*cobra.Command) {
	for _, c := range cmds {
		c.GroupID = group
		root.AddCommand(c)
	}
}

// addHelpers adds help and completion, which stand with the look-ups.
func addHelpers(root *cobra.Command) {
	root.SetHelpCommandGroupID(groupLook)
	root.SetHelpCommand(newHelp())
	root.InitDefaultHelpCmd()
	root.SetCompletionCommandGroupID(groupLook)
	root.InitDefaultCompletionCmd()
	for _, c := range root.Commands() {
		if c.Name() == "completion" {
			c.Short = "Write the script that completes commands in a shell"
			c.Args = noSuchCommand
			c.RunE = func(cmd *cobra.Command, _ []string) error { return cmd.Help() }
		}
	}
}

func newHelp() *cobra.Command {
	return &cobra.Command{
		Use:     "help [COMMAND]",
		Short:   "Explain a command",
		GroupID: groupLook,
		Args:    cobra.ArbitraryArgs,
		RunE: func(cmd *cobra.Command, args []string) error {
			topic, rest, err := cmd.Root().Find(args)
			if err != nil {
				return shell.UsageError{Err: err}
			}
			if len(rest) > 0 {
				return noSuchCommand(topic, rest)
			}
			topic.InitDefaultHelpFlag()
			topic.InitDefaultVersionFlag()
			return topic.Help()
		},
	}
}
