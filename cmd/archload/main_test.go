package main

import (
	"encoding/json"
	"errors"
	"os"
	"os/exec"
	"os/signal"
	"strconv"
	"strings"
	"syscall"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"archload": main})
}

// TestScripts runs what a user would type; each file of testdata says what it
// tests.
func TestScripts(t *testing.T) {
	if signal.Ignored(syscall.SIGHUP) { // by nohup: programs begun here would ignore it too, and one waits for it
		signal.Notify(make(chan os.Signal, 1), syscall.SIGHUP)
	}
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata",
		RequireExplicitExec: true,
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"status":   status,
			"lines":    lines,
			"fields":   fields,
			"terminal": onTerminal,
		},
	})
}

// status runs a program and wants an exit status: status 2 archload solve x.
func status(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status CODE program args...")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("%s: %v", args[1], err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit status %d, want %d", got, want)
	}
}

// lines wants a number of lines in a file: lines stderr 3.
func lines(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: lines FILE NUMBER")
	}
	want, err := strconv.Atoi(args[1])
	ts.Check(err)
	if got := strings.Count(ts.ReadFile(args[0]), "\n"); got != want {
		ts.Fatalf("%s has %d lines, want %d", args[0], got, want)
	}
}

// fields wants values in a JSON file: fields FILE LIST. Each line of the list
// is a path and the kind of value there (number, string, object, list, null,
// or several with a bar between); the path's part [] takes every entry of a
// list, of which there must be one.
func fields(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: fields FILE LIST")
	}
	var root any
	ts.Check(json.Unmarshal([]byte(ts.ReadFile(args[0])), &root)) // refuses NaN
	for line := range strings.Lines(ts.ReadFile(args[1])) {
		words := strings.Fields(line)
		if len(words) == 0 {
			continue
		}
		if len(words) != 2 {
			ts.Fatalf("%s: want a path and a kind, found %q", args[1], line)
		}
		if fault := misses(root, strings.Split(words[0], "."), strings.Split(words[1], "|")); fault != "" {
			ts.Fatalf("%s: %s: %s", args[0], words[0], fault)
		}
	}
}

// misses tells what is wrong with the value at a path, or "".
func misses(v any, path, kinds []string) string {
	if len(path) == 0 {
		for _, k := range kinds {
			if k == kindOf(v) {
				return ""
			}
		}
		return "found " + kindOf(v) + ", want " + strings.Join(kinds, " or ")
	}
	if path[0] == "[]" {
		list, ok := v.([]any)
		if !ok || len(list) == 0 {
			return "want a list that is not empty, found " + kindOf(v)
		}
		for _, e := range list {
			if fault := misses(e, path[1:], kinds); fault != "" {
				return fault
			}
		}
		return ""
	}
	object, ok := v.(map[string]any)
	if !ok {
		return "want an object around " + path[0] + ", found " + kindOf(v)
	}
	inner, ok := object[path[0]]
	if !ok {
		return "no " + path[0]
	}
	return misses(inner, path[1:], kinds)
}

func kindOf(v any) string {
	switch v.(type) {
	case nil:
		return "null"
	case float64:
		return "number"
	case string:
		return "string"
	case []any:
		return "list"
	case map[string]any:
		return "object"
	}
	return "bool"
}
