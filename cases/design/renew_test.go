package design

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"archload/cases"
	"archload/cases/casetest"
	"archload/fem"
)

// TestRenewed: the stiffness of a top that was made from another one's is that of its
// model assembled afresh, to the last bit.
func TestRenewed(t *testing.T) {
	const bar, body = "[[brace]]\nname = \"bar\"\nwood = \"sitka-spruce\"\nline = [[-36, 120], [-44, -135]]\nwidth = 7\nheight = ", "rim.support = \"body\"\n"
	const other = "plate.wood = \"engelmann-spruce\"\n"
	o := Options{Workers: 2, Refine: 0.3}
	for _, c := range []struct{ name, was, is string }{
		{"wood", "", other},
		{"pressed wood", "plate.made = \"pressed\"\n", "plate.made = \"pressed\"\n" + other},
		{"grain", "", "plate.grain_angle = 3\n"},
		{"thickness", "", "plate.thickness_scale = 1.1\n"},
		{"bar", bar + "9\n", bar + "10\n"},
		{"bar that is not fitted", bar + "9\n", bar + "9\nfitted = false\n"},
		{"post", body + "[[post]]\nname = \"post\"\nat = [34, -9]\nstiffness = 4000\n", body + "[[post]]\nname = \"post\"\nat = [34, -9]\nstiffness = 3000\n"},
		{"wood of a body", body, body + other},
		{"bar in a body", body + bar + "9\n", body + bar + "10\n"},
		{"sides of a body", body, body + "rim.side_wood = \"sitka-spruce\"\n"},
	} {
		variant := func(more string) *cases.Case {
			return casetest.Load(t, casetest.Files("v.toml", "format = 1\nbase = \"first\"\n"+more), "v.toml")
		}
		top, err := Prepare(context.Background(), variant(c.was), o)
		if err == nil {
			top, err = Adapt(context.Background(), top, variant(c.is), o)
		}
		if err != nil {
			t.Fatalf("%s: %v", c.name, err)
		}
		if !assembledAlike(t, top) {
			t.Errorf("%s: the stiffness is not that of the model assembled afresh", c.name)
		}
	}
}

// assembledAlike says whether the stiffness of a top is that of its model assembled afresh, to the last bit.
func assembledAlike(t *testing.T, top *Top) bool {
	t.Helper()
	want, err := fem.Assemble(top.Built.Model, 1)
	if err != nil {
		t.Fatal(err)
	}
	rng := rand.New(rand.NewPCG(1, 7))
	x := make([]float64, 6*len(top.Built.Model.Nodes))
	for i := range x {
		x[i] = rng.NormFloat64()
	}
	a, b := make([]float64, len(x)), make([]float64, len(x))
	want.K.MulTo(a, x)
	top.Factored.K.MulTo(b, x)
	return slices.Equal(a, b)
}

// TestOrderKept: where bars come to hang on other triangles as the arch leans, the order of elimination changes once; there
// and back again it serves both, and the stiffness is that of the model.
func TestOrderKept(t *testing.T) {
	c := casetest.Open(t, "course-guitar")
	o := Options{Workers: 2, Refine: 0.4, AnyFoot: true}
	top, err := Prepare(t.Context(), c, o)
	if err != nil {
		t.Fatal(err)
	}
	before := top.Factored.Factor.Analysis()
	var first *Top
	for i, shift := range []float64{6, -6, 6, -6} {
		q := *c
		q.Plate.Arch.ApexShift = [2]float64{0, shift}
		if top, err = Adapt(t.Context(), top, &q, o); err != nil {
			t.Fatal(err)
		}
		if !assembledAlike(t, top) {
			t.Errorf("shift %g: the stiffness is not that of the model assembled afresh", shift)
		}
		if i == 1 {
			first = top
		}
	}
	if now := top.Factored.Factor.Analysis(); now == before || now != first.Factored.Factor.Analysis() {
		t.Error("want another order of elimination where bars hang on other triangles, and that one again there and back")
	}
}
