package main

import (
	"errors"
	"testing"

	"archload/cases/tree"

	"archload/cmd/internal/shell"
)

// TestOfCase wants each failure to name its case once and to keep its exit
// code.
func TestOfCase(t *testing.T) {
	t.Parallel()
	fault := func(file string) error {
		return tree.Faults{{File: file, Line: 3, Key: "plate", Err: errors.New("want wood")}}
	}
	for _, c := range []struct {
		err  error
		want string
		code int
	}{
		{errors.New("not converged"), "archload: mine.toml: not converged", shell.ExitCannot},
		{fault("mine.toml"), "mine.toml:3: plate: want wood", shell.ExitFaulty},
		{fault("base.toml"), "mine.toml: base.toml:3: plate: want wood", shell.ExitFaulty},
		{shell.Usagef("want --refine >= 0.25"), "archload: want --refine >= 0.25", shell.ExitFaulty},
	} {
		err := ofCase("mine.toml", c.err)
		if got := shell.Message("archload", err); got != c.want || shell.ExitCode(err) != c.code {
			t.Errorf("%q, exit code %d, want %q, %d", got, shell.ExitCode(err), c.want, c.code)
		}
	}
}
