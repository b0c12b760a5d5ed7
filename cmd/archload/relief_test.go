package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"archload/cases/study"

	"archload/cmd/internal/shell"
)

func TestReliefCommand(t *testing.T) {
	t.Parallel()
	dir := t.TempDir()
	var stdout, stderr bytes.Buffer
	code := run(t.Context(), []string{"relief", "first", "--linear", "--refine", "0.25", "--depths", "0..0.2 by 0.05", "--shapes", "parabola,wedge",
		"--depth", "0.005 in", "-o", dir, "--json", filepath.Join(dir, "t.json")}, &stdout, &stderr)
	if code != shell.ExitDone || stderr.Len() > 0 {
		t.Fatalf("exit status %d: %s", code, stderr.String())
	}
	for _, says := range []string{"What to take off: 0.13 mm (5.0 thousandths of an inch)", "at 0: 13 (5.0)", "of 0.13 mm (5.0 thousandths of an inch) shall just go under in the middle", "22 % in stiffness"} {
		if !strings.Contains(stdout.String(), says) {
			t.Errorf("output lacks %q:\n%s", says, stdout.String())
		}
	}
	for _, name := range []string{"first-depths.png", "first-depths.svg", "first-depths.csv", "first-bench.svg", "first-bench.pdf"} {
		if info, err := os.Stat(filepath.Join(dir, name)); err != nil || info.Size() < 500 {
			t.Errorf("%s: %v, %v", name, info, err)
		}
	}
	data, err := os.ReadFile(filepath.Join(dir, "t.json"))
	if err != nil {
		t.Fatal(err)
	}
	var tr study.Trial
	if err := json.Unmarshal(data, &tr); err != nil {
		t.Fatal(err)
	}
	if len(tr.Points) != 10 || tr.Points[5].Shape != "wedge" || tr.Sheet.Depth != 0.127 || len(tr.Bench) != 15 {
		t.Errorf("%d points, sheet %+v, %d stations; want 10 points, 0.127 mm and 15 stations", len(tr.Points), tr.Sheet, len(tr.Bench))
	}
}

func TestReliefRefused(t *testing.T) {
	for _, c := range []struct {
		args string
		says string
	}{
		{"first --depths x", "--depths: "},
		{"first --depths -1", "--depths: "},
		{"first --shapes round", "--shapes: want some of parabola"},
		{"first --shapes flat,flat", "each once"},
		{"first --depth 0", "--depth: want one depth"},
		{"first --depth 0.1lb", "--depth: want one depth"},
		{"first --depths 6", "--depths:1: bridge.relief.depth: "},
		{"first --paper a0", "--paper: "},
		{"first --refine 99", "--refine: "},
		{"bench-plate", "bridge: a relief lies under a bridge"},
	} {
		var stdout, stderr bytes.Buffer
		code := run(t.Context(), append([]string{"relief"}, strings.Fields(c.args)...), &stdout, &stderr)
		if code != shell.ExitFaulty || !strings.Contains(stderr.String(), c.says) || strings.Count(stderr.String(), "\n") != 1 || stdout.Len() > 0 {
			t.Errorf("relief %s: exit status %d, %q; want %d and %q", c.args, code, stderr.String(), shell.ExitFaulty, c.says)
		}
	}
}

func TestDepthsOf(t *testing.T) {
	for text, want := range map[string][]float64{
		"0.12":               {0.12},
		"3":                  {3},
		"0.005 in":           {0.127},
		"0..0.1 by 0.05":     {0, 0.05, 0.1},
		"0..4e-3 by 2e-3 in": {0, 0.0508, 0.1016},
		"[0.2, 0.1]":         {0.1, 0.2},
		`["0.01 in", 0]`:     {0, 0.254},
	} {
		if got, err := depthsOf(text); err != nil || !slices.Equal(got, want) {
			t.Errorf("%q: %v, %v; want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "in", "0..1", "[]", "-0.1", "nan", "0..10 by 0.001"} {
		if got, err := depthsOf(text); err == nil {
			t.Errorf("%q: %v, want an error", text, got)
		}
	}
}
