package cases

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"regexp"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

// maxFile is the largest case file or table that is read, bytes. A thousand
// times a usual one; anything larger is not a case.
const maxFile = 16 << 20

// source is one opened file.
type source struct {
	fsys  fs.FS
	path  string // in fsys
	label string // as the user would name it
	data  []byte // without byte order mark
}

// openSource reads the file that the user names: a regular file, a pipe or
// standard input. The error says what is wrong without naming it.
func openSource(fsys fs.FS, name, label string) (*source, error) {
	s := &source{fsys: fsys, path: name, label: label}
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
	s.data, err = utf8Text(data)
	return s, err
}

// openBeside reads a file that another file names, a table or a base: a
// regular file alone, since opening a pipe may wait for ever.
func openBeside(from *source, written string) (*source, error) {
	file, label := from.beside(written)
	s := &source{fsys: from.fsys, path: file, label: label}
	info, err := fs.Stat(from.fsys, file)
	switch {
	case err != nil:
		return s, openFault(from.fsys, file, err)
	case info.IsDir():
		return s, errors.New("want a file, found a folder")
	case !info.Mode().IsRegular():
		return s, errors.New("want a regular file, found a device or a pipe")
	case info.Size() > maxFile:
		return s, fmt.Errorf("want a file of at most %d MB, found %d MB", maxFile>>20, info.Size()>>20)
	}
	return openSource(from.fsys, file, label)
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
	if n := nearest(path.Base(name), names); n != "" {
		return fmt.Sprintf("; did you mean %q?", n)
	}
	return ""
}

// beside resolves a file name written in this file.
func (s *source) beside(name string) (file, label string) {
	if path.IsAbs(name) {
		return name, name
	}
	prefix := strings.TrimSuffix(s.label, s.path)
	file = path.Join(path.Dir(s.path), name)
	return file, prefix + file
}

// node is a value of a TOML file that remembers where it was written. val is a
// string, bool, int64, float64, []*node, map[string]*node, or a date.
type node struct {
	src  *source
	line int
	val  any
}

// at is the node's place.
func (n *node) at() place { return place{n.src, n.line} }

// errNoKeys is the fault of a file that says nothing.
var errNoKeys = errors.New("want a case (format = 1, title, [plate] ...), found no keys")

// parse reads a whole file. The fault, if any, is of syntax.
func parse(src *source) (*node, *FileError) {
	if line, want := beyondBounds(src.data); want != "" {
		return nil, &FileError{File: src.label, Line: line, Err: errors.New("want " + want)}
	}
	tree := map[string]any{}
	if err := toml.Unmarshal(src.data, &tree); err != nil {
		return nil, syntaxFault(src, err)
	}
	if len(tree) == 0 {
		return nil, &FileError{File: src.label, Line: 1, Err: errNoKeys}
	}
	return grow(src, tree, "", 1, positions(src.data)), nil
}

// grow pairs values with their lines.
func grow(src *source, v any, key string, line int, lines map[string]int) *node {
	if l, ok := lines[key]; ok {
		line = l
	}
	n := &node{src: src, line: line, val: v}
	switch v := v.(type) {
	case map[string]any:
		kids := make(map[string]*node, len(v))
		for k, e := range v {
			kids[k] = grow(src, e, joinKey(key, k), line, lines)
		}
		n.val = kids
	case []any:
		items := make([]*node, len(v))
		for i, e := range v {
			items[i] = grow(src, e, entryKey(key, i+1), line, lines)
		}
		n.val = items
	}
	return n
}

// syntaxFault turns go-toml's message into one line.
func syntaxFault(src *source, err error) *FileError {
	f := &FileError{File: src.label, Line: 1}
	var de *toml.DecodeError
	if errors.As(err, &de) {
		f.Line, _ = de.Position()
		f.Line = min(f.Line, len(lineStarts(src.data)))
	}
	text := strings.TrimPrefix(err.Error(), "toml: ")
	if m := regexp.MustCompile(`^key (\S+) is already defined`).FindStringSubmatch(text); m != nil {
		text = fmt.Sprintf("%s is given twice in the same table; want it once", m[1])
	}
	if hint := syntaxHint(text, lineAt(src.data, f.Line)); hint != "" {
		text += " (" + hint + ")"
	}
	f.Err = fmt.Errorf("not valid TOML: %s", text)
	return f
}

// lineAt is the text of a line, counted from 1.
func lineAt(data []byte, line int) string {
	starts := lineStarts(data)
	text := data[starts[line-1]:]
	if n := bytes.IndexByte(text, '\n'); n >= 0 {
		text = text[:n]
	}
	return string(text)
}

// syntaxHint says in a maker's words what may be wrong with a line that is not
// TOML; "" if it cannot tell.
func syntaxHint(fault, line string) string {
	_, value, _ := strings.Cut(line, "=")
	switch {
	case strings.ContainsAny(line, "“”„‘’‚«»"):
		return `text needs straight quotes, as in wood = "sitka-spruce"; a word processor makes them curly`
	case regexp.MustCompile(`^\s*[-+]?\d+,\d+\s*(#|$)`).MatchString(value):
		return "a decimal point, not a comma: 3.5"
	case regexp.MustCompile(`^\s*[A-Za-z]`).MatchString(value):
		return `text stands in quotes, as in wood = "sitka-spruce"`
	case strings.HasPrefix(fault, "expected newline"):
		return `one key to a line; a number with its unit stands in quotes, as in "3 mm"`
	case strings.HasPrefix(fault, "expected '=' after key"):
		return "a key is followed by = and its value, as in thickness = 5"
	}
	return ""
}

// what describes a value as found, for messages.
func (n *node) what() string {
	switch v := n.val.(type) {
	case string:
		return fmt.Sprintf("%q", v)
	case []*node:
		return fmt.Sprintf("a list of %d", len(v))
	case map[string]*node:
		return "a table"
	case bool, int64, float64:
		return fmt.Sprint(v)
	default:
		return fmt.Sprintf("the date or time %v", v)
	}
}
