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
	if errors.Is(err, context.Canceled) {
		fmt.Fprintln(stderr, "archload: interrupted; nothing half-written is left")
		return exitInterrupted
	}
	fmt.Fprintln(stderr, err)
	return exitCode(err)
}
