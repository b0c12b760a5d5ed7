package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// output is one thing to be written, in one file for each ending.
type output struct {
	stem    string // path without the ending
	endings []string
	write   func(w io.Writer, ending string) error
}

// writeAll writes every file, and tells of each to out. An interrupt stops it
// between two files.
func writeAll(ctx context.Context, out io.Writer, files []output) error {
	for _, f := range files {
		if err := makeDir(filepath.Dir(f.stem)); err != nil {
			return err
		}
		for _, e := range f.endings {
			if err := ctx.Err(); err != nil {
				return err
			}
			if err := writeFile(f.stem+"."+e, func(w io.Writer) error { return f.write(w, e) }); err != nil {
				return err
			}
		}
		if _, err := fmt.Fprintf(out, "wrote %s.%s\n", f.stem, strings.Join(f.endings, " and .")); err != nil {
			return err
		}
	}
	return nil
}

// writeTo writes to a file, or to stdout if its name is "-".
func writeTo(name string, stdout io.Writer, write func(io.Writer) error) error {
	if name == "-" {
		return write(stdout)
	}
	return writeFile(name, write)
}

// writeFile makes a file whole or not at all: it writes beside it and renames.
// What is there and is no regular file (a pipe, a device) is written as it
// stands.
func writeFile(name string, write func(io.Writer) error) error {
	var buf bytes.Buffer
	if err := write(&buf); err != nil {
		return err
	}
	if whole, err := filepath.EvalSymlinks(name); err == nil {
		name = whole
	}
	put := replace
	if info, err := os.Stat(name); err == nil && !info.Mode().IsRegular() {
		put = overwrite
	}
	if err := put(name, buf.Bytes()); err != nil {
		return fmt.Errorf("cannot write %s: %w", name, cause(err))
	}
	return nil
}

func replace(name string, data []byte) error {
	f, err := os.CreateTemp(filepath.Dir(name), ".archload-*")
	if err != nil {
		return err
	}
	_, err = f.Write(data)
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
	}
	return err
}

func overwrite(name string, data []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	if cerr := f.Close(); err == nil {
		err = cerr
	}
	return err
}

// makeDir makes a folder and those above it.
func makeDir(dir string) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("cannot make the folder %s: %w", dir, cause(err))
	}
	return nil
}

// cause strips the path of a temporary file from an error of the system.
func cause(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	return err
}

func jsonOf(v any) func(io.Writer) error {
	return func(w io.Writer) error {
		e := json.NewEncoder(w)
		e.SetIndent("", "  ")
		return e.Encode(v)
	}
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
	const wipe = "\r\x1b[K"
	return func(stage string) { fmt.Fprintf(f, "%s%s ...", wipe, stage) }, func() { fmt.Fprint(f, wipe) }
}
