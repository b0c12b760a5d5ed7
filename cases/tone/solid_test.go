package tone

import (
	"context"
	"fmt"
	"io/fs"
	"math"
	"math/cmplx"
	"strings"
	"testing"
	"testing/fstest"

	"archload/cases"
	"archload/cases/casetest"
	"archload/cases/design"
	"archload/testdata"
)

// solidPlate is the arched plate of the 3D solid, without its bar, with a few lines more.
func solidPlate(t *testing.T, made, rim string, lines ...string) *cases.Case {
	t.Helper()
	sub, err := fs.Sub(testdata.Files, "solid3d")
	if err != nil {
		t.Fatal(err)
	}
	files := fstest.MapFS{}
	for _, name := range []string{"plate.toml", "outline.csv", "points.csv"} {
		data, err := fs.ReadFile(sub, name)
		if err != nil {
			t.Fatal(err)
		}
		files[name] = &fstest.MapFile{Data: data}
	}
	text := fmt.Sprintf("format = 1\nbase = \"plate.toml\"\n[plate]\nmade = %q\n[rim]\nsupport = %q\n", made, rim)
	files["case.toml"] = &fstest.MapFile{Data: []byte(text + strings.Join(lines, "\n"))}
	return casetest.Load(t, files, "case.toml")
}

// Feet of 20 g, spread on the patches of the solid's loads.
const heavyFeet = `[[mass]]
at = [-40, 20]
size = [30, 14]
mass = 20
[[mass]]
at = [40, 20]
size = [30, 14]
mass = 20
`

// TestSolidTones: first six tones of the carved and the pressed plate, clamped, hinged and free, with
// and without masses on the feet, beside 3D solids: order-3 hexahedra, two orders through the
// thickness, 16 x 20 elements, own computation; from 12 x 16 elements they fall by 0.16 % at most.
// Masses move with the outer surface; a hinge holds the mean over the thickness.
func TestSolidTones(t *testing.T) {
	for _, c := range []struct {
		made, rim, lines string
		hz               []float64
	}{
		{"carved", "clamped", heavyFeet, []float64{518.89, 527.91, 642.40, 659.37, 727.50, 754.78}},
		{"carved", "hinged", heavyFeet, []float64{342.89, 372.54, 441.52, 545.46, 568.16, 639.12}},
		{"carved", "free", heavyFeet, []float64{81.08, 131.20, 206.74, 225.43, 264.48, 305.17}},
		{"pressed", "clamped", heavyFeet, []float64{562.45, 579.30, 680.62, 714.90, 819.18, 837.09}},
		{"pressed", "hinged", "", []float64{400.53, 430.34, 480.47, 609.42, 671.39, 753.47}},
		{"pressed", "free", "", []float64{84.99, 136.88, 222.13, 235.18, 285.87, 328.90}},
	} {
		r, _, err := FindTones(context.Background(), solidPlate(t, c.made, c.rim, c.lines), design.Bare, len(c.hz), design.Options{Workers: 1, NoError: true})
		if err != nil {
			t.Fatal(err)
		}
		for i, want := range c.hz {
			if off := r.Tones[i].Hz/want - 1; math.Abs(off) > 0.01 {
				t.Errorf("%s, %s: tone %d at %.2f Hz, the solid's %.2f: off by %.2f %%", c.made, c.rim, i+1, r.Tones[i].Hz, want, 100*off)
			}
		}
	}
}

// TestSolidMobility: mobility of the hinged carved plate, loss 0.02, from the bass foot to both,
// beside direct complex solves of the same solid at frequencies away from its tones and from where
// it stands still, within 1 dB.
func TestSolidMobility(t *testing.T) {
	c := solidPlate(t, "carved", "hinged", `[motion]
loss = 0.02
[[tap]]
name = "bass"
at = [-40, 20]
size = [30, 14]
[[tap]]
name = "treble"
at = [40, 20]
size = [30, 14]
`)
	hz := []float64{200, 300, 480}
	want := map[string][]complex128{ // m/(N s)
		"bass":   {complex(9.952e-05, 0.004314), complex(0.0003396, 0.008801), complex(0.0005392, 0.002807)},
		"treble": {complex(1.505e-05, 0.0004785), complex(0.0001284, 0.001863), complex(0.0001575, -0.003614)},
	}
	r, err := FindResponse(context.Background(), c, design.Bare, ResponseOptions{Hz: hz}, design.Options{Workers: 1})
	if err != nil {
		t.Fatal(err)
	}
	back := map[string][]float64{}
	for _, p := range r.Response.Paths {
		if p.Drive == "treble" && p.At == "bass" {
			back["treble"] = p.Re
		}
		solid, listed := want[p.At]
		if p.Drive != "bass" || !listed {
			continue
		}
		if p.At == "treble" {
			back["bass"] = p.Re
		}
		for i := range hz {
			got := complex(p.Re[i], p.Im[i])
			if db := 20 * math.Log10(cmplx.Abs(got)/cmplx.Abs(solid[i])); math.Abs(db) > 1 {
				t.Errorf("bass to %s at %g Hz: %.4g, the solid's %.4g: off by %.2f dB", p.At, hz[i], got, solid[i], db)
			}
		}
	}
	for i := range hz {
		if a, b := back["bass"][i], back["treble"][i]; math.Abs(a-b) > 1e-9*math.Abs(a) {
			t.Errorf("%g Hz: %.12g one way, %.12g the other", hz[i], a, b)
		}
	}
}
