package materials

import (
	"math"
	"testing"
)

func TestHoffman(t *testing.T) {
	limits := Limits{XT: 65, XC: 35.7, YT: 2.6, YC: 3.0, S: 6.7} // Sitka, MPa
	for _, c := range []struct {
		name          string
		s             [3]float64
		value, factor float64
		source        string
	}{
		{"worked state", [3]float64{20, -1.5, 3}, 0.344802, 1.48641, "worked out independently"},
		{"tension along at its limit", [3]float64{65, 0, 0}, 1, 1, "definition"},
		{"compression along at half", [3]float64{-35.7 / 2, 0, 0}, 0.25*35.7/65 - 0.5*(35.7/65-1), 2, "definition"},
		{"tension across at its limit", [3]float64{0, 2.6, 0}, 1, 1, "definition"},
		{"compression across at a third", [3]float64{0, -1, 0}, 1/(2.6*3.0) - (1/2.6 - 1/3.0), 3, "definition"},
		{"shear at a quarter", [3]float64{0, 0, -6.7 / 4}, 1.0 / 16, 4, "definition"},
	} {
		value, factor := Hoffman(c.s, limits)
		near(t, c.name+", value ("+c.source+")", value, c.value, 2e-6)
		near(t, c.name+", load factor ("+c.source+")", factor, c.factor, 3e-6)
	}
}

func TestHoffmanLoadFactorLeadsToOne(t *testing.T) {
	limits := Limits{XT: 65, XC: 35.7, YT: 2.6, YC: 3.0, S: 6.7}
	for a := -30.0; a <= 30; a += 7.5 {
		for b := -2.5; b <= 2.5; b += 0.5 {
			s := [3]float64{a, b, 1.3}
			_, f := Hoffman(s, limits)
			value, _ := Hoffman([3]float64{f * s[0], f * s[1], f * s[2]}, limits)
			near(t, "value at the load factor", value, 1, 1e-12)
		}
	}
}

func TestHoffmanEdges(t *testing.T) {
	limits := Limits{XT: 65, XC: 35.7, YT: 2.6, YC: 3.0, S: 6.7}
	if v, f := Hoffman([3]float64{}, limits); v != 0 || !math.IsInf(f, 1) {
		t.Errorf("no stress: value %g, load factor %g, want 0, +Inf", v, f)
	}
	limits.YT = 0
	if v, f := Hoffman([3]float64{1, 1, 1}, limits); !math.IsNaN(v) || !math.IsNaN(f) {
		t.Errorf("unknown limit: value %g, load factor %g, want NaN", v, f)
	}
	// YT YC > 4 XT XC opens the criterion: some states never fail.
	open := Limits{XT: 1, XC: 1, YT: 10, YC: 10, S: 1}
	if _, f := Hoffman([3]float64{1, 2, 0}, open); !math.IsInf(f, 1) {
		t.Errorf("open criterion: load factor %g, want +Inf", f)
	}
}
