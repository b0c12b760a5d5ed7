package mesh

// Point is a place in plan: x across (treble positive), y along (neck
// positive), mm.
type Point [2]float64

// Jet is the value of a function over the plan with its first and second
// derivatives.
type Jet struct {
	Z             float64 // mm
	Zx, Zy        float64 // 1
	Zxx, Zxy, Zyy float64 // 1/mm
}

// Surface is a smooth function over the plan: the outer surface's height, or
// the thickness. It is defined some millimetres beyond the outline too.
type Surface interface {
	At(p Point) Jet
}

// Flat is the constant surface, mm.
type Flat float64

// At returns the constant with zero derivatives.
func (f Flat) At(Point) Jet { return Jet{Z: float64(f)} }

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
