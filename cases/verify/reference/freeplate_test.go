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
}

// TestFreePlatePressed sets a strip on its four corners, pressed across its middle, beside a beam: F L³/(48 E I), and with
// shear F L/(4 (5/6) G A) more (any text on beams); a corner does not sink.
func TestFreePlatePressed(t *testing.T) {
	const force, span, wide, h = 10.0, 480.0, 20.0, 12.0
	wood := TestWood()
	wood.NuLR = 0
	area := wide * h
	bend, slide := force*span*span*span/(48*wood.EL*area*h*h/12), force*span/(4*5.0/6*wood.GLT*area)
	corners := [][2]float64{{-span / 2, -wide / 2}, {-span / 2, wide / 2}, {span / 2, -wide / 2}, {span / 2, wide / 2}}
	for shear, want := range map[bool]float64{false: bend, true: bend + slide} {
		p := FreePlate{Wood: wood, Long: 500, Wide: wide, Thick: [2]float64{h, h}, Shear: shear}
		got, err := p.Pressed(force, [2]float64{}, [2]float64{0.1, wide}, corners, [][2]float64{{0, 0}, corners[0]})
		if err != nil {
			t.Fatal(err)
		}
		t.Logf("shear %v: %+.3f %%", shear, 100*(got[0]/want-1))
		if !(math.Abs(got[0]/want-1) < 0.002) || !(math.Abs(got[1]) < 1e-4*want) {
			t.Errorf("pressed, shear %v: sinks %.5f and %.2g mm, want %.5f (beam) and none at the support", shear, got[0], got[1], want)
		}
	}
}
