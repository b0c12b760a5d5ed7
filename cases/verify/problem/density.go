package problem

import (
	"errors"

	"archload/cases/design"
)

// Density is how finely a problem is meshed.
type Density struct {
	N     int     // divisions of a side; of a whole case, Default for its own edges
	Shake float64 // share of the spacing by which inner nodes are moved; then the diagonals are drawn by lot
}

// Distortion is the shake of the distorted meshes.
const Distortion = 0.22

// The density that stands for the program's default edges, mm.
const (
	defaultDensity = 32
	defaultEdge    = 6.0
)

// errOddMesh says that a problem reads the middle of a mesh that has none.
var errOddMesh = errors.New("want an even number of divisions")

// options are those of a whole case at a density.
func (d Density) options() design.Options {
	return design.Options{Refine: float64(d.N) / defaultDensity, NoError: true}
}

// Readings are what a solved problem says, by the name of the reading.
type Readings map[string]float64
