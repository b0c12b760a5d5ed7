package say

import (
	"bytes"
	"regexp"
	"slices"
	"strings"
	"testing"

	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/glossary"
	"archload/cases/quantity"
	"archload/cases/study"
)

// TestQuantities: each row of the table is whole and tells itself apart, and
// names a column of a series by its unit.
func TestQuantities(t *testing.T) {
	endings := map[string]string{"mm": "_mm", "N": "_N", "g": "_g", "deg": "_deg", "MPa": "_MPa", "N mm": "_Nmm", "N per N": "_1", "%": "_percent", "% of load": "_percent", "Hz": "_Hz", "dB": "_dB"}
	var keys, names, columns []string
	for _, q := range quantity.All() {
		ending, known := endings[q.Unit]
		switch {
		case !regexp.MustCompile(`^[a-z]+(_[a-z]+)*$`).MatchString(q.Key):
			t.Errorf("%q is no key", q.Key)
		case q.Name == "" || q.Get == nil || !strings.HasSuffix(q.Means, "."):
			t.Errorf("%s lacks a name, a way to get it, or a sentence that says what it means", q.Key)
		case !known:
			t.Errorf("%s: unit %q", q.Key, q.Unit)
		case (q.Series > 0) != (q.Column != ""):
			t.Errorf("%s: column %q at place %d", q.Key, q.Column, q.Series)
		case q.Column != "" && !strings.HasSuffix(q.Column, ending):
			t.Errorf("%s: column %q, want it to end in %s", q.Key, q.Column, ending)
		case q.Minus != "" && q.Plus == "":
			t.Errorf("%s: minus means %q, plus nothing", q.Key, q.Minus)
		}
		keys, names = append(keys, q.Key), append(names, q.Name)
		if q.Column != "" {
			columns = append(columns, q.Column)
		}
	}
	for _, list := range [][]string{keys, names, columns} {
		slices.Sort(list)
		if n := len(slices.Compact(slices.Clone(list))); n != len(list) {
			t.Errorf("%d of %d are different: %q", n, len(list), list)
		}
	}
	for i, q := range study.SeriesColumns() {
		if q.Series != i+1 {
			t.Errorf("%s is column %d of a series, want %d", q.Column, q.Series, i+1)
		}
	}
}

// TestQuantityPlaces: a number has one name and the same digits in summary and
// comparison; the window's numbers need the bridge alone; every name of the
// summary's own lines is the table's.
func TestQuantityPlaces(t *testing.T) {
	s, err := design.Solve(t.Context(), casetest.Open(t, "course-guitar-relief"), design.Options{Workers: 2, Refine: 0.3, NoFlow: true, NoError: true})
	if err != nil {
		t.Fatal(err)
	}
	r := answer.Summarize(s)
	c := study.CompareRanged([]string{"a"}, []*design.Solution{s}, []*answer.Report{r}, nil)
	var summary, table bytes.Buffer
	if err := WriteSummary(&summary, r); err != nil {
		t.Fatal(err)
	}
	if err := WriteComparison(&table, c); err != nil {
		t.Fatal(err)
	}
	for _, q := range quantity.All() {
		v := q.Get(r)
		number := regexp.QuoteMeta(strings.TrimPrefix(numberText(q, v), "-"))
		if q.Summary != "" && v.Known() && q.Key != "gap_left" && !regexp.MustCompile(` -?`+number+`[ ,;\n]`).MatchString(summary.String()) {
			t.Errorf("the summary lacks %s, %s %s", q.Name, number, q.Unit)
		}
		if q.Compare != quantity.NotCompared && v.Known() && !strings.Contains(table.String(), q.Title()+", "+q.Unit+"\n    A  a ") {
			t.Errorf("the comparison lacks %s", q.Title())
		}
		if alone := q.Get(&answer.Report{Bridge: r.Bridge}); q.Window && (alone.Known() || v.Known()) && alone != v {
			t.Errorf("%s is %g, of the bridge alone %g", q.Key, v, alone)
		}
	}
	for _, key := range []string{"bridge_sink", "lean_along", "action_change", "most_sunk", "mass", "downforce", "friction_needed", "energy", "strength_used", "foot_used", "foot_pressure"} {
		if name := quantity.Of(key).Name; !strings.Contains(summary.String(), "\n  "+name+" ") {
			t.Errorf("the summary has no line %q", name)
		}
	}
}

// TestSummaryOfNew: a quantity that no sentence knows has a line of its own at
// the end of its section.
func TestSummaryOfNew(t *testing.T) {
	s := &summary{r: &answer.Report{Bridge: &answer.BridgeReport{GapLeft: 0.25}}, told: map[string]bool{}}
	for _, q := range quantity.All() {
		if q.Summary == quantity.HeadBridge && q.Key != "gap_left" {
			s.skip(q.Key)
		}
	}
	s.end(quantity.HeadBridge)
	if want := "  gap left under the foot      0.250 mm\n\n"; s.String() != want {
		t.Errorf("%q, want %q", s.String(), want)
	}
}

// TestSummaryIsExplained wants every label of the summaries of the bundled cases in the
// glossary, but for the names of their own things.
func TestSummaryIsExplained(t *testing.T) {
	for _, name := range []string{"course-guitar-relief", "course-guitar-two-feet", "bench-plate"} {
		c := casetest.Open(t, name)
		s, err := design.Solve(t.Context(), c, design.Options{Workers: 2, Refine: 0.3})
		if err != nil {
			t.Fatal(err)
		}
		own := map[string]bool{"string": true, "in all": true}
		for _, b := range c.Braces {
			own[b.Name] = true
		}
		for _, g := range c.Gauges {
			own[g.Name] = true
		}
		for _, e := range answer.Summarize(s).Reactions.Posts {
			own[e.Name+" holds up"] = true
		}
		if c.Strings != nil {
			for _, e := range c.Strings.Each {
				own[e.Name] = true
			}
		}
		var b strings.Builder
		if err := WriteSummary(&b, quantity.Summarize(s)); err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(b.String()) {
			label, rest, _ := strings.Cut(strings.TrimPrefix(line, "  "), "  ")
			label = strings.TrimSpace(label)
			if !strings.HasPrefix(line, "  ") || label == "" || strings.TrimSpace(rest) == "" || own[label] {
				continue
			}
			if found := glossary.Named(label); len(found) == 0 || found[0].Name != label && !slices.Contains(found[0].Also, label) {
				t.Errorf("%s: the label %q of the summary is not explained", name, label)
			}
		}
	}
}
