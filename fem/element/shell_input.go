package element

import "archload/materials"

// ShellInput describes one flat shell triangle of constant thickness.
type ShellInput struct {
	X [3][3]float64 // corners on the mid-surface, mm; anticlockwise seen from the outer side
	// N holds the unit normals of the true, curved mid-surface at the corners
	// (outward, 1). A zero vector means the facet's own normal: use that at
	// creases, hole edges and joints between plates.
	N    [3][3]float64
	H    float64              // thickness, mm
	Wood materials.Compliance // of the wood in its own axes, 1/MPa
	Axes materials.Axes       // unit vectors of L, R, T in global x, y, z (rows)
	// Pressed turns the wood axes with the facet: a plate bent to shape.
	// Otherwise they stay fixed in space: a plate carved out of a billet.
	Pressed bool
	// Blank is the unit normal of the flat blank before pressing, in the frame
	// of Axes. The zero vector means the R or T axis that lies nearer to the
	// facet's normal, which suits quarter- and flat-cut blanks.
	Blank [3]float64
	// Kink marks corners on a line where the membrane shear jumps, such as a
	// glued rib: the drilling rotations of both sides differ there, and a common
	// one would stiffen the joint with an error that shrinks only as the mesh
	// size. Edges that end at such a corner lose their drilling part, and the
	// triangle keeps a small share of its drilling stiffness (constant states
	// stay exact). Every triangle around the node must carry the mark.
	Kink [3]bool
}
