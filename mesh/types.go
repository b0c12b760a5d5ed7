package mesh

// Node is a point of the mid-surface.
type Node struct {
	P [3]float64 // mm
	N [3]float64 // unit normal of the mid-surface, pointing outward (up)
	H float64    // thickness, mm
}

// Plan is a conforming triangulation in plan.
type Plan struct {
	Points []Point
	Tris   [][3]int32 // anticlockwise seen from outside
	Rim    []int32    // closed loop of outline nodes, anticlockwise
	Holes  [][]int32  // closed loops of the hole edges, anticlockwise
	Lines  [][]int32  // node chains along the embedded lines, in their direction
}

// Mesh is a plan lifted to the mid-surface of a plate.
type Mesh struct {
	*Plan
	Nodes []Node // one for each point of the plan
}
