package cases

import (
	"cmp"
	"fmt"
	"math"
	"slices"
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
}

// Error reads like a compiler message:
// a.toml:14: plate.thickness: want > 0 mm, found -3.
func (e *FileError) Error() string {
	if e.Key == "" {
		return printable(fmt.Sprintf("%s:%d: %v", e.File, e.Line, e.Err))
	}
	return printable(fmt.Sprintf("%s:%d: %s: %v", e.File, e.Line, e.Key, e.Err))
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

// place is a line of a file.
type place struct {
	src  *source
	line int
}

// faultLog gathers faults and knows where each key was set.
type faultLog struct {
	order   []*source // files in the order of opening
	places  map[string]place
	faults  []fault
	told    map[string]bool // faults by their text, so that each is told once
	faulty  map[string]bool // keys that are faulty themselves
	tainted map[string]bool // keys that are faulty or hold one that is
	notes   []*FileError    // admitted, but to be told
}

// fault is a FileError with its file's rank.
type fault struct {
	at  place
	err *FileError
}

func newFaultLog() *faultLog {
	return &faultLog{places: map[string]place{}, told: map[string]bool{}, faulty: map[string]bool{}, tainted: map[string]bool{}}
}

// mostFaults is how many faults are told of one case.
const mostFaults = 100

// full tells that no further fault is listed.
func (r *faultLog) full() bool { return len(r.faults) > mostFaults }

// spoil marks a key as faulty.
func (r *faultLog) spoil(key string) {
	if key == "" {
		return
	}
	r.faulty[key] = true
	for k := key; k != "" && !r.tainted[k]; k = parentKey(k) {
		r.tainted[k] = true
	}
}

// add records a fault at a place.
func (r *faultLog) add(at place, key string, err error) {
	e := &FileError{File: at.src.label, Line: at.line, Key: key, Err: err}
	text := e.Error()
	if r.told[text] || r.full() {
		return
	}
	r.spoil(key)
	r.told[text] = true
	if len(r.faults) == mostFaults {
		e = &FileError{File: at.src.label, Line: at.line, Err: fmt.Errorf("too many faults; want these %d mended first", mostFaults)}
	}
	r.faults = append(r.faults, fault{at, e})
}

// addKey records a fault at a key, or at the nearest key above it that is in
// the file.
func (r *faultLog) addKey(key, format string, args ...any) {
	r.add(r.find(key), key, fmt.Errorf(format, args...))
}

// find returns where a key, or the nearest key above it, was set.
func (r *faultLog) find(key string) place {
	for {
		if p, ok := r.places[key]; ok {
			return p
		}
		if key == "" {
			return place{src: r.order[0], line: 1}
		}
		key = parentKey(key)
	}
}

// clean reports whether none of the keys, nor a table that holds them, nor
// anything below them is faulty.
func (r *faultLog) clean(keys ...string) bool {
	for _, k := range keys {
		if r.tainted[k] {
			return false
		}
		for above := k; above != ""; above = parentKey(above) {
			if r.faulty[above] {
				return false
			}
		}
	}
	return true
}

// related tells whether one of two keys is, or lies below, the other.
func related(k string) func(key string) bool {
	return func(key string) bool { return isWithin(key, k) || key != "" && isWithin(k, key) }
}

// isWithin reports whether a key is, or lies below, another.
func isWithin(key, above string) bool {
	return key == above || strings.HasPrefix(key, above+".") || strings.HasPrefix(key, above+"[")
}

// isSet reports whether a key stands in a file.
func (r *faultLog) isSet(key string) bool {
	_, ok := r.places[key]
	return ok
}

// err returns nil or the sorted Faults.
func (r *faultLog) err() error {
	if len(r.faults) == 0 {
		return nil
	}
	rank := map[*source]int{}
	for i, s := range r.order {
		rank[s] = i
	}
	slices.SortStableFunc(r.faults, func(a, b fault) int {
		return cmp.Or(cmp.Compare(rank[a.at.src], rank[b.at.src]), cmp.Compare(a.at.line, b.at.line), cmp.Compare(a.err.Key, b.err.Key))
	})
	out := make(Faults, len(r.faults))
	for i, f := range r.faults {
		out[i] = f.err
	}
	return out
}

// spot writes a place in plan to the hundredth of a millimetre.
func spot(p [2]float64) string {
	round := func(x float64) float64 { return math.Round(100*x)/100 + 0 }
	return fmt.Sprintf("(%g, %g) mm", round(p[0]), round(p[1]))
}

// parentKey strips the last part of a key: brace[2].height to brace[2] to
// brace to nothing.
func parentKey(key string) string {
	return key[:max(strings.LastIndexAny(key, ".["), 0)]
}
