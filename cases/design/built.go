package design

import (
	"archload/cases"
	"archload/cases/shape"
	"archload/fem"
	"archload/mesh"
)

// The parts of a model, by which strain energies are told.
const (
	PartPlate fem.Part = iota
	// PartBraces is all braces.
	PartBraces
	PartBridge
	PartBedding
	// PartRim is all that holds the plate: sides, linings, blocks, posts and
	// supports.
	PartRim
	// PartBack is the back with its bars.
	PartBack
)

// Built is a case turned into mechanics: the mesh, the model, and what ties
// results back to the maker's words.
type Built struct {
	Case     *cases.Case
	Geometry *shape.Geometry
	Plate    mesh.Plate // of the geometry
	Mesh     *mesh.Mesh
	Model    *fem.Model
	Bridge   *BridgeModel     // nil without a bridge
	Loads    []fem.PointForce // on the plate itself
	Bars     []Bar            // the braces that are fitted, in the order of the case
	Back     *Back            // nil without a body

	FirstPost int // first spring of the model that is a post
	PlateN    int // nodes of the plate; those of the sides come after

	place  placer
	joints map[int32]int32 // joint node of a plate node where joined braces cross
}

// Back is the back of a body in the model.
type Back struct {
	Plate mesh.Plate // of its geometry, in heights outward from its own gluing surface
	Mesh  *mesh.Mesh // on Plate
	First int32      // its first node of the model
	Shell int32      // its first triangle of the model
	Bars  []Bar      // its bars that are fitted

	place placer
}

// Bar is one brace of the model.
type Bar struct {
	Name  string
	Brace int // of the case, from 0
	First int // first beam of the model
	Count int
}
