package fem

import (
	"archload/fem/element"
	"archload/fem/sparse"
)

// System is a model with its elements built and its stiffness summed.
type System struct {
	Model    *Model
	Shells   []element.Shell
	Beams    []element.Beam
	Elements []Element       // shells, then beams, each tied to its nodes
	K        *sparse.Matrix  // with the fixed freedoms taken out
	beams    []beamTie       // the beams among Elements
	fixed    []bool          // one for each freedom
	lead     map[int32]int32 // the node that each node of a rigid body follows
	kinked   []bool          // nodes where membrane shear or rotation may jump: braces, creases
	eased    *Swollen        // what its wood has done by itself, see Swollen.Eased; nil: nothing
}
