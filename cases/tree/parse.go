package tree

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

// Node is a value of a TOML file that remembers where it was written. val is a
// string, bool, int64, float64, []*node, map[string]*node, or a date.
type Node struct {
	Src  *Source
	Line int
	Val  any
}

// At is the node's place.
func (n *Node) At() Place { return Place{n.Src, n.Line} }

// ErrNoKeys is the fault of a file that says nothing.
var ErrNoKeys = errors.New("want a case (format = 1, title, [plate] ...), found no keys")

// Parse reads a whole file. The fault, if any, is of syntax.
func Parse(src *Source) (*Node, *FileError) {
	if line, want := beyondBounds(src.Data); want != "" {
		return nil, &FileError{File: src.Label, Line: line, Err: errors.New("want " + want)}
	}
	tree := map[string]any{}
	if err := toml.Unmarshal(src.Data, &tree); err != nil {
		return nil, syntaxFault(src, err)
	}
	if len(tree) == 0 {
		return nil, &FileError{File: src.Label, Line: 1, Err: ErrNoKeys}
	}
	return Grow(src, tree, "", 1, Positions(src.Data)), nil
}

// Grow pairs values with their lines.
func Grow(src *Source, v any, key string, line int, lines map[string]int) *Node {
	if l, ok := lines[key]; ok {
		line = l
	}
	n := &Node{Src: src, Line: line, Val: v}
	switch v := v.(type) {
	case map[string]any:
		kids := make(map[string]*Node, len(v))
		for k, e := range v {
			kids[k] = Grow(src, e, JoinKey(key, k), line, lines)
		}
		n.Val = kids
	case []any:
		items := make([]*Node, len(v))
		for i, e := range v {
			items[i] = Grow(src, e, EntryKey(key, i+1), line, lines)
		}
		n.Val = items
	}
	return n
}

// syntaxFault turns go-toml's message into one line.
func syntaxFault(src *Source, err error) *FileError {
	f := &FileError{File: src.Label, Line: 1}
	var de *toml.DecodeError
	if errors.As(err, &de) {
		f.Line, _ = de.Position()
		f.Line = min(f.Line, len(LineStarts(src.Data)))
	}
	text := strings.TrimPrefix(err.Error(), "toml: ")
	if m := regexp.MustCompile(`^key (\S+) is already defined`).FindStringSubmatch(text); m != nil {
		text = fmt.Sprintf("%s is given twice in the same table; want it once", m[1])
	}
	if hint := syntaxHint(text, lineAt(src.Data, f.Line)); hint != "" {
		text += " (" + hint + ")"
	}
	f.Err = fmt.Errorf("not valid TOML: %s", text)
	return f
}

// lineAt is the text of a line, counted from 1.
func lineAt(data []byte, line int) string {
	starts := LineStarts(data)
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

// What describes a value as found, for messages.
func (n *Node) What() string {
	switch v := n.Val.(type) {
	case string:
		return fmt.Sprintf("%q", v)
	case []*Node:
		return fmt.Sprintf("a list of %d", len(v))
	case map[string]*Node:
		return "a table"
	case bool, int64, float64:
		return fmt.Sprint(v)
	default:
		return fmt.Sprintf("the date or time %v", v)
	}
}
