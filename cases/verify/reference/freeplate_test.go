package reference

import (
	"math"
	"testing"
)

// TestFreePlate sets the free plate's tones beside the table of the checks, which were summed elsewhere.
func TestFreePlate(t *testing.T) {
	wood := TestWood()
	iso := Isotropic(1e4, 0.3)
	iso.Density = 400
	for name, c := range map[string]struct {
		plate FreePlate
		want  []float64
	}{
		"test wood, 400 x 300 x 4": {FreePlate{Wood: wood, Long: 400, Wide: 300, Thick: [2]float64{4, 4}}, []float64{44.408, 63.801, 110.374, 129.077, 155.826, 177.277}},
		"test wood, 550 x 200 x 4": {FreePlate{Wood: wood, Long: 550, Wide: 200, Thick: [2]float64{4, 4}}, []float64{48.420, 67.973, 119.470, 144.183, 172.346, 189.279}},
		"isotropic, 400 x 300 x 4": {FreePlate{Wood: iso, Long: 400, Wide: 300, Thick: [2]float64{4, 4}}, []float64{107.812, 128.405, 238.518, 255.259}},
	} {
		got, err := c.plate.Tones(len(c.want))
		if err != nil {
			t.Fatal(err)
		}
		for i, w := range c.want {
			if math.Abs(got[i]/w-1) > 1e-4 {
				t.Errorf("%s: tone %d is %.3f Hz, want %.3f (Ritz, summed elsewhere)", name, i+1, got[i], w)
			}
		}
	}
	// A strip without shear bends as a beam: 22.3733 (1/2 pi) sqrt(E I/(rho A L⁴)).
	strip := FreePlate{Wood: wood, Long: 500, Wide: 20, Thick: [2]float64{4, 4}}
	strip.Wood.NuLR = 0
	got, err := strip.Tones(1)
	if err != nil {
		t.Fatal(err)
	}
	want := 22.3733 / (2 * math.Pi) * math.Sqrt(wood.EL*16/12/(wood.Density*1e-12)) / (500 * 500)
	if math.Abs(got[0]/want-1) > 1e-4 {
		t.Errorf("strip: %.4f Hz, want %.4f (beam)", got[0], want)
	}
	// One that is thick sinks by shear too: more than a thin one, and less the wider its supports.
	for _, shear := range []bool{false, true} {
		p := FreePlate{Wood: wood, Long: 400, Wide: 300, Thick: [2]float64{4, 4}, Shear: shear}
		s, err := p.Pressed(10, [2]float64{}, [2]float64{10, 10}, [][2]float64{{-180, -130}, {-180, 130}, {180, 0}}, [][2]float64{{0, 0}, {-180, -130}})
		if err != nil {
			t.Fatal(err)
		}
		if !(s[0] > 0.3) || math.Abs(s[1]) > 1e-4 {
			t.Errorf("pressed, shear %v: sinks %v mm, want one above 0.3 and none at the support", shear, s)
		}
	}
}
