package cases

import (
	"reflect"

	"archload/mesh"
)

// Outline is a closed curve in plan, smooth except at corners.
type Outline struct {
	File   string       // CSV file, or drawing and element ("top.svg#outline"); "": written in the case itself
	Points []mesh.Point // mm
	Corner []bool       // per point; nil: no corners

	lines []place // of each point
}

// HeightTable is a table of heights over the plan.
type HeightTable struct {
	File   string    // CSV file, or drawing and layer ("top.svg#contours")
	Lines  []string  // name of the line each point belongs to; nil for measured points
	X, Y   []float64 // mm
	Height []float64 // mm

	rows  []place // of each point
	drawn bool    // traced in a drawing, not typed
}

// planColumns are the columns of a place in plan.
func planColumns() []column {
	dim, _ := dimensionOf(Length(0))
	return []column{{name: "x", dim: dim}, {name: "y", dim: dim}}
}

// heightColumns are the columns of a table of heights. "contours" are named
// lines of equal height, "templates" named chains, "points" stand alone.
func heightColumns(kind string) []column {
	xy := planColumns()
	height := column{name: "height", dim: xy[0].dim}
	switch kind {
	case "contours":
		return []column{{name: "line", label: true}, height, xy[0], xy[1]}
	case "templates":
		return []column{{name: "station", label: true}, xy[0], xy[1], height}
	}
	return []column{xy[0], xy[1], height}
}

// places returns the place of every row.
func (t *csvTable) places() []place {
	out := make([]place, len(t.lines))
	for i, l := range t.lines {
		out[i] = place{t.src, l}
	}
	return out
}

// points returns the columns x and y as points.
func (t *csvTable) points() []mesh.Point {
	out := make([]mesh.Point, len(t.lines))
	for i := range out {
		out[i] = mesh.Point{t.values["x"][i], t.values["y"][i]}
	}
	return out
}

func (o *Outline) decodeNode(d *decoder, n *node, key string, _ reflect.StructTag) {
	switch v := n.val.(type) {
	case string:
		if _, _, ok := Named(v); ok {
			o.fromDrawing(d, n, key, v)
			break
		}
		o.fromFile(d, n, key, v)
	case []*node:
		d.list(reflect.ValueOf(&o.Points).Elem(), n, key, "")
		for _, item := range v {
			o.lines = append(o.lines, item.at())
		}
	default:
		d.fault(n, key, "want a CSV file, an element of a drawing as in \"top.svg#outline\", or a list of points [[x, y], ...], found %s", n.what())
		return
	}
	if d.rep.clean(key) && len(o.Points) < 3 {
		d.fault(n, key, "want three points or more for a closed curve, found %d", len(o.Points))
	}
}

// fromFile reads x, y and corner.
func (o *Outline) fromFile(d *decoder, n *node, key, name string) {
	o.File = name
	corner := column{name: "corner", dim: plainNumber(), optional: true}
	t := d.readTable(n, key, name, append(planColumns(), corner))
	if t == nil {
		return
	}
	o.Points, o.lines = t.points(), t.places()
	marks := t.values["corner"]
	if marks == nil {
		return
	}
	o.Corner = make([]bool, len(marks))
	for i, m := range marks {
		if m != 0 && m != 1 {
			d.rep.add(o.lines[i], "corner", wantFound("1 at a corner, 0 elsewhere", m))
			d.spoilIf(true, key)
		}
		o.Corner[i] = m == 1
	}
}

func (h *HeightTable) decodeNode(d *decoder, n *node, key string, tag reflect.StructTag) {
	name, ok := n.val.(string)
	if !ok {
		d.fault(n, key, "want the name of a CSV file, or a layer of a drawing as in \"top.svg#contours\", found %s", n.what())
		return
	}
	kind := tag.Get("table")
	if _, _, ok := Named(name); ok {
		if kind != "contours" {
			d.fault(n, key, "want a CSV file (a drawing holds contours, not %s), found %q", kind, name)
			return
		}
		h.fromDrawing(d, n, key, name)
		return
	}
	h.File = name
	t := d.readTable(n, key, name, heightColumns(kind))
	if t == nil {
		return
	}
	h.X, h.Y, h.Height, h.rows = t.values["x"], t.values["y"], t.values["height"], t.places()
	if kind == "points" {
		return
	}
	h.Lines = t.labels[heightColumns(kind)[0].name]
	if kind == "contours" {
		h.checkLevels(d, key)
	}
}

// checkLevels refuses a contour line of two heights.
func (h *HeightTable) checkLevels(d *decoder, key string) {
	level := map[string]float64{}
	for i, line := range h.Lines {
		z, seen := level[line]
		if !seen {
			level[line] = h.Height[i]
		} else if z != h.Height[i] {
			d.rep.add(h.rows[i], "height", wantFound(withUnit(z, "mm")+", the height of contour line "+line, h.Height[i]))
			d.spoilIf(true, key)
		}
	}
}

func (h *Heights) decodeNode(d *decoder, n *node, key string, _ reflect.StructTag) {
	kids, ok := n.val.(map[string]*node)
	if !ok {
		dim, _ := dimensionOf(Length(0))
		h.Const = Length(d.quantity(dim, n, key, `want:">0"`))
		return
	}
	var t heightTables
	d.table(reflect.ValueOf(&t).Elem(), n, key)
	h.Contours, h.Templates, h.Points, h.Noise = t.Contours, t.Templates, t.Points, t.Noise
	if k := countKeys(kids, "contours", "templates", "points"); k != 1 && d.rep.clean(key) {
		d.fault(n, key, "want exactly one of contours, templates, points, found %d", k)
	}
}

// heightTables are the keys of a thickness that varies.
type heightTables struct {
	Contours  *HeightTable `toml:"contours" table:"contours"`
	Templates *HeightTable `toml:"templates" table:"templates"`
	Points    *HeightTable `toml:"points" table:"points"`
	Noise     Length       `toml:"noise" want:">0"`
}

// countKeys counts which of the keys a table has.
func countKeys(table map[string]*node, keys ...string) int {
	count := 0
	for _, k := range keys {
		if _, ok := table[k]; ok {
			count++
		}
	}
	return count
}

// keyedTable is a table of heights and its key below the surface's.
type keyedTable struct {
	key   string
	table *HeightTable
}

// tables lists the tables an arch may come from; absent ones are nil.
func (a *Arch) tables() []keyedTable {
	return []keyedTable{{"contours", a.Contours}, {"templates", a.Templates}, {"points", a.Points}}
}

// tables lists the tables a thickness may come from; absent ones are nil.
func (h *Heights) tables() []keyedTable {
	return []keyedTable{{"contours", h.Contours}, {"templates", h.Templates}, {"points", h.Points}}
}
