package season

import "embed"

// SchemaFiles are the sources of the structs that a case file fills: what the
// comment above a field says is what a maker is told of its key.
//
//go:embed season.go
var SchemaFiles embed.FS
