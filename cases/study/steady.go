package study

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"sync"
)

// steady is a file system as it was when it was first asked: each file is read
// once, and once it is closed nothing more is, so that a case which is edited
// while its points are solved stays one case. Any number of goroutines may use
// it.
type steady struct {
	fsys fs.FS // nil: there are no files

	mu     sync.Mutex
	closed bool
	names  []string // of the files, as they were first asked for
	files  map[string]kept
	told   map[string]kept // what Stat said of names, without data
}

// kept is a file, or why it cannot be had.
type kept struct {
	info fs.FileInfo
	data []byte
	err  error
}

// mostKept is how much of one file is kept, bytes: more than a case may have,
// so that what is too large is still seen to be.
const mostKept = 64 << 20

// errLate is why a file cannot be had once the file system is closed.
var errLate = errors.New("it is not one of the files that were read when the series was planned")

func newSteady(fsys fs.FS) *steady {
	return &steady{fsys: fsys, files: map[string]kept{}, told: map[string]kept{}}
}

// close ends the reading.
func (s *steady) close() {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.closed = true
}

// Open returns a file as it was when it was first opened. A folder is given as
// it stands, for the names in it, until the file system is closed.
func (s *steady) Open(name string) (fs.File, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	k, known := s.files[name]
	if !known {
		f, err := s.open(name)
		if err == nil {
			var info fs.FileInfo
			if info, err = f.Stat(); err == nil && info.IsDir() {
				return f, nil
			}
			k = read(f, info, err)
		} else {
			k = kept{err: err}
		}
		if !s.closed {
			s.names = append(s.names, name)
			s.files[name] = k
		}
	}
	if k.err != nil {
		return nil, k.err
	}
	return &opened{bytes.NewReader(k.data), k.info}, nil
}

// open opens a file of the system below.
func (s *steady) open(name string) (fs.File, error) {
	switch {
	case s.closed:
		return nil, &fs.PathError{Op: "open", Path: name, Err: errLate}
	case s.fsys == nil:
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrNotExist}
	}
	return s.fsys.Open(name)
}

// read reads a file and closes it.
func read(f fs.File, info fs.FileInfo, err error) kept {
	defer f.Close()
	if err != nil {
		return kept{err: err}
	}
	data, err := io.ReadAll(io.LimitReader(f, mostKept))
	return kept{info, data, err}
}

// Stat tells what a file was when it was first asked for.
func (s *steady) Stat(name string) (fs.FileInfo, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	k, known := s.told[name]
	switch {
	case known:
	case s.closed:
		return nil, &fs.PathError{Op: "stat", Path: name, Err: errLate}
	case s.fsys == nil:
		return nil, &fs.PathError{Op: "stat", Path: name, Err: fs.ErrNotExist}
	default:
		k.info, k.err = fs.Stat(s.fsys, name)
		s.told[name] = k
	}
	return k.info, k.err
}

// writeTo writes all files with their names, those that cannot be had too, in
// the order in which they were asked for. A name goes without its folder, which
// may be another on the next machine.
func (s *steady) writeTo(w io.Writer) {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, name := range s.names {
		k := s.files[name]
		fmt.Fprintf(w, "%q %d %v\n%s", path.Base(name), len(k.data), k.err != nil, k.data)
	}
}

// opened is a kept file that is being read.
type opened struct {
	*bytes.Reader
	info fs.FileInfo
}

func (o *opened) Stat() (fs.FileInfo, error) { return o.info, nil }
func (o *opened) Close() error               { return nil }
