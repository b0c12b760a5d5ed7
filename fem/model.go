package fem

import (
	"archload/fem/element"
	"archload/materials"
	"archload/mesh"
)

// Part is a label by which the caller tells apart what a model is made of, from 0
// on: energies are summed by it. Part 0 is the surface that is studied, whose
// energy is told by kind.
type Part uint8

// Section is the wood of a set of shells.
type Section struct {
	Wood    materials.Compliance // 1/MPa, in the wood's own axes
	Axes    materials.Axes       // rows L, R, T in global x, y, z
	Pressed bool                 // the axes follow the facet instead of staying in the billet
	Density float64              // kg/m³; asked for by Mass alone
	Swell   [3]float64           // strain along L, R, T by itself for each unit of what makes it swell, see Swell
	Part    Part
}

// ShellElem is one triangle of the model.
type ShellElem struct {
	Nodes   [3]int32 // anticlockwise seen from outside
	Section int32    // index into Model.Sections
	Flat    bool     // ignore the nodes' surface normals (a wall, a crease)
	H       float64  // thickness, mm; 0 means the mean of the nodes'
}

// BeamElem is one straight stretch of a brace or lining. It hangs on two nodes
// by rigid arms, or is glued to the plate's face.
type BeamElem struct {
	Nodes   [2]int32
	Glued   bool            // to the places Glue; else rigidly to the nodes
	Glue    [2]SurfacePoint // on the plate's inner face
	Lean    [2]int32        // nodes that keep the section's own lean, see AddLean
	Joined  [2]bool         // the lean node is a joint that turns whole: see AddJoint
	Across  [3]float64      // unit vector about which it leans, square to the beam
	Offset  [2][3]float64   // from the node or the glue to the beam's axis, mm
	Up      [3]float64      // the section's height direction
	Section element.Section
	Mass    float64    // of this stretch, tonne; asked for by Mass alone
	Swell   [3]float64 // as Section.Swell, along it, across its width and its height
	Part    Part
	Group   int32 // index of the brace; -1 if none
}

// Spring ties a place of a shell along one direction to the ground, as a soft support
// does, or to a place of another shell: a post between top and back.
type Spring struct {
	At   SurfacePoint
	Far  *SurfacePoint // the other end; nil: the ground
	Dir  [3]float64    // unit vector
	K    float64       // N/mm
	Part Part
}

// PointMass is a small thing that sits on the plate, spread evenly over places: clay, a
// weight. It has no size of its own and does not stiffen.
type PointMass struct {
	At   []SurfacePoint
	Mass float64 // tonne
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
	Masses   []PointMass
	Bodies   []RigidBody
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

// PointForce is a force on a place of a shell, or on a rigid body.
type PointForce struct {
	At SurfacePoint
	F  [3]float64 // N

	Body  int32      // 1 + the number of the rigid body it acts on, at Place; 0: a shell
	Place [3]float64 // mm
}

// leanDof is the only live freedom of a lean node.
const leanDof = 3

// AddLean adds a node that keeps the lean of a glued brace's section, radians
// about BeamElem.Across, and returns its number. place is where it stands.
func (m *Model) AddLean(place mesh.Node) int32 {
	n := int32(len(m.Nodes))
	m.Nodes = append(m.Nodes, place)
	for d := range 6 {
		if d != leanDof {
			m.Fixed = append(m.Fixed, Fix{Node: n, Dof: d})
		}
	}
	return n
}

// AddJoint adds a node that keeps all three rotations of a place where crossing
// braces are let into each other, and returns its number.
func (m *Model) AddJoint(place mesh.Node) int32 {
	n := int32(len(m.Nodes))
	m.Nodes = append(m.Nodes, place)
	for d := range 3 {
		m.Fixed = append(m.Fixed, Fix{Node: n, Dof: d})
	}
	return n
}
