package contact

import (
	"math"
	"testing"

	"archload/fem/element"
)

// TestOnwardCloses softens a relieved beam on three springs (E3 of the checks' closed forms) until its middle
// closes: its end springs give way by c = 1/(2 k) + L³/(48 E I), and it closes when the load times c is the gap. All
// compliances grow from 1 to 2 times; the share of the change at which the event stands tells the growth.
func TestOnwardCloses(t *testing.T) {
	const long, gap, young = 300.0, 0.3, 10000.0 // mm, mm, MPa
	xs := []float64{-150, -75, 0, 75, 150}
	at := [][2]float64{{-150, 0}, {0, 0}, {150, 0}}
	soft := func(g float64) *Problem {
		sec := element.Rectangle{Width: 20, Height: 10, E: young / g, Gxy: 1e6 / g, Gxz: 1e6 / g}
		return springy{at: at, give: []float64{g / 200, g / 400, g / 200}, body: straightBody(xs, sec, true)}.stand(t)
	}
	inertia := 20.0 * 1000 / 12
	c := 1/(2*200.0) + long*long*long/(48*young*inertia)
	shear := long / (4 * 5.0 / 6 * 1e6 * 200) // of the beam, as the closed form leaves it out
	load := gap / (c + shear) / 1.4           // closes when all has grown by 1.4
	first := soft(1)
	fit := LoadCase{Gap: []float64{0, gap, 0}, Loads: []BodyLoad{first.frame.body.down(0, 0, load)}}
	st := followed(t, first, fit.Gap, fit.Loads)
	if st.Closed[1] {
		t.Fatal("the middle bears already")
	}
	end, err := soft(2).Onward(Standing{Problem: first, Case: fit, State: st}, fit)
	if err != nil {
		t.Fatal(err)
	}
	grown := math.NaN()
	for _, e := range end.Events {
		if e.Pad == 1 && e.Closes {
			grown = 1 + e.Load
		}
	}
	if !(math.Abs(grown-1.4) < 1e-9) {
		t.Errorf("closes when all has grown by %.12f, want 1.4", grown)
	}
	want := followed(t, soft(2), fit.Gap, fit.Loads)
	for i, l := range want.Lambda {
		if math.Abs(end.Lambda[i]-l) > 1e-9*load {
			t.Errorf("row %d carries %.9f N, want %.9f as followed from slack", i, end.Lambda[i], l)
		}
	}
	if end.Residual > 1e-10 {
		t.Errorf("residual %g", end.Residual)
	}
}
