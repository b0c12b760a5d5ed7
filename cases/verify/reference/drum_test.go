package reference

import (
	"math"
	"testing"
)

// TestDrumSide: a long side's edge has the classical stiffnesses
// u = Q/(2 beta³ D), phi = Q/(2 beta² D), and its matrix is symmetric.
func TestDrumSide(t *testing.T) {
	m := Drum{Radius: 100, Side: 0.2, Height: 60, Around: 1e4, Up: 5e3, Shear: 2e3}
	k := m.side()
	d := m.Up * m.Side * m.Side * m.Side / 12
	beta := math.Pow(m.Around*m.Side/(4*d*m.Radius*m.Radius), 0.25)
	for i, want := range [2][2]float64{{4 * beta * beta * beta * d, 2 * beta * beta * d}, {2 * beta * beta * d, 2 * beta * d}} {
		for j, w := range want {
			if e := math.Abs(k[i][j])/w - 1; !(math.Abs(e) < 5e-3) {
				t.Errorf("k[%d][%d] = %g, want %g to 0.5 %% (shear strain)", i, j, k[i][j], w)
			}
		}
	}
	if e := k[0][1]/k[1][0] - 1; !(math.Abs(e) < 1e-6) {
		t.Errorf("k01 = %g, k10 = %g, want the same", k[0][1], k[1][0])
	}
}

// TestDrumClamped: on a side that does not yield the plate is clamped.
func TestDrumClamped(t *testing.T) {
	m := Drum{Radius: 100, Plate: 1, E: 1e3, Nu: 0.3, Side: 50, Height: 100, Around: 1e9, Up: 1e9, Shear: 5e8, Force: 1}
	d := 1e3 / 12 / 0.91
	want := (1e4 - 2500 + 5000*math.Log(0.5)) / (16 * math.Pi * d)
	if got := m.Sink(50); !(math.Abs(got/want-1) < 1e-3) {
		t.Errorf("sink %g, want %g", got, want)
	}
}
