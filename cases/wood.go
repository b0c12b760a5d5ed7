package cases

import (
	"path"
	"reflect"
	"strings"

	"archload/cases/tree"
	"archload/materials"
)

// Wood is a wood of the case's own, [wood.NAME]: a bundled card with changes
// (like) or all values, with the keys of a card file.
type Wood struct {
	Values map[string]any // as written; quantities in MPa, kg/m³ or 1
}

// woodDimension returns the dimension of a card's number.
func woodDimension(key string) tree.Dimension {
	switch key {
	case "density":
		d, _ := tree.DimensionOf(tree.Density(0))
		return d
	case "nuLR", "nuLT", "nuRT":
		return tree.PlainNumber()
	}
	if _, unit, _ := materials.Meaning(key); unit != "MPa" {
		return tree.PlainNumber()
	}
	d, _ := tree.DimensionOf(tree.Stress(0))
	return d
}

// woodRange is what a card's number may be: a material may keep its width when it is stretched, as
// textbook beams do, and its size in moist air.
func woodRange(key string) reflect.StructTag {
	if strings.HasPrefix(key, "nu") || materials.MayVanish(key) {
		return `want:">=0"`
	}
	return `want:">0"`
}

// DecodeNode reads a wood of the case's own: a bundled card with what differs, or
// every constant.
func (w *Wood) DecodeNode(d *tree.Decoder, n *tree.Node, key string, _ reflect.StructTag) {
	kids, ok := n.Val.(map[string]*tree.Node)
	if !ok {
		d.Fault(n, key, "want a table with like = \"...\" and what differs, or all of EL ... nuRT, found %s", n.What())
		return
	}
	w.Values = map[string]any{}
	numbers := map[string]bool{}
	for _, k := range materials.Keys() {
		numbers[k] = true
	}
	for _, k := range tree.SortedKeys(kids) {
		sub := tree.JoinKey(key, k)
		d.Rep.Places[sub] = kids[k].At()
		_, isTable := kids[k].Val.(map[string]*tree.Node)
		if !numbers[k] || isTable {
			w.Values[k] = Plain(kids[k])
		} else if x := d.Quantity(woodDimension(k), kids[k], sub, woodRange(k)); d.Rep.Clean(sub) {
			w.Values[k] = x
		}
	}
}

// Plain returns a value without its places.
func Plain(n *tree.Node) any {
	switch v := n.Val.(type) {
	case map[string]*tree.Node:
		out := make(map[string]any, len(v))
		for k, e := range v {
			out[k] = Plain(e)
		}
		return out
	case []*tree.Node:
		out := make([]any, len(v))
		for i, e := range v {
			out[i] = Plain(e)
		}
		return out
	}
	return n.Val
}

// TrimExt strips a file name's ending.
func TrimExt(name string) string { return name[:len(name)-len(path.Ext(name))] }
