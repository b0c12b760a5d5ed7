package cases

import (
	"bytes"
	"errors"
	"fmt"
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

// openSource reads a file; the error says what is wrong without naming it.
func openSource(fsys fs.FS, name, label string) (*source, error) {
	s := &source{fsys: fsys, path: name, label: label}
	data, err := fs.ReadFile(fsys, name)
	switch {
	case errors.Is(err, fs.ErrNotExist), errors.Is(err, fs.ErrInvalid):
		return s, fmt.Errorf("no such file%s", nearFile(fsys, name))
	case err != nil:
		var perr *fs.PathError
		if errors.As(err, &perr) {
			err = perr.Err
		}
		return s, fmt.Errorf("cannot be read: %w", err)
	case len(data) > maxFile:
		return s, fmt.Errorf("want a file of at most %d MB, found %d MB", maxFile>>20, len(data)>>20)
	}
	s.data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	return s, nil
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
	if strings.HasPrefix(text, "expected newline") {
		text += ` (one key to a line; a number with its unit stands in quotes, as in "3 mm")`
	}
	f.Err = fmt.Errorf("not valid TOML: %s", text)
	return f
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
