package live

import (
	"context"
	"math"
	"testing"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/tree"
	"archload/fem/contact"
)

func changedCase(t *testing.T, name string, set ...tree.KeyValue) *cases.Case {
	t.Helper()
	c, err := cases.OpenChanged(nil, name, "test", set)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// TestThicknessScale: 1.1 times 5 mm is 5.5 mm, also at the rim, whose height
// follows.
func TestThicknessScale(t *testing.T) {
	got := mustSolve(t, changedCase(t, "course-guitar", tree.KeyValue{Key: "plate.thickness_scale", Value: tree.Valued(1.1)}))
	want := mustSolve(t, changedCase(t, "course-guitar", tree.KeyValue{Key: "plate.thickness", Value: tree.Valued(5.5)}))
	if d := furthest(got.Result.U, want.Result.U); d > 1e-9 {
		t.Errorf("displacements differ by %.2g of the greatest, want 1e-9", d)
	}
}

// TestBraceNotFitted: a brace that is not glued in is not there, whatever its
// wood and height.
func TestBraceNotFitted(t *testing.T) {
	t.Parallel()
	c := changedCase(t, "course-guitar", tree.KeyValue{Key: "brace[1].fitted", Value: tree.Valued(false)})
	s := mustSolve(t, c)
	r := answer.Summarize(s)
	if len(r.Braces) != len(c.Braces)-1 || r.Braces[0].Name != c.Braces[1].Name {
		t.Errorf("the report has %d braces, want %d", len(r.Braces), len(c.Braces)-1)
	}
	other := mustSolve(t, changedCase(t, "course-guitar", tree.KeyValue{Key: "brace[1].fitted", Value: tree.Valued(false)},
		tree.KeyValue{Key: "brace[1].height_scale", Value: tree.Valued(2.0)}, tree.KeyValue{Key: "brace[1].wood", Value: tree.Valued("ebony")}))
	if d := furthest(other.Result.U, s.Result.U); d > 0 {
		t.Errorf("the height of a brace that is not fitted moves the top by %.2g of its sink, want nothing", d)
	}
	full := answer.Summarize(mustSolve(t, casetest.Open(t, "course-guitar")))
	if gain := full.Mass.Braces - r.Mass.Braces; math.Abs(gain-full.Braces[0].Mass) > 1e-9 {
		t.Errorf("leaving a brace of %.4f g off takes %.4f g off", full.Braces[0].Mass, gain)
	}
	none := mustSolve(t, changedCase(t, "course-guitar", tree.KeyValue{Key: "brace[1].fitted", Value: tree.Valued(false)}, tree.KeyValue{Key: "brace[2].fitted", Value: tree.Valued(false)}))
	bare := mustSolve(t, changedCase(t, "course-guitar", tree.KeyValue{Key: "brace", Value: tree.ChangeValue{Text: "none", Value: []any{}}}))
	if a, b := answer.Sink(none), answer.Sink(bare); math.Abs(a-b) > 5e-3*b {
		t.Errorf("with no brace fitted the bridge sinks %.5f mm, with none in the case %.5f mm: want the same but for the mesh, 0.5 %%", a, b)
	}
	if answer.Sink(s) <= answer.Sink(mustSolve(t, casetest.Open(t, "course-guitar"))) || answer.Sink(none) <= answer.Sink(s) {
		t.Error("a top sinks less with a brace left off")
	}
	crossed := mustSolve(t, changedCase(t, "course-guitar-crossed", tree.KeyValue{Key: "brace[1].fitted", Value: tree.Valued(false)}))
	for _, b := range crossed.Top.Built.Model.Beams {
		if b.Joined != [2]bool{} {
			t.Error("a brace is joined to one that is not fitted")
		}
	}
	if _, err := design.Solve(context.Background(), c, design.Options{Refine: 0.5}); err != nil {
		t.Errorf("with the load flow: %v", err)
	}
}

// TestLiveWayBack: a relief whose shape was tried before is not followed again.
func TestLiveWayBack(t *testing.T) {
	t.Parallel()
	l := mustSet(t, mustBegin(t, "course-guitar-relief", quick()), tree.KeyValue{Key: "bridge.relief.depth", Value: tree.Valued(0.12)})
	first := mustAt(t, l, 1)
	other := mustSet(t, l, tree.KeyValue{Key: "bridge.relief.shape", Value: tree.Valued("wedge")})
	mustAt(t, other, 1)
	back := mustSet(t, other, tree.KeyValue{Key: "bridge.relief.shape", Value: tree.Valued(l.Case().Bridge.Relief.Shape)})
	if back.track == nil || back.track.state != l.track.state {
		t.Error("the way back to a shape that was followed is followed again")
	}
	if e := furthest(answer.SinkField(mustAt(t, back, 1)), answer.SinkField(first)); e > 1e-10 {
		t.Errorf("back again, sink differs by %.3g", e)
	}
	if q := mustSet(t, other, tree.KeyValue{Key: "bridge.saddle_height", Value: tree.Valued(25.0)}); q.track != nil {
		t.Error("another saddle is answered by the way of this one")
	} else if q.top.Stand != other.top.Stand {
		t.Error("in grip another saddle asks for the contact problem anew")
	} else if got, want := answer.Sink(mustAt(t, q, 1)), answer.Sink(mustSolve(t, q.Case())); math.Abs(got-want) > 1e-9*want {
		t.Errorf("with another saddle the bridge sinks %.12g mm, solved afresh %.12g mm", got, want)
	}
	if q := mustSet(t, other, tree.KeyValue{Key: "bridge.wood", Value: tree.Valued("sugar-maple")}); q.track != nil || len(q.ways) > 0 {
		t.Error("another bridge keeps the ways of this one")
	}
}

// TestLiveReach: another shape of relief is followed as far as its own load; a hand that then makes it
// shallower, or pulls harder, is answered as by a solve of its own, and from there on by one track.
func TestLiveReach(t *testing.T) {
	t.Parallel()
	set := func(l *Live, key string, v float64) *Live {
		return mustSet(t, l, tree.KeyValue{Key: key, Value: tree.Valued(v)})
	}
	same := func(q *Live, what string) {
		if got, want := answer.Sink(mustAt(t, q, 1)), answer.Sink(mustSolve(t, q.Case())); math.Abs(got-want) > 1e-9*want {
			t.Errorf("%s: sink %.12g mm, want %.12g as solved afresh", what, got, want)
		}
	}
	l := mustBegin(t, "course-guitar", quick())
	mustAt(t, l, 1)
	if harder := set(l, "strings.tension_scale", 1.2); harder.track == nil {
		t.Error("more tension on a tight foot is followed again, want the track of before")
	} else {
		same(harder, "more tension")
	}
	cosine := mustSet(t, set(l, "bridge.relief.depth", 0.12), tree.KeyValue{Key: "bridge.relief.shape", Value: tree.Valued("cosine")})
	same(cosine, "cosine")
	shallow := set(cosine, "bridge.relief.depth", 0.06)
	if shallow.track != nil || !shallow.ahead {
		t.Error("the track of a deeper relief is taken to reach full load of a shallower one")
	}
	same(shallow, "shallower")
	if harder := set(set(shallow, "bridge.relief.depth", 0.04), "strings.tension_scale", 1.2); harder.track == nil {
		t.Error("a shallower relief still is followed again, want the track that was made to go ahead")
	} else {
		same(harder, "shallower, more tension")
	}
}

// TestLiveFootMoves: the compliance under a foot that has moved is that which the same top is condensed to
// from its factor.
func TestLiveFootMoves(t *testing.T) {
	t.Parallel()
	l := mustSet(t, mustBegin(t, "course-guitar", quick()), tree.KeyValue{Key: "bridge.relief.depth", Value: tree.Valued(0.1)})
	q := mustSet(t, l, tree.KeyValue{Key: "bridge.foot[1].from", Value: tree.Valued(-60.0)}, tree.KeyValue{Key: "bridge.foot[1].to", Value: tree.Valued(63.0)})
	if q.top.Factored != l.top.Factored || q.top.Cond == l.top.Cond {
		t.Fatal("want a moved foot on the same factor")
	}
	b := q.top.Built
	cond := contact.Condense(q.top.Factored, b.Bridge.Pads, b.Bridge.Hold, b.Loads, b.Bridge.Body.Guides...)
	stand, err := cond.Problem(&b.Bridge.Body)
	if err != nil {
		t.Fatal(err)
	}
	st, err := stand.Follow(q.top.Fit())
	if err != nil {
		t.Fatal(err)
	}
	want := answer.SinkField(&design.Solution{Top: q.top, Result: stand.RecoverMoves(st, q.top.Fit())})
	if e := furthest(answer.SinkField(mustAt(t, q, 1)), want); e > 1e-9 {
		t.Errorf("sink differs by %.3g of the greatest from that of a plate condensed anew", e)
	}
}
