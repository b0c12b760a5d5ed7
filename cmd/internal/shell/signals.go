package shell

import (
	"context"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"strings"
	"sync/atomic"
	"syscall"
	"time"
)

// patience is how long a command may take to end by itself once it is told to,
// at the end of a stage or between two files; after that it is ended.
const patience = 2 * time.Second

// Main runs a command on the goroutine of main and ends the program. An
// interrupt, the wish of the system that it ends, or the loss of its terminal
// cancels the context; a command that goes on for longer than patience, and one
// that is told a second time, ends at once. No file is left half-written by
// that: files are written beside their place and renamed.
func Main(run func(ctx context.Context, args []string, stdout, stderr io.Writer) int) {
	ctx, stop := context.WithCancel(context.Background())
	var told atomic.Int32 // the signal, 0: none
	heard := make(chan os.Signal, 2)
	signal.Notify(heard, endings()...)
	go func() {
		s := <-heard
		told.Store(int32(codeOf(s)))
		stop()
		select {
		case s = <-heard:
		case <-time.After(patience):
			fmt.Fprintln(os.Stderr, Message(programName(), context.Canceled))
		}
		os.Exit(codeOf(s))
	}()
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	if by := told.Load(); by != 0 && code == ExitInterrupted {
		code = int(by)
	}
	os.Exit(code)
}

// endings are the signals that ask a program to end. One that is started to
// outlive its terminal, as by nohup, ignores the loss of it.
func endings() []os.Signal {
	out := []os.Signal{os.Interrupt, syscall.SIGTERM}
	if !signal.Ignored(syscall.SIGHUP) {
		out = append(out, syscall.SIGHUP)
	}
	return out
}

// codeOf is the exit code of a program that a signal has ended, as shells have
// it: 128 and the signal's number.
func codeOf(s os.Signal) int {
	if n, ok := s.(syscall.Signal); ok {
		return 128 + int(n)
	}
	return ExitInterrupted
}

// programName is the name by which the program was called.
func programName() string {
	return strings.TrimSuffix(filepath.Base(os.Args[0]), ".exe")
}
