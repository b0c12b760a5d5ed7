package cases

import (
	"reflect"

	"archload/cases/tree"
	"archload/materials"
)

// NewDecoder returns a decoder that fills a Case, with nothing read so far.
func NewDecoder() *tree.Decoder {
	return &tree.Decoder{Rep: tree.NewFaultLog(), Tables: map[string]*tree.CsvTable{}, Root: reflect.TypeFor[Case](),
		Listed: "archload keys",
		Own:    &kept{cards: map[string]materials.Card{}, drawings: map[string]*drawnSheet{}}}
}
