package fit

import "archload/mesh"

// setup is one way in which a piece lies, and all that was measured on it so.
type setup struct {
	name      string     // of the piece
	key       string     // of a press, for faults; "" for others
	strip     *flatPiece // one that is narrow, whose edges' layers the shells hold too stiffly; nil for others
	make      maker
	thickness int        // of the piece, among the unknowns
	onEdge    bool       // its width does what thickness does elsewhere: the thickness drops out
	count     int        // tones to be found; 0: it was only pressed
	bar       *flatPiece // whose tones go by kind and order; nil for a blank
	presses   []press

	deep  maker  // the same piece as it strains in shear, for one that is taken for thin; nil for others
	rough *scene // on which the fit goes forward
	mend  mend   // of what is found on it
}

// press is a force and the gauges that look at what it does.
type press struct {
	at     mesh.Point
	size   [2]float64 // mm
	force  float64    // N, downward
	gauges []mesh.Point
}

// mend is what the size of the triangles takes off or adds: to the logarithm of each tone, known by its
// shape, and of each sink. Rough triangles give values whose error falls as the square of their size: on
// triangles half as large a quarter of it is left (L. F. Richardson's extrapolation).
type mend struct {
	shapes [][]float64
	tones  []float64
	shear  []float64 // what shear would change in each tone of a piece that is taken for thin; nil for others
	sinks  []float64 // 1, factors less 1
}
