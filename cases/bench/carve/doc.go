// Package carve sets a plate that is being carved beside what it shall become: where to take wood off and how much,
// where it is too thin already, what it weighs, how it swings and what it would do under strings now and then.
//
//	bench.File.Carving, the fitted wood ─Look→ Report
//
// The plate as it is now is the target with the caliper's readings in place of its graduation: fitted as any measured
// thickness of a case is, nowhere thinner than the thinnest reading and level beyond the last one (package shape).
package carve
