// Package bench reads a bench file: what was measured on one piece of wood.
//
//	bytes ─Load→ File: [blank], [[bar]], [[tone]], [[press]], and the card that the wood should be like
//
// A piece that was weighed, tapped and pressed tells its own constants; package fit finds
// them. Keys are read as those of a case file are (package tree): a fault names file, line and key.
//
// file.go has the keys, load.go reads them and finds the card, check.go says what contradicts
// and what is likely a slip of the pen (a unit, a decimal point).
//
// Lengths are mm, weights g, forces N, tones Hz. On a piece x runs across, y along its length, from
// its middle; on a top that a case describes they are the case's.
package bench
