// Package report writes the printed report of one design or several: one HTML
// file that needs nothing beside it, with the answers in plain words and their
// ranges, pictures, tables, checks, what is left out, and the case itself.
//
// report.html is the page, report.css its style; report.go fills it, design.go
// makes the sections of one design, side.go those of several, back.go what
// stands last; words.go says the numbers.
package report
