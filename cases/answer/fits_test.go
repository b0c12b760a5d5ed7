package answer

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/cases/tree"
)

// TestManyFits: reliefs, misfits and break angles as makers might have them, on
// tops with one foot and with two, in grip and in slip: every one is answered
// and passes the built-in checks.
func TestManyFits(t *testing.T) {
	t.Parallel()
	rng := rand.New(rand.NewPCG(11, 7))
	for _, name := range []string{"course-guitar", "course-guitar-two-feet", "first", "octave-mandola"} {
		for _, hold := range []string{"grip", "slip"} {
			text := fmt.Sprintf("format = 1\nbase = %q\n[bridge]\nhold = %q\n[bridge.relief]\ndepth = 0.1\n", name, hold)
			c := casetest.Load(t, casetest.Files("a.toml", text), "a.toml")
			p, err := design.Prepare(t.Context(), c, design.Options{Workers: 2, Refine: 0.35})
			if err != nil {
				t.Fatal(err)
			}
			for k := range fitTries {
				s, err := refit(p, randomFit(c, rng, k))
				if err != nil {
					t.Errorf("%s, %s, try %d: %v", name, hold, k, err)
					continue
				}
				if bad := Summarize(s).Error.Failed(); len(bad) > 0 {
					t.Errorf("%s, %s, try %d: %v out of bounds: %+v", name, hold, k, bad, s.Result.Checks)
				}
			}
		}
	}
}

// fitTries is how many fits are tried on each top.
const fitTries = 12

// randomFit changes relief, misfit and angles. The first few are the plain ones
// where something is exactly zero or equal.
func randomFit(c *cases.Case, rng *rand.Rand, k int) *cases.Case {
	out := *c
	br, st := *c.Bridge, *c.Strings
	front, back := tree.Angle(3+rng.Float64()*8), tree.Angle(3+rng.Float64()*8)
	if k < 4 {
		front = tree.Angle(5 + k)
		back = front
	}
	st.FrontAngle, st.BackAngle = &front, &back
	br.Relief.Depth = tree.Length(rng.Float64() * 0.3)
	br.Relief.Shape = []string{"parabola", "cosine", "wedge", "flat"}[rng.IntN(4)]
	if rng.IntN(3) == 0 {
		br.Relief.Across = tree.Length(rng.Float64() * 0.05)
	}
	if rng.IntN(3) == 0 {
		from, to := br.Reach()
		br.Misfit = nil
		for i := range 7 {
			br.Misfit = append(br.Misfit, cases.Station{At: from + (to-from)*float64(i)/6, Value: rng.Float64() * 0.05})
		}
	}
	out.Bridge, out.Strings = &br, &st
	return &out
}
