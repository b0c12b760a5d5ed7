package shape

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/tree"
	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// mostRows is how many rows of a table one warning names.
const mostRows = 3

// beyondWords tells of the data that a fit lies further off than their errors allow:
// one warning for each table, at its worst row, with the next worst and the row that
// pulls the other way.
func beyondWords(all []surface.Misfit, tables []cases.KeyedTable, otherwise tree.Place) []*tree.FileError {
	var out []*tree.FileError
	for _, t := range tables {
		of := slices.DeleteFunc(slices.Clone(all), func(m surface.Misfit) bool { return m.Set != t.Key })
		if len(of) == 0 {
			continue
		}
		slices.SortStableFunc(of, func(a, b surface.Misfit) int { return cmp.Compare(math.Abs(b.Error), math.Abs(a.Error)) })
		at := func(m surface.Misfit) tree.Place { return rowPlace(tables, m.Set, m.Row, otherwise) }
		words := fmt.Sprintf("the smooth surface lies %.2g mm %s this height, expected within %.2g", math.Abs(of[0].Error), overUnder(of[0].Error), 4*of[0].Sigma)
		if m, ok := opposed(of[0], all); ok {
			words += fmt.Sprintf("; row %d near it, %.0f mm away, pulls the other way", at(m).Line, plane.Dist(of[0].At, m.At))
		}
		var lines []int
		for _, m := range of[1:] {
			lines = append(lines, at(m).Line)
		}
		out = append(out, &tree.FileError{File: at(of[0]).Src.Label, Line: at(of[0]).Line, Key: "height", Err: fmt.Errorf("%s%s", words, furtherRows(lines))})
	}
	return out
}

func overUnder(off float64) string {
	if off > 0 {
		return "above"
	}
	return "below"
}

// opposed is the nearest of the data from which the surface lies off the other way.
func opposed(m surface.Misfit, all []surface.Misfit) (other surface.Misfit, found bool) {
	const near = 60.0 // mm
	least := near
	for _, o := range all {
		if d := plane.Dist(m.At, o.At); m.Error*o.Error < 0 && o.Set == m.Set && d < least {
			least, other, found = d, o, true
		}
	}
	return other, found
}

// furtherRows names some rows that are off too, and counts the rest.
func furtherRows(lines []int) string {
	if len(lines) == 0 {
		return ""
	}
	var named []string
	for _, l := range lines[:min(len(lines), mostRows)] {
		named = append(named, fmt.Sprint(l))
	}
	if len(lines) > mostRows {
		return fmt.Sprintf("; also off, less: rows %s and %d more", strings.Join(named, ", "), len(lines)-mostRows)
	}
	if len(lines) == 1 {
		return "; also off, less: row " + named[0]
	}
	return "; also off, less: rows " + strings.Join(named, ", ")
}

// tellMisfits names the readings of a graduation that the plate as computed is off by
// more than a caliper is, the worst first.
func (f *fitter) tellMisfits(g *graduation) {
	limit := heldUnsaid
	if n := float64(f.c.Plate.Thickness.Noise); n > 0 {
		limit = 2 * n
	}
	for _, t := range f.c.Plate.Thickness.Tables() {
		if t.Table == nil {
			continue
		}
		off := make([]float64, len(t.Table.X))
		var rows []int
		for i, z := range t.Table.Height {
			off[i] = math.Abs(g.At(mesh.Point{t.Table.X[i], t.Table.Y[i]}).Z - z)
			if off[i] > limit {
				rows = append(rows, i)
			}
		}
		if len(rows) == 0 {
			continue
		}
		slices.SortStableFunc(rows, func(a, b int) int { return cmp.Compare(off[b], off[a]) })
		var lines []int
		for _, i := range rows[1:] {
			lines = append(lines, t.Table.Rows[i].Line)
		}
		k, advice := rows[0], ""
		if t.Key == "points" && f.c.Plate.Thickness.Noise == 0 {
			advice = "; noise = 0.03 in plate.thickness follows the readings more closely"
		}
		at := t.Table.Rows[k]
		f.made.told[f.part] = append(f.made.told[f.part], &tree.FileError{File: at.Src.Label, Line: at.Line, Key: "thickness",
			Err: fmt.Errorf("the smooth plate is %.2f mm thick where %g was measured%s%s", g.At(mesh.Point{t.Table.X[k], t.Table.Y[k]}).Z, t.Table.Height[k], furtherRows(lines), advice)})
	}
}

// nearbyRows names the rows of the arch's tables that lie nearest to a place, where
// two may contradict each other.
func nearbyRows(tables []cases.KeyedTable, p mesh.Point) string {
	type row struct {
		far, height float64
		at          tree.Place
	}
	var all []row
	for _, t := range tables {
		if t.Table == nil {
			continue
		}
		for i := range t.Table.X {
			all = append(all, row{math.Hypot(t.Table.X[i]-p[0], t.Table.Y[i]-p[1]), t.Table.Height[i], t.Table.Rows[i]})
		}
	}
	slices.SortStableFunc(all, func(a, b row) int { return cmp.Compare(a.far, b.far) })
	var named []string
	for _, r := range all[:min(len(all), mostRows)] {
		named = append(named, fmt.Sprintf("%s:%d (%.4g mm high)", r.at.Src.Label, r.at.Line, r.height))
	}
	if len(named) == 0 {
		return ""
	}
	return "; the nearest heights, which may contradict each other: " + strings.Join(named, ", ")
}
