// Package testdata holds the published check tables of archload with their
// sources, and the data that the checks need. README.md beside this file says
// what is verified and what is not.
package testdata

import "embed"

// Files holds verification, the check tables and their cases, and solid3d, the
// 3D solid reference and its plate as a case. It is never written to.
//
//go:embed verification solid3d
var Files embed.FS
