package say

import (
	"fmt"
	"slices"
	"strings"

	"archload/cases/tree"

	"archload/cases/study"
)

// mostShown is how many rows of a series are printed.
const mostShown = 40

// mostTold is how many failed points are told one by one.
const mostTold = 5

// SeriesText sums a series up: the headline numbers of each point, and what
// failed.
func SeriesText(h study.SeriesHead, rows []study.SeriesRow) string {
	var b strings.Builder
	failed := 0
	for _, r := range rows {
		if r.Failed != "" {
			failed++
		}
	}
	fmt.Fprintf(&b, "%s: %d points", h.Title, len(rows))
	if h.Part[1] > 1 {
		fmt.Fprintf(&b, ", part %d of %d", h.Part[0], h.Part[1])
	}
	if failed > 0 {
		fmt.Fprintf(&b, ", %d of them failed", failed)
	}
	if h.Order != "" {
		b.WriteString(", on the moved shape (second order)")
	}
	b.WriteString("\n\n")
	if len(rows) <= mostShown {
		writeSeriesRows(&b, h, rows)
	} else {
		writeSeriesRanges(&b, h, rows)
	}
	told := 0
	for _, r := range rows {
		if r.Failed == "" {
			continue
		}
		if told++; told > mostTold {
			fmt.Fprintf(&b, "and %d more; the table has all\n", failed-mostTold)
			break
		}
		fmt.Fprintf(&b, "point %d (%s) failed: %s\n", r.Point, strings.Join(h.Words(r.Point), ", "), r.Failed)
	}
	return b.String()
}

// writeSeriesRows prints a table of the first results.
func writeSeriesRows(b *strings.Builder, h study.SeriesHead, rows []study.SeriesRow) {
	cols := study.DrawnColumns(rows)
	head := append([]string{"point"}, h.Keys...)
	for _, q := range cols {
		unit, _, _ := strings.Cut(q.Unit, " of ")
		head = append(head, q.Brief()+" "+unit)
	}
	table := [][]string{head}
	for _, r := range rows {
		line := append([]string{fmt.Sprint(r.Point)}, h.Words(r.Point)...)
		for _, q := range cols {
			cell := "-"
			if v := r.Results[q.Column]; r.Failed == "" && v.Known() {
				cell = numberText(q, v)
			}
			line = append(line, cell)
		}
		table = append(table, line)
	}
	wide := make([]int, len(head))
	for _, line := range table {
		for i, cell := range line {
			wide[i] = max(wide[i], len([]rune(cell)))
		}
	}
	for _, line := range table {
		for i, cell := range line {
			fmt.Fprintf(b, "  %*s", wide[i], cell)
		}
		b.WriteByte('\n')
	}
	b.WriteByte('\n')
	for _, q := range cols {
		fmt.Fprintf(b, "%s: %s, %s\n", q.Brief(), q.Name, q.Unit)
	}
	b.WriteString("-: never, not known, or failed. The table has more.\n\n")
}

// writeSeriesRanges prints from where to where each result runs, and at which point.
func writeSeriesRanges(b *strings.Builder, h study.SeriesHead, rows []study.SeriesRow) {
	for _, q := range study.SeriesColumns() {
		known := slices.DeleteFunc(slices.Clone(rows), func(r study.SeriesRow) bool { return r.Failed != "" || !r.Results[q.Column].Known() })
		if len(known) == 0 {
			continue
		}
		by := func(x, y study.SeriesRow) int {
			switch a, b := x.Results[q.Column], y.Results[q.Column]; {
			case a < b:
				return -1
			case a > b:
				return 1
			}
			return 0
		}
		lo, hi := slices.MinFunc(known, by), slices.MaxFunc(known, by)
		fmt.Fprintf(b, "  %-34s %8s %s (%s) to %s %s (%s)\n", q.Name, numberText(q, lo.Results[q.Column]), q.Unit,
			strings.Join(h.Words(lo.Point), ", "), numberText(q, hi.Results[q.Column]), q.Unit, strings.Join(h.Words(hi.Point), ", "))
	}
	b.WriteByte('\n')
}

// Axis returns the values of key k as numbers, if all of them are in one unit,
// and the unit.
func Axis(h study.SeriesHead, k int) (values []float64, unit string, ok bool) {
	for i, w := range h.Values[k] {
		v, isNumber := tree.ChangeValue{Value: w}.Number()
		rest := strings.TrimSpace(strings.TrimPrefix(w, tree.NumberStart().FindString(w)))
		if !isNumber || i > 0 && rest != unit {
			return nil, "", false
		}
		values, unit = append(values, v), rest
	}
	return values, unit, slices.IsSorted(values)
}
