package cases

import (
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

// places returns the place of every row.
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

// KeyedTable is a table of heights and its key below the surface's.
type KeyedTable struct {
	Key   string
	Table *HeightTable
}
