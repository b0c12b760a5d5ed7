package study

import (
	"math"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
)

// TestWoodChanges sets a top of one spruce against one of another: what the constants add to
// first order comes to the difference computed, roughly, as their steps are wide; the greatest
// stands first; and one wood against itself has nothing to tell.
func TestWoodChanges(t *testing.T) {
	other := *casetest.Open(t, "first")
	engelmann := changedWood(t, "engelmann-spruce")
	sols := solveAll(t, rough(), &other, engelmann, &other)
	names, spreads := []string{"a", "b", "c"}, []*Spread{spreadOf(t, sols[0]), spreadOf(t, sols[1]), spreadOf(t, sols[2])}
	got := woodChanges(names, spreads)
	if len(got) != 1 || got[0].Case != "b" || got[0].Role != "top" || got[0].To != "engelmann-spruce" {
		t.Fatalf("changes of wood %+v, want one, of the top of b", got)
	}
	sum, last := 0.0, math.Inf(1)
	for _, c := range got[0].Constants {
		if math.Abs(c.Adds) > last {
			t.Errorf("%s adds more than the constant before it", c.Constant)
		}
		sum, last = sum+c.Adds, math.Abs(c.Adds)
	}
	want := spreads[1].base.Bridge.Sink - spreads[0].base.Bridge.Sink
	if math.Abs(sum/want-1) > 0.35 {
		t.Errorf("the constants add up to %.3f mm, the difference is %.3f", sum, want)
	}
}

// changedWood is the first case with a top of another wood.
func changedWood(t *testing.T, name string) *cases.Case {
	t.Helper()
	return casetest.Load(t, casetest.Files("w.toml", "format = 1\nbase = \"first\"\nplate.wood = \""+name+"\"\n"), "w.toml")
}
