package fem

import (
	"archload/materials"
	"archload/mesh"
)

// Part says which part of the instrument an element belongs to, for the
// energies and masses by kind.
type Part uint8

// The parts.
const (
	PartPlate Part = iota
	PartSide
	PartBrace
	PartLining
	PartBlock
)

// Section is the wood of a set of shells.
type Section struct {
	Wood    materials.Compliance // 1/MPa, in the wood's own axes
	Axes    materials.Axes       // rows L, R, T in global x, y, z
	Pressed bool                 // the axes follow the facet instead of staying in the billet
	Density float64              // kg/m³
	Part    Part
}

// ShellElem is one triangle of the model.
type ShellElem struct {
	Nodes   [3]int32 // anticlockwise seen from outside
	Section int32    // index into Model.Sections
	Flat    bool     // ignore the nodes' surface normals (a wall, a crease)
	H       float64  // thickness, mm; 0 means the mean of the nodes'
}

// BeamElem is one straight stretch of a brace or lining, tied to two nodes by
// rigid arms.
type BeamElem struct {
	Nodes   [2]int32
	Offset  [2][3]float64 // node to beam axis, mm
	Up      [3]float64    // the section's height direction
	Section RectSection
	Density float64 // kg/m³
	Part    Part
	Group   int32 // index of the brace; -1 if none
}

// Spring ties one freedom of a node to the ground.
type Spring struct {
	Node int32
	Dof  int     // 0 to 5
	K    float64 // N/mm or N·mm/rad
}

// Fix holds one freedom of a node.
type Fix struct {
	Node int32
	Dof  int // 0 to 5
}

// Model is the plate with all that is glued to it. Later stages do not modify
// it.
type Model struct {
	Nodes    []mesh.Node
	Sections []Section
	Shells   []ShellElem
	Beams    []BeamElem
	Springs  []Spring
	Fixed    []Fix
	Zone     []int32 // nodes that may carry contact: eliminated last
}

// SurfacePoint is a place on a shell: barycentric coordinates on an element
// and a height through its thickness.
type SurfacePoint struct {
	Shell int32
	L     [3]float64 // 1, sum 1
	Zeta  float64    // -1 inner face, 0 mid-surface, +1 outer face
}

// PointForce is a force on a place of a shell.
type PointForce struct {
	At SurfacePoint
	F  [3]float64 // N
}

// NodeForce is a generalised force on a node.
type NodeForce struct {
	Node int32
	F    [6]float64 // N and N·mm
}
