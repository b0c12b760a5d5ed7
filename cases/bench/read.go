package bench

import (
	"reflect"

	"archload/cases/tree"
)

// Thickness is one thickness, or that of the two long edges of a wedge, mm.
type Thickness [2]float64

// DecodeNode reads one length, or two.
func (t *Thickness) DecodeNode(d *tree.Decoder, n *tree.Node, key string, _ reflect.StructTag) {
	dim, _ := tree.DimensionOf(tree.Length(0))
	items, many := n.Val.([]*tree.Node)
	if !many {
		t[0] = d.Quantity(dim, n, key, `want:">0"`)
		t[1] = t[0]
		return
	}
	if len(items) != 2 {
		d.Fault(n, key, "want one thickness, or [thick edge, thin edge] of a wedge, found %s", n.What())
		return
	}
	for i, item := range items {
		t[i] = d.Quantity(dim, item, key, `want:">0"`)
	}
}

// Mean is the mean thickness, mm.
func (t Thickness) Mean() float64 { return (t[0] + t[1]) / 2 }

// Tones are frequencies of one kind, lowest first, Hz; 0 stands for one that was not heard.
type Tones []float64

// DecodeNode reads one frequency, or a list.
func (t *Tones) DecodeNode(d *tree.Decoder, n *tree.Node, key string, _ reflect.StructTag) {
	dim, _ := tree.DimensionOf(tree.Frequency(0))
	items, many := n.Val.([]*tree.Node)
	if !many {
		*t = Tones{d.Quantity(dim, n, key, `want:">0"`)}
		return
	}
	if len(items) == 0 || len(items) > mostBarTones {
		d.Fault(n, key, "want one tone in Hz, or a list of up to %d, lowest first, found %d", mostBarTones, len(items))
		return
	}
	for _, item := range items {
		*t = append(*t, d.Quantity(dim, item, key, `want:">=0"`))
	}
}

// mostBarTones is how many tones of one kind a bar may have.
const mostBarTones = 5
