package cases

import "archload/fem"

// The parts of a model, by which strain energies are told.
const (
	partPlate fem.Part = iota
	// PartBraces is all braces.
	PartBraces
	partBridge
	partBedding
	// PartRim is all that holds the plate: sides, linings, blocks, posts and
	// supports.
	PartRim
)
