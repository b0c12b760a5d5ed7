package tree

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
)

// FileError is a fault at one key of a case file or one cell of a table.
type FileError struct {
	File string // as the user would name it
	Line int    // 1-based
	Key  string // "bridge.relief.depth", "brace[1].height" (the first brace is 1), or a column of a CSV file
	Err  error
	For  string // what asked for the table, "a.toml:7: plate.outline"; "" for a case file
}

// Error reads like a compiler message:
// a.toml:14: plate.thickness: want > 0 mm, found -3.
func (e *FileError) Error() string {
	key, asked := "", ""
	if e.Key != "" {
		key = e.Key + ": "
	}
	if e.For != "" {
		asked = " (" + e.For + " asks for this table)"
	}
	return printable(fmt.Sprintf("%s:%d: %s%v%s", e.File, e.Line, key, e.Err, asked))
}

// printable escapes control characters, which a terminal would obey: names of
// files and columns are whatever their author made them.
func printable(text string) string {
	if !strings.ContainsFunc(text, unicode.IsControl) {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		if unicode.IsControl(r) {
			b.WriteString(strings.Trim(strconv.QuoteRune(r), "'"))
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}

// Unwrap returns the fault without its place.
func (e *FileError) Unwrap() error { return e.Err }

// Faults are all faults of a case, file by file in the order they were opened
// (the case first, then its base and its tables), each file by line.
type Faults []*FileError

// Error lists the faults, one a line.
func (f Faults) Error() string {
	lines := make([]string, len(f))
	for i, e := range f {
		lines[i] = e.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap returns the faults one by one, as errors.Join would.
func (f Faults) Unwrap() []error {
	errs := make([]error, len(f))
	for i, e := range f {
		errs[i] = e
	}
	return errs
}
