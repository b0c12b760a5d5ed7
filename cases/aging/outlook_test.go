package aging

import (
	"maps"
	"testing"

	"archload/cases/answer"
)

// TestSeasonNumbers picks the driest and the dampest season that leave the made state, and the worst of all.
func TestSeasonNumbers(t *testing.T) {
	season := func(change, arch, action, gap, across float64) SeasonReport {
		b := &answer.BridgeReport{ActionChange: action, GapLeft: gap, Share: answer.ShareReport{Middle: 0.2}}
		return SeasonReport{Change: ChangeReport{Outer: change, Inner: change}, ArchRise: arch, Bridge: b, Across: AcrossReport{Used: answer.Num(across)},
			Strength: answer.StrengthReport{Used: answer.None()}, Braces: []GlueUse{{ShearUsed: 0.1, PeelUsed: answer.Num(across / 2)}}}
	}
	got := seasonNumbers(&SeasonsReport{Seasons: []SeasonReport{season(-1, -0.2, 0.1, 0.01, 0.3), season(-3, -1, 0.5, 0.02, 1.2), season(-2, -0.6, 0.3, 0.3, 0.8)}})
	want := map[string]float64{"dry_arch": -1, "dry_action": 0.5, "dry_middle": 20, "season_gap": 0.3, "season_across": 120, "season_glue": 60}
	if !maps.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestWorst names the age and the season of each worst number.
func TestWorst(t *testing.T) {
	meeting := func(at, season string, action, gap, used float64) Meeting {
		return Meeting{At: at, Season: season, Action: answer.Num(action), GapLeft: answer.Num(gap), Used: answer.Num(used), Across: answer.None()}
	}
	w := worst([]Meeting{meeting("strung", "winter", 0.5, 0.2, 0.9), meeting("strung", "summer", -1, 0, 0.5), meeting("10y", "winter", 0.7, 0.1, 1.1), meeting("10y", "summer", -0.8, 0, 0.7)})
	for name, c := range map[string]struct{ got, want Worst }{
		"lowest": {*w.Lowest, Worst{"10y", "winter", 0.7}}, "highest": {*w.Highest, Worst{"strung", "summer", -1}},
		"gap": {*w.Gap, Worst{"strung", "winter", 0.2}}, "used": {*w.Used, Worst{"10y", "winter", 1.1}},
	} {
		if c.got != c.want {
			t.Errorf("%s: %v, want %v", name, c.got, c.want)
		}
	}
	if w.Across != nil {
		t.Errorf("pull across: %v of a design that has none", *w.Across)
	}
}
