package desk

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/quantity"
	"archload/cases/stability"
	"archload/cases/tree"
	"archload/viz/desk/numbers"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/tool"
)

// rest waits until picture and numbers have settled; all: with their ranges, too.
func (h *hand) rest(all bool) {
	h.t.Helper()
	for {
		h.frame()
		if s := h.d.shown; !h.d.busy && s.Want.Equal(h.d.want) && s.Confirmed() && (!all || s.Ranged()) {
			return
		}
		select {
		case <-h.bell:
		case <-time.After(late):
			h.t.Fatal("it does not settle")
		}
	}
}

// kept is the case that K writes.
func (h *hand) keptCase() *cases.Case {
	h.t.Helper()
	clear(h.kept)
	h.in.Keys = []panel.KeyPress{{Key: panel.LetterKey('k')}}
	h.frame()
	for name, data := range h.kept {
		c, err := cases.Load(fstest.MapFS{name: {Data: data}}, name)
		if err != nil {
			h.t.Fatalf("%v in\n%s", err, data)
		}
		return c
	}
	h.t.Fatalf("nothing is kept: %s", h.d.note)
	return nil
}

// asSolved wants every number of the window, to each digit that it shows, to be that of a fresh solve of the kept
// case, on its moved shape and at the share of the load that is shown.
func (h *hand) asSolved(what string) {
	h.t.Helper()
	h.rest(false)
	a, load := h.d.shown.Designs[0], h.d.shown.Want.Load
	s, err := stability.Solve(h.t.Context(), stability.Times(h.keptCase(), load), h.d.o.Solve)
	if err != nil {
		h.t.Fatalf("%s: %v", what, err)
	}
	r := stability.Summarize(s, load)
	got := a.Sure()
	if got == nil || got.Moved == nil {
		h.t.Fatalf("%s: the picture has not settled to the moved shape", what)
	}
	for _, q := range quantity.All() {
		if v, w := scale.Fixed(float64(q.Get(got.Report)), q.Digits), scale.Fixed(float64(q.Get(r.Report)), q.Digits); v != w {
			h.t.Errorf("%s: %s %s in the window, %s as solved", what, q.Name, v, w)
		}
	}
	for i, g := range a.Gauges {
		if v, w := scale.Fixed(g.Sink, gaugeDigits), scale.Fixed(r.Gauges[i].Sink, gaugeDigits); v != w {
			h.t.Errorf("%s: gauge %s reads %s in the window, %s as solved", what, g.Name, v, w)
		}
	}
	if got, want := a.Now.Result.U[2], s.Result.U[2]; math.Abs(got-want) > 1e-9 {
		h.t.Errorf("%s: the picture is of another movement: %g, solved %g mm", what, got, want)
	}
	where := regexp.MustCompile(`(?m)^\S+\.toml:\d+: `) // the line of a key is another in a kept case
	said := func(w []string) string { return where.ReplaceAllString(strings.Join(w, "\n"), "") }
	if said(got.Report.Warnings) != said(r.Warnings) {
		h.t.Errorf("%s: the window warns %q, a solve %q", what, got.Report.Warnings, r.Warnings)
	}
}

// Whatever the hand changes: what is kept gives the numbers that have settled, by the command that the window names.
func TestSettledNumbersAreThoseOfTheKeptCase(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}, OnMovedShape: true, Solve: design.Options{Workers: 2, Refine: 0.25, NoError: true}})
	for _, fold := range []string{tool.Arch, tool.Top, tool.Bridge} {
		h.d.folded[fold] = false
	}
	h.frame()
	slide := func(id string, share float64) {
		h.scrollTo(id + "/handle")
		h.slide(id, share)
	}
	slide("arch.height", 0.6)
	slide("bridge.foot", 0.8)
	h.asSolved("another arch, a longer foot")
	h.scrollTo("plate.wood/0")
	h.push("plate.wood/0")
	slide("plate.thickness", 0.7)
	h.scrollTo("brace[1].fitted/1")
	h.push("brace[1].fitted/1")
	h.asSolved("another wood and thickness, without a bar")
	h.slide("load", 0.4)
	h.asSolved("at two fifths of the load")
	if words, settled := numbers.Command(h.d.shown, 0); !settled || words != "archload solve of the kept case --times 0.4" {
		t.Errorf("the window names %q, settled %v", words, settled)
	}
}

// edits is how many sequences of edits are tried.
var edits = flag.Int("edits", 1, "random sequences of edits that are tried")

// Whatever tools the hand takes in whatever order, what is kept gives the numbers that have settled.
func TestRandomEditsSettleToTheKeptCase(t *testing.T) {
	names := []string{"course-guitar-relief", "bowed-layout", "course-guitar-two-feet", "octave-mandola"}
	for n := range *edits {
		chance := rand.New(rand.NewPCG(17, uint64(n)))
		name := names[n%len(names)]
		h := newHand(t, Options{Names: []string{name}, OnMovedShape: true, Solve: design.Options{Workers: 2, Refine: 0.2, NoError: true}})
		said := fmt.Sprintf("%s, sequence %d:", name, n)
		for range 3 + chance.IntN(3) {
			said += h.anyEdit(chance)
		}
		if chance.IntN(3) == 0 {
			h.d.want.Load = 0.01 * float64(10+chance.IntN(90))
			said += fmt.Sprintf(" load = %g", h.d.want.Load)
			h.settle()
		}
		if len(h.d.shown.Designs[0].Live.Keys()) > 0 { // else all is as it was, or not possible
			h.asSolved(said)
		}
		h.d.Close()
		t.Log(said)
	}
}

// anyEdit sets one of the tools to something, and says to what.
func (h *hand) anyEdit(chance *rand.Rand) string {
	tools := h.d.tools(h.d.design())
	u := tools[chance.IntN(len(tools))]
	var set []tree.KeyValue
	switch {
	case u.Why != "":
		return ""
	case u.Most > u.Least:
		v := u.Least + (0.2+0.6*chance.Float64())*(u.Most-u.Least)
		set = u.Set(u.Step * math.Round(v/u.Step))
	default:
		set = u.Pick(chance.IntN(len(u.Words)))
	}
	h.d.change(set)
	h.settle()
	said := ""
	for _, k := range set {
		said += " " + k.Key + " = " + k.Value.Text
	}
	if h.d.fault != "" {
		h.d.fault = ""
		return said + " (not possible)"
	}
	return said
}

// Below full load each number has its ±, after a change that of the design before until its own is there.
func TestMarginsBelowFullLoadAndAfterChanges(t *testing.T) {
	h := newHand(t, Options{Names: []string{"course-guitar-relief"}, OnMovedShape: true})
	h.slide("load", 0.5)
	h.rest(true)
	a := h.d.shown.Designs[0]
	q := quantity.Of("bridge_sink")
	half := a.Here.Spread.Range(a.Here.Carved, q)
	full := a.Pitch.Spread.Range(a.Pitch.Carved, q)
	if u := float64(half.Wood / full.Wood); !(u > 0.4 && u < 0.65) {
		t.Errorf("at half the load ± %.4f mm by the wood, at full load ± %.4f; want about half", float64(half.Wood), float64(full.Wood))
	}
	h.slide("relief.depth", 0.5)
	b := h.d.shown.Designs[0]
	if e := b.EarlierAt(0.5); b.Sure() == nil && (e == nil || e.Spread != a.Here.Spread) {
		t.Errorf("after a change the ± before it is gone: %v", e)
	}
}
