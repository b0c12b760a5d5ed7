package answer

import (
	"context"
	"encoding/json"
	"io/fs"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/design"
)

// headlineFact is one kind of statement of a bundled case's headline: its
// words, with one number, and where a report holds it.
type headlineFact struct {
	words *regexp.Regexp
	value func(*Report) float64
}

// headlineFacts lists what a headline may say.
func headlineFacts() []headlineFact {
	fact := func(words string, value func(*Report) float64) headlineFact {
		return headlineFact{regexp.MustCompile("^" + strings.Replace(words, "#", `(-?\d+(?:\.\d+)?)`, 1) + "$"), value}
	}
	return []headlineFact{
		fact("the bridge sinks # mm", func(r *Report) float64 { return r.Bridge.Sink }),
		fact("the top sinks # mm where it sinks most", func(r *Report) float64 { return r.Top.MostSunk.Value }),
		fact("under the weight it sinks # mm", func(r *Report) float64 { return r.Gauges[0].Sink }),
		fact("60 mm beside it # mm", func(r *Report) float64 { return r.Gauges[1].Sink }),
		fact("the strings press with # N", func(r *Report) float64 { return r.Strings.Downforce }),
		fact("the middle of the foot carries # %", func(r *Report) float64 { return 100 * r.Bridge.Share.Middle }),
		fact("the bass end of the foot carries # %", func(r *Report) float64 { return 100 * r.Bridge.Share.BassEnd }),
		fact("the treble end # %", func(r *Report) float64 { return 100 * r.Bridge.Share.TrebleEnd }),
		fact("the middle first touches at # % of the load", func(r *Report) float64 { return 100 * float64(r.Bridge.MiddleTouchesAt) }),
		fact("and has closed at # %", func(r *Report) float64 { return 100 * float64(r.Bridge.MiddleClosesAt) }),
		fact("strength used # %", func(r *Report) float64 { return 100 * float64(r.Strength.Used) }),
	}
}

// statements returns the statements of a case's headline: the paragraph of its
// opening comment that begins with "Headline:" or "Headline (--linear):", parted at semicolons.
func statements(text string) []string {
	comment, _, _ := strings.Cut(text, "\nformat")
	at := regexp.MustCompile(`# Headline(?: \(--linear\))?: `).FindStringIndex(comment)
	if at == nil {
		return nil
	}
	rest := comment[at[1]:]
	rest, _, _ = strings.Cut(rest, "\n#\n")
	rest = strings.Join(strings.Fields(strings.ReplaceAll(rest, "\n#", " ")), " ")
	return strings.Split(strings.TrimSuffix(rest, "."), "; ")
}

// checkHeadline compares every statement with the report, to the digits shown.
func checkHeadline(t *testing.T, name, text string, r *Report) {
	t.Helper()
	said := statements(text)
	if len(said) < 2 {
		t.Errorf("%s: headline %q, want at least two statements", name, said)
	}
	for _, s := range said {
		known := false
		for _, f := range headlineFacts() {
			m := f.words.FindStringSubmatch(s)
			if m == nil {
				continue
			}
			known = true
			want, err := strconv.ParseFloat(m[1], 64)
			if err != nil {
				t.Fatal(err)
			}
			_, decimals, _ := strings.Cut(m[1], ".")
			half := 0.5 * math.Pow(10, -float64(len(decimals)))
			if got := f.value(r); !(math.Abs(got-want) <= half*(1+1e-9)) {
				t.Errorf("%s: headline says %q, computed %.6g", name, s, got)
			}
		}
		if !known {
			t.Errorf("%s: headline says %q, which no check understands", name, s)
		}
	}
}

// TestBundledCases solves every bundled case and holds it to the built-in
// checks' limits, to the mesh's bars, to JSON without NaN and to its headline.
func TestBundledCases(t *testing.T) {
	t.Parallel()
	list, err := cases.Bundled()
	if err != nil {
		t.Fatal(err)
	}
	fsys, err := cases.BundledFS()
	if err != nil {
		t.Fatal(err)
	}
	for _, info := range list {
		s, err := design.Solve(context.Background(), casetest.Open(t, info.Name), design.Options{Workers: 2, NoError: true})
		if err != nil {
			t.Errorf("%s: %v", info.Name, err)
			continue
		}
		r := Summarize(s)
		e := r.Error
		against, holds := math.Abs(r.Reactions.Total[2]/r.Reactions.Applied[2]+1), r.Reactions.Total[2]
		if r.Body != nil { // the stand gives nothing, and the edge holds what the top is pressed with
			against, holds = r.Body.Outside, r.Flow.Load
		}
		for _, c := range []struct {
			what      string
			got, most float64
		}{
			{"force out of balance", e.Equilibrium, 1e-8}, {"moment out of balance", e.Moment, 1e-8},
			{"energy out of balance", e.Energy, 1e-6}, {"contact conditions", e.Complementarity, 1e-9},
			{"reaction against load", against, 1e-8},
		} {
			if !(c.got <= c.most) {
				t.Errorf("%s: %s %.3g, want <= %.0e", info.Name, c.what, c.got, c.most)
			}
		}
		// A post or a bench support stands inside the rim, in no sector of it.
		if inside := len(s.Top.Built.Case.Posts) + len(s.Top.Built.Case.Supports); inside == 0 {
			casetest.Within(t, info.Name+": sum of the sectors, N", sectorSum(r), holds, holds, 1e-12)
		}
		if q := s.Top.Built.Mesh.Quality(); !(q.MinAngle >= 25) {
			t.Errorf("%s: least angle %.1f degrees, want 25", info.Name, q.MinAngle)
		}
		if bad := e.Failed(); len(bad) > 0 {
			t.Errorf("%s: %v reported as failed, want none", info.Name, bad)
		}
		data, err := json.Marshal(r)
		if err != nil || strings.Contains(string(data), "NaN") {
			t.Errorf("%s: JSON: %v", info.Name, err)
		}
		text, err := fs.ReadFile(fsys, info.Name+".toml")
		if err != nil {
			t.Fatal(err)
		}
		checkHeadline(t, info.Name, string(text), r)
	}
}

func sectorSum(r *Report) float64 {
	s := r.Reactions.Sectors
	return s.Neck + s.Tail + s.Bass + s.Treble
}
