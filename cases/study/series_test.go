package study

import (
	"context"
	"encoding/json"
	"errors"
	"slices"
	"strings"
	"testing"

	"archload/cases/tree"

	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
)

func mustChange(t *testing.T, text string) tree.Change {
	t.Helper()
	c, err := tree.ParseChange(text)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// collect runs a series and returns its rows as lines in the order of points.
func collect(t *testing.T, s *Series, workers int) []string {
	t.Helper()
	out := make([]string, s.Head.Points)
	err := s.Run(t.Context(), s.Mine(), workers, func(r SeriesRow) error {
		line, err := s.Head.Line(r)
		if out[r.Point-1] != "" {
			t.Errorf("point %d came twice", r.Point)
		}
		out[r.Point-1] = string(line)
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// TestSeriesWorkers: the rows do not depend on how many work, on the order of
// the work, or on parts.
func TestSeriesWorkers(t *testing.T) {
	t.Parallel()
	changes := []tree.Change{mustChange(t, "bridge.relief.depth = [0, 0.1, -1]"), mustChange(t, "plate.thickness = [5, 4]")}
	plan := func(part [2]int) *Series {
		s, err := NewSeries(nil, "flat-plate", changes, SeriesOptions{Refine: 0.25, Part: part})
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	want := collect(t, plan([2]int{1, 1}), 1)
	if got := collect(t, plan([2]int{1, 1}), 2); !slices.Equal(got, want) {
		t.Errorf("rows by two workers\n%s\nwant those by one\n%s", got, want)
	}
	joined := make([]string, len(want))
	for i := range 4 {
		for k, line := range collect(t, plan([2]int{i + 1, 4}), 1) {
			if line != "" && joined[k] != "" {
				t.Errorf("point %d is in two parts", k+1)
			}
			joined[k] += line
		}
	}
	if !slices.Equal(joined, want) {
		t.Errorf("parts together\n%s\nwant\n%s", joined, want)
	}
	for i, line := range want {
		var r SeriesRow
		if err := json.Unmarshal([]byte(line), &r); err != nil {
			t.Fatal(err)
		}
		bad := strings.HasPrefix(r.Failed, "--change:1: bridge.relief.depth: want >= 0 mm, found -1")
		if bad != (i >= 4) || !bad && !(r.Results["bridge_sink_mm"] > 0.1) || r.Point != i+1 {
			t.Errorf("row %d: %s", i+1, line)
		}
	}
}

// TestSeriesRefit: a point read off a shared top gives what a solve of its own
// does.
func TestSeriesRefit(t *testing.T) {
	t.Parallel()
	rows := collect(t, must(NewSeries(nil, "first", []tree.Change{mustChange(t, "strings.back_angle = [7, 9]")}, SeriesOptions{Refine: 0.25, Part: [2]int{1, 1}})), 1)
	var got SeriesRow
	if err := json.Unmarshal([]byte(rows[1]), &got); err != nil {
		t.Fatal(err)
	}
	sol, err := design.Solve(t.Context(), casetest.Open(t, "first"), design.Options{Refine: 0.25, NoError: true, NoFlow: true})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range SeriesColumns() {
		g, w := float64(got.Results[c.Column]), float64(c.Get(answer.Summarize(sol)))
		if d := g - w; d > 1e-9*(1+w*w) || d < -1e-9*(1+w*w) {
			t.Errorf("%s %.12g, want %.12g as solved by itself", c.Column, g, w)
		}
	}
}

func must(s *Series, err error) *Series {
	if err != nil {
		panic(err)
	}
	return s
}

func TestSeriesRefused(t *testing.T) {
	for _, c := range []struct {
		name    string
		changes []string
		part    [2]int
		says    string
	}{
		{"first", []string{"plate.thicknes = [4, 5]"}, [2]int{1, 1}, `unknown key; did you mean "thickness"?`},
		{"frist", []string{"plate.thickness = [4, 5]"}, [2]int{1, 1}, `did you mean "first"?`},
		{"first", []string{"plate.thickness = [4]", "plate.thickness = [5]"}, [2]int{1, 1}, "want each key once"},
		{"first", []string{"plate.arch = [{ formula = { height = 20 } }]", "plate.arch.formula.height = [5]"}, [2]int{1, 1}, "want each key once"},
		{"first", []string{"plate.thickness = 4..5 by 0.001", "mesh.size = 5..6 by 0.001"}, [2]int{1, 1}, "want at most 100000 combinations"},
		{"first", []string{"plate.thickness = [4, 5]"}, [2]int{3, 2}, "want a part from 1/1 to 2/2, found 3/2"},
		{"first", []string{"plate.thickness = [4, 5]"}, [2]int{0, 2}, "want a part"},
		{"first", []string{"plate.thickness = [4, 5]"}, [2]int{1, 3}, "want a part"},
	} {
		var changes []tree.Change
		for _, text := range c.changes {
			changes = append(changes, mustChange(t, text))
		}
		if _, err := NewSeries(nil, c.name, changes, SeriesOptions{Refine: 1, Part: c.part}); err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s %q: %v, want an error that says %q", c.name, c.changes, err, c.says)
		}
	}
}

// TestSeriesStops: a row that cannot be kept, or a cancelled context, ends the
// run with that error.
func TestSeriesStops(t *testing.T) {
	s := must(NewSeries(nil, "flat-plate", []tree.Change{mustChange(t, "bridge.relief.depth = 0..0.3 by 0.1")}, SeriesOptions{Refine: 0.25, Part: [2]int{1, 1}}))
	full := errors.New("disk full")
	if err := s.Run(t.Context(), s.Mine(), 2, func(SeriesRow) error { return full }); !errors.Is(err, full) {
		t.Errorf("run ended with %v, want %v", err, full)
	}
	ctx, cancel := context.WithCancel(t.Context())
	n := 0
	err := s.Run(ctx, s.Mine(), 1, func(SeriesRow) error { n++; cancel(); return nil })
	if !errors.Is(err, context.Canceled) || n != 1 {
		t.Errorf("cancelled run ended with %v after %d rows, want %v after 1", err, n, context.Canceled)
	}
}

func TestReadSeries(t *testing.T) {
	h := SeriesHead{Format: 1, Keys: []string{"a"}, Values: [][]string{{"1", "2", "3"}}, Points: 3, Part: [2]int{1, 1}, Mine: 3, Fingerprint: "f"}
	head := string(must2(h.HeadLine()))
	rowOf := func(h SeriesHead, point int, a float64) string {
		return string(must2(h.Line(SeriesRow{Point: point, Set: map[string]any{"a": a}, Results: map[string]answer.Num{"x_mm": answer.Num(point) / 3}})))
	}
	row := func(point int) string { return rowOf(h, point, 1) }
	headWith := func(change func(*SeriesHead)) string {
		other := h
		change(&other)
		return string(must2(other.HeadLine()))
	}
	for _, c := range []struct {
		name, data string
		rows       int
		whole      bool
		says       string
	}{
		{"whole", head + row(1) + row(3), 2, true, ""},
		{"empty", "", 0, false, ""},
		{"head cut short", head[:20], 0, false, ""},
		{"head without end of line", strings.TrimSpace(head), 0, false, ""},
		{"row cut short", head + row(1) + row(2)[:15], 1, false, ""},
		{"row without end of line", head + row(1) + strings.TrimSpace(row(2)), 1, false, ""},
		{"row cut short but ended", head + row(1) + row(2)[:15] + "\n", 1, false, ""},
		{"row twice", head + row(1) + row(1), 1, false, ""},
		{"row twice, not the same", head + row(1) + rowOf(h, 1, 2), 0, false, "f:3: point 1 is there twice"},
		{"no head", row(1), 0, false, "f:1: want the head"},
		{"two heads", head + head, 0, false, "f:2: want the head"},
		{"rubbish inside", head + "rubbish\n" + row(1), 0, false, "f:2: not a row"},
		{"point too far", head + row(4), 0, false, "f:2: point: want 1 to 3, found 4"},
		{"another format", headWith(func(h *SeriesHead) { h.Format = 2 }), 0, false, "f:1: want the head"},
		{"head that contradicts itself", headWith(func(h *SeriesHead) { h.Points = 9 }), 0, false, "f:1: want the head"},
		{"more parts than points", headWith(func(h *SeriesHead) { h.Part = [2]int{1, 1e9} }), 0, false, "f:1: want the head"},
		{"no such part", headWith(func(h *SeriesHead) { h.Part = [2]int{3, 2} }), 0, false, "f:1: want the head"},
		{"another share than a part has", headWith(func(h *SeriesHead) { h.Part = [2]int{1, 3} }), 0, false, "f:1: want the head"},
		{"edited row", head + strings.Replace(row(1), "0.333", "0.334", 1), 0, false, "f:2: the line is not as it was written"},
		{"edited head", strings.Replace(head, `"3"`, `"4"`, 1), 0, false, "f:1: the line is not as it was written"},
		{"row without a sum", head + `{"point":1,"set":{"a":1},"results":{},"checks_failed":"","failed":""}` + "\n", 0, false, "f:2: the line is not"},
		{"row of another series", head + rowOf(SeriesHead{Fingerprint: "g"}, 1, 1), 0, false, "f:2: the line is not as it was written"},
	} {
		_, rows, whole, err := ReadSeries("f", []byte(c.data))
		if c.says != "" {
			if err == nil || !strings.Contains(err.Error(), c.says) {
				t.Errorf("%s: %v, want an error that says %q", c.name, err, c.says)
			}
			continue
		}
		if err != nil || len(rows) != c.rows || whole != c.whole {
			t.Errorf("%s: %d rows, whole %v, %v; want %d, %v", c.name, len(rows), whole, err, c.rows, c.whole)
		}
	}
}

func must2(b []byte, err error) []byte {
	if err != nil {
		panic(err)
	}
	return b
}
