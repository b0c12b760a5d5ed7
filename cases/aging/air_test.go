package aging

import (
	"math"
	"testing"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/season"
)

// What a slider shows is what the seasons of the same case say, and the picture moves by
// the gauges' numbers.
func TestAirIsTheSeason(t *testing.T) {
	c, err := cases.Open(nil, "course-guitar")
	if err != nil {
		t.Fatal(err)
	}
	o := design.Options{Workers: 2, Refine: 0.3, NoError: true}
	air, err := NewAir(t.Context(), c, o)
	if err != nil {
		t.Fatal(err)
	}
	got, _, moved, err := air.At(t.Context(), 25)
	if err != nil {
		t.Fatal(err)
	}
	made := UsualMade()
	c.Season = &season.Season{Made: &made, To: []season.Climate{{Humidity: 25, Temperature: made.Temperature}}, Strings: "tension"}
	all, err := Seasons(t.Context(), c, Wish{}, o)
	if err != nil {
		t.Fatal(err)
	}
	want := all.Seasons[0]
	for name, v := range map[string][2]float64{"rise of the arch": {got.ArchRise, want.ArchRise}, "sink of the bridge": {got.Bridge.Sink, want.Bridge.Sink},
		"moisture": {float64(got.Moisture), float64(want.Moisture)}, "strength": {float64(got.Strength.Used), float64(want.Strength.Used)}} {
		if math.Abs(v[0]-v[1]) > 1e-9*math.Max(1, math.Abs(v[1])) {
			t.Errorf("%s: %g, the season says %g", name, v[0], v[1])
		}
	}
	if got.Change.Outer >= 0 || want.ArchRise == 0 {
		t.Errorf("in dry air the wood changes by %g points and the arch by %g mm", got.Change.Outer, want.ArchRise)
	}
	for i, g := range got.Gauges {
		r, _ := answer.ReadingAt(moved, [2]float64{g.X, g.Y})
		if math.Abs(r.Sink-want.Gauges[i].Sink) > 0.004 { // the picture leaves out what the plate itself swells in thickness
			t.Errorf("%s sinks %.6f mm in the picture, %.6f in the season", g.Name, r.Sink, want.Gauges[i].Sink)
		}
	}
}
