// Package quantity is the one table of the numbers of an answer: what each is
// called, its unit and digits, what it means, and where it is shown.
//
// compare, series, report, window, lessons and the summary all read from it; a
// new answer is one row in quantities.go (and a field of answer.Report, if it is
// not yet in it).
package quantity

import (
	"math"

	"archload/cases/answer"
)

// Quantity is one number of an answer: what it is called, how it is printed,
// what it means, and where it is shown. All lists them; whatever
// shows numbers, to people or to programs, takes them from there, so that one
// number has one name, one unit and as many digits everywhere.
type Quantity struct {
	Key    string // for programs: "bridge_sink"
	Name   string // for people: "bridge sinks"
	Short  string // for a narrow column: "sinks"; "" if the name serves there
	Unit   string // mm, N, g, deg, MPa, N mm, N per N, %, % of load, Hz, or dB
	Digits int    // behind the point, as it is worth printing

	Plus  string // what a positive number means; "" if it cannot be negative
	Minus string // what a negative one means, if the name does not say which way it goes
	Note  string // what must be known to compare it; "" for nothing
	Peak  bool   // the greatest of a field: its error falls slowly with the mesh
	Event bool   // a load that may never be reached
	Feet  int    // it is of a bridge on so many feet, 1 or 2, and of no other; 0: of any
	Means string // what it tells a maker, as a sentence

	Compare Heading // where it stands in a comparison
	Series  int     // which column of a series it is, from 1; the first MainColumns are drawn; 0: none
	Column  string  // name of that column, with its unit: "bridge_sink_mm"
	Report  bool    // it stands in the printed report, with its ranges
	Window  bool    // it stands in the window's table of the load shown: Get asks for Report.Bridge alone
	Summary string  // the heading of the summary that it stands under; "" for none

	Get func(*answer.Report) answer.Num // the number, in Unit; None if the answer has none
}

// Heading is where a quantity stands in a comparison.
type Heading int

// The headings of a comparison.
const (
	NotCompared  Heading = iota
	UnderDecides         // what decides between two designs
	UnderRest            // where the load goes, and the rest
	UnderMesh            // about the mesh: a range itself, without ranges or differences
)

// Nought says whether a number rounds to zero as it is printed.
func (q Quantity) Nought(v answer.Num) bool { return math.Abs(float64(v)) < 0.5*math.Pow10(-q.Digits) }

// Title is the name with what must be known beside it: what plus means, or how
// to compare it.
func (q Quantity) Title() string {
	switch {
	case q.Minus != "":
		return q.Name + " (" + q.Plus + " +)"
	case q.Note != "":
		return q.Name + " (" + q.Note + ")"
	}
	return q.Name
}

// Brief is the name for a narrow column.
func (q Quantity) Brief() string {
	if q.Short != "" {
		return q.Short
	}
	return q.Name
}

// OfGauge is how far gauge i sinks.
func OfGauge(i int, name string) Quantity {
	return Quantity{Key: "gauge_sink", Name: name + " sinks", Unit: "mm", Digits: 3, Plus: "down",
		Get: func(r *answer.Report) answer.Num { return answer.Num(r.Gauges[i].Sink) }}
}

// Applies says whether an answer can have the quantity: a continuous foot has
// thirds, two feet have heels.
func (q Quantity) Applies(r *answer.Report) bool {
	return q.Feet == 0 || r.Bridge != nil && r.Bridge.TwoFeet() == (q.Feet == 2)
}
