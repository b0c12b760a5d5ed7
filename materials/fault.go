package materials

import (
	"fmt"
	"slices"
	"strings"
)

// Fault is one thing wrong with a wood: which key, and what was found and
// wanted.
type Fault struct {
	Key  string // the key as in a card file, "nuRT"; empty if the fault has none
	Line int    // 1-based line in the card file; 0 if not known
	Msg  string // what was found and what is wanted
}

// Error reads "nuRT: 1.9 makes the compliance indefinite; want ...".
func (f Fault) Error() string {
	var b strings.Builder
	if f.Line > 0 {
		fmt.Fprintf(&b, "line %d: ", f.Line)
	}
	if f.Key != "" {
		fmt.Fprintf(&b, "%s: ", f.Key)
	}
	b.WriteString(f.Msg)
	return b.String()
}

// Faults is every fault of one wood, in the order of Keys. It is never empty
// when returned as an error.
type Faults []Fault

// Error gives one fault a line.
func (fs Faults) Error() string {
	lines := make([]string, len(fs))
	for i, f := range fs {
		lines[i] = f.Error()
	}
	return strings.Join(lines, "\n")
}

// Unwrap gives the single faults to errors.Is and errors.As.
func (fs Faults) Unwrap() []error {
	errs := make([]error, len(fs))
	for i, f := range fs {
		errs[i] = f
	}
	return errs
}

// err returns nil for no fault.
func (fs Faults) err() error {
	if len(fs) == 0 {
		return nil
	}
	return fs
}

// have reports whether the key has a fault already.
func (fs Faults) have(key string) bool {
	return slices.ContainsFunc(fs, func(f Fault) bool { return f.Key == key })
}
