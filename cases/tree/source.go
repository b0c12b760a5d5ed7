package tree

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"strings"
)

// maxFile is the largest case file or table that is read, bytes. A thousand
// times a usual one; anything larger is not a case.
const maxFile = 16 << 20

// Source is one opened file.
type Source struct {
	Fsys  fs.FS
	Path  string // in fsys
	Label string // as the user would name it
	Data  []byte // without byte order mark
}

// OpenSource reads the file that the user names: a regular file, a pipe or
// standard input. The error says what is wrong without naming it.
func OpenSource(fsys fs.FS, name, label string) (*Source, error) {
	s := &Source{Fsys: fsys, Path: name, Label: label}
	f, err := fsys.Open(name)
	if err != nil {
		return s, openFault(fsys, name, err)
	}
	defer f.Close()
	// What has no end (a device, an endless pipe) is read to the limit and no further.
	data, err := io.ReadAll(io.LimitReader(f, maxFile+1))
	switch {
	case err != nil:
		return s, openFault(fsys, name, err)
	case len(data) > maxFile:
		return s, fmt.Errorf("want a file of at most %d MB", maxFile>>20)
	}
	s.Data, err = utf8Text(data)
	return s, err
}

// OpenBeside reads a file that another file names, a table or a base: a
// regular file alone, since opening a pipe may wait for ever.
func OpenBeside(from *Source, written string) (*Source, error) {
	file, label := from.Beside(written)
	s := &Source{Fsys: from.Fsys, Path: file, Label: label}
	info, err := fs.Stat(from.Fsys, file)
	switch {
	case err != nil:
		return s, openFault(from.Fsys, file, err)
	case info.IsDir():
		return s, errors.New("want a file, found a folder")
	case !info.Mode().IsRegular():
		return s, errors.New("want a regular file, found a device or a pipe")
	case info.Size() > maxFile:
		return s, fmt.Errorf("want a file of at most %d MB, found %d MB", maxFile>>20, info.Size()>>20)
	}
	return OpenSource(from.Fsys, file, label)
}

// openFault is what is wrong with a file that cannot be had.
func openFault(fsys fs.FS, name string, err error) error {
	if errors.Is(err, fs.ErrNotExist) || errors.Is(err, fs.ErrInvalid) {
		return fmt.Errorf("no such file%s", nearFile(fsys, name))
	}
	var perr *fs.PathError
	if errors.As(err, &perr) {
		err = perr.Err
	}
	return fmt.Errorf("cannot be read: %w", err)
}

// nearFile names a file beside the missing one with a similar name.
func nearFile(fsys fs.FS, name string) string {
	entries, err := fs.ReadDir(fsys, path.Dir(name))
	if err != nil {
		return ""
	}
	var names []string
	for _, e := range entries {
		names = append(names, e.Name())
	}
	if n := Nearest(path.Base(name), names); n != "" {
		return fmt.Sprintf("; did you mean %q?", n)
	}
	return ""
}

// Beside resolves a file name written in this file.
func (s *Source) Beside(name string) (file, label string) {
	if path.IsAbs(name) {
		return name, name
	}
	prefix := strings.TrimSuffix(s.Label, s.Path)
	file = path.Join(path.Dir(s.Path), name)
	return file, prefix + file
}

// Place is a line of a file.
type Place struct {
	Src  *Source
	Line int
}
