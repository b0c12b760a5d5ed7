// Package answer turns a solution into numbers that a maker asks for: the
// [Report], which is the JSON of archload solve.
//
//	design.Solution ─Summarize→ Report ─quantity.Quantity→ a number with name, unit, digits
//
// What stands behind the numbers, file by file: strength.go (Hoffman's
// criterion and shears over circles of one thickness; O. Hoffman, J. Composite
// Materials 1, 1967, 200), pressure.go (foot pressure over 8 mm), glue.go
// (shear and peel of glue lines over 10 mm), flow.go (where the load goes),
// fields.go (values at triangles for pictures), bench.go (gauges with
// readings), look.go (what can be said without solving).
//
// Sink is positive down, stress in tension, push toward the neck; lengths are
// mm, forces N, stresses MPa, masses g, angles degrees. What cannot be had is a
// [Num] that is not a number, and null in JSON. Words for people are not made
// here: see package say.
package answer
