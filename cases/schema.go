package cases

import (
	"embed"
	"reflect"

	"archload/cases/motion"
	"archload/cases/season"
)

//go:embed body.go case.go bridgecase.go heights.go path.go tables.go
var schemaFiles embed.FS

// SchemaFiles are the sources of the structs that a case file fills, package by
// package: what the comment above a field says is what a maker is told of its
// key. A struct's name stands once in all of them.
func SchemaFiles() []embed.FS { return []embed.FS{schemaFiles, motion.SchemaFiles, season.SchemaFiles} }

// ThicknessKeys is the struct of the keys of a thickness that varies, which
// Heights reads itself.
func ThicknessKeys() reflect.Type { return reflect.TypeFor[heightTables]() }
