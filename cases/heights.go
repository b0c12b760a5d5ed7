package cases

import (
	"path"
	"reflect"
	"slices"
	"strings"

	"archload/cases/drawing"
	"archload/cases/tree"
)

// Heights is a thickness: constant, or from contours, templates or measured
// points.
type Heights struct {
	Const     tree.Length  // mm; 0 when a table is given
	Contours  *HeightTable // CSV line,height,x,y, or a layer of a drawing
	Templates *HeightTable // CSV station,x,y,height
	Points    *HeightTable // CSV x,y,height
	Noise     tree.Length  // mm, standard deviation of measured points; default: what they show, at most 0.1
}

// Tables lists the tables a thickness may come from; absent ones are nil.
func (h *Heights) Tables() []KeyedTable {
	return []KeyedTable{{"contours", h.Contours}, {"templates", h.Templates}, {"points", h.Points}}
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
