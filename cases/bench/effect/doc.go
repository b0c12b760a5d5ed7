// Package effect says what measurements did to the answers of a design: which numbers they moved, and which got surer.
//
// There are two kinds. Readings of the bench give the top's own wood (package fit); the design is solved with its card and with
// that wood, each time with what the wood leaves open of every answer (package study). Gauges that the case itself says were
// read under its load narrow the ranges further, to first order (study.Told).
package effect
