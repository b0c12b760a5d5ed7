package live

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/quantity"
	"archload/cases/tree"
)

// quick are coarse meshes: what a live design shares does not depend on them.
func quick() design.Options {
	return design.Options{Workers: 2, Refine: 0.5, NoFlow: true, NoError: true}
}

func mustBegin(t testing.TB, name string, o design.Options) *Live {
	t.Helper()
	l, err := Begin(context.Background(), nil, name, o)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

func mustSet(t testing.TB, l *Live, set ...tree.KeyValue) *Live {
	t.Helper()
	q, err := l.Set(context.Background(), set...)
	if err != nil {
		t.Fatal(err)
	}
	return q
}

func mustAt(t testing.TB, l *Live, load float64) *design.Solution {
	t.Helper()
	s, err := l.At(load)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func mustSolve(t testing.TB, c *cases.Case) *design.Solution {
	t.Helper()
	s, err := design.Solve(context.Background(), c, quick())
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// furthest is the greatest difference of two lists over the greatest value of
// the second; of two lengths it is infinite.
func furthest(got, want []float64) float64 {
	if len(got) != len(want) {
		return math.Inf(1)
	}
	worst, scale := 0.0, greatest(want)
	if scale == 0 {
		scale = 1
	}
	for i, v := range want {
		worst = max(worst, math.Abs(got[i]-v)/scale)
	}
	return worst
}

// TestLiveIsSolve: the live answer at full load is that of a solve.
func TestLiveIsSolve(t *testing.T) {
	t.Parallel()
	for _, name := range []string{"course-guitar", "course-guitar-relief", "octave-mandola", "bowed-layout", "flat-plate"} {
		got, want := mustAt(t, mustBegin(t, name, quick()), 1), mustSolve(t, casetest.Open(t, name))
		if d := furthest(got.Result.U, want.Result.U); d > 1e-9 {
			t.Errorf("%s: displacements differ by %.2g of the greatest, want 1e-9", name, d)
		}
		if d := furthest(got.Result.State.Lambda, want.Result.State.Lambda); d > 1e-9 {
			t.Errorf("%s: contact forces differ by %.2g of the greatest, want 1e-9", name, d)
		}
		if d := furthest(got.Result.Body, want.Result.Body); d > 1e-9 {
			t.Errorf("%s: the bridge's movements differ by %.2g of the greatest, want 1e-9", name, d)
		}
		w := whole(got)
		if g, w := w.Result.Energy.Total(), want.Result.Energy.Total(); math.Abs(g-w) > 1e-9*w {
			t.Errorf("%s: energy %.12g N mm, want %.12g", name, g, w)
		}
	}
}

// TestLiveFriction: a foot with friction at a fraction of the load, and under a deeper relief, is that of a
// design solved so, as near as the increments of its load tell; what is stored and dissipated makes up the work on the
// way too.
func TestLiveFriction(t *testing.T) {
	t.Parallel()
	near := func(what string, got, want *design.Solution) {
		t.Helper()
		if d := furthest(got.Result.U, want.Result.U); d > 2e-4 {
			t.Errorf("%s: displacements differ by %.2g of the greatest, want 2e-4", what, d)
		}
		if ch := whole(got).Result.Checks; ch.Force > 1e-8 || ch.Moment > 1e-8 || ch.Energy > 1e-8 {
			t.Errorf("%s: checks %+v, want below 1e-8", what, ch)
		}
	}
	l := mustSet(t, mustBegin(t, "course-guitar-relief", quick()), tree.KeyValue{Key: "bridge.hold", Value: tree.Valued("friction")})
	for _, load := range []float64{0.2, 0.8} {
		c, err := cases.OpenChanged(nil, l.Name(), "test", append(l.Keys(), tree.KeyValue{Key: "strings.tension_scale", Value: tree.Valued(load)}))
		if err != nil {
			t.Fatal(err)
		}
		near(fmt.Sprintf("at %g of the load", load), mustAt(t, l, load), mustSolve(t, c))
	}
	deeper := mustSet(t, l, tree.KeyValue{Key: "bridge.relief.depth", Value: tree.Valued(0.16)})
	c, err := cases.OpenChanged(nil, l.Name(), "test", deeper.Keys())
	if err != nil {
		t.Fatal(err)
	}
	near("relieved more", mustAt(t, deeper, 1), mustSolve(t, c))
}

// TestLiveLoad: the top at a fraction of the load is that of strings so much
// slacker, for the load of a slack set is the beginning of that of a tight one.
func TestLiveLoad(t *testing.T) {
	t.Parallel()
	for _, hold := range []string{"slip", "grip"} {
		l := mustSet(t, mustBegin(t, "course-guitar-relief", quick()), tree.KeyValue{Key: "bridge.hold", Value: tree.Valued(hold)})
		for _, load := range []float64{0.2, 0.45, 0.8} {
			c, err := cases.OpenChanged(nil, l.Name(), "test", append(l.Keys(), tree.KeyValue{Key: "strings.tension_scale", Value: tree.Valued(load)}))
			if err != nil {
				t.Fatal(err)
			}
			got, want := mustAt(t, l, load), mustSolve(t, c)
			if d := furthest(got.Result.U, want.Result.U); d > 1e-9 {
				t.Errorf("%s at %g of the load: displacements differ by %.2g of the greatest, want 1e-9", hold, load, d)
			}
			if d := furthest(got.Result.State.Gap, want.Result.State.Gap); d > 1e-9 {
				t.Errorf("%s at %g of the load: gaps differ by %.2g of the greatest, want 1e-9", hold, load, d)
			}
			w := whole(got).Result
			if e := want.Result.Energy.Total(); math.Abs(w.Energy.Total()-e) > 1e-9*e {
				t.Errorf("%s at %g of the load: energy %.12g N mm, want %.12g", hold, load, w.Energy.Total(), e)
			}
			if ch := w.Checks; ch.Force > 1e-8 || ch.Moment > 1e-8 || ch.Energy > 1e-8 {
				t.Errorf("%s at %g of the load: checks %+v, want below 1e-8", hold, load, ch)
			}
		}
		if s := answer.SinkField(mustAt(t, l, 0)); greatest(s) > 1e-12 {
			t.Errorf("%s without load: sink of %.3g mm, want none", hold, greatest(s))
		}
	}
	l := mustBegin(t, "flat-plate", quick())
	for _, load := range []float64{-0.1, 1.1, math.NaN()} {
		if _, err := l.At(load); err == nil {
			t.Errorf("load %g was taken, want a refusal", load)
		}
	}
}

// TestLiveBare: a plate without a bridge bends in proportion to its load.
func TestLiveBare(t *testing.T) {
	t.Parallel()
	l := mustBegin(t, "bench-plate", quick())
	want := mustSolve(t, casetest.Open(t, "bench-plate"))
	half := answer.SinkField(mustAt(t, l, 0.5))
	for i := range half {
		half[i] *= 2
	}
	if d := furthest(half, answer.SinkField(want)); d > 1e-12 {
		t.Errorf("twice the sink under half the load differs by %.2g from that under all, want 1e-12", d)
	}
	q := mustSet(t, l, tree.KeyValue{Key: "load[1].force", Value: tree.ChangeValue{Text: "-160", Value: []any{0.0, 0.0, -160.0}}})
	if g, w := sink0(mustAt(t, q, 0.5)), sink0(mustAt(t, l, 1)); math.Abs(g-w) > 1e-12*math.Abs(w) {
		t.Errorf("half of twice the load sinks %.12g mm, want %.12g", g, w)
	}
	if q.Events() != nil {
		t.Errorf("a plate without a bridge has events: %v", q.Events())
	}
}

// sink0 is the greatest sink, mm.
func sink0(s *design.Solution) float64 { return greatest(answer.SinkField(s)) }

// liveEdits are edits of the course guitar with what they cost.
func liveEdits() []struct {
	key   string
	value tree.ChangeValue
	cost  design.Cost
	tol   float64 // how far the sink may be from that of a solve, relative
} {
	pair := func(x, y float64) tree.ChangeValue { return tree.ChangeValue{Text: "pair", Value: []any{x, y}} }
	return []struct {
		key   string
		value tree.ChangeValue
		cost  design.Cost
		tol   float64
	}{
		{"title", tree.Valued("Another name"), design.Nothing, 1e-9},
		{"brace[1].name", tree.Valued("low bar"), design.Nothing, 1e-9},
		{"bridge.relief.depth", tree.Valued(0.15), design.Refit, 1e-9},
		{"bridge.relief.shape", tree.Valued("cosine"), design.Refit, 1e-9},
		{"bridge.misfit", tree.ChangeValue{Text: "misfit", Value: []any{[]any{-60.0, 0.02}, []any{60.0, 0.0}}}, design.Refit, 1e-9},
		{"strings.tension_scale", tree.Valued(0.9), design.Refit, 1e-9},
		{"strings.spread", tree.Valued(48.0), design.Refit, 1e-9},
		{"bridge.saddle_height", tree.Valued(28.0), design.Refit, 1e-9},
		{"bridge.wood", tree.Valued("sugar-maple"), design.Refit, 1e-9},
		{"bridge.height", tree.Valued(10.0), design.Refit, 1e-9},
		{"bridge.length", tree.Valued(144.0), design.Refit, 1e-9},
		{"bridge.build", tree.Valued("posts"), design.Refit, 1e-9},
		{"bridge.hold", tree.Valued("slip"), design.Refit, 1e-9},
		{"bridge.hollow.depth", tree.Valued(1.5), design.Refit, 1e-9},
		{"bridge.foot[1].from", tree.Valued(-64.0), design.Refit, 5e-3},
		{"bridge.width", tree.Valued(15.0), design.Refactor, 5e-3},
		{"bridge.at", pair(0, 2), design.Refactor, 5e-3},
		{"bridge.at", pair(0, 30), design.Remesh, 1e-9},
		{"plate.wood", tree.Valued("engelmann-spruce"), design.Refactor, 1e-9},
		{"plate.ring_angle", tree.Valued(10.0), design.Refactor, 1e-9},
		{"plate.made", tree.Valued("pressed"), design.Refactor, 1e-9},
		{"plate.thickness", tree.Valued(4.6), design.Refactor, 5e-3},
		{"plate.thickness_scale", tree.Valued(1.08), design.Refactor, 5e-3},
		{"brace[1].height", tree.Valued(9.0), design.Refactor, 1e-9},
		{"brace[1].height_scale", tree.Valued(1.2), design.Refactor, 1e-9},
		{"brace[2].width", tree.Valued(8.0), design.Refactor, 5e-3},
		{"brace[1].fitted", tree.Valued(false), design.Refactor, 1e-9},
		{"brace[1].wood", tree.Valued("engelmann-spruce"), design.Refactor, 1e-9},
		{"rim.support", tree.Valued("clamped"), design.Refactor, 1e-9},
		{"rim.support", tree.Valued("elastic"), design.Refactor, 1e-9},
		{"plate.arch.rim_height", tree.Valued(5.5), design.Refactor, 5e-4},
		{"plate.arch.height_scale", tree.Valued(1.1), design.Refactor, 1e-9}, // the plan of a solve is the same: nowhere is it bent for smaller triangles
		{"plate.arch.apex_shift", pair(0, 4), design.Refactor, 1e-9},
		{"plate.arch.height_scale", tree.Valued(1.5), design.Refactor, 1e-9}, // asks for smaller triangles: a new mesh
		{"mesh.size", tree.Valued(7.0), design.Remesh, 1e-9},
	}
}

// costFrom is what it costs to set some keys.
func costFrom(l *Live, set ...tree.KeyValue) (design.Cost, error) {
	from, err := l.from.with(tree.Laid(l.keys, set...))
	if err != nil {
		return design.Nothing, err
	}
	return design.CostOf(l.top, from.last), nil
}

// TestLiveCosts: every edit costs what it should, and gives what a solve of its
// own gives; where it keeps triangles that a solve would lay otherwise the sink
// agrees within their error.
func TestLiveCosts(t *testing.T) {
	t.Parallel()
	l := mustSet(t, mustBegin(t, "course-guitar", quick()), tree.KeyValue{Key: "bridge.relief.depth", Value: tree.Valued(0.1)}, tree.KeyValue{Key: "bridge.hollow.wall", Value: tree.Valued(3.0)}, tree.KeyValue{Key: "bridge.hollow.depth", Value: tree.Valued(2.0)})
	mustAt(t, l, 1) // so that there is a track to share
	for _, e := range liveEdits() {
		set := tree.KeyValue{Key: e.key, Value: e.value}
		cost, err := costFrom(l, set)
		if err != nil {
			t.Errorf("%s = %s: %v", e.key, e.value.Text, err)
			continue
		}
		if cost != e.cost {
			t.Errorf("%s = %s costs %q, want %q", e.key, e.value.Text, cost, e.cost)
		}
		q := mustSet(t, l, set)
		got, want := answer.Sink(mustAt(t, q, 1)), answer.Sink(mustSolve(t, q.Case()))
		if math.Abs(got-want) > e.tol*want {
			t.Errorf("%s = %s: sink %.12g mm, want %.12g as solved afresh (%.2g of it, may be %.2g)", e.key, e.value.Text, got, want, (got-want)/want, e.tol)
		}
		if back, err := costFrom(q, l.Keys()...); err != nil || back > cost {
			t.Errorf("%s: the way back costs %q (%v), want no more than the way there, %q", e.key, back, err, cost)
		}
	}
	if c, err := costFrom(l); err != nil || c != design.Nothing {
		t.Errorf("no edit costs %q (%v), want %q", c, err, design.Nothing)
	}
	if c, err := costFrom(l, tree.KeyValue{Key: "plate.thickness", Value: tree.Valued("5 mm")}); err != nil || c != design.Nothing {
		t.Errorf("the same thickness in other words costs %q (%v), want %q", c, err, design.Nothing)
	}
}

// TestLiveShares: what an edit does not touch is shared, not made again.
func TestLiveShares(t *testing.T) {
	t.Parallel()
	l := mustBegin(t, "course-guitar-relief", quick())
	mustAt(t, l, 1)
	deeper := mustSet(t, l, tree.KeyValue{Key: "bridge.relief.depth", Value: tree.Valued(0.3)})
	if deeper.top.Factored != l.top.Factored || deeper.top.Stand != l.top.Stand || deeper.track == nil || deeper.track.state != l.track.state {
		t.Error("a deeper relief made a new factor, bridge or path, want those of before")
	}
	wood := mustSet(t, l, tree.KeyValue{Key: "bridge.wood", Value: tree.Valued("sugar-maple")})
	if wood.top.Factored != l.top.Factored {
		t.Error("another bridge made a new factor, want that of before")
	}
	top := mustSet(t, l, tree.KeyValue{Key: "plate.wood", Value: tree.Valued("engelmann-spruce")})
	if top.top.Built.Mesh != l.top.Built.Mesh || top.top.Factored.Factor.Analysis() != l.top.Factored.Factor.Analysis() {
		t.Error("another wood made a new mesh or order of elimination, want those of before")
	}
	if s := mustAt(t, deeper, 1); math.Abs(answer.Sink(s)-answer.Sink(mustSolve(t, deeper.Case()))) > 1e-9 {
		t.Error("the shared path gives another sink")
	}
}

// TestLiveStops: a cancelled context ends a Set of every cost and leaves the
// design as it was.
func TestLiveStops(t *testing.T) {
	t.Parallel()
	l := mustBegin(t, "course-guitar", quick())
	want := answer.Sink(mustAt(t, l, 1))
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	for _, kv := range []tree.KeyValue{{Key: "bridge.relief.depth", Value: tree.Valued(0.1)}, {Key: "plate.wood", Value: tree.Valued("engelmann-spruce")}, {Key: "mesh.size", Value: tree.Valued(8.0)}} {
		if _, err := l.Set(ctx, kv); !errors.Is(err, context.Canceled) {
			t.Errorf("%s: got %v, want %v", kv.Key, err, context.Canceled)
		}
	}
	if _, err := Begin(ctx, nil, "course-guitar", quick()); !errors.Is(err, context.Canceled) {
		t.Errorf("begin: got %v, want %v", err, context.Canceled)
	}
	if _, err := l.Report(ctx); !errors.Is(err, context.Canceled) {
		t.Errorf("report: got %v, want %v", err, context.Canceled)
	}
	if got := answer.Sink(mustAt(t, l, 1)); got != want {
		t.Errorf("sink %g mm after the stops, want %g as before", got, want)
	}
}

// TestLiveFaults: a faulty key is told with its place among the keys set, what
// was found and what would be right; so is what only the geometry shows.
func TestLiveFaults(t *testing.T) {
	l := mustBegin(t, "course-guitar", quick())
	for _, c := range []struct {
		key   string
		value tree.ChangeValue
		want  string
	}{
		{"bridge.relief.depth", tree.Valued(-0.1), "as set here:1: bridge.relief.depth: want >= 0 mm, found -0.1"},
		{"bridge.relief.dept", tree.Valued(0.1), "as set here:1: bridge.relief.dept: unknown key; did you mean \"depth\"? (archload keys explains all)"},
		{"plate.wood", tree.Valued("sitka-spruse"), "as set here:1: plate.wood: "},
		{"plate.thickness_scale", tree.Valued(3.0), "as set here:1: plate.thickness_scale: want 0.5 to 2, found 3"},
		{"brace[9].fitted", tree.Valued(false), "as set here:1: brace[9].fitted: no such entry"},
		{"brace[1].fitted", tree.Valued("no"), "as set here:1: brace[1].fitted: want true or false, found \"no\""},
		{"bridge.at", tree.ChangeValue{Text: "far", Value: []any{0.0, 400.0}}, "bundled/course-guitar.toml:78: bridge.foot[1]: the foot reaches 102 mm beyond the outline"},
	} {
		_, err := l.Set(context.Background(), tree.KeyValue{Key: c.key, Value: c.value})
		if err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("got %v, want %q", err, c.want)
		}
	}
}

// TestLiveEvents: what happens at the foot, in words.
func TestLiveEvents(t *testing.T) {
	t.Parallel()
	relief := mustBegin(t, "course-guitar-relief", quick())
	misfit := tree.ChangeValue{Text: "misfit", Value: []any{[]any{-66.0, 0.0}, []any{66.0, 0.1}}}
	for _, c := range []struct {
		l    *Live
		want []string // in their order
	}{
		{mustBegin(t, "course-guitar", quick()), []string{"the whole foot bears from the start"}},
		{relief, []string{"both ends bear first", "the middle first touches", "the middle has closed"}},
		{mustSet(t, relief, tree.KeyValue{Key: "bridge.misfit", Value: misfit}), []string{"the middle first touches"}},
		{mustBegin(t, "course-guitar-two-feet", quick()), []string{"both feet bear from the start"}},
	} {
		events := c.l.Events()
		k, last := 0, 0.0
		for _, e := range events {
			if e.Load < last || e.Load > 1 {
				t.Errorf("%s: %v are not in the order of the load", c.l.Case().Title, events)
			}
			last = e.Load
			if k < len(c.want) && e.Words == c.want[k] {
				k++
			}
		}
		if k < len(c.want) {
			t.Errorf("%s: events %v, want %q among them", c.l.Case().Title, events, c.want)
		}
	}
	var b answer.BridgeReport
	b.SetEvents(mustAt(t, relief, 1))
	for _, e := range relief.Events() {
		if e.Words == "the middle first touches" && e.Load != float64(b.MiddleTouchesAt) {
			t.Errorf("the middle touches at %g in the events, at %g in the report", e.Load, b.MiddleTouchesAt)
		}
	}
}

// TestLiveReport: the report is that of a solve.
func TestLiveReport(t *testing.T) {
	t.Parallel()
	l := mustSet(t, mustBegin(t, "course-guitar-relief", quick()), tree.KeyValue{Key: "bridge.relief.depth", Value: tree.Valued(0.1)})
	got, err := l.Report(context.Background())
	if err != nil {
		t.Fatal(err)
	}
	o := quick()
	o.NoFlow = false
	s, err := design.Solve(context.Background(), l.Case(), o)
	if err != nil {
		t.Fatal(err)
	}
	sameReports(t, got, answer.Summarize(s))
	if got.Flow == nil {
		t.Error("the report has no load flow")
	}
}

// sameReports compares all headline numbers to 1e-9.
func sameReports(t *testing.T, got, want *answer.Report) {
	t.Helper()
	for _, h := range quantity.Compared() {
		g, w := float64(h.Get(got)), float64(h.Get(want))
		if math.IsNaN(g) != math.IsNaN(w) || math.Abs(g-w) > 1e-9*max(1, math.Abs(w)) {
			t.Errorf("%s: %.12g %s, want %.12g", h.Name, g, h.Unit, w)
		}
	}
}

// TestLiveTogether: a design may be asked while another goroutine goes on from
// it, and gives what it gave before.
func TestLiveTogether(t *testing.T) {
	l := mustBegin(t, "course-guitar-relief", quick())
	want := answer.SinkField(mustAt(t, l, 0.5))
	done := make(chan error, 2)
	go func() {
		q, err := l.Set(context.Background(), tree.KeyValue{Key: "bridge.relief.depth", Value: tree.Valued(0.2)})
		if err == nil {
			_, err = q.At(1)
		}
		done <- err
	}()
	go func() {
		q, err := l.Set(context.Background(), tree.KeyValue{Key: "brace[1].height_scale", Value: tree.Valued(1.2)}, tree.KeyValue{Key: "bridge.hold", Value: tree.Valued("slip")})
		if err == nil {
			_, err = q.Report(context.Background())
		}
		done <- err
	}()
	for range 3 {
		s := mustAt(t, l, 0.5)
		answer.StrengthFields(s)
		if d := furthest(answer.SinkField(s), want); d > 0 {
			t.Errorf("the sink changed by %.2g of the greatest while another goroutine went on", d)
		}
		l.Events()
	}
	for range 2 {
		if err := <-done; err != nil {
			t.Error(err)
		}
	}
}
