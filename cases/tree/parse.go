package tree

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strings"

	"github.com/pelletier/go-toml/v2"
)

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
		f.Err = fmt.Errorf("this line cannot be read: want %s", hint)
		return f
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
		return `straight quotes around text, as in wood = "sitka-spruce"; a word processor makes them curly`
	case regexp.MustCompile(`^\s*[-+]?\d+,\d+\s*(#|$)`).MatchString(value):
		return "a decimal point, not a comma: 3.5"
	case regexp.MustCompile(`^\s*[A-Za-z]`).MatchString(value):
		return `text in quotes, as in wood = "sitka-spruce"`
	case strings.HasPrefix(fault, "expected newline"):
		return `one key to a line; a number with its unit stands in quotes, as in "3 mm"`
	case strings.HasPrefix(fault, "expected '=' after key"):
		return "a key followed by = and its value, as in thickness = 5"
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
