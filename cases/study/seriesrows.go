package study

import (
	"slices"
	"strconv"

	"archload/cases/answer"
	"archload/cases/quantity"
)

// SeriesRow is one point of a series. A point that could not be had says why in
// Failed and has no results.
type SeriesRow struct {
	Point   int                   `json:"point"` // from 1
	Set     map[string]any        `json:"set"`
	Results map[string]answer.Num `json:"results"`
	Checks  string                `json:"checks_failed"` // names of the built-in checks that the point does not pass; "" if it passes
	Failed  string                `json:"failed"`        // why there are no results; "" if there are
}

// MainColumns is how many results of a series, the first ones, are printed and
// drawn; see DrawnColumns.
const MainColumns = 6

// SeriesColumns lists the results that a series keeps, in the order of its
// table; the name of a result is the quantity's Column.
func SeriesColumns() []quantity.Quantity {
	out := quantity.Where(func(q quantity.Quantity) bool { return q.Series > 0 })
	slices.SortFunc(out, func(a, b quantity.Quantity) int { return a.Series - b.Series })
	return out
}

// DrawnColumns are the results of a series that are printed and drawn: the main
// ones, and of how the foot bears those that its bridges have, thirds or heels.
func DrawnColumns(rows []SeriesRow) []quantity.Quantity {
	has := func(key string) bool {
		column := quantity.Of(key).Column
		return slices.ContainsFunc(rows, func(r SeriesRow) bool { v, ok := r.Results[column]; return ok && v.Known() })
	}
	two := has("bass_foot_share")
	one := has("middle_share") || !two
	var out []quantity.Quantity
	for i, q := range SeriesColumns() {
		if i < MainColumns && (q.Feet != 1 || one) || two && q.Feet == 2 && q.Short != "" {
			out = append(out, q)
		}
	}
	return out
}

// Columns heads a series' table: the point, the keys, the results, and what
// went wrong.
func (h SeriesHead) Columns() []string {
	out := append([]string{"point"}, h.Keys...)
	for _, c := range SeriesColumns() {
		out = append(out, c.Column)
	}
	return append(out, "checks_failed", "failed")
}

// Cells writes a row for the series' table; what cannot be had is empty.
func (h SeriesHead) Cells(r SeriesRow) []string {
	out := append([]string{strconv.Itoa(r.Point)}, h.Words(r.Point)...)
	for _, c := range SeriesColumns() {
		cell := ""
		if v, ok := r.Results[c.Column]; ok && v.Known() {
			cell = strconv.FormatFloat(float64(v), 'g', 8, 64)
		}
		out = append(out, cell)
	}
	return append(out, r.Checks, r.Failed)
}
