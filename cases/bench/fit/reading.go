package fit

import (
	"math"

	"archload/cases/motion"
)

// kind is what was read.
type kind int

// The kinds of reading.
const (
	weight  kind = iota // g
	tone                // of a blank, Hz
	flexure             // of a bar, by its order, Hz
	torsion             // likewise
	gauge               // mm
)

// reading is one number that was measured.
type reading struct {
	kind    kind
	setup   *setup
	order   int             // of a bar's tone of its kind, or of the gauge
	value   float64         // as read, in unit; of a gauge that is asked, its target, 0 without one
	sd      float64         // of its logarithm, 1; of a gauge in mm
	pattern *motion.Pattern // nil: not seen
	key     string          // where it stands in the file
	words   string          // what it is
	unit    string
}

// logged says whether a reading is compared by its logarithm.
func (r *reading) logged() bool { return r.kind != gauge }

// unlogged turns what is compared into the reading's unit.
func (r *reading) unlogged(y float64) float64 {
	if r.logged() {
		return math.Exp(y)
	}
	return y
}
