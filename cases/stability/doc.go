// Package stability tells how a design stands on the shape that its strings have given it.
//
//	cases.Case ─Solve→ Solution ─Summarize→ Report
//	cases.Case ─Find→ Giving ─SummarizeGiving→ GivingReport
//
// design.Solve takes the forces on the shape as carved. Solve here finds the equilibrium on the moved
// shape (second.go, by package fem/moved) and keeps the linear answer beside it (report.go). Find tells
// at how many times its load the strung top would lose its stability by linear theory (giveway.go, by
// package fem/buckling). Times multiplies what acts on a case.
package stability
