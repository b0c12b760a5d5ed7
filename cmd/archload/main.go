// Command archload computes how a carved, arched top carries the strings
// through a floating bridge, and says it in a maker's words.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"

	"archload/cases"
)

// The exit codes.
const (
	exitDone        = 0
	exitCannot      = 1   // singular, not converged, cannot write
	exitFaulty      = 2   // wrong usage or a faulty case
	exitCheck       = 3   // computed, but a built-in check failed
	exitInterrupted = 130 // as shells expect it after an interrupt
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	context.AfterFunc(ctx, stop) // a second interrupt ends the program at once
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}

// run carries out one command line and returns the exit code.
func run(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	root := newRoot()
	root.SetArgs(args)
	root.SetOut(stdout)
	root.SetErr(stderr)
	err := root.ExecuteContext(ctx)
	if err == nil {
		return exitDone
	}
	fmt.Fprintln(stderr, message(err))
	return exitCode(err)
}

// message is what the user reads: faults of a case as they are, one a line;
// anything else behind the program's name.
func message(err error) string {
	var file *cases.FileError
	switch {
	case errors.As(err, &file):
		return err.Error()
	case errors.Is(err, context.Canceled):
		return "archload: interrupted; no file is left half-written"
	}
	return "archload: " + err.Error()
}

// exitCode tells the kinds of failure apart.
func exitCode(err error) int {
	var check checkError
	var usage usageError
	var file *cases.FileError
	switch {
	case errors.Is(err, context.Canceled):
		return exitInterrupted
	case errors.As(err, &check):
		return exitCheck
	case errors.As(err, &usage), errors.As(err, &file):
		return exitFaulty
	}
	return exitCannot
}

// checkError says that a built-in check failed.
type checkError struct{ what string }

func (e checkError) Error() string {
	return "a built-in check failed, do not trust these numbers: " + e.what
}

// usageError is a wrong command line.
type usageError struct{ err error }

func (e usageError) Error() string { return e.err.Error() }
func (e usageError) Unwrap() error { return e.err }

func usagef(format string, args ...any) error { return usageError{fmt.Errorf(format, args...)} }
