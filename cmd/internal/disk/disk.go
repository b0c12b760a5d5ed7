// Package disk is the file system as the commands see it: they alone touch
// the system.
package disk

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"sync"
)

// Disk is the file system as one command sees it: relative to where the user
// stands, and free to climb out of it. It remembers what was read, so that no
// output takes its place. The zero value has read nothing; any number of
// goroutines may use it.
type Disk struct {
	mu   sync.Mutex
	read map[string]fs.FileInfo // by the real path
}

// Open opens a file by its path with forward slashes.
func (d *Disk) Open(name string) (fs.File, error) {
	name = filepath.FromSlash(name)
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	if info, err := f.Stat(); err == nil && info.Mode().IsRegular() {
		d.mu.Lock()
		defer d.mu.Unlock()
		if d.read == nil {
			d.read = map[string]fs.FileInfo{}
		}
		d.read[realPath(name)] = info
	}
	return f, nil
}

// Stat tells of a file without opening it, which for a pipe may never end.
func (d *Disk) Stat(name string) (fs.FileInfo, error) { return os.Stat(filepath.FromSlash(name)) }

// InputError says that an output would have taken the place of a file that was
// read.
type InputError struct{ Name string }

func (e InputError) Error() string {
	return fmt.Sprintf("%s is one of the files that were read; want another name for what is written", e.Name)
}

// Spared is an InputError if a file of this name was read: by this path or
// another, through links of either kind, or if an editor has put a new one in
// its place since.
func (d *Disk) Spared(name string) error {
	d.mu.Lock()
	defer d.mu.Unlock()
	if _, same := d.read[realPath(name)]; same {
		return InputError{name}
	}
	info, err := os.Stat(name)
	if err != nil {
		return nil // what is not there was not read
	}
	for _, r := range d.read {
		if os.SameFile(r, info) {
			return InputError{name}
		}
	}
	return nil
}

// realPath is a path from the root without symbolic links, as far as it can be
// had.
func realPath(name string) string {
	if whole, err := filepath.EvalSymlinks(name); err == nil {
		name = whole
	}
	if whole, err := filepath.Abs(name); err == nil {
		name = whole
	}
	return name
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
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}
