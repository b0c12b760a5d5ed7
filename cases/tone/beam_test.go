package tone

import (
	"context"
	"math"
	"testing"

	"archload/cases/casetest"
	"archload/cases/design"
)

// A strip of 500 x 20 x 4 mm of an even material, E 10 GPa, 400 kg/m³, no change of width: 16 g.
const strip = `format = 1
[plate]
wood = "even"
outline = "strip.csv"
thickness = 4
arch = { formula = { height = 4 } }
[rim]
support = "free"
[wood.even]
density = 400
EL = 10000
ER = 10000
ET = 10000
GLR = 5000
GLT = 5000
GRT = 5000
nuLR = 0
nuLT = 0
nuRT = 0
`

const stripOutline = "x_mm,y_mm,corner\n-10,-250,1\n10,-250,1\n10,250,1\n-10,250,1\n"

// rails lie along its ends.
const rails = `[[support]]
line = [[-10, -250], [10, -250]]
[[support]]
line = [[10, 250], [-10, 250]]
`

// TestBeams: a case says a free beam, one on two rails along its ends, and either with a weight in
// the middle. ω = k² √(EI/(ρ A L⁴)); weights as a share of the beam's mass.
func TestBeams(t *testing.T) {
	unit := math.Sqrt(10000*4*4/12.0/400e-12) / (2 * math.Pi * 500 * 500) // Hz at k² = 1
	for _, c := range []struct {
		name, text string
		k2         []float64 // of tones square to the strip, ascending
		source     string
	}{
		{"free", "", []float64{22.3733, 61.6728}, "free-free beam, textbook"},
		{"on rails", rails, []float64{9.8696, 39.4784}, "π², 4π²"},
		{"on rails, 8 g", rails + "[[mass]]\nat = [0, 0]\nsize = [20, 4]\nmass = 8\n", []float64{6.96598, 39.4784, 71.816},
			"beam on hinges with a weight of half its mass in the middle, by its frequency equation"},
	} {
		files := casetest.Files("strip.toml", strip+c.text, "strip.csv", stripOutline)
		r, _, err := FindTones(context.Background(), casetest.Load(t, files, "strip.toml"), design.Bare, 6, design.Options{Workers: 1, NoError: true})
		if err != nil {
			t.Fatal(err)
		}
		var square []float64
		for _, o := range r.Tones {
			if o.Pattern != "in its own plane" {
				square = append(square, o.Hz)
			}
		}
		for i, k2 := range c.k2 {
			if want := k2 * unit; math.Abs(square[i]/want-1) > 0.003 {
				t.Errorf("%s: tone %d at %.2f Hz, want %.2f (%s)", c.name, i+1, square[i], want, c.source)
			}
		}
	}
}
