package answer

import (
	"math"
	"testing"

	"archload/cases/casetest"
)

// glueText is a flat strip along the grain on two bench rails, a bar of the
// same wood under its whole length, a weight in the middle.
const glueText = `format = 1
[plate]
wood = "sitka-spruce"
outline = "strip.csv"
thickness = 4
arch.formula = { height = 4 }
[rim]
support = "free"
[[brace]]
name = "bar"
wood = "sitka-spruce"
line = [[0, -147], [0, 147]]
width = 7
height = 10
[[support]]
line = [[-11, -140], [11, -140]]
[[support]]
line = [[-11, 140], [11, 140]]
[[load]]
at = [0, 0]
size = [20, 6]
force = [0, 0, -20]
[mesh]
size = 3
`

const glueStrip = "x_mm,y_mm,corner\n-12,-150,1\n12,-150,1\n12,150,1\n-12,150,1\n"

// TestGlueOfACompositeBeam: half way between weight and rail the glue line of
// a plate and a bar of the same wood bears q/w with q = V S/I; S is the bar's
// first moment about the common axis, I the whole section's second moment.
// Source: S. P. Timoshenko, Strength of Materials, shear flow of a built-up
// beam; the numbers by hand: V = 10 N, axis 2.952 mm below the plate's middle,
// S = 283.4 mm³, I = 2695 mm⁴, w = 7 mm. It neither pulls nor presses there.
func TestGlueOfACompositeBeam(t *testing.T) {
	s := answered(t, casetest.Load(t, casetest.Files("a.toml", glueText, "strip.csv", glueStrip), "a.toml"), 1)
	const want = 10 * 283.4 / 2695 / 7 // MPa
	n := 0
	for _, g := range Summarize(s).Braces[0].Glue.Along {
		if y := math.Abs(g.Y); y < 50 || y > 90 {
			continue
		}
		n++
		if math.Abs(g.Shear-want) > 0.03*want || math.Abs(g.Peel) > 0.03*want {
			t.Errorf("glue line at y = %.1f mm: shear %.4f, peel %.4f MPa, want %.4f and 0", g.Y, g.Shear, g.Peel, want)
		}
	}
	if n < 20 {
		t.Errorf("%d places, want 20 at least", n)
	}
}

// TestGlueLimits: shares are of the softer wood, and no place is worse than the
// worst place; a bar of maple under spruce has spruce for its limit.
func TestGlueLimits(t *testing.T) {
	c := casetest.Open(t, "course-guitar")
	c.Braces[0].Wood = "sugar-maple"
	s := answered(t, c, 0.5)
	for _, b := range Summarize(s).Braces {
		g := b.Glue
		card, err := s.Top.Built.Case.Wood("plate.wood")
		if err != nil {
			t.Fatal(err)
		}
		if got, want := float64(g.ShearUsed), g.Shear.Value/card.Strength.ShearL; math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: shear used %.4f, want %.4f", b.Name, got, want)
		}
		if got, want := float64(g.PeelUsed), g.Peel.Value/card.Strength.TensionPerp; math.Abs(got-want) > 1e-12 {
			t.Errorf("%s: peel used %.4f, want %.4f", b.Name, got, want)
		}
		for _, p := range g.Along {
			if p.Shear > g.Shear.Value || p.Peel > g.Peel.Value {
				t.Errorf("%s: %+v is worse than the worst place", b.Name, p)
			}
		}
	}
}
