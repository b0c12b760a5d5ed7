package cases

import (
	"embed"
	"reflect"
)

// SchemaFiles are the sources of the structs that a case file fills: what the
// comment above a field says is what a maker is told of its key.
//
//go:embed case.go bridgecase.go heights.go motion.go path.go tables.go
var SchemaFiles embed.FS

// ThicknessKeys is the struct of the keys of a thickness that varies, which
// Heights reads itself.
func ThicknessKeys() reflect.Type { return reflect.TypeFor[heightTables]() }
