package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"runtime/debug"
	"strings"
	"testing"

	"archload/cases/answer"
	"archload/cases/tree"

	"archload/cmd/internal/disk"
	"archload/cmd/internal/shell"

	"github.com/spf13/cobra"
)

// fullDisk is a stream that takes nothing.
type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("no space left") }

func TestResultsThatCannotBePrinted(t *testing.T) {
	for _, args := range []string{"cases", "wood", "wood ebony", "check first", "solve first --refine 0.25",
		"solve first --refine 0.25 --json -"} {
		var stderr bytes.Buffer
		got := run(t.Context(), strings.Fields(args), fullDisk{}, &stderr)
		if got != shell.ExitCannot || stderr.String() != "archload: no space left\n" {
			t.Errorf("archload %s on a full disk: exit status %d, %q; want %d and one line", args, got, stderr.String(), shell.ExitCannot)
		}
	}
}

func TestInterrupt(t *testing.T) {
	t.Parallel()
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	dir := t.TempDir()
	var stdout, stderr bytes.Buffer
	got := run(ctx, []string{"solve", "first", "--linear", "--refine", "0.25", "--json", filepath.Join(dir, "out.json"), "-o", dir}, &stdout, &stderr)
	if got != shell.ExitInterrupted {
		t.Errorf("interrupted solve: exit status %d, want %d", got, shell.ExitInterrupted)
	}
	if stdout.Len() > 0 || strings.Count(stderr.String(), "\n") != 1 {
		t.Errorf("interrupted solve printed %q and %q, want one line of message", stdout.String(), stderr.String())
	}
	if left, err := os.ReadDir(dir); err != nil || len(left) > 0 {
		t.Errorf("interrupted solve left %v, %v; want an empty folder", left, err)
	}
}

// TestInterruptBetweenFiles stops the writing after the first file: it stays
// whole, the second is not begun.
func TestInterruptBetweenFiles(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	dir := t.TempDir()
	file := output{filepath.Join(dir, "a"), []string{"one", "two"}, func(w io.Writer, e string) error {
		cancel()
		_, err := fmt.Fprint(w, e)
		return err
	}}
	cmd := &cobra.Command{}
	cmd.SetContext(ctx)
	cmd.SetErr(io.Discard)
	err := writeAll(cmd, &disk.Disk{}, &bytes.Buffer{}, []output{file})
	if shell.ExitCode(err) != shell.ExitInterrupted {
		t.Errorf("exit status %d (%v), want %d", shell.ExitCode(err), err, shell.ExitInterrupted)
	}
	left, _ := filepath.Glob(filepath.Join(dir, "*"))
	if got, _ := os.ReadFile(filepath.Join(dir, "a.one")); len(left) != 1 || string(got) != "one" {
		t.Errorf("left %v, a.one holds %q; want that file alone, whole", left, got)
	}
}

func TestExitCodes(t *testing.T) {
	sound := &answer.Report{}
	failed := &answer.Report{Error: answer.ErrorReport{Equilibrium: 1e-3}}
	unknown := &answer.Report{Error: answer.ErrorReport{Energy: math.NaN()}}
	for _, c := range []struct {
		err  error
		want int
		says string
	}{
		{checked([]string{"a", "b"}, sound, failed), shell.ExitCheck,
			"archload: a built-in check failed, do not trust these numbers: force equilibrium of b"},
		{checked([]string{"a", "b"}, failed, unknown), shell.ExitCheck,
			"archload: a built-in check failed, do not trust these numbers: force equilibrium of a, energy balance of b"},
		{shell.ClaimError{Err: tree.Faults{{File: "a.toml", Line: 3, Key: "step[1].caption", Err: errors.New("want 2, computed 1")}}}, shell.ExitCheck,
			"a.toml:3: step[1].caption: want 2, computed 1"},
		{fmt.Errorf("contact: %w", context.Canceled), shell.ExitInterrupted, "archload: interrupted; no file is left half-written"},
		{shell.Usagef("solve: want one case"), shell.ExitFaulty, "archload: solve: want one case"},
		{fmt.Errorf("solve: %w", tree.Faults{{File: "a.toml", Line: 3, Key: "plate", Err: errors.New("want a plate")}}), shell.ExitFaulty,
			"solve: a.toml:3: plate: want a plate"},
		{errors.New("singular"), shell.ExitCannot, "archload: singular"},
	} {
		if got := shell.ExitCode(c.err); got != c.want {
			t.Errorf("exit status of %v: %d, want %d", c.err, got, c.want)
		}
		if got := shell.Message("archload", c.err); got != c.says {
			t.Errorf("message of %v: %q, want %q", c.err, got, c.says)
		}
	}
	if err := checked([]string{"a"}, sound); err != nil {
		t.Errorf("a report without error: %v, want none", err)
	}
}

func TestVersion(t *testing.T) {
	info := &debug.BuildInfo{GoVersion: "go1.99", Main: debug.Module{Version: "v1.2.3"}, Settings: []debug.BuildSetting{
		{Key: "vcs.revision", Value: "abc"}, {Key: "vcs.modified", Value: "true"}}}
	if got, want := shell.Version(info, true), "v1.2.3, commit abc with changes, go1.99"; got != want {
		t.Errorf("version %q, want %q", got, want)
	}
	if got, want := shell.Version(nil, false), "of an unknown version"; got != want {
		t.Errorf("version %q, want %q", got, want)
	}
}

// TestRow checks that a number that cannot be had is an empty cell.
func TestRow(t *testing.T) {
	got := strings.Join(row([]string{"a"}, 1.5, math.NaN(), math.Inf(1), -2e-9), ",")
	if want := "a,1.5,,,-2e-09"; got != want {
		t.Errorf("row %q, want %q", got, want)
	}
}

func TestStems(t *testing.T) {
	got := strings.Join(stems([]string{"first", "a/top.toml", "b/top.toml"}), " ")
	if want := "first top-B top-C"; got != want {
		t.Errorf("stems %q, want %q", got, want)
	}
}

func TestWrapped(t *testing.T) {
	text := strings.Repeat("graduation ", 30)
	got := wrapped(text)
	if strings.Join(strings.Fields(got), " ") != strings.TrimSpace(text) {
		t.Errorf("wrapped lost words: %q", got)
	}
	for line := range strings.Lines(got) {
		if len(line) > 89 || !strings.HasPrefix(line, "    g") {
			t.Errorf("line %q: want 4 spaces and at most 88 columns", line)
		}
	}
}
