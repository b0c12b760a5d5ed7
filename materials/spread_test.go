package materials

import (
	"math"
	"strings"
	"testing"
)

func TestOwnScatter(t *testing.T) {
	card, err := FromTable("mine", map[string]any{
		"like": "sitka-spruce", "EL": 11000.0,
		"scatter":  map[string]any{"EL": 0.03, "density": 0.01},
		"together": []any{[]any{"EL", "ER", -0.5}},
	})
	if err != nil {
		t.Fatal(err)
	}
	for key, want := range map[string]float64{"EL": 0.03, "density": 0.01, "ER": StiffnessScatter, "nuLR": 0} {
		if got, _ := card.Spread(key); got != want {
			t.Errorf("scatter of %s = %g, want %g", key, got, want)
		}
	}
	if card.Correlation("ER", "EL") != -0.5 || card.Correlation("EL", "GLR") != 0 {
		t.Errorf("correlations %g and %g, want -0.5 and 0", card.Correlation("ER", "EL"), card.Correlation("EL", "GLR"))
	}
	c := card.Covariance([]string{"ER", "EL"})
	el, er := math.Log1p(0.03*0.03), math.Log1p(StiffnessScatter*StiffnessScatter)
	if math.Abs(c.At(1, 1)-el) > 1e-15 || math.Abs(c.At(0, 1)+0.5*math.Sqrt(el*er)) > 1e-15 {
		t.Errorf("covariance %v, want ln(1 + cv²) and -0.5 of the deviations' product", c)
	}
	if other := card.clone(); other.OwnScatter["EL"] != 0.03 || len(other.Together) != 1 {
		t.Error("a copy lost the scatter")
	}
}

func TestScatterRefused(t *testing.T) {
	for want, table := range map[string]map[string]any{
		"want a table such as":                     {"scatter": 0.2},
		"unknown key":                              {"scatter": map[string]any{"EX": 0.2}},
		"want a coefficient of variation":          {"scatter": map[string]any{"EL": 22.0}},
		"want a list such as":                      {"together": 0.2},
		"correlation between -1 and 1":             {"together": []any{[]any{"EL", "ER", 1.0}}},
		"have a correlation already":               {"together": []any{[]any{"EL", "ER", 0.5}, []any{"ER", "EL", 0.2}}},
		"the correlations contradict each other":   {"together": []any{[]any{"EL", "ER", 0.9}, []any{"EL", "ET", 0.9}, []any{"ER", "ET", -0.9}}},
		"two keys of a card and a correlation bet": {"together": []any{[]any{"EL", "EL", 0.5}}},
	} {
		table["like"] = "sitka-spruce"
		if _, err := FromTable("mine", table); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v: error %v, want %q", table, err, want)
		}
	}
}
