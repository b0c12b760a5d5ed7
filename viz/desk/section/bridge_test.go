package section

import (
	"math"
	"testing"

	"archload/cases"
	"archload/cases/design"
	"archload/mesh"
	"archload/viz/stage"
)

// The bridge in the cut is as long as its base, its strings lie as high over the crown as
// the case has them, and at no enlargement it stands where it was fitted.
func TestBridgeInTheCut(t *testing.T) {
	c, err := cases.Open(nil, "course-guitar")
	if err != nil {
		t.Fatal(err)
	}
	s, err := design.Solve(t.Context(), c, design.Options{Workers: 2, NoError: true, NoFlow: true, Refine: 0.3})
	if err != nil {
		t.Fatal(err)
	}
	at := c.Bridge.At
	across := s.CutAlong(mesh.Point{-250, at[1]}, mesh.Point{250, at[1]})
	b, ok := standing(&stage.Answered{Drawn: s, Cut: &across}, stage.CrossArch, 0)
	if !ok || len(b.strings) != 6 {
		t.Fatalf("%d strings over a bridge that stands: %v", len(b.strings), ok)
	}
	lo, hi := math.Inf(1), math.Inf(-1)
	for i, part := range b.carved {
		for k, q := range part {
			lo, hi = math.Min(lo, q[0]), math.Max(hi, q[0])
			if o := b.loaded[i][k]; math.Hypot(o[0]-q[0], o[1]-q[1]) > 1e-9 {
				t.Errorf("part %d: %v and %v without any movement drawn", i, q, o)
			}
		}
	}
	if got, want := hi-lo, float64(c.Bridge.Length); math.Abs(got-want) > 0.5 {
		t.Errorf("the bridge is %g mm long in the cut, want %g", got, want)
	}
	if got, want := b.saddle-b.crown, float64(c.Bridge.SaddleHeight); math.Abs(got-want) > 0.5 {
		t.Errorf("the strings lie %g mm over the crown, want %g", got, want)
	}
	along := s.CutAlong(mesh.Point{at[0], -300}, mesh.Point{at[0], 300})
	b, ok = standing(&stage.Answered{Drawn: s, Cut: &along}, stage.LongArch, 20)
	if !ok || len(b.strings) != 1 || len(b.strings[0]) != 3 {
		t.Fatalf("along: the strings are %v", b.strings)
	}
	if w := b.strings[0]; w[1][1] < w[0][1] || w[1][1] < w[2][1] {
		t.Errorf("the string runs %v, want its highest place on the saddle", w)
	}
	if _, ok := standing(&stage.Answered{Drawn: s, Cut: &along}, stage.FreeCut, 1); ok {
		t.Error("a line drawn by hand cuts no bridge")
	}
}
