package stability

import (
	"testing"
	"testing/fstest"

	"archload/cases"
	"archload/fem/vec3"
)

// TestBalancedBody: the strings of a body follow the saddle, the neck and the tail, so that it stays in balance
// on its moved shape, whatever holds the foot and with a post inside; and what a string does to saddle and blocks
// lies along its length.
func TestBalancedBody(t *testing.T) {
	for _, extra := range []string{"[bridge]\nhold = \"slip\"\n", "[strings]\ntension_scale = 3\n[[post]]\nat = [30, -10]\nstiffness = 200\n"} {
		c, err := cases.Load(fstest.MapFS{"a.toml": {Data: []byte("format = 1\nbase = \"course-guitar-body\"\n" + extra)}}, "a.toml")
		if err != nil {
			t.Fatal(err)
		}
		o := coarse()
		o.Refine = 0.25
		s, err := Solve(t.Context(), c, o)
		if err != nil {
			t.Fatal(err)
		}
		r := Summarize(s, 1)
		if bad := r.Error.Failed(); len(bad) > 0 || !(r.Error.Outside < 1e-9) || r.Error.Outside == 0 {
			t.Errorf("%q: %v: %+v", extra, bad, r.Error)
		}
		for i, l := range s.Result.LoadCase().Loads[:6] {
			if was := s.Top.Fit().Loads[i].F; vec3.Norm(vec3.Sub(l.F, was)) < 1e-3*vec3.Norm(was) {
				t.Errorf("%q: string %d gives %v N to the saddle as before", extra, i, l.F)
			}
		}
	}
}
