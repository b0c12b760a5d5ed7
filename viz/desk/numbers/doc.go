// Package numbers writes the numbers of what is shown beside the drawing: those
// at the load that is shown and at full load, each with how sure it is, gauges and
// pins, warnings, and who presses and who holds.
//
// side.go is the tables, margin.go the ± of a number, trust.go what is warned of and
// how far to trust the rest, ways.go the forces, whose sums close.
package numbers
