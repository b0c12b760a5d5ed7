package cases

import (
	"fmt"
	"slices"
	"strings"
)

// mostShown is how many rows of a series are printed.
const mostShown = 40

// mostTold is how many failed points are told one by one.
const mostTold = 5

// SeriesText sums a series up: the headline numbers of each point, and what
// failed.
func SeriesText(h SeriesHead, rows []SeriesRow) string {
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
	b.WriteString("\n\n")
	if len(rows) <= mostShown {
		h.writeRows(&b, rows)
	} else {
		h.writeRanges(&b, rows)
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

// writeRows prints a table of the first results.
func (h SeriesHead) writeRows(b *strings.Builder, rows []SeriesRow) {
	short := []string{"sinks mm", "middle %", "closes %", "strength %", "top mm", "crush %"} // of the first columns
	cols := seriesColumns()[:len(short)]
	head := append(append([]string{"point"}, h.Keys...), short...)
	table := [][]string{head}
	for _, r := range rows {
		line := append([]string{fmt.Sprint(r.Point)}, h.Words(r.Point)...)
		for _, c := range cols {
			cell := "-"
			if v := r.Results[c.Name]; r.Failed == "" && v.Known() {
				cell = fmt.Sprintf("%.3f", float64(v))
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
	b.WriteString("\nsinks: the bridge; middle: what the foot's middle third carries, and at how much of the load it has\n" +
		"closed; strength: used at the top's worst place; top: sinks where it sinks most; crush: of the strength\n" +
		"under the foot; -: never, not known, or failed. The table has more.\n\n")
}

// writeRanges prints from where to where each result runs, and at which point.
func (h SeriesHead) writeRanges(b *strings.Builder, rows []SeriesRow) {
	for _, c := range seriesColumns() {
		known := slices.DeleteFunc(slices.Clone(rows), func(r SeriesRow) bool { return r.Failed != "" || !r.Results[c.Name].Known() })
		if len(known) == 0 {
			continue
		}
		by := func(x, y SeriesRow) int {
			switch a, b := x.Results[c.Name], y.Results[c.Name]; {
			case a < b:
				return -1
			case a > b:
				return 1
			}
			return 0
		}
		lo, hi := slices.MinFunc(known, by), slices.MaxFunc(known, by)
		fmt.Fprintf(b, "  %-28s %8.3f %s (%s) to %.3f %s (%s)\n", c.What, float64(lo.Results[c.Name]), c.Unit,
			strings.Join(h.Words(lo.Point), ", "), float64(hi.Results[c.Name]), c.Unit, strings.Join(h.Words(hi.Point), ", "))
	}
	b.WriteByte('\n')
}

// Axis returns the values of key k as numbers, if all of them are in one unit,
// and the unit.
func (h SeriesHead) Axis(k int) (values []float64, unit string, ok bool) {
	for i, w := range h.Values[k] {
		v, isNumber := ChangeValue{value: w}.Number()
		rest := strings.TrimSpace(strings.TrimPrefix(w, numberStart().FindString(w)))
		if !isNumber || i > 0 && rest != unit {
			return nil, "", false
		}
		values, unit = append(values, v), rest
	}
	return values, unit, slices.IsSorted(values)
}
