package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"path/filepath"
)

// writeFile makes a file whole or not at all: it writes beside it and renames.
// "-" is the given stream.
func writeFile(name string, stdout io.Writer, write func(io.Writer) error) error {
	var buf bytes.Buffer
	if err := write(&buf); err != nil {
		return err
	}
	if name == "-" {
		_, err := stdout.Write(buf.Bytes())
		return err
	}
	f, err := os.CreateTemp(filepath.Dir(name), ".archload-*")
	if err != nil {
		return fmt.Errorf("cannot write %s: %w", name, err)
	}
	_, err = f.Write(buf.Bytes())
	if cerr := f.Close(); err == nil {
		err = cerr
	}
	if err == nil {
		err = os.Chmod(f.Name(), 0o644)
	}
	if err == nil {
		err = os.Rename(f.Name(), name)
	}
	if err != nil {
		_ = os.Remove(f.Name()) // the first error is the one to tell
		return fmt.Errorf("cannot write %s: %w", name, err)
	}
	return nil
}

// makeDir makes the folder for pictures and tables.
func makeDir(dir string) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("cannot make %s: %w", dir, err)
	}
	return nil
}

// progress returns a function that tells stages on a terminal, one line that
// overwrites itself, and one that clears it. In a pipe both are silent.
func progress(stderr io.Writer) (say func(string), done func()) {
	f, ok := stderr.(*os.File)
	if !ok {
		return func(string) {}, func() {}
	}
	if info, err := f.Stat(); err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return func(string) {}, func() {}
	}
	const clear = "\r\x1b[K"
	return func(stage string) { fmt.Fprintf(f, "%s%s ...", clear, stage) }, func() { fmt.Fprint(f, clear) }
}
