package main

import (
	"errors"
	"fmt"
	"runtime/debug"

	"archload/cases"

	"github.com/spf13/cobra"
)

// checkError says that a built-in check failed.
type checkError struct{ what string }

func (e checkError) Error() string { return "a built-in check failed: " + e.what }

// usageError is a wrong command line.
type usageError struct{ err error }

func (e usageError) Error() string { return "archload: " + e.err.Error() }
func (e usageError) Unwrap() error { return e.err }

func exitCode(err error) int {
	var check checkError
	var usage usageError
	var file *cases.FileError
	switch {
	case errors.As(err, &check):
		return exitCheck
	case errors.As(err, &usage), errors.As(err, &file):
		return exitFaulty
	}
	return exitCannot
}

func newRoot() *cobra.Command {
	root := &cobra.Command{
		Use:   "archload",
		Short: "How a carved, arched top carries the strings through a floating bridge",
		Long: "archload computes, before any wood is cut, how a carved, arched top and its floating\n" +
			"bridge carry the strings: what sinks, what the foot presses where, when a relieved foot\n" +
			"closes, and where the load goes. A CASE is a TOML file or the name of a bundled case.",
		Version:       version(),
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          cobra.NoArgs,
		RunE:          func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.SetFlagErrorFunc(func(_ *cobra.Command, err error) error { return usageError{err} })
	root.AddCommand(newCheck(), newSolve(), newCompare(), newDemo(), newCases(), newNew(), newWood())
	for _, c := range root.Commands() {
		wrapArgs(c)
	}
	return root
}

// wrapArgs turns a wrong number of arguments into a usage error.
func wrapArgs(c *cobra.Command) {
	inner := c.Args
	c.Args = func(cmd *cobra.Command, args []string) error {
		if err := inner(cmd, args); err != nil {
			return usageError{fmt.Errorf("%s: %w; see archload %s --help", cmd.Name(), err, cmd.Name())}
		}
		return nil
	}
}

// version is the module's version, commit and Go version.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "unknown"
	}
	v := info.Main.Version
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" {
			v += " commit " + s.Value
		}
	}
	return v + " " + info.GoVersion
}
