package tree

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
)

// FaultLog gathers faults and knows where each key was set.
type FaultLog struct {
	Order   []*Source // files in the order of opening
	Places  map[string]Place
	Faults  []fault
	told    map[string]bool // faults by their text, so that each is told once
	faulty  map[string]bool // keys that are faulty themselves
	tainted map[string]bool // keys that are faulty or hold one that is
	Notes   []*FileError    // admitted, but to be told
}

// fault is a FileError with its file's rank.
type fault struct {
	at  Place
	err *FileError
}

// NewFaultLog returns an empty log.
func NewFaultLog() *FaultLog {
	return &FaultLog{Places: map[string]Place{}, told: map[string]bool{}, faulty: map[string]bool{}, tainted: map[string]bool{}}
}

// mostFaults is how many faults are told of one case.
const mostFaults = 100

// full tells that no further fault is listed.
func (r *FaultLog) full() bool { return len(r.Faults) > mostFaults }

// spoil marks a key as faulty.
func (r *FaultLog) spoil(key string) {
	if key == "" {
		return
	}
	r.faulty[key] = true
	for k := key; k != "" && !r.tainted[k]; k = parentKey(k) {
		r.tainted[k] = true
	}
}

// Add records a fault at a place.
func (r *FaultLog) Add(at Place, key string, err error) {
	e := &FileError{File: at.Src.Label, Line: at.Line, Key: key, Err: err}
	text := e.Error()
	if r.told[text] || r.full() {
		return
	}
	r.spoil(key)
	r.told[text] = true
	if len(r.Faults) == mostFaults {
		e = &FileError{File: at.Src.Label, Line: at.Line, Err: fmt.Errorf("too many faults; want these %d mended first", mostFaults)}
	}
	r.Faults = append(r.Faults, fault{at, e})
}

// tell adds to the faults of a table which key asked for it.
func (r *FaultLog) tell(table *Source, by *Node, key string) {
	for i := range r.Faults {
		if f := &r.Faults[i]; f.at.Src == table && f.err.For == "" {
			f.err.For = fmt.Sprintf("%s:%d: %s", by.Src.Label, by.Line, key)
			return
		}
	}
}

// AddKey records a fault at a key, or at the nearest key above it that is in
// the file.
func (r *FaultLog) AddKey(key, format string, args ...any) {
	r.Add(r.Find(key), key, fmt.Errorf(format, args...))
}

// Find returns where a key, or the nearest key above it, was set.
func (r *FaultLog) Find(key string) Place {
	for {
		if p, ok := r.Places[key]; ok {
			return p
		}
		if key == "" {
			return Place{Src: r.Order[0], Line: 1}
		}
		key = parentKey(key)
	}
}

// Clean reports whether none of the keys, nor a table that holds them, nor
// anything below them is faulty.
func (r *FaultLog) Clean(keys ...string) bool {
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

// Related tells whether one of two keys is, or lies below, the other.
func Related(k string) func(key string) bool {
	return func(key string) bool { return IsWithin(key, k) || key != "" && IsWithin(k, key) }
}

// IsWithin reports whether a key is, or lies below, another.
func IsWithin(key, above string) bool {
	return key == above || strings.HasPrefix(key, above+".") || strings.HasPrefix(key, above+"[")
}

// IsSet reports whether a key stands in a file.
func (r *FaultLog) IsSet(key string) bool {
	_, ok := r.Places[key]
	return ok
}

// Err returns nil or the sorted Faults.
func (r *FaultLog) Err() error {
	if len(r.Faults) == 0 {
		return nil
	}
	rank := map[*Source]int{}
	for i, s := range r.Order {
		rank[s] = i
	}
	slices.SortStableFunc(r.Faults, func(a, b fault) int {
		return cmp.Or(cmp.Compare(rank[a.at.Src], rank[b.at.Src]), cmp.Compare(a.at.Line, b.at.Line), cmp.Compare(a.err.Key, b.err.Key))
	})
	out := make(Faults, len(r.Faults))
	for i, f := range r.Faults {
		out[i] = f.err
	}
	return out
}

// Spot writes a place in plan to the hundredth of a millimetre.
func Spot(p [2]float64) string {
	round := func(x float64) float64 { return math.Round(100*x)/100 + 0 }
	return fmt.Sprintf("(%g, %g) mm", round(p[0]), round(p[1]))
}

// parentKey strips the last part of a key: brace[2].height to brace[2] to
// brace to nothing.
func parentKey(key string) string {
	return key[:max(strings.LastIndexAny(key, ".["), 0)]
}
