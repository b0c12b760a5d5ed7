package flow

// The pieces of a triangle: its three corners, each cut off through the middles
// of two edges, and the triangle between the middles.
const inner = 3

// middles of a triangle: corners 0 to 2, then the middles of edges 0 to 2.
const middles = 3

// pieceKnots lists the knots of a piece, anticlockwise.
func pieceKnots(piece int) [3]int {
	if piece == inner {
		return [3]int{middles, middles + 1, middles + 2}
	}
	return [3]int{piece, middles + piece, middles + (piece+2)%3}
}

// knotValue is the stream function at a knot of triangle t, N, from zero at
// the middle of its first edge.
func (f *Flow) knotValue(t int32, knot int) float64 {
	if knot < middles {
		return f.knotValue(t, middles+knot) + f.corner[t][knot]
	}
	return cross2(f.Whole[t], sub2(f.plan.middle(t, knot-middles), f.plan.middle(t, 0)))
}

// knotPlace is where a knot of triangle t lies, mm.
func (f *Flow) knotPlace(t int32, knot int) [2]float64 {
	if knot < middles {
		return f.plan.pts[f.plan.tris[t][knot]]
	}
	return f.plan.middle(t, knot-middles)
}
