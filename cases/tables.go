package cases

import (
	"path"
	"reflect"
	"slices"
	"strings"

	"archload/cases/drawing"
	"archload/cases/tree"
	"archload/mesh"
)

// Outline is a closed curve in plan, smooth except at corners.
type Outline struct {
	File   string       // CSV file, or drawing and element ("top.svg#outline"); "": written in the case itself
	Points []mesh.Point // mm
	Corner []bool       // per point; nil: no corners

	Lines []tree.Place // of each point
}

// HeightTable is a table of heights over the plan.
type HeightTable struct {
	File   string    // CSV file, or drawing and layer ("top.svg#contours")
	Lines  []string  // name of the line each point belongs to; nil for measured points
	X, Y   []float64 // mm
	Height []float64 // mm

	Rows  []tree.Place // of each point
	Drawn bool         // traced in a drawing, not typed
}

// planColumns are the columns of a place in plan.
func planColumns() []tree.Column {
	dim, _ := tree.DimensionOf(tree.Length(0))
	return []tree.Column{{Name: "x", Dim: dim}, {Name: "y", Dim: dim}}
}

// heightColumns are the columns of a table of heights. "contours" are named
// lines of equal height, "templates" named chains, "points" stand alone. also
// is another name of the height.
func heightColumns(kind, also string) []tree.Column {
	xy := planColumns()
	height := tree.Column{Name: "height", Also: also, Dim: xy[0].Dim}
	switch kind {
	case "contours":
		return []tree.Column{{Name: "line", Label: true}, height, xy[0], xy[1]}
	case "templates":
		return []tree.Column{{Name: "station", Label: true}, xy[0], xy[1], height}
	}
	return []tree.Column{xy[0], xy[1], height}
}

// Places returns the place of every row.
func places(t *tree.CsvTable) []tree.Place {
	out := make([]tree.Place, len(t.Lines))
	for i, l := range t.Lines {
		out[i] = tree.Place{Src: t.Src, Line: l}
	}
	return out
}

// points returns the columns x and y as points.
func points(t *tree.CsvTable) []mesh.Point {
	out := make([]mesh.Point, len(t.Lines))
	for i := range out {
		out[i] = mesh.Point{t.Values["x"][i], t.Values["y"][i]}
	}
	return out
}

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

// DecodeNode reads the name of a table of heights, or a layer of a drawing.
func (h *HeightTable) DecodeNode(d *tree.Decoder, n *tree.Node, key string, tag reflect.StructTag) {
	name, ok := n.Val.(string)
	if !ok {
		d.Fault(n, key, "want the name of a CSV file, or a layer of a drawing as in \"top.svg#contours\", found %s", n.What())
		return
	}
	kind := tag.Get("table")
	if _, _, ok := drawing.Named(name); ok {
		if kind != "contours" {
			d.Fault(n, key, "want a CSV file (a drawing holds contours, not %s), found %q", kind, name)
			return
		}
		h.fromDrawing(d, n, key, name)
		return
	}
	h.File = name
	cols := heightColumns(kind, tag.Get("column"))
	t := d.ReadTable(n, key, name, cols)
	if t == nil {
		return
	}
	h.X, h.Y, h.Height, h.Rows = t.Values["x"], t.Values["y"], t.Values["height"], places(t)
	if kind == "points" {
		return
	}
	h.Lines = t.Labels[cols[0].Name]
	if kind == "contours" {
		h.checkLevels(d, key)
	}
}

// checkLevels refuses a contour line of two heights.
func (h *HeightTable) checkLevels(d *tree.Decoder, key string) {
	level := map[string]float64{}
	for i, line := range h.Lines {
		z, seen := level[line]
		if !seen {
			level[line] = h.Height[i]
		} else if z != h.Height[i] {
			d.Rep.Add(h.Rows[i], "height", tree.WantFound(tree.WithUnit(z, "mm")+", the height of contour line "+line, h.Height[i]))
			d.SpoilIf(true, key)
		}
	}
}

// DecodeNode reads one height for the whole plate, or a table of the ways in which
// heights may be given.
func (h *Heights) DecodeNode(d *tree.Decoder, n *tree.Node, key string, _ reflect.StructTag) {
	kids, ok := n.Val.(map[string]*tree.Node)
	if !ok {
		dim, _ := tree.DimensionOf(tree.Length(0))
		if name, isText := n.Val.(string); isText && namesTable(name) {
			d.Fault(n, key, "want %s; a table is named by its kind, as in { points = %q } (or contours, templates), found %q", dim.Wanted(), name, name)
			return
		}
		h.Const = tree.Length(d.Quantity(dim, n, key, `want:">0"`))
		return
	}
	var t heightTables
	d.Table(reflect.ValueOf(&t).Elem(), n, key)
	h.Contours, h.Templates, h.Points, h.Noise = t.Contours, t.Templates, t.Points, t.Noise
	if k := countKeys(kids, "contours", "templates", "points"); k != 1 && d.Rep.Clean(key) {
		d.Fault(n, key, "want exactly one of contours, templates, points, found %d", k)
	}
}

// namesTable says whether a text is meant as a file and not as a length.
func namesTable(text string) bool {
	_, _, drawn := drawing.Named(text)
	return drawn || slices.Contains([]string{".csv", ".txt", ".svg"}, strings.ToLower(path.Ext(text)))
}

// heightTables are the keys of a thickness that varies, from exactly one source.
type heightTables struct {
	// CSV line,thickness_mm,x_mm,y_mm: closed lines of equal thickness; or a layer of a drawing
	Contours *HeightTable `toml:"contours" table:"contours" column:"thickness" eg:"'contours.csv'"`
	// CSV station,x_mm,y_mm,thickness_mm: chains of points
	Templates *HeightTable `toml:"templates" table:"templates" column:"thickness" eg:"'templates.csv'"`
	// CSV x_mm,y_mm,thickness_mm: caliper readings anywhere
	Points *HeightTable `toml:"points" table:"points" column:"thickness" eg:"'points.csv'"`
	// mm, how far readings may be off (one standard deviation); default: what they show, at most 0.1
	Noise tree.Length `toml:"noise" want:">0" eg:"0.05"`
}

// countKeys counts which of the keys a table has.
func countKeys(table map[string]*tree.Node, keys ...string) int {
	count := 0
	for _, k := range keys {
		if _, ok := table[k]; ok {
			count++
		}
	}
	return count
}

// KeyedTable is a table of heights and its key below the surface's.
type KeyedTable struct {
	Key   string
	Table *HeightTable
}

// Tables lists the tables an arch may come from; absent ones are nil.
func (a *Arch) Tables() []KeyedTable {
	return []KeyedTable{{"contours", a.Contours}, {"templates", a.Templates}, {"points", a.Points}}
}

// Tables lists the tables a thickness may come from; absent ones are nil.
func (h *Heights) Tables() []KeyedTable {
	return []KeyedTable{{"contours", h.Contours}, {"templates", h.Templates}, {"points", h.Points}}
}
