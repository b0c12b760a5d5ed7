//go:build !linux

package main

import "github.com/rogpeppe/go-internal/testscript"

// onTerminal is not there; the scripts that use it are skipped.
func onTerminal(ts *testscript.TestScript, _ bool, _ []string) {
	ts.Fatalf("terminal: for Linux alone")
}
