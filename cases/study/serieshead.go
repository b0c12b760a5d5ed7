package study

import (
	"fmt"
	"slices"
)

// SeriesHead says what a series is; rows of two series whose heads differ but
// in Part and Mine must not be mixed.
type SeriesHead struct {
	Format      int        `json:"format"`
	Units       string     `json:"units"`
	Case        string     `json:"case"`
	Title       string     `json:"title"`
	Keys        []string   `json:"keys"`
	Values      [][]string `json:"values"` // of each key
	Refine      float64    `json:"refine"`
	Order       string     `json:"order,omitempty"` // second: answers are those on the moved shape
	Ahead       string     `json:"ahead,omitempty"` // seasons, years or both, where their numbers stand among the answers
	Points      int        `json:"points"`          // combinations in all
	Part        [2]int     `json:"part"`            // which of how many
	Mine        int        `json:"mine"`            // points of this part
	Program     string     `json:"program"`         // that made it, with its version
	Fingerprint string     `json:"fingerprint"`     // of program, changes and all files that a point may read (SHA-256)
}

// Same says whether two heads belong to one series, in whatever parts.
func (h SeriesHead) Same(o SeriesHead) bool {
	return h.Fingerprint == o.Fingerprint && h.Points == o.Points && h.Format == o.Format
}

// Unlike says why another head is not of the same series.
func (h SeriesHead) Unlike(o SeriesHead) string {
	switch {
	case h.Program != o.Program:
		return fmt.Sprintf("made by %s, not by %s", h.Program, o.Program)
	case h.Case != o.Case:
		return h.Case
	}
	return h.Case + ", with other values or before its files have changed"
}

// Places returns which value each key has at a point (from 1), counted from 0.
func (h SeriesHead) Places(point int) []int {
	out := make([]int, len(h.Keys))
	point--
	for k, v := range slices.Backward(h.Values) {
		out[k] = point % len(v)
		point /= len(v)
	}
	return out
}

// Words are the values of the keys at a point (from 1), as the user wrote them.
func (h SeriesHead) Words(point int) []string {
	out := make([]string, len(h.Keys))
	for k, i := range h.Places(point) {
		out[k] = h.Values[k][i]
	}
	return out
}
