package tree

import (
	"bytes"
	"fmt"
	"sort"
	"strconv"
	"strings"

	"github.com/pelletier/go-toml/v2/unstable"
)

// Positions returns the line (1-based) of every key and array entry of a TOML
// document that is known to be well formed. Keys read as in a FileError:
// "brace[2].height[1][2]", counting from 1.
//
// This file alone uses go-toml's low-level parser, which carries no promise of
// compatibility.
func Positions(data []byte) map[string]int {
	l := locator{lines: map[string]int{}, counts: map[string]int{}, starts: LineStarts(data)}
	l.parser.Reset(data)
	table := ""
	for l.parser.NextExpression() {
		e := l.parser.Expression()
		switch e.Kind {
		case unstable.Table:
			table = l.header(e, false)
		case unstable.ArrayTable:
			table = l.header(e, true)
		case unstable.KeyValue:
			l.keyValue(e, table)
		}
	}
	return l.lines
}

// locator collects lines while it walks the document.
type locator struct {
	parser unstable.Parser
	lines  map[string]int
	counts map[string]int // entries so far of each array of tables
	starts []int          // byte offset of each line
}

// header notes a [table] or [[array]] header and returns its path.
func (l *locator) header(e *unstable.Node, array bool) string {
	path := ""
	for it := e.Key(); it.Next(); {
		n := it.Node()
		path = JoinKey(path, string(n.Data))
		l.note(path, l.line(n, 1))
		if array && it.IsLast() {
			l.counts[path]++
		}
		if c := l.counts[path]; c > 0 {
			path = EntryKey(path, c)
			l.note(path, l.line(n, 1))
		}
	}
	return path
}

// keyValue notes a key and everything in its value.
func (l *locator) keyValue(e *unstable.Node, table string) {
	path, line := table, 1
	for it := e.Key(); it.Next(); {
		n := it.Node()
		path = JoinKey(path, string(n.Data))
		line = l.line(n, line)
		l.note(path, line)
	}
	l.value(e.Value(), path, line)
}

// value notes the entries of arrays and inline tables.
func (l *locator) value(n *unstable.Node, path string, line int) {
	i := 0
	for it := n.Children(); it.Next(); {
		c := it.Node()
		switch {
		case n.Kind == unstable.InlineTable && c.Kind == unstable.KeyValue:
			l.keyValue(c, path)
		case n.Kind == unstable.Array && c.Kind != unstable.Comment:
			i++
			at := l.line(firstLeaf(c), line)
			l.note(EntryKey(path, i), at)
			l.value(c, EntryKey(path, i), at)
		}
	}
}

// firstLeaf descends to the first node that has its own text.
func firstLeaf(n *unstable.Node) *unstable.Node {
	for n.Raw.Length == 0 && n.Child().Valid() {
		n = n.Child()
	}
	return n
}

// line returns the line a node begins on, or the one given if the parser did
// not keep its text.
func (l *locator) line(n *unstable.Node, otherwise int) int {
	if n.Raw.Length == 0 {
		return otherwise
	}
	return sort.SearchInts(l.starts, int(n.Raw.Offset)+1)
}

// note keeps the first line given for a key.
func (l *locator) note(path string, line int) {
	if _, ok := l.lines[path]; !ok {
		l.lines[path] = line
	}
}

// LineStarts returns the offset of the first byte of every line.
func LineStarts(data []byte) []int {
	starts := []int{0}
	for i, n := 0, len(data); i < n; {
		j := bytes.IndexByte(data[i:], '\n')
		if j < 0 {
			break
		}
		i += j + 1
		starts = append(starts, i)
	}
	return starts
}

// JoinKey adds a key to a path, quoted if it is not a bare key.
func JoinKey(path, key string) string {
	if key == "" || strings.ContainsFunc(key, func(r rune) bool {
		return r != '-' && r != '_' && (r < '0' || r > '9') && (r < 'A' || r > 'Z') && (r < 'a' || r > 'z')
	}) {
		key = strconv.Quote(key)
	}
	if path == "" {
		return key
	}
	return path + "." + key
}

// EntryKey adds an entry number, counted from 1, to a path.
func EntryKey(path string, i int) string { return fmt.Sprintf("%s[%d]", path, i) }
