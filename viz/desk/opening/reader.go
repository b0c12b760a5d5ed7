package opening

import (
	"context"
	"errors"
	"io/fs"
	"sync"

	"archload/cases"
	"archload/cases/lesson"
	"archload/cases/shape"
	"archload/cases/tree"
)

// mostSilent is how many folders or files may be waited for at the same time: those on a disk that does not answer are
// never given up by the system.
const mostSilent = 8

// reader reads folders and files beside the window. What was asked last counts.
type reader struct {
	fsys fs.FS
	wake func() // there is news; any goroutine calls it

	mu      sync.Mutex
	waiting int // for how many the system has not answered
	folder  asked[Listing]
	file    asked[Found]
	cases   asked[listed[cases.Info]]
	lessons asked[listed[lesson.Info]]
}

// listed is what comes with the program: to list it all of it is read, which takes a while.
type listed[T any] struct {
	infos []T
	err   error
}

// once lists what comes with the program; nil: that is not known yet.
func once[T any](r *reader, a *asked[listed[T]], list func() ([]T, error)) *listed[T] {
	ask(r, a, "", listed[T]{err: errSilent}, func(context.Context) listed[T] {
		infos, err := list()
		return listed[T]{infos, err}
	})
	return answered(r, a)
}

// asked is the last question of a kind, and its answer once it is there.
type asked[T any] struct {
	what   string
	cancel context.CancelFunc
	got    *T
}

// Found is what a path leads to.
type Found struct {
	Kind   Kind
	Path   string
	Lesson *lesson.Lesson // of a lesson
	Err    error          // why it cannot be opened
}

// errSilent says that too much is waited for.
var errSilent = errors.New("is on a disk that does not answer")

// ask begins to answer a question unless it is the last one; silent is the answer when the disk is silent.
func ask[T any](r *reader, a *asked[T], what string, silent T, answer func(ctx context.Context) T) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if a.cancel != nil && a.what == what {
		return
	}
	if a.cancel != nil {
		a.cancel()
	}
	ctx, cancel := context.WithCancel(context.Background())
	*a = asked[T]{what: what, cancel: cancel}
	if r.waiting >= mostSilent {
		a.got = &silent
		return
	}
	r.waiting++
	go func() {
		got := answer(ctx)
		r.mu.Lock()
		r.waiting--
		if ctx.Err() == nil {
			a.got = &got
		}
		r.mu.Unlock()
		if r.wake != nil {
			r.wake()
		}
	}()
}

// forget lets the next question be asked anew.
func forget[T any](r *reader, a *asked[T]) {
	r.mu.Lock()
	defer r.mu.Unlock()
	if a.cancel != nil {
		a.cancel()
	}
	*a = asked[T]{}
}

// answered is the answer to the last question; nil: it is not there yet.
func answered[T any](r *reader, a *asked[T]) *T {
	r.mu.Lock()
	defer r.mu.Unlock()
	return a.got
}

// list is the listing of a folder; nil: it is not there yet.
func (r *reader) list(dir, typed string) *Listing {
	ask(r, &r.folder, dir+"\x00"+typed, Listing{Err: errSilent}, func(ctx context.Context) Listing { return List(ctx, r.fsys, dir, typed) })
	return answered(r, &r.folder)
}

// find begins to look where a path leads.
func (r *reader) find(name string) {
	forget(r, &r.file)
	ask(r, &r.file, name, Found{Path: name, Err: errSilent}, func(context.Context) Found { return Find(r.fsys, name) })
}

// found is where the path leads, once; nil: that is not known yet.
func (r *reader) found() *Found {
	f := answered(r, &r.file)
	if f != nil {
		forget(r, &r.file)
	}
	return f
}

// looking tells whether a path is being followed.
func (r *reader) looking() bool {
	r.mu.Lock()
	defer r.mu.Unlock()
	return r.file.cancel != nil
}

// Find says what a path of fsys leads to. A case is read and its shape is made, a lesson is read, with all that they
// name: what can be found wrong before anything is shown is found here.
func Find(fsys fs.FS, name string) Found {
	f := Found{Path: name}
	if fsys == nil {
		f.Err = errNoFiles
		return f
	}
	info, err := fs.Stat(fsys, name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		f.Err = errors.New("no such file or folder")
	case err != nil:
		f.Err = cause(err)
	case info.IsDir():
		f.Kind = Folder
	case !info.Mode().IsRegular():
		f.Err = errors.New("want a file, found a device or a pipe")
	default:
		f.read(fsys)
	}
	return f
}

// read reads a regular file.
func (f *Found) read(fsys fs.FS) {
	if f.Kind = kindOfFile(fsys, f.Path); f.Kind == Lesson {
		f.Lesson, f.Err = lesson.Open(fsys, f.Path)
		return
	}
	c, err := cases.Open(fsys, f.Path)
	switch {
	case f.Kind == None && err != nil:
		f.Err = errors.New("is neither a case file nor a lesson")
		return
	case err == nil:
		err = c.AtRest()
	}
	if err == nil {
		_, err = shape.NewGeometry(c)
	}
	f.Kind, f.Err = Case, err
}

// words is a fault in one line.
func words(err error) string {
	var faults tree.Faults
	if errors.As(err, &faults) && len(faults) > 0 {
		return faults[0].Error()
	}
	return err.Error()
}
