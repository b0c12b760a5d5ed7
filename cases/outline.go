package cases

import (
	"reflect"

	"archload/cases/drawing"
	"archload/cases/tree"
)

// DecodeNode reads points, the name of a table of points, or a ring of a drawing.
func (o *Outline) DecodeNode(d *tree.Decoder, n *tree.Node, key string, _ reflect.StructTag) {
	switch v := n.Val.(type) {
	case string:
		if _, _, ok := drawing.Named(v); ok {
			o.fromDrawing(d, n, key, v)
			break
		}
		o.fromFile(d, n, key, v)
	case []*tree.Node:
		d.List(reflect.ValueOf(&o.Points).Elem(), n, key, "")
		for _, item := range v {
			o.Lines = append(o.Lines, item.At())
		}
	default:
		d.Fault(n, key, "want a CSV file, an element of a drawing as in \"top.svg#outline\", or a list of points [[x, y], ...], found %s", n.What())
		return
	}
	if d.Rep.Clean(key) && len(o.Points) < 3 {
		d.Fault(n, key, "want three points or more for a closed curve, found %d", len(o.Points))
	}
}

// fromFile reads x, y and corner.
func (o *Outline) fromFile(d *tree.Decoder, n *tree.Node, key, name string) {
	o.File = name
	corner := tree.Column{Name: "corner", Dim: tree.PlainNumber(), Optional: true}
	t := d.ReadTable(n, key, name, append(planColumns(), corner))
	if t == nil {
		return
	}
	o.Points, o.Lines = points(t), places(t)
	marks := t.Values["corner"]
	if marks == nil {
		return
	}
	o.Corner = make([]bool, len(marks))
	for i, m := range marks {
		if m != 0 && m != 1 {
			d.Rep.Add(o.Lines[i], "corner", tree.WantFound("1 at a corner, 0 elsewhere", m))
			d.SpoilIf(true, key)
		}
		o.Corner[i] = m == 1
	}
}
