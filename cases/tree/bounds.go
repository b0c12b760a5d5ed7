package tree

import (
	"bytes"
	"fmt"
)

// Bounds of a TOML file, checked before a parser keeps it all. A case needs a
// depth of six and some hundred keys; the parser's own time grows with the
// square of the keys of one table.
const (
	deepestNesting = 32     // of lists, tables and the parts of a key
	mostKeys       = 20000  // keys and headers of tables
	mostEntries    = 300000 // entries of lists
)

// beyondBounds looks for what is beyond the bounds; want is "" if nothing is.
// It knows of TOML just what strings and comments look like: a text that is
// not TOML is the parser's to refuse.
func beyondBounds(data []byte) (line int, want string) {
	var depth, parts, keys, values int
	line = 1
	for i := 0; i < len(data); i++ {
		switch c := data[i]; c {
		case '\n':
			line++
			parts = 0
		case '#':
			if n := bytes.IndexByte(data[i:], '\n'); n >= 0 {
				i += n - 1
			} else {
				return 0, ""
			}
		case '"', '\'':
			n := stringLength(data[i:], c)
			line += bytes.Count(data[i:i+n], []byte("\n"))
			i += n - 1
		case '[', '{':
			if depth++; depth == 1 {
				keys++ // a list or a header
			}
			parts = 0
		case ']', '}':
			depth, parts = max(0, depth-1), 0
		case '=':
			keys++
			parts = 0
		case ',':
			values++
			parts = 0
		case '.':
			parts++
		}
		switch {
		case depth > deepestNesting:
			return line, fmt.Sprintf("lists and tables at most %d deep", deepestNesting)
		case parts >= deepestNesting:
			return line, fmt.Sprintf("a key of at most %d parts", deepestNesting)
		case keys > mostKeys:
			return line, fmt.Sprintf("at most %d keys", mostKeys)
		case values > mostEntries:
			return line, fmt.Sprintf("at most %d values", mostEntries)
		}
	}
	return 0, ""
}

// stringLength is the length of the TOML string that data begins with, its
// quotes included: of one line, or of many between three quotes each. A string
// without an end reaches to the end of its line, or of the text.
func stringLength(data []byte, quote byte) int {
	three := []byte{quote, quote, quote}
	many := bytes.HasPrefix(data, three)
	i := 1
	if many {
		i = 3
	}
	for i < len(data) {
		switch {
		case data[i] == '\\' && quote == '"':
			i++
		case many && bytes.HasPrefix(data[i:], three):
			return i + 3
		case !many && data[i] == quote:
			return i + 1
		case !many && data[i] == '\n':
			return i
		}
		i++
	}
	return len(data)
}
