package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"

	"github.com/rogpeppe/go-internal/testscript"
	"golang.org/x/sys/unix"
)

// onTerminal runs a program with a terminal for its standard error, and keeps
// what it tells there in the file told: terminal archload check first. All that
// it tells is read before the terminal is closed, which testscript's own ttyout
// does not wait for.
func onTerminal(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 1 {
		ts.Fatalf("usage: terminal program args...")
	}
	screen, tty, err := openTerminal()
	ts.Check(err)
	cmd := exec.Command(args[0], args[1:]...)
	cmd.Dir, cmd.Env = ts.MkAbs("."), append(os.Environ(), "HOME="+ts.Getenv("HOME"))
	cmd.Stderr = tty
	err = cmd.Start()
	if cerr := tty.Close(); err == nil {
		err = cerr
	}
	ts.Check(err)
	var told bytes.Buffer
	_, _ = io.Copy(&told, screen) // ends with an error, as the last who has the terminal open goes
	ts.Check(screen.Close())
	ts.Check(cmd.Wait())
	ts.Check(os.WriteFile(ts.MkAbs("told"), told.Bytes(), 0o644))
}

// openTerminal opens a pseudo-terminal: the end that sees what is written, and
// the terminal itself.
func openTerminal() (screen, tty *os.File, err error) {
	screen, err = os.OpenFile("/dev/ptmx", os.O_RDWR|unix.O_NOCTTY, 0)
	if err != nil {
		return nil, nil, err
	}
	fd := int(screen.Fd())
	if err := unix.IoctlSetPointerInt(fd, unix.TIOCSPTLCK, 0); err != nil {
		return nil, nil, err
	}
	n, err := unix.IoctlGetInt(fd, unix.TIOCGPTN)
	if err != nil {
		return nil, nil, err
	}
	tty, err = os.OpenFile(fmt.Sprintf("/dev/pts/%d", n), os.O_RDWR|unix.O_NOCTTY, 0)
	return screen, tty, err
}
