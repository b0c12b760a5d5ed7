package opening

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"runtime"
	"strings"
	"testing"
	"testing/fstest"
	"time"
)

const aCase = "format = 1\nbase = \"first\"\n"

// Folders first, then case files and lessons, faulty ones too; nothing else, and what is hidden when it is asked for.
func TestListing(t *testing.T) {
	file := func(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }
	files := fstest.MapFS{
		"b.toml":          file(aCase),
		"Arch.toml":       file("# mine\n[plate]\nwood = \"spruce\"\n"),
		"a-broken.toml":   file("format = 1\nplate.arch.height = = 3\n"),
		"wide.toml":       file("\xff\xfe" + strings.Join(strings.Split(aCase, ""), "\x00") + "\x00"),
		"mac.toml":        file("format = 1\rbase = \"first\"\r"),
		"lesson.toml":     file("format = 1\ntitle = \"x\"\n[[step]]\ncaption = \"y\"\n"),
		"wood.toml":       file("[wood.mine]\nlike = \"spruce\"\n"),
		"bench.toml":      file("format = 1\nlike = \"sitka-spruce\"\n[blank]\nlength = 3\n"),
		"other.toml":      file("[project]\nname = \"plates\"\nbased = 1\n"),
		"notes.txt":       file(aCase),
		"zz/in.toml":      file(aCase),
		"Also/in.toml":    file(aCase),
		".hidden/in.toml": file(aCase),
		".x.toml":         file(aCase),
		"bad\nname.toml":  file(aCase),
	}
	for typed, want := range map[string]string{
		"":       "Also/ zz/ a-broken.toml Arch.toml b.toml lesson.toml mac.toml wide.toml",
		"a":      "Also/ a-broken.toml Arch.toml",
		"AR":     "Arch.toml",
		".":      ".hidden/ .x.toml",
		"nobody": "",
	} {
		l := List(t.Context(), files, ".", typed)
		var got []string
		for _, r := range l.Rows {
			name := r.Name
			if r.Kind == Folder {
				name += "/"
			}
			if (r.Kind == Lesson) != (name == "lesson.toml") {
				t.Errorf("%s is of kind %d", name, r.Kind)
			}
			got = append(got, name)
		}
		if s := strings.Join(got, " "); s != want || l.Err != nil || l.More {
			t.Errorf("%q: %s, %v, more %v; want %s", typed, s, l.Err, l.More, want)
		}
	}
}

// crowd is a folder with so many entries, none of which exists anywhere.
type crowd struct{ n, at int }

func (c *crowd) Open(name string) (fs.File, error) {
	if name == "." {
		return &crowd{n: c.n}, nil
	}
	return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrPermission}
}

func (c *crowd) Stat() (fs.FileInfo, error) { return crowdEntry{"."}, nil }
func (c *crowd) Read([]byte) (int, error)   { return 0, errors.New("a folder") }
func (c *crowd) Close() error               { return nil }

func (c *crowd) ReadDir(n int) (list []fs.DirEntry, err error) {
	for ; n > 0 && c.at < c.n; n-- {
		list = append(list, fs.FileInfoToDirEntry(crowdEntry{fmt.Sprintf("case-%09d.toml", c.at)}))
		c.at++
	}
	if len(list) == 0 {
		return nil, io.EOF
	}
	return list, nil
}

type crowdEntry struct{ name string }

func (e crowdEntry) Name() string { return e.name }
func (e crowdEntry) Size() int64  { return 1 }
func (e crowdEntry) Mode() fs.FileMode {
	if e.name == "." {
		return fs.ModeDir
	}
	return 0
}
func (e crowdEntry) ModTime() time.Time { return time.Time{} }
func (e crowdEntry) IsDir() bool        { return e.name == "." }
func (e crowdEntry) Sys() any           { return nil }

// A folder without end takes bounded time and memory, and says that it is not all.
func TestCrowdedFolder(t *testing.T) {
	var was, is runtime.MemStats
	runtime.ReadMemStats(&was)
	l := List(t.Context(), &crowd{n: 1 << 40}, ".", "")
	runtime.ReadMemStats(&is)
	if mb := (is.TotalAlloc - was.TotalAlloc) >> 20; mb > 100 || !l.More || l.Err != nil {
		t.Errorf("a folder without end: %d MB, more %v, %v", mb, l.More, l.Err)
	}
	// One of a hundred thousand is found by its name.
	if l := List(t.Context(), &crowd{n: 100_000}, ".", "case-000099999"); l.More || l.Err != nil {
		t.Errorf("one of many: %+v", l)
	}
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if l := List(ctx, &crowd{n: 1 << 40}, ".", "z"); !errors.Is(l.Err, context.Canceled) {
		t.Errorf("given up, it says %v", l.Err)
	}
}

// silent is a disk that does not answer until the test ends.
type silent struct{ until chan struct{} }

func (s silent) Open(string) (fs.File, error) { <-s.until; return nil, fs.ErrNotExist }

// Disks that do not answer are waited for beside the window, and not by more and more waits.
func TestSilentDisk(t *testing.T) {
	s := silent{make(chan struct{})}
	defer close(s.until)
	r := reader{fsys: s}
	for k := range mostSilent {
		if l := r.list(fmt.Sprint(k), ""); l != nil {
			t.Fatalf("question %d is answered by %+v", k, l)
		}
	}
	if l := r.list("one more", ""); l == nil || !errors.Is(l.Err, errSilent) {
		t.Errorf("one more question is answered by %+v", l)
	}
}
