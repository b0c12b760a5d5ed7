// Package windowtest is a display server for tests that drive a window as a person
// would: with the pointer and the keyboard.
package windowtest

import (
	"bufio"
	"os"
	"os/exec"
	"strings"
	"testing"
)

// Screen is a virtual display for the length of a test.
type Screen struct {
	Name string // as DISPLAY takes it: ":5"
	t    testing.TB
}

// Start starts Xvfb on a free display, with more arguments if wanted.
func Start(t testing.TB, more ...string) *Screen {
	t.Helper()
	for _, tool := range []string{"Xvfb", "xdotool", "xprop"} {
		if _, err := exec.LookPath(tool); err != nil {
			t.Fatalf("this test drives a window as a person would; install the Debian packages xvfb, xdotool and x11-utils: %v", err)
		}
	}
	r, w, err := os.Pipe()
	if err != nil {
		t.Fatal(err)
	}
	args := []string{"-displayfd", "3", "-screen", "0", "1800x1400x24", "-nolisten", "tcp", "-noreset"}
	c := exec.Command("Xvfb", append(args, more...)...)
	c.ExtraFiles = []*os.File{w}
	if err := c.Start(); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		_ = c.Process.Kill()
		_ = c.Wait()
	})
	_ = w.Close()
	line, err := bufio.NewReader(r).ReadString('\n')
	if err != nil {
		t.Fatalf("Xvfb names no display: %v", err)
	}
	return &Screen{":" + strings.TrimSpace(line), t}
}

// Env is the environment of a program that shows on the screen, with more
// settings if wanted.
func (s *Screen) Env(more ...string) []string {
	return append(append(os.Environ(), "DISPLAY="+s.Name), more...)
}

// Do runs a tool on the screen and returns what it says.
func (s *Screen) Do(tool string, args ...string) string {
	s.t.Helper()
	c := exec.Command(tool, args...)
	c.Env = s.Env()
	out, err := c.CombinedOutput()
	if err != nil {
		s.t.Fatalf("%s %s: %v: %s", tool, strings.Join(args, " "), err, out)
	}
	return strings.TrimSpace(string(out))
}
