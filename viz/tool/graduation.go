package tool

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/tree"
	"archload/mesh"
)

// ChangeKey is the key that thicknesses at places set.
const ChangeKey = "plate.thickness_change"

// Thickness is the top's at a place.
type Thickness struct {
	At     mesh.Point
	Line   int     // of the table, from the neck
	Column int     // from the bass side
	Base   float64 // as graduated, mm
	Change float64 // left on, mm
}

// Graduation is the top's thickness at places that cover it.
type Graduation []Thickness

// GraduationOf is that of a case: at the places of its thickness_change, else at places of its own within the edge.
// thick tells how thick the plate of a case that is shown is at a place, false beside the wood.
func GraduationOf(c, shown *cases.Case, edge []mesh.Point, thick func(p mesh.Point) (float64, bool)) Graduation {
	g := Graduation{}
	for _, r := range c.Plate.ThicknessChange {
		g = append(g, Thickness{At: mesh.Point{float64(r[0]), float64(r[1])}, Change: float64(r[2])})
	}
	if len(g) == 0 {
		g = spread(edge)
	}
	g.arrange()
	return g[:g.measure(shown, thick)]
}

// measure fills in the thickness as graduated, and leaves out what lies beside the wood, unless it is part of the
// case already; how many are left.
func (g Graduation) measure(shown *cases.Case, thick func(p mesh.Point) (float64, bool)) int {
	n := 0
	for _, t := range g {
		now, ok := thick(t.At)
		if !ok && t.Change == 0 {
			continue
		}
		for _, r := range shown.Plate.ThicknessChange {
			if float64(r[0]) == t.At[0] && float64(r[1]) == t.At[1] {
				now -= float64(r[2])
			}
		}
		t.Base = now
		g[n] = t
		n++
	}
	return n
}

// Places of a table: so many lines from neck to tail, and in each so many columns.
const (
	tableLines   = 6
	tableColumns = 5
	tableEdge    = 12.0 // mm, of the outermost from the edge
)

// spread are places all over the plan within an edge, mm.
func spread(edge []mesh.Point) Graduation {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, p := range edge {
		lo, hi = math.Min(lo, p[1]), math.Max(hi, p[1])
	}
	var g Graduation
	for l := range tableLines {
		y := math.Round(hi - tableEdge - (hi-lo-2*tableEdge)*float64(l)/(tableLines-1))
		from, to := width(edge, y)
		from, to = from+tableEdge, to-tableEdge
		for k := range tableColumns {
			if to > from {
				g = append(g, Thickness{At: mesh.Point{math.Round(from + (to-from)*float64(k)/(tableColumns-1)), y}})
			}
		}
	}
	return g
}

// width is how far a closed line reaches at a height y: from and to, mm.
func width(edge []mesh.Point, y float64) (from, to float64) {
	from, to = math.Inf(1), math.Inf(-1)
	for i, a := range edge {
		b := edge[(i+1)%len(edge)]
		if (a[1] > y) != (b[1] > y) {
			x := a[0] + (b[0]-a[0])*(y-a[1])/(b[1]-a[1])
			from, to = math.Min(from, x), math.Max(to, x)
		}
	}
	return from, to
}

// arrange sorts the places into the lines and columns of a table.
func (g Graduation) arrange() {
	slices.SortStableFunc(g, func(a, b Thickness) int {
		return cmp.Or(cmp.Compare(b.At[1], a.At[1]), cmp.Compare(a.At[0], b.At[0]))
	})
	half := map[float64]float64{} // of each height, mm
	for _, t := range g {
		half[t.At[1]] = math.Max(half[t.At[1]], math.Abs(t.At[0]))
	}
	for i := range g {
		g[i].Column = (tableColumns - 1) / 2
		if w := half[g[i].At[1]]; w > 0 {
			g[i].Column = int(math.Round((1 + g[i].At[0]/w) / 2 * (tableColumns - 1)))
		}
		if i == 0 {
			continue
		}
		g[i].Line = g[i-1].Line
		if g[i].At[1] != g[i-1].At[1] || g[i].Column <= g[i-1].Column { // no room left in the line
			g[i].Line++
		}
	}
}

// Changed tells whether anything was taken off or left on.
func (g Graduation) Changed() bool {
	return slices.ContainsFunc(g, func(t Thickness) bool { return t.Change != 0 })
}

// With is the key by which the plate is so thick at place i, mm, and at its mirror image too if both sides
// are alike.
func (g Graduation) With(i int, thick float64, alike bool) tree.KeyValue {
	const same = 0.6 // mm: places are rounded
	by := math.Round(1e3*(thick-g[i].Base)) / 1e3
	words := make([]string, len(g))
	for k, t := range g {
		if k == i || alike && math.Abs(t.At[0]+g[i].At[0]) <= same && math.Abs(t.At[1]-g[i].At[1]) <= same {
			t.Change = by
		}
		words[k] = fmt.Sprintf("[%g, %g, %g]", t.At[0], t.At[1], t.Change)
	}
	return listed(ChangeKey, "["+strings.Join(words, ", ")+"]")
}
