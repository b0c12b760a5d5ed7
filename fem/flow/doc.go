// Package flow follows the vertical load through a plate: from where it presses,
// through plate and braces, to where it is held. It reads a completed fem.Result.
//
// The load flow t (N/mm) is a vector in plan: through a cut with the normal n it
// carries the upward force t·n for each mm, by which the part beyond holds up the
// part before. Vertical equilibrium makes it a stream,
//
//	div t = load − reaction,                                             (1)
//
// with springs under the load and sinks at the rim and the supports. In a triangle
// it is, from the shell's resultants N and Q taken to the plan,
//
//	t = Q + N · grad z,                                                  (2)
//
// and a brace adds the vertical part of its section force along its line
// (braces.go), spread over its width for the picture. What nodes give and take is
// read from loads, reactions and the elements beside the plate (sources.go).
//
// Finite elements balance at nodes, with drilling terms too, so (2) obeys (1) to
// mesh accuracy. The smallest change in the mean square that obeys it at every
// node is a gradient,
//
//	t + grad ψ,   −∫ (t + grad ψ) · grad v = source(v) for hat functions v, (3)
//
// a Poisson problem, solved by conjugate gradients (poisson.go, balance.go).
//
// A piecewise constant field without sources is the curl of a stream function that
// is continuous at the middles of edges (stream.go). Its level lines are the lines
// of force: they do not break, and the same force flows between two neighbours all
// along (lines.go). About a patch of loaded or supported nodes there is no stream
// function; along the patch's edge, a loop, there is, and lines start and end there
// (border.go, loops.go).
package flow
