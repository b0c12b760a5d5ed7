package hand

import (
	"math"
	"testing"
	"testing/fstest"

	"archload/cases/answer"
	"archload/cases/bench"
	"archload/cases/design"
)

const file = `format = 1
like = "sitka-spruce"
[blank]
shape = "plate"
case = "top.toml"
[[press]]
name = "block"
force = 40
size = [30, 14]
[[press.gauge]]
at = [0, 40]
[[press]]
name = "saddle"
state = "strung"
force = 40
[[press.gauge]]
at = [0, 40]
`

// TestByHand: what a gauge shows of a bare top goes by its thickness about as bending and thrust together do, a target a tenth
// farther is met by each change that is proposed to a percent, and a strung top is stiffer than a bare one, whose foot spreads
// the weight; the saddle's weight reaches the edge.
func TestByHand(t *testing.T) {
	fsys := fstest.MapFS{"top.toml": {Data: []byte("format = 1\nbase = \"first\"\n[mesh]\nrefine = 0.25\n[rim]\nsupport = \"hinged\"\n")},
		"plain.toml": {Data: []byte(file)}}
	f, err := bench.Load(fsys, "plain.toml")
	if err != nil {
		t.Fatal(err)
	}
	o := design.Options{Workers: 2}
	rows, err := Look(t.Context(), f, f.Card, o)
	if err != nil {
		t.Fatal(err)
	}
	bare, strung := rows[0], rows[1]
	t.Logf("bare %.4f ± %.4f, strung %.4f ± %.4f", float64(bare.Sink.Value), float64(bare.Sink.SD), float64(strung.Sink.Value), float64(strung.Sink.SD))
	if !(bare.Sink.Value > strung.Sink.Value) || !(strung.Sink.Value > 0) || !(bare.Sink.SD > 0) || !(strung.Sink.SD > 0) {
		t.Errorf("bare %v, strung %v: want both down, with ranges, and the strung top stiffer", bare.Sink, strung.Sink)
	}
	l := newLoading(f, &f.Presses[1], f.Card)
	a, err := design.Solve(t.Context(), l.without, design.Options{NoError: true, NoFlow: true})
	if err != nil {
		t.Fatal(err)
	}
	b, err := design.Solve(t.Context(), l.with, design.Options{NoError: true, NoFlow: true})
	if err != nil {
		t.Fatal(err)
	}
	ra, rb := answer.Summarize(a), answer.Summarize(b)
	if more := rb.Reactions.Total[2] - ra.Reactions.Total[2]; math.Abs(more-40) > 1e-6 || len(rb.Error.Failed()) > 0 {
		t.Errorf("the edge holds %.6f N more, want 40; failed %v", more, rb.Error.Failed())
	}
	one := newLoading(f, &f.Presses[0], f.Card)
	changes, err := one.meet(t.Context(), 0, 1.1*float64(bare.Sink.Value), float64(bare.Sink.Value), o)
	if err != nil {
		t.Fatal(err)
	}
	met := 0
	for _, c := range changes {
		t.Logf("%s: %+.3f mm gives %.4f, too far %v", c.What, c.By, float64(c.Sink), c.Far)
		if !c.Far {
			met++
			if off := float64(c.Sink/bare.Sink.Value) / 1.1; math.Abs(off-1) > 0.01 || c.By >= 0 {
				t.Errorf("%s: %+.3f mm gives %.4f of what is wanted, want all of it, by less wood", c.What, c.By, off)
			}
		}
	}
	if met < 2 {
		t.Errorf("%d changes of %d meet the target, want two", met, len(changes))
	}
}
