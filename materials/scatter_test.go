package materials

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// TestScatter wants a coefficient of variation and a source for every number
// of a card that can scatter by itself.
func TestScatter(t *testing.T) {
	for _, c := range []struct {
		key    string
		want   float64 // 1
		source string
	}{
		{"EL", 0.22, "Wood Handbook, table 5-6: 22 %"},
		{"GRT", 0.22, "assumed as EL"},
		{"MOR", 0.16, "Wood Handbook, table 5-6: 16 %"},
		{"compression_across", 0.28, "Wood Handbook, table 5-6: 28 %, from memory"},
		{"density", 0.10, "Wood Handbook, table 5-6: 10 %, from memory"},
		{"nuLR", 0, "follows the moduli"},
		{"colour", 0, "no number of a card"},
	} {
		if got, _ := Scatter(c.key); got != c.want {
			t.Errorf("%s scatters by %g, want %g (%s)", c.key, got, c.want, c.source)
		}
	}
	for _, key := range Keys() {
		cv, from := Scatter(key)
		if ratio := key[:2] == "nu" || slices.ContainsFunc([]string{"swell_", "green_", "creep_", "loss_"}, func(p string) bool { return strings.HasPrefix(key, p) }); ratio != (cv == 0) || ratio != (from.Text == "") {
			t.Errorf("%s: scatter %g from %q", key, cv, from.Text)
		}
	}
}

// TestVaried draws planks far from the mean: each can exist, and equal factors
// of all moduli leave Poisson's ratios alone.
func TestVaried(t *testing.T) {
	cards, err := Cards()
	if err != nil {
		t.Fatal(err)
	}
	for _, card := range cards {
		for _, times := range []map[string]float64{
			{"EL": 3}, {"EL": 1. / 3}, {"ER": 3, "ET": 1. / 3}, {"ER": 1. / 3, "ET": 3, "GRT": 4},
		} {
			got := card.Varied(times)
			if _, bad := got.Wood.indefinite(); bad {
				t.Errorf("%s times %v: no such wood can exist", card.Name, times)
			}
			if got.Wood.EL != card.Wood.EL*cmpOr1(times["EL"]) {
				t.Errorf("%s times %v: EL %g MPa from %g", card.Name, times, got.Wood.EL, card.Wood.EL)
			}
		}
		same := card.Varied(map[string]float64{"EL": 2, "ER": 2, "ET": 2})
		for _, nu := range [][2]float64{{same.Wood.NuLR, card.Wood.NuLR}, {same.Wood.NuLT, card.Wood.NuLT}, {same.Wood.NuRT, card.Wood.NuRT}} {
			if math.Abs(nu[0]-nu[1]) > 1e-15 {
				t.Errorf("%s, all moduli doubled: Poisson's ratio %g, want %g", card.Name, nu[0], nu[1])
			}
		}
	}
}

func cmpOr1(v float64) float64 {
	if v == 0 {
		return 1
	}
	return v
}
