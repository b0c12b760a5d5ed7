// Package disk is the file system as the commands see it: they alone touch
// the system.
package disk

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// FS is the file system as the shell sees it: relative to where the user
// stands, and free to climb out of it.
type FS struct{}

// Open opens a file by its path with forward slashes.
func (FS) Open(name string) (fs.File, error) { return os.Open(filepath.FromSlash(name)) }

// Stat tells of a file without opening it, which for a pipe may never end.
func (FS) Stat(name string) (fs.FileInfo, error) { return os.Stat(filepath.FromSlash(name)) }

// Write makes a file whole or not at all: it writes beside it and renames.
// What is there and is no regular file (a pipe, a device) is written as it
// stands.
func Write(name string, write func(io.Writer) error) error {
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
		return fmt.Errorf("cannot write %s: %w", name, Cause(err))
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

// Make makes a folder and those above it.
func Make(dir string) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("cannot make the folder %s: %w", dir, Cause(err))
	}
	return nil
}

// Cause strips the path of a temporary file from an error of the system.
func Cause(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return path.Err
	}
	return err
}
