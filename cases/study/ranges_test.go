package study

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/quantity"
	"archload/cases/tree"
)

// rough are options for tests of ranges: a coarse mesh that is its own
// companion.
func rough() design.Options {
	return design.Options{Workers: 2, Refine: 0.3, NoFlow: true, NoError: true}
}

// caseWith opens a bundled case with some keys set.
func caseWith(t *testing.T, name string, set ...tree.KeyValue) *cases.Case {
	t.Helper()
	c, err := cases.OpenChanged(nil, name, "test", set)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func solveAll(t *testing.T, o design.Options, cs ...*cases.Case) []*design.Solution {
	t.Helper()
	var out []*design.Solution
	for _, c := range cs {
		s, err := design.Solve(t.Context(), c, o)
		if err != nil {
			t.Fatal(err)
		}
		out = append(out, s)
	}
	return out
}

// shared holds what several tests read: solutions of bundled cases with rough
// options, and what the scatter of wood does to a solution.
var shared struct {
	sync.Mutex
	sols    map[string]func() (*design.Solution, error)
	spreads map[*design.Solution]func() (*Spread, error)
}

// once is the value of a key, worked out once for all tests, which only read it.
func once[K comparable, V any](t *testing.T, known *map[K]func() (V, error), key K, find func() (V, error)) V {
	t.Helper()
	shared.Lock()
	if *known == nil {
		*known = map[K]func() (V, error){}
	}
	value, ok := (*known)[key]
	if !ok {
		value = sync.OnceValues(find)
		(*known)[key] = value
	}
	shared.Unlock()
	v, err := value()
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// roughly answers bundled cases with rough options, each once.
func roughly(t *testing.T, names ...string) []*design.Solution {
	t.Helper()
	var out []*design.Solution
	for _, name := range names {
		out = append(out, once(t, &shared.sols, name, func() (*design.Solution, error) {
			c, err := cases.Open(nil, name)
			if err != nil {
				return nil, err
			}
			return design.Solve(context.Background(), c, rough())
		}))
	}
	return out
}

// spreadOf finds what the scatter of wood does to a solution, once.
func spreadOf(t *testing.T, s *design.Solution) *Spread {
	t.Helper()
	return once(t, &shared.spreads, s, func() (*Spread, error) {
		return FindSpread(context.Background(), s, design.Options{Workers: 2})
	})
}

// compareAll sets solutions side by side with their ranges.
func compareAll(t *testing.T, sols []*design.Solution) *Comparison {
	t.Helper()
	var names []string
	var reps []*answer.Report
	var spreads []*Spread
	for i, s := range sols {
		sp := spreadOf(t, s)
		if len(sp.faults) > 0 {
			t.Errorf("%s: %v", s.Top.Built.Case.Title, sp.faults)
		}
		names, reps, spreads = append(names, string(rune('a'+i))), append(reps, answer.Summarize(s)), append(spreads, sp)
	}
	return CompareRanged(names, sols, reps, spreads)
}

func rowOf(t *testing.T, c *Comparison, key string) *Row {
	t.Helper()
	i := slices.IndexFunc(c.Rows, func(r Row) bool { return r.Key == key })
	if i < 0 {
		t.Fatalf("no row %q", key)
	}
	return &c.Rows[i]
}

func nearly(got, want answer.Num, relative float64) bool {
	return math.Abs(float64(got-want)) <= relative*math.Abs(float64(want))
}

// TestTopInOtherPlanks: the same top in other planks is what a solve of its own gives.
func TestTopInOtherPlanks(t *testing.T) {
	t.Parallel()
	s := roughly(t, "course-guitar-posts")[0]
	planks := planks(s.Top.Built.Case)
	times := make([]map[string]float64, len(planks))
	for i := range planks {
		times[i] = map[string]float64{"EL": 0.8, "ER": 1.1, "GLR": 0.9, "GRT": 1.2}
	}
	c := cutFrom(s.Top.Built.Case, planks, times)
	again, err := answerIn(t.Context(), s, c)
	if err != nil {
		t.Fatal(err)
	}
	got, want := answer.Summarize(again), answer.Summarize(solveAll(t, rough(), c)[0])
	for _, h := range quantity.Compared() {
		if g, w := h.Get(got), h.Get(want); w.Known() && math.Abs(float64(g-w)) > 1e-7*math.Abs(float64(w))+1e-9 {
			t.Errorf("%s: %.10g %s, solved afresh %.10g", h.Name, g, h.Unit, w)
		}
	}
	if base := answer.Summarize(s); nearly(answer.Num(got.Bridge.Sink), answer.Num(base.Bridge.Sink), 0.05) {
		t.Errorf("the bridge sinks %.4g mm in other wood, %.4g mm before: want a change", got.Bridge.Sink, base.Bridge.Sink)
	}
}

// TestScatterShares: a constant of the bridge asks for contact alone, a strength
// or a density for a summary alone; all give what a solve of its own gives.
func TestScatterShares(t *testing.T) {
	t.Parallel()
	s := roughly(t, "course-guitar-relief")[0]
	planks, base := planks(s.Top.Built.Case), answer.SummarizeCompanion(s)
	shared := 0
	for _, c := range scattering(planks, true) {
		times := make([]map[string]float64, len(planks))
		times[c.plank] = map[string]float64{c.key: 0.7}
		other := cutFrom(s.Top.Built.Case, planks, times)
		again, err := answerIn(t.Context(), s, other)
		if err != nil {
			t.Fatal(err)
		}
		stiff := strings.ToUpper(c.key) == c.key && c.key != "MOR" // EL to GRT
		wantFactor, wantResult := stiff && planks[c.plank].role != "bridge", stiff
		if anew := again.Top.Factored != s.Top.Factored; anew != wantFactor {
			t.Errorf("%s of the %s: a new factor %v, want %v", c.key, planks[c.plank].words(), anew, wantFactor)
		}
		if anew := again.Result != s.Result; anew != wantResult {
			t.Errorf("%s of the %s: a new result %v, want %v", c.key, planks[c.plank].words(), anew, wantResult)
		}
		if wantFactor {
			continue
		}
		shared++
		got, want := reportOf(again, s, base), answer.Summarize(solveAll(t, rough(), other)[0])
		for _, h := range quantity.Compared() {
			if g, w := h.Get(got), h.Get(want); w.Known() && math.Abs(float64(g-w)) > 1e-7*math.Abs(float64(w))+1e-9 {
				t.Errorf("%s of the %s, %s: %.10g %s, solved afresh %.10g", c.key, planks[c.plank].words(), h.Name, g, h.Unit, w)
			}
		}
	}
	if shared < 10 {
		t.Errorf("%d constants left the factor, want at least 10", shared)
	}
}

// TestEqualDesigns: two equal designs in the same planks differ in nothing,
// with certainty.
func TestEqualDesigns(t *testing.T) {
	t.Parallel()
	s := append(solveAll(t, rough(), casetest.Open(t, "course-guitar-relief")), roughly(t, "course-guitar-relief")...)
	c := compareAll(t, s)
	if len(c.Differs) != 0 {
		t.Errorf("input differs: %v", c.Differs)
	}
	for _, r := range c.Rows {
		d := r.Differences[0]
		if r.Bare() {
			continue
		}
		if d.Value != 0 || d.Wood != 0 || d.Within {
			t.Errorf("%s: difference %g %s ± %g, within scatter %v; want 0 ± 0, false", r.Name, d.Value, r.Unit, d.Wood, d.Within)
		}
		if !r.Ranges[0].Wood.Known() || r.Ranges[0].Wood != r.Ranges[1].Wood {
			t.Errorf("%s: wood's ranges %g and %g %s, want the same", r.Name, r.Ranges[0].Wood, r.Ranges[1].Wood, r.Unit)
		}
	}
}

// TestRealDifference: an apex to the treble softens the bass end in any plank,
// and the same plank in both takes out most of the scatter.
func TestRealDifference(t *testing.T) {
	t.Parallel()
	o := rough()
	o.NoError = false
	o.Refine = 0.6
	c := compareAll(t, solveAll(t, o, casetest.Open(t, "course-guitar"), casetest.Open(t, "course-guitar-treble")))
	r := rowOf(t, c, "bass_end_sink")
	d := r.Differences[0]
	if d.Within || !(d.Wood < r.Ranges[0].Wood) || !(d.Wood > 0) || !(d.Value > 3*d.Wood) {
		t.Errorf("bass end: %+.3g mm ± %.2g, marked %v; A ± %.2g: want a sure difference with a smaller range", d.Value, d.Wood, d.Within, r.Ranges[0].Wood)
	}
	if want := 100 * d.Value / r.Values[0]; d.Percent != want {
		t.Errorf("bass end: %g %%, want %g", d.Percent, want)
	}
	if !(r.Ranges[0].Mesh > 0) || !d.Mesh.Known() {
		t.Errorf("bass end: mesh ± %g mm, of the difference ± %g: want both", r.Ranges[0].Mesh, d.Mesh)
	}
	if first := r.Ranges[0].Behind[0]; first.Constant != "EL" || !strings.HasPrefix(first.Plank, "top") {
		t.Errorf("behind the bass end's scatter stands %+v, want EL of the top first", first)
	}
	if m := rowOf(t, c, "mass"); m.Weight > r.Weight {
		t.Error("the mass, which hardly changes, stands before the bass end of the bridge")
	}
	if !nearly(rowOf(t, c, "mass").Ranges[0].Wood, 0.09*rowOf(t, c, "mass").Values[0], 0.1) {
		t.Error("mass: want about 9 %: density scatters by 10 %, and the braces are of another plank")
	}
}

// TestOtherPlanks: two woods are two planks, whose scatters add up; a wood of
// another mean is another plank too.
func TestOtherPlanks(t *testing.T) {
	t.Parallel()
	b := caseWith(t, "course-guitar", tree.KeyValue{Key: "plate.wood", Value: tree.Valued("engelmann-spruce")})
	c := compareAll(t, append(roughly(t, "course-guitar"), solveAll(t, rough(), b)...))
	r := rowOf(t, c, "bridge_sink")
	both := answer.Num(math.Hypot(float64(r.Ranges[0].Wood), float64(r.Ranges[1].Wood)))
	if d := r.Differences[0].Wood; !nearly(d, both, 0.02) {
		t.Errorf("another wood: difference ± %.4g mm, want nearly ± %.4g: the tops' scatters add up", d, both)
	}
	tops := 0
	for _, k := range c.Wood.Constants {
		if k.Constant == "EL" && strings.HasPrefix(k.Plank, "top") {
			tops++
			if len(k.Cases) != 1 {
				t.Errorf("%s serves %v, want one case", k.Plank, k.Cases)
			}
		}
		if k.Constant == "EL" && k.Plank == "bridge of ebony" && len(k.Cases) != 2 {
			t.Errorf("%s serves %v, want both cases", k.Plank, k.Cases)
		}
		if !(k.Scatter > 0) || k.Source == "" {
			t.Errorf("%s of the %s: scatter %g from %q", k.Constant, k.Plank, k.Scatter, k.Source)
		}
	}
	if tops != 2 {
		t.Errorf("%d tops, want 2", tops)
	}
}

// TestPlanks lists the pieces of wood of cases.
func TestPlanks(t *testing.T) {
	for _, c := range []struct {
		name string
		set  []tree.KeyValue
		want string
	}{
		{"course-guitar", nil, "top of sitka-spruce, braces of sitka-spruce, bridge of ebony"},
		{"course-guitar-posts", []tree.KeyValue{{Key: "bridge.saddle_beam.wood", Value: tree.Valued("sugar-maple")}}, "top of sitka-spruce, braces of sitka-spruce, saddle beam of sugar-maple, bridge of ebony"},
		{"course-guitar-posts", nil, "top of sitka-spruce, braces of sitka-spruce, bridge of ebony"},
		{"course-guitar-elastic", []tree.KeyValue{{Key: "brace[2].wood", Value: tree.Valued("engelmann-spruce")}}, "top of sitka-spruce, braces of sitka-spruce, braces of engelmann-spruce, bridge of ebony, sides of sugar-maple"},
		{"bench-plate", nil, "top of sitka-spruce"},
	} {
		var got []string
		for _, p := range planks(caseWith(t, c.name, c.set...)) {
			got = append(got, p.words())
		}
		slices.Sort(got)
		want := strings.Split(c.want, ", ")
		slices.Sort(want)
		if !slices.Equal(got, want) {
			t.Errorf("%s %v: planks %q, want %q", c.name, c.set, got, want)
		}
	}
}

// TestNeverAndNone: what a design never comes to has no range and stands
// first; what it has not got stands as none.
func TestNeverAndNone(t *testing.T) {
	t.Parallel()
	deep := caseWith(t, "course-guitar", tree.KeyValue{Key: "bridge.relief.depth", Value: tree.Valued(2.0)})
	tight := roughly(t, "course-guitar", "bench-plate")
	c := compareAll(t, []*design.Solution{tight[0], solveAll(t, rough(), deep)[0], tight[1]})
	r := rowOf(t, c, "middle_touches_at")
	if r.Values[1].Known() || r.Ranges[1].Wood.Known() || r.Differences[0].Value.Known() || r.Differences[0].Within || r.Weight.Known() {
		t.Errorf("relief of 2 mm: touches at %v ± %v; want never, without ranges", r.Values[1], r.Ranges[1].Wood)
	}
	if c.Rows[0].Unit != "% of load" {
		t.Errorf("%s stands first, want what one design never comes to", c.Rows[0].Name)
	}
	data, err := json.Marshal(c)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(data, []byte(`"values":[0,null,null]`)) {
		t.Error(`the JSON holds no "values":[0,null,null]`)
	}
}

// TestSideNeedsFlow: on elastic sides, what the edge holds up is that of the
// load flow, in the ranges too.
func TestSideNeedsFlow(t *testing.T) {
	t.Parallel()
	o := rough()
	o.NoFlow, o.NoError, o.Refine = false, false, 0.5
	c := compareAll(t, solveAll(t, o, casetest.Open(t, "course-guitar-elastic")))
	for _, name := range []string{"edge_neck", "edge_bass"} {
		if r := rowOf(t, c, name); !(r.Ranges[0].Mesh < 0.1*r.Values[0]) || !(r.Ranges[0].Wood < 0.2*r.Values[0]) {
			t.Errorf("%s: %.3g N, mesh ± %.2g, wood ± %.2g: want ranges of the same number", name, r.Values[0], r.Ranges[0].Mesh, r.Ranges[0].Wood)
		}
	}
}

// TestSpreadStops: an interrupt ends the work.
func TestSpreadStops(t *testing.T) {
	s := roughly(t, "bench-plate")
	ctx, stop := context.WithCancel(t.Context())
	stop()
	if _, err := FindSpread(ctx, s[0], design.Options{}); err == nil {
		t.Error("a spread after an interrupt, want none")
	}
	if _, err := DrawSample(ctx, s, 30, 1, design.Options{}); err == nil {
		t.Error("a sample after an interrupt, want none")
	}
}

// TestParts: the rows stand part by part, and in each by weight; a percentage of
// what may as well be zero is left out.
func TestParts(t *testing.T) {
	t.Parallel()
	c := compareAll(t, roughly(t, "course-guitar", "course-guitar-relief"))
	if !slices.IsSortedFunc(c.Rows, byWeight) {
		t.Error("the rows are not in order")
	}
	for _, r := range c.Rows {
		d := r.Differences[0]
		switch p := r.Part(); {
		case r.Bare() != (p == OfMesh):
			t.Errorf("%s stands in part %d", r.Name, p)
		case p == Alike && math.Abs(float64(d.Value)) >= 0.5*math.Pow10(-r.of.Digits):
			t.Errorf("%s, %+g %s: stands among those without a difference", r.Name, d.Value, r.Unit)
		case p == Scatter && !d.Within:
			t.Errorf("%s stands within the wood's scatter, %+g ± %g %s", r.Name, d.Value, d.Wood, r.Unit)
		case p == Decides && strings.HasPrefix(r.Name, "energy"):
			t.Errorf("%s stands among what decides", r.Name)
		}
		if a := math.Abs(float64(r.Values[0])); !r.Bare() && d.Percent.Known() && a < float64(r.Ranges[0].Wood) {
			t.Errorf("%s: %+g %% of %g ± %g %s, want none", r.Name, d.Percent, a, r.Ranges[0].Wood, r.Unit)
		}
	}
}
