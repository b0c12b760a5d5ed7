// Package shell is what the commands have in common before a terminal: how
// they end, how they say what went wrong, which version they are.
package shell

import (
	"context"
	"errors"
	"fmt"
	"io"
	"runtime/debug"
	"strings"

	"archload/cases/tree"

	"archload/cmd/internal/disk"

	"github.com/spf13/cobra"
)

// The exit codes.
const (
	ExitDone        = 0
	ExitCannot      = 1   // singular, not converged, no display, cannot write
	ExitFaulty      = 2   // wrong usage or a faulty case
	ExitCheck       = 3   // computed, but a built-in check or a claim failed
	ExitInterrupted = 130 // as shells expect it after an interrupt
)

// slack is how much of what is in use may lie about unused before it is collected, %. The memory of a
// solve is a few large tables of numbers, which cost nothing to look through: 40 instead of Go's 100 takes a
// quarter off the most that a solve takes, a fifth off a window's, and no measurable time.
const slack = 40

// Execute carries out one command line and returns the exit code. What could
// not be printed is an error, also where nobody asked, as for help texts.
func Execute(ctx context.Context, root *cobra.Command, args []string, stdout, stderr io.Writer) int {
	debug.SetGCPercent(slack)
	out := &heeded{w: stdout}
	root.SetArgs(args)
	root.SetOut(out)
	root.SetErr(stderr)
	err := root.ExecuteContext(ctx)
	if err == nil {
		err = out.err
	}
	if err == nil {
		return ExitDone
	}
	fmt.Fprintln(stderr, Message(root.Name(), err))
	return ExitCode(err)
}

// heeded keeps the first error of a stream.
type heeded struct {
	w   io.Writer
	err error
}

func (h *heeded) Write(p []byte) (int, error) {
	n, err := h.w.Write(p)
	if h.err == nil {
		h.err = err
	}
	return n, err
}

// Message is what the user reads: faults of a case as they are, one a line;
// anything else behind the program's name.
func Message(program string, err error) string {
	var file *tree.FileError
	switch {
	case errors.As(err, &file):
		return err.Error()
	case errors.Is(err, context.Canceled):
		return program + ": interrupted; no file is left half-written"
	}
	return program + ": " + err.Error()
}

// ExitCode tells the kinds of failure apart.
func ExitCode(err error) int {
	var check CheckError
	var claim ClaimError
	var usage UsageError
	var input disk.InputError
	var file *tree.FileError
	switch {
	case errors.Is(err, context.Canceled):
		return ExitInterrupted
	case errors.As(err, &check), errors.As(err, &claim):
		return ExitCheck
	case errors.As(err, &usage), errors.As(err, &input), errors.As(err, &file):
		return ExitFaulty
	}
	return ExitCannot
}

// CheckError says that a built-in check failed.
type CheckError struct{ What string }

func (e CheckError) Error() string {
	return "a built-in check failed, do not trust these numbers: " + e.What
}

// ClaimError says that what a file claims of computed numbers does not hold.
type ClaimError struct{ Err error }

func (e ClaimError) Error() string { return e.Err.Error() }

// Unwrap returns the claims at fault.
func (e ClaimError) Unwrap() error { return e.Err }

// UsageError is a wrong command line.
type UsageError struct{ Err error }

func (e UsageError) Error() string { return e.Err.Error() }
func (e UsageError) Unwrap() error { return e.Err }

// FlagError says what is wrong with a flag, without the words of the language
// that reads it.
func FlagError(cmd *cobra.Command, err error) error {
	text := err.Error()
	if i := strings.Index(text, ": strconv."); i >= 0 {
		text = text[:i] + ": want a number"
	}
	return Usagef("%s; see %s --help", text, cmd.CommandPath())
}

// Usagef is a UsageError of a format.
func Usagef(format string, args ...any) error { return UsageError{fmt.Errorf(format, args...)} }
