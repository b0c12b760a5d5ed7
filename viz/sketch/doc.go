// Package sketch draws what no picture of a design can show, because it is too small, lies inside the wood or takes
// time: an edge that turns or gives way (edge.go), a neck that turns with its block (neck.go), a bridge that leans
// (lean.go), strings over the board (octave.go), a bridge that is driven (driven.go), a string and a top that swing
// (string.go, swung.go), tones on one line (tones.go), fibres that roll over each other (fibres.go), wood that dries
// (shrunk.go), a cloth that hangs (cloth.go), a piece that is squeezed and pulled (faces.go). Directions are true,
// sizes are not, and the sketch says so; the numbers stand in the words beside.
package sketch
