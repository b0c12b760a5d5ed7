package materials

import (
	"math"
	"testing"
)

// TestWetted wants every card to keep its values at the cards' own moisture, to be softer and weaker when wetter, as strong
// as ever in tension across the grain, and not to change beyond its limit; a card without green values stays as it is.
func TestWetted(t *testing.T) {
	cards, err := Cards()
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range cards {
		if same := c.Wetted(CardMoisture); same.Wood != c.Wood || same.Strength != c.Strength {
			t.Errorf("%s changes at the moisture of the cards", c.Name)
		}
		dry, wet, green := c.Wetted(6), c.Wetted(18), c.Wetted(c.Water.GreenMoisture)
		if !(dry.Wood.EL > c.Wood.EL && wet.Wood.EL < c.Wood.EL && dry.Wood.GRT > c.Wood.GRT && wet.Strength.ShearL < c.Strength.ShearL) {
			t.Errorf("%s: EL %.0f, %.0f, %.0f MPa from dry to wet", c.Name, dry.Wood.EL, c.Wood.EL, wet.Wood.EL)
		}
		if dry.Strength.TensionPerp != c.Strength.TensionPerp {
			t.Errorf("%s: tension across the grain changes with moisture", c.Name)
		}
		if soaked := c.Wetted(60); soaked.Wood != green.Wood || math.Abs(green.Wood.EL/c.Wood.EL-c.Water.GreenStiffness) > 1e-12 {
			t.Errorf("%s: green EL is %.4f of that at 12 %%, want %.4f", c.Name, green.Wood.EL/c.Wood.EL, c.Water.GreenStiffness)
		}
		for _, other := range []Card{dry, wet, green} {
			if err := other.Check(); err != nil {
				t.Errorf("%s: %v", c.Name, err)
			}
		}
		c.Water = Water{}
		if bare := c.Wetted(6); bare.Wood != c.Wood || bare.Strength != c.Strength {
			t.Errorf("%s changes though it tells no green values", c.Name)
		}
	}
}

// TestCrept wants equal creep to leave Poisson's ratios and to divide every modulus alike, and none before the load.
func TestCrept(t *testing.T) {
	c, err := Find("sitka-spruce")
	if err != nil {
		t.Fatal(err)
	}
	if c.Crept(0, 1).Wood != c.Wood {
		t.Error("creeps before the load is on")
	}
	c.Creep = Creep{Along: 0.3, Across: 0.3, Shear: 0.3, RollingShear: 0.3, Power: 0.25}
	w := c.Crept(16, 1).Wood // 1 + 0.3 · 2
	for _, m := range []struct {
		key       string
		got, want float64
	}{{"EL", w.EL, c.Wood.EL / 1.6}, {"ET", w.ET, c.Wood.ET / 1.6}, {"GRT", w.GRT, c.Wood.GRT / 1.6}, {"nuLR", w.NuLR, c.Wood.NuLR}, {"nuRT", w.NuRT, c.Wood.NuRT}} {
		if math.Abs(m.got/m.want-1) > 1e-14 {
			t.Errorf("%s is %g, want %g", m.key, m.got, m.want)
		}
	}
}
