package design

import "archload/fem"

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
)
