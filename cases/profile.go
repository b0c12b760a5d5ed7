package cases

import (
	"reflect"
	"sort"
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
	Const    Length // mm; used when there are no stations
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

func (p *Profile) decodeNode(d *decoder, n *node, key string, tag reflect.StructTag) {
	dim, _ := dimensionOf(Length(0))
	switch n.val.(type) {
	case []*node:
		p.Stations.decodeNode(d, n, key, tag)
	case map[string]*node:
		d.fault(n, key, "want %s, or stations [[%s, mm], ...], found a table", dim.wanted(), alongWord(tag))
	default:
		p.Const = Length(d.quantity(dim, n, key, tag))
	}
}

// alongWord says what the first number of a station is.
func alongWord(tag reflect.StructTag) string {
	if tag.Get("along") == "mm" {
		return "x"
	}
	return "fraction"
}

func (st *Stations) decodeNode(d *decoder, n *node, key string, tag reflect.StructTag) {
	items, ok := n.val.([]*node)
	if !ok || len(items) < 2 {
		d.fault(n, key, "want two stations or more, [[%s, mm], ...], found %s", alongWord(tag), n.what())
		return
	}
	value, _ := dimensionOf(Length(0))
	along, rangeTag := value, reflect.StructTag("")
	if tag.Get("along") == "fraction" {
		along, rangeTag = plainNumber(), `want:"0..1"`
	}
	for i, item := range items {
		sub := entryKey(key, i+1)
		pair, ok := item.val.([]*node)
		if !ok || len(pair) != 2 {
			d.fault(item, sub, "want a station [%s, mm], found %s", alongWord(tag), item.what())
			continue
		}
		s := Station{d.quantity(along, pair[0], sub, rangeTag), d.quantity(value, pair[1], sub, tag)}
		if k := len(*st); k > 0 && s.At <= (*st)[k-1].At && d.rep.clean(sub) {
			d.fault(item, sub, "want stations in rising order, found %g after %g", s.At, (*st)[k-1].At)
		}
		*st = append(*st, s)
	}
}
