// Command archview shows how a carved, arched top carries the strings: the
// load, the movement and the stress as a drawing that answers the hand.
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

// The exit codes, as those of archload.
const (
	exitDone        = 0
	exitCannot      = 1 // no display, no driver, cannot write
	exitFaulty      = 2 // wrong usage or a faulty case
	exitInterrupted = 130
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	context.AfterFunc(ctx, stop) // a second interrupt ends the program at once
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}

// run carries out one command line and returns the exit code. It must be
// called on the goroutine of main: the window wants that thread.
func run(ctx context.Context, args []string, stdout, stderr io.Writer) int {
	root := newRoot()
	root.SetArgs(args)
	root.SetOut(stdout)
	root.SetErr(stderr)
	err := root.ExecuteContext(ctx)
	if err == nil {
		return exitDone
	}
	var file *cases.FileError
	var usage usageError
	switch {
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(stderr, "archview: interrupted; no file is left half-written")
		return exitInterrupted
	case errors.As(err, &file):
		fmt.Fprintln(stderr, err)
		return exitFaulty
	case errors.As(err, &usage):
		fmt.Fprintln(stderr, "archview:", err)
		return exitFaulty
	}
	fmt.Fprintln(stderr, "archview:", err)
	return exitCannot
}

// usageError is a wrong command line.
type usageError struct{ err error }

func (e usageError) Error() string { return e.err.Error() }
func (e usageError) Unwrap() error { return e.err }

func usagef(format string, args ...any) error { return usageError{fmt.Errorf(format, args...)} }
