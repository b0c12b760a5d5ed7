package main

import (
	"bytes"
	"context"
	"errors"
	"strings"
	"testing"

	"archload/cases/verify"
	"archload/cmd/internal/shell"
)

// TestMissedCheck: a row that misses is marked, counted and named, and sets
// the exit status.
func TestMissedCheck(t *testing.T) {
	rows := []verify.Row{
		{Name: "roof", Quantity: "sink", Mesh: "16 regular", By: "A 1964", Unit: "mm", Expected: 2, Got: 2.02, Deviation: 0.01, Allowed: 0.02, Pass: true},
		{Name: "roof", Quantity: "sink", Mesh: "32 regular", By: "A 1964", Unit: "mm", Expected: 2, Got: 2.1, Deviation: 0.05, Allowed: 0.01},
	}
	var b bytes.Buffer
	if err := (&proof{}).deliver(&b, rows); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"roof (A 1964)\n", "+1 %       2 %  ok\n", "+5 %       1 %  MISSES\n", "\n2 checks, 1 missed:\n  roof: sink 32 regular\n"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("text lacks %q:\n%s", want, b.String())
		}
	}
	err := verdict(rows)
	if got := shell.ExitCode(err); got != shell.ExitCheck {
		t.Errorf("exit status %d (%v), want %d", got, err, shell.ExitCheck)
	}
	if err := verdict(rows[:1]); err != nil {
		t.Errorf("all rows pass: %v, want no error", err)
	}
}

func TestPercent(t *testing.T) {
	for _, c := range []struct {
		v    float64
		want string
	}{{0.02, "+2 %"}, {-0.0334, "-3.34 %"}, {0.006, "+0.6 %"}, {1.5, "+150 %"}, {-3e-7, "-3e-07"}, {0.0001, "+0.01 %"}} {
		if got := percent(c.v); got != c.want {
			t.Errorf("percent(%g) = %q, want %q", c.v, got, c.want)
		}
	}
}

// TestVerifyInterrupted stops a run before its first check.
func TestVerifyInterrupted(t *testing.T) {
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	var stdout, stderr bytes.Buffer
	if got := run(ctx, []string{"verify", "--only", "plain string"}, &stdout, &stderr); got != shell.ExitInterrupted {
		t.Errorf("interrupted: exit status %d, want %d", got, shell.ExitInterrupted)
	}
	if stdout.Len() > 0 {
		t.Errorf("interrupted: printed %q, want nothing", stdout.String())
	}
	if _, err := verify.Run(ctx, verify.Options{Only: "("}); err == nil || errors.Is(err, ctx.Err()) {
		t.Errorf("a faulty pattern: error %v, want one about the pattern", err)
	}
}
