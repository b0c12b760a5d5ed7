// Package testdata holds the published check tables of archload with their
// sources, and the data that the checks need. README.md beside this file says
// what is verified and what is not.
package testdata

import "embed"

// Files holds verification/*.toml, the check tables, and solid3d/values.json,
// the 3D solid reference. It is never written to.
//
//go:embed verification solid3d/values.json
var Files embed.FS
