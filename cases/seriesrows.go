package cases

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
)

// SeriesRow is one point of a series. A point that could not be had says why in
// Failed and has no results.
type SeriesRow struct {
	Point   int            `json:"point"` // from 1
	Set     map[string]any `json:"set"`
	Results map[string]Num `json:"results"`
	Checks  string         `json:"checks_failed"` // names of the built-in checks that the point does not pass; "" if it passes
	Failed  string         `json:"failed"`        // why there are no results; "" if there are
}

// SeriesColumn is one result of a series.
type SeriesColumn struct {
	Name string // with its unit, as a table's column: bridge_sink_mm
	What string // as a picture names it
	Unit string
	get  func(*Report) Num
}

// SeriesColumns lists the results that a series keeps.
func SeriesColumns() []SeriesColumn { return seriesColumns() }

func seriesColumns() []SeriesColumn {
	percent := func(get func(*BridgeReport) Num) func(*Report) Num {
		return ofBridge(func(b *BridgeReport) Num { return 100 * get(b) })
	}
	return []SeriesColumn{
		{"bridge_sink_mm", "bridge sinks", "mm", ofBridge(func(b *BridgeReport) Num { return Num(b.Sink) })},
		{"middle_carries_percent", "middle of the foot carries", "%", percent(func(b *BridgeReport) Num { return Num(b.Share.Middle) })},
		{"middle_closes_at_percent", "middle has closed at", "% of load", percent(func(b *BridgeReport) Num { return b.MiddleClosesAt })},
		{"strength_used_percent", "strength used", "%", func(r *Report) Num { return 100 * r.Strength.Used }},
		{"top_sinks_most_mm", "top sinks most", "mm", func(r *Report) Num { return Num(r.Top.MostSunk.Value) }},
		{"foot_used_percent", "of the crushing strength", "%", func(r *Report) Num { return 100 * r.Strength.FootUsed }},
		{"bass_end_carries_percent", "bass end carries", "%", percent(func(b *BridgeReport) Num { return Num(b.Share.BassEnd) })},
		{"treble_end_carries_percent", "treble end carries", "%", percent(func(b *BridgeReport) Num { return Num(b.Share.TrebleEnd) })},
		{"middle_touches_at_percent", "middle first touches at", "% of load", percent(func(b *BridgeReport) Num { return b.MiddleTouchesAt })},
		{"gap_left_mm", "greatest gap left", "mm", ofBridge(func(b *BridgeReport) Num { return Num(b.GapLeft) })},
		{"foot_pressure_MPa", "pressure under the foot", "MPa", func(r *Report) Num { return r.Strength.FootPressure }},
		{"apex_sink_mm", "apex sinks", "mm", func(r *Report) Num { return r.Top.ApexSink }},
		{"lean_to_neck_deg", "bridge leans toward the neck", "deg", ofBridge(func(b *BridgeReport) Num { return Num(b.Tilt.ForeAft) })},
		{"lean_to_treble_deg", "bridge leans to the treble", "deg", ofBridge(func(b *BridgeReport) Num { return Num(b.Tilt.Sideways) })},
		{"action_lower_mm", "strings lower at the octave", "mm", ofBridge(func(b *BridgeReport) Num { return Num(b.ActionChange) })},
		{"friction_needed_1", "friction needed", "1", ofBridge(func(b *BridgeReport) Num { return b.FrictionNeeded })},
		{"downforce_N", "strings press with", "N", func(r *Report) Num {
			if r.Strings == nil {
				return None()
			}
			return Num(r.Strings.Downforce)
		}},
		{"plate_and_braces_g", "plate and braces", "g", func(r *Report) Num { return Num(r.Mass.Plate + r.Mass.Braces) }},
		{"energy_Nmm", "energy in all", "N mm", func(r *Report) Num { return Num(r.Energy.Total) }},
	}
}

// Columns heads a series' table: the point, the keys, the results, and what
// went wrong.
func (h SeriesHead) Columns() []string {
	out := append([]string{"point"}, h.Keys...)
	for _, c := range seriesColumns() {
		out = append(out, c.Name)
	}
	return append(out, "checks_failed", "failed")
}

// Cells writes a row for the series' table; what cannot be had is empty.
func (h SeriesHead) Cells(r SeriesRow) []string {
	out := append([]string{strconv.Itoa(r.Point)}, h.Words(r.Point)...)
	for _, c := range seriesColumns() {
		cell := ""
		if v, ok := r.Results[c.Name]; ok && v.Known() {
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
			return &FileError{File: name, Line: n, Err: fmt.Errorf(form, args...)}
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
	return n == h.Points && n > 0 && len(h.Keys) == len(h.Values) && h.Part[0] >= 1 && h.Part[0] <= h.Part[1] && h.Format == format
}
