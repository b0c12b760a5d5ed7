package answer

import (
	"math"
	"testing"

	"archload/cases/casetest"
	"archload/cases/design"
)

// TestPostStandsOnTheBack: in a whole body a post presses the back as hard as it holds
// up the top, so that the strings stay in balance with nothing outside, and the
// top under it sinks further than on a back that does not give.
func TestPostStandsOnTheBack(t *testing.T) {
	t.Parallel()
	solved := func(support string) *Report {
		c := casetest.Load(t, casetest.Files("a.toml", "format = 1\nbase = \"bowed-layout\"\n[rim]\nsupport = \""+support+"\"\n"), "a.toml")
		s, err := design.Solve(t.Context(), c, design.Options{Workers: 2, Refine: 0.4, NoError: true})
		if err != nil {
			t.Fatal(err)
		}
		r := Summarize(s)
		if bad := r.Error.Failed(); len(bad) > 0 {
			t.Errorf("%s: %v", support, bad)
		}
		return r
	}
	body, walls := solved("body"), solved("elastic")
	if f := body.Reactions.Total; math.Abs(f[0])+math.Abs(f[1])+math.Abs(f[2]) > 1e-6 {
		t.Errorf("the ground holds %v N of a body whose strings are in balance", f)
	}
	if held := body.Reactions.Posts[0].Force; !(held > 10 && held < walls.Reactions.Posts[0].Force) {
		t.Errorf("the post holds up %g N, want less than the %g N on a back that does not give", held, walls.Reactions.Posts[0].Force)
	}
	if treble, rigid := body.Bridge.EndSink[1], walls.Bridge.EndSink[1]; treble <= rigid {
		t.Errorf("the treble end sinks by %g mm, want more than the %g mm on a back that does not give", treble, rigid)
	}
}
