// Package stability tells how a design stands on the shape that its strings have given it.
//
//	cases.Case ─Solve→ Solution ─Summarize→ Report
//
// design.Solve takes the forces on the shape as carved. Solve here finds the equilibrium on the moved
// shape (second.go, by package fem/moved) and keeps the linear answer beside it (report.go). Times
// multiplies what acts on a case.
package stability
