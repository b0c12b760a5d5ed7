package study

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/tree"
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
// drawn.
const MainColumns = 6

// SeriesColumns lists the results that a series keeps, in the order of its
// table; the name of a result is the quantity's Column.
func SeriesColumns() []answer.Quantity {
	out := answer.QuantitiesOf(func(q answer.Quantity) bool { return q.Series > 0 })
	slices.SortFunc(out, func(a, b answer.Quantity) int { return a.Series - b.Series })
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

// Places returns which value each key has at a point (from 1), counted from 0.
func (h SeriesHead) Places(point int) []int {
	out := make([]int, len(h.Keys))
	point--
	for k, v := range slices.Backward(h.Values) {
		out[k] = point % len(v)
		point /= len(v)
	}
	return out
}

// Words are the values of the keys at a point (from 1), as the user wrote them.
func (h SeriesHead) Words(point int) []string {
	out := make([]string, len(h.Keys))
	for k, i := range h.Places(point) {
		out[k] = h.Values[k][i]
	}
	return out
}

// seriesLine is a line of a series' file: its head or a row.
type seriesLine struct {
	Series *SeriesHead `json:"series,omitempty"`
	*SeriesRow
}

// HeadLine is the first line of a series' file.
func (h SeriesHead) HeadLine() ([]byte, error) { return lineOf(seriesLine{Series: &h}) }

// Line is a row of a series' file.
func (r SeriesRow) Line() ([]byte, error) { return lineOf(seriesLine{SeriesRow: &r}) }

func lineOf(l seriesLine) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	err := e.Encode(l)
	return b.Bytes(), err
}

// ReadSeries reads a series' file. A last line that was cut short, as by a
// loss of power, is left out, and a row that is there twice counts once; whole
// is false if there was any such thing. No head at all gives a nil head.
func ReadSeries(name string, data []byte) (head *SeriesHead, rows []SeriesRow, whole bool, err error) {
	whole = true
	seen := map[int][]byte{}
	for n := 1; len(data) > 0; n++ {
		line, rest, ended := bytes.Cut(data, []byte("\n"))
		data = rest
		var l seriesLine
		bad := json.Unmarshal(line, &l)
		if !ended || bad != nil && len(rest) == 0 {
			return head, rows, false, nil
		}
		fault := func(form string, args ...any) error {
			return &tree.FileError{File: name, Line: n, Err: fmt.Errorf(form, args...)}
		}
		switch {
		case bad != nil:
			return nil, nil, false, fault("not a row of a series: %w", bad)
		case n == 1 && l.Series != nil && l.Series.sound():
			head = l.Series
		case n == 1 || l.Series != nil || l.SeriesRow == nil:
			return nil, nil, false, fault("want the head of a series on line 1 and a row on each other line")
		case l.Point < 1 || l.Point > head.Points:
			return nil, nil, false, fault("point: want 1 to %d, found %d", head.Points, l.Point)
		case seen[l.Point] != nil && !bytes.Equal(seen[l.Point], line):
			return nil, nil, false, fault("point %d is there twice, with different results", l.Point)
		case seen[l.Point] != nil:
			whole = false
		default:
			seen[l.Point] = line
			rows = append(rows, *l.SeriesRow)
		}
	}
	return head, rows, whole && head != nil, nil
}

// sound says whether a head's counts agree.
func (h SeriesHead) sound() bool {
	n := 1
	for _, v := range h.Values {
		if n *= len(v); n > mostPoints {
			return false
		}
	}
	return n == h.Points && n > 0 && len(h.Keys) == len(h.Values) && h.Part[0] >= 1 && h.Part[0] <= h.Part[1] && h.Format == cases.Format
}
