// Package sketch draws what no picture of a design can show, because it is too small or lies inside the wood: fibres
// that roll over each other (fibres.go), a neck that turns with its block (neck.go), a bridge that leans (lean.go).
// Directions are true, sizes are not, and the sketch says so; the numbers stand in the words that are written beside.
package sketch
