package mesh

import "archload/mesh/plane"

// Point is a place in plan: x across (treble positive), y along (neck
// positive), mm.
type Point = plane.Point
