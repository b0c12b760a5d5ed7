package opening

import (
	"bytes"
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Kind says what a row of a folder opens.
type Kind uint8

// The kinds. What is of no kind is not listed.
const (
	None Kind = iota
	Folder
	Case
	Lesson
)

// Row is an entry of a folder that can be opened.
type Row struct {
	Name string
	Kind Kind
}

// Listing is what of a folder can be opened and begins as was typed.
type Listing struct {
	Rows []Row // folders first, each kind by name; at most mostRows of each
	More bool  // there may be others: the folder is too large for all to be listed
	Err  error // why there are none; nil: it could be read
}

// Bounds of what is read of a folder.
const (
	mostEntries = 200_000 // names looked at
	mostKept    = 50_000  // names that fit what is typed
	mostRows    = 200     // rows of folders, and of files
	mostOpened  = 1500    // files of which the head is read, and links that are followed
	headBytes   = 64 << 10
	batch       = 1000 // names asked for at a time
)

// List reads the folder dir of fsys: the folders, case files and lessons in it whose names begin as typed, whatever the
// case of the letters. Names that begin with a dot are listed once the dot is typed.
func List(ctx context.Context, fsys fs.FS, dir, typed string) Listing {
	names, more, err := entries(ctx, fsys, dir, typed)
	if err != nil {
		return Listing{Err: err}
	}
	slices.SortFunc(names, func(a, b Row) int {
		return cmp.Or(cmp.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)), cmp.Compare(a.Name, b.Name))
	})
	l := Listing{More: more}
	var files []Row
	opened := 0
	for _, e := range names {
		full := len(files) == mostRows || opened == mostOpened
		if e.Kind != Folder && (full || ctx.Err() != nil) {
			l.More = true
			continue
		}
		if e.Kind != Folder {
			opened++
			e.Kind = kindOf(fsys, path.Join(dir, e.Name))
		}
		switch {
		case e.Kind == None:
		case e.Kind != Folder:
			files = append(files, e)
		case len(l.Rows) == mostRows:
			l.More = true
		default:
			l.Rows = append(l.Rows, e)
		}
	}
	l.Rows = append(l.Rows, files...)
	return l
}

// errNoFiles says that there is nothing to read files from.
var errNoFiles = errors.New("has no files to read")

// entries are the names of a folder that may be worth a look: folders, and what may be a case, a lesson or a link to
// either, whose kind is not yet known. More: there are others.
func entries(ctx context.Context, fsys fs.FS, dir, typed string) (rows []Row, more bool, err error) {
	if fsys == nil {
		return nil, false, errNoFiles
	}
	info, err := fs.Stat(fsys, dir) // opening a pipe might never end
	if err != nil {
		return nil, false, cause(err)
	}
	if !info.IsDir() {
		return nil, false, errors.New("is not a folder")
	}
	f, err := fsys.Open(dir)
	if err != nil {
		return nil, false, cause(err)
	}
	defer f.Close()
	d, ok := f.(fs.ReadDirFile)
	if !ok {
		return nil, false, errors.New("is a folder that cannot be listed")
	}
	for seen := 0; ; {
		list, err := d.ReadDir(batch)
		for _, e := range list {
			if kind, ok := worth(e, typed); ok {
				rows = append(rows, Row{e.Name(), kind})
			}
		}
		seen += len(list)
		switch {
		case errors.Is(err, io.EOF) || err == nil && len(list) == 0:
			return rows, false, nil
		case err != nil:
			return nil, false, cause(err)
		case ctx.Err() != nil:
			return nil, false, ctx.Err()
		case seen >= mostEntries || len(rows) >= mostKept:
			return rows, true, nil
		}
	}
}

// worth tells whether an entry may be listed, and as what, as far as its name and type say it.
func worth(e fs.DirEntry, typed string) (Kind, bool) {
	name := e.Name()
	if !utf8.ValidString(name) || strings.ContainsFunc(name, unicode.IsControl) {
		return None, false // it cannot be typed
	}
	if len(name) < len(typed) || !strings.EqualFold(name[:len(typed)], typed) || typed == "" && name[0] == '.' {
		return None, false
	}
	switch t := e.Type(); {
	case t.IsDir():
		return Folder, true
	case t.IsRegular():
		return None, path.Ext(name) == ".toml"
	default:
		return None, t&fs.ModeSymlink != 0
	}
}

// kindOf says what a file or a link opens, by what it is and by the head of the file.
func kindOf(fsys fs.FS, name string) Kind {
	info, err := fs.Stat(fsys, name)
	switch {
	case err != nil:
		return None
	case info.IsDir():
		return Folder
	case !info.Mode().IsRegular() || path.Ext(name) != ".toml":
		return None
	}
	return kindOfFile(fsys, name)
}

// kindOfFile tells cases and lessons by the head of a regular file.
func kindOfFile(fsys fs.FS, name string) Kind {
	f, err := fsys.Open(name)
	if err != nil {
		return None
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, headBytes))
	if err != nil {
		return None
	}
	return kindOfText(data)
}

// kindOfText tells cases and lessons by the keys that each must have, line by line: files with a fault in them, too,
// and such in UTF-16, of which the zeros are dropped.
func kindOfText(data []byte) Kind {
	text := string(bytes.ReplaceAll(data, []byte{0}, nil))
	for line := range strings.FieldsFuncSeq(text, func(r rune) bool { return r == '\n' || r == '\r' }) {
		line = strings.TrimLeft(line, " \t\ufeff\ufffd")
		key := strings.TrimLeft(line, "[ \t\"'")
		word := key[:len(key)-len(strings.TrimLeft(key, "abcdefghijklmnopqrstuvwxyz_"))]
		after := strings.TrimLeft(key[len(word):], "\"' \t")
		if after == "" || !strings.ContainsAny(after[:1], "=.]") {
			continue
		}
		switch {
		case word == "step":
			return Lesson
		case word == "plate", word == "base" && !strings.HasPrefix(line, "["):
			return Case
		}
	}
	return None
}

// cause is why the system refuses, without the path, which the hand sees.
func cause(err error) error {
	var p *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return errors.New("is not there")
	case errors.As(err, &p):
		return fmt.Errorf("cannot be read: %w", p.Err)
	}
	return err
}
