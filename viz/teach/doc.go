// Package teach leads through a lesson before the window: where it stands and what
// the window shall show there (walk.go), the words of a step with the way on
// (caption.go), and a step's numbers as bars (bars.go).
//
// A step may ask before it answers: its picture is then bare until a place is clicked or the
// next key is pressed, and what was clicked is marked with what is read there.
package teach
