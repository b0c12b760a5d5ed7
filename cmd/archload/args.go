package main

import (
	"fmt"
	"strings"

	"archload/cmd/internal/shell"

	"github.com/spf13/cobra"
)

// noSuchCommand takes no arguments: one that is there was meant as a command.
func noSuchCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	hint := "see " + cmd.CommandPath() + " --help"
	if near := cmd.SuggestionsFor(args[0]); len(near) > 0 {
		hint = "did you mean " + strings.Join(near, " or ") + "?"
	} else if strings.HasSuffix(args[0], ".toml") {
		hint = "did you mean archload solve " + args[0] + "?"
	}
	return shell.Usagef("unknown command %q; %s", args[0], hint)
}

// wrapArgs turns a wrong number of arguments into a usage error, in every
// command.
func wrapArgs(c *cobra.Command) {
	if inner := c.Args; inner != nil {
		c.Args = func(cmd *cobra.Command, args []string) error {
			if err := inner(cmd, args); err != nil {
				return shell.UsageError{Err: err}
			}
			return nil
		}
	}
	for _, sub := range c.Commands() {
		wrapArgs(sub)
	}
}

// takes wants a number of arguments, most < 0: any number from least on.
func takes(least, most int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		if len(args) < least || most >= 0 && len(args) > most {
			return fmt.Errorf("%s: want %s, found %d; see %s --help", cmd.Name(), what, len(args), cmd.CommandPath())
		}
		return nil
	}
}
