// Package attic is one file that uses another package.
package attic

import "cottage/cellar"

// Trunk is exported, key is not.
type (
	Trunk = cellar.Shelf
	key   int
)

var _ key
