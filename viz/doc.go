// Package viz makes the pictures of a solved design: which pages there are, what
// stands on them, and in what words they are explained. It reads solutions of
// package cases/design, reports of cases/answer and what cases/study makes of many,
// and hands plain numbers to package figure.
//
//	scale    values to bands, colours and words
//	canvas   the page: text, pens, axes, captions; PNG, SVG, PDF
//	figure   the kinds of picture, from plain numbers
//	viz      the pages of a solution, a comparison, a relief trial, a series
//	sheet    drawings in true size for the bench
//	report   the printed report
//
// and beside them the window: scene (space), panel (controls), desk (the window
// without a display), window (the display).
//
// A page of a solved case is a row of views in pages.go and the function that
// draws it. Every picture fits A4 and Letter paper.
package viz
