package cases

import (
	"reflect"
	"sort"

	"archload/cases/tree"
)

// Station is a place along a line and a value there.
type Station struct {
	At    float64 // fraction of the length (1) or mm, as the key says
	Value float64 // mm
}

// Stations is a value along a line, straight between stations and constant
// beyond the first and the last.
type Stations []Station

// Value returns the value at s, mm; 0 if there are no stations.
func (st Stations) Value(s float64) float64 {
	i := sort.Search(len(st), func(i int) bool { return st[i].At >= s })
	switch {
	case len(st) == 0:
		return 0
	case i == 0:
		return st[0].Value
	case i == len(st):
		return st[i-1].Value
	}
	a, b := st[i-1], st[i]
	return a.Value + (b.Value-a.Value)*(s-a.At)/(b.At-a.At)
}

// Profile is a constant or stations.
type Profile struct {
	Const    tree.Length // mm; used when there are no stations
	Stations Stations
}

// Value returns the value at s (a fraction or mm, as the key says), mm.
func (p Profile) Value(s float64) float64 {
	if len(p.Stations) == 0 {
		return float64(p.Const)
	}
	return p.Stations.Value(s)
}

// Max returns the greatest value, mm.
func (p Profile) Max() float64 {
	m := float64(p.Const)
	for _, s := range p.Stations {
		m = max(m, s.Value)
	}
	return m
}

// DecodeNode reads one length, or stations.
func (p *Profile) DecodeNode(d *tree.Decoder, n *tree.Node, key string, tag reflect.StructTag) {
	dim, _ := tree.DimensionOf(tree.Length(0))
	switch n.Val.(type) {
	case []*tree.Node:
		p.Stations.DecodeNode(d, n, key, tag)
	case map[string]*tree.Node:
		d.Fault(n, key, "want %s, or stations [[%s, mm], ...], found a table", dim.Wanted(), alongWord(tag))
	default:
		p.Const = tree.Length(d.Quantity(dim, n, key, tag))
	}
}

// alongWord says what the first number of a station is.
func alongWord(tag reflect.StructTag) string {
	if tag.Get("along") == "mm" {
		return "x"
	}
	return "fraction"
}

// DecodeNode reads pairs of a place and a length, the places rising.
func (st *Stations) DecodeNode(d *tree.Decoder, n *tree.Node, key string, tag reflect.StructTag) {
	items, ok := n.Val.([]*tree.Node)
	if !ok || len(items) < 2 {
		d.Fault(n, key, "want two stations or more, [[%s, mm], ...], found %s", alongWord(tag), n.What())
		return
	}
	value, _ := tree.DimensionOf(tree.Length(0))
	along, rangeTag := value, reflect.StructTag("")
	if tag.Get("along") == "fraction" {
		along, rangeTag = tree.PlainNumber(), `want:"0..1"`
	}
	for i, item := range items {
		sub := tree.EntryKey(key, i+1)
		pair, ok := item.Val.([]*tree.Node)
		if !ok || len(pair) != 2 {
			d.Fault(item, sub, "want a station [%s, mm], found %s", alongWord(tag), item.What())
			continue
		}
		s := Station{d.Quantity(along, pair[0], sub, rangeTag), d.Quantity(value, pair[1], sub, tag)}
		if k := len(*st); k > 0 && s.At <= (*st)[k-1].At && d.Rep.Clean(sub) {
			d.Fault(item, sub, "want stations in rising order, found %g after %g", s.At, (*st)[k-1].At)
		}
		*st = append(*st, s)
	}
}
