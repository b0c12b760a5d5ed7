package aging

import (
	"math"

	"archload/cases/answer"
	"archload/cases/body"
)

// SeasonsReport is what moisture does to a design. Units are those of a solve; movements count from the
// made state, with the strings on in both.
type SeasonsReport struct {
	Format   int            `json:"format"`
	Units    string         `json:"units"`
	Title    string         `json:"title"`
	Nodes    int            `json:"nodes"`
	Order    string         `json:"order"` // linear, or second: each season on its moved shape
	Made     *MadeReport    `json:"made"`  // null where a change of moisture is given, not air
	Held     string         `json:"held"`  // what a movement is relative to
	Seasons  []SeasonReport `json:"seasons"`
	Cautions []string       `json:"cautions"`
}

// MadeReport is the state in which the top was made.
type MadeReport struct {
	Humidity    float64                `json:"humidity"`    // %
	Temperature float64                `json:"temperature"` // °C
	Moisture    float64                `json:"moisture"`    // %
	Bridge      *answer.BridgeReport   `json:"bridge"`      // from slack strings
	Strength    *answer.StrengthReport `json:"strength"`
	Thrust      *body.Thrust           `json:"thrust,omitempty"` // of a top whose edge something holds
}

// SeasonReport is the design in one season.
type SeasonReport struct {
	Name        string                `json:"name"`
	Humidity    answer.Num            `json:"humidity"`    // %; null where a change of moisture is given
	Temperature answer.Num            `json:"temperature"` // °C
	Moisture    answer.Num            `json:"moisture"`    // %; where a change is given and no made state that change, its mean
	Change      ChangeReport          `json:"change"`
	ArchRise    float64               `json:"arch_rise"`        // mm, of the outer surface at the apex over its mean at the rim
	Apex        [2]float64            `json:"apex"`             // mm, where
	Cross       []CrossStation        `json:"cross"`            // across the arch through the apex
	Bridge      *answer.BridgeReport  `json:"bridge"`           // sink, tilt and action from the made state, the foot as it stands
	NeckTurn    answer.Num            `json:"neck_turn"`        // deg from the made state, upper part inward: the nut rises; null without a body
	Thrust      *body.Thrust          `json:"thrust,omitempty"` // whole; of a top whose edge something holds
	Gauges      []answer.GaugeReport  `json:"gauges"`           // displacement and sink from the made state, stress whole
	Strength    answer.StrengthReport `json:"strength"`
	Across      AcrossReport          `json:"across"`
	Braces      []GlueUse             `json:"braces"`
	Strings     []StringSeason        `json:"strings,omitempty"` // where they keep their length
	Linear      *LinearSeason         `json:"linear,omitempty"`  // beside numbers on the moved shape
	Energy      answer.EnergyReport   `json:"energy"`
	Error       answer.ErrorReport    `json:"error"`
}

// rises are those of arch and gauges by linear theory, mm.
func (s *SeasonReport) rises() []float64 {
	if s.Linear != nil {
		return s.Linear.rises
	}
	out := []float64{s.ArchRise}
	for i := range s.Gauges {
		out = append(out, -s.Gauges[i].Sink)
	}
	return out
}

// LinearSeason is a season by linear theory.
type LinearSeason struct {
	ArchRise float64    `json:"arch_rise"`
	Sink     answer.Num `json:"sink"`
	Action   answer.Num `json:"action_change"`
	GapLeft  answer.Num `json:"gap_left"`
	Middle   answer.Num `json:"share_middle"`
	Across   answer.Num `json:"across_used"`
	Used     answer.Num `json:"used"`

	rises []float64
}

// OrderAside says in a heading by which theory the seasons are told, if not the linear one.
func (r *SeasonsReport) OrderAside() string { return orderAside(r.Order) }

// ChangeReport is the change of moisture from the made state, percentage points.
type ChangeReport struct {
	Outer float64 `json:"outer"` // at the outer face
	Inner float64 `json:"inner"`
}

// AcrossReport is the greatest tension across the grain of the plate, a mean over a circle of one thickness.
type AcrossReport struct {
	Stress  answer.Num `json:"stress"` // MPa
	Used    answer.Num `json:"used"`   // of the strength across the grain
	X       answer.Num `json:"x"`
	Y       answer.Num `json:"y"`
	Surface string     `json:"surface"`
}

// CrossStation is a place of the outer surface across the arch.
type CrossStation struct {
	X    float64 `json:"x"`    // mm
	Rise float64 `json:"rise"` // mm, from the made state
}

// StringSeason is a string that keeps its length.
type StringSeason struct {
	Name    string  `json:"name"`
	Tension float64 `json:"tension"` // N
	Change  float64 `json:"change"`  // N, from the made state
}

// GlueUse is how much of the wood beside a brace's glue line is used.
type GlueUse struct {
	Name      string     `json:"name"`
	ShearUsed answer.Num `json:"shear_used"`
	PeelUsed  answer.Num `json:"peel_used"`
}

// MostGlue is the most that a brace's glue line uses of the wood beside it, 1; unknown without braces.
func (s *SeasonReport) MostGlue() answer.Num {
	most := answer.None()
	for _, b := range s.Braces {
		for _, v := range []answer.Num{b.ShearUsed, b.PeelUsed} {
			if v.Known() && !(v <= most) {
				most = v
			}
		}
	}
	return most
}

// CracksAtOnce says whether a season asks more of the plate than its wood bears, if the change came at once.
func (s *SeasonReport) CracksAtOnce() bool { return s.Across.Used > 1 || s.Strength.Used > 1 }

// Failed names the built-in checks that a season does not pass.
func (r *SeasonsReport) Failed() []string {
	var out []string
	for i := range r.Seasons {
		for _, f := range r.Seasons[i].Error.Failed() {
			out = append(out, r.Seasons[i].Name+": "+f)
		}
	}
	return out
}

// estimate judges the mesh by the same seasons on triangles twice as large: the error falls as the square of
// their size, so that a third of the difference is left; relative to the largest movement of arch and gauges.
func (r *SeasonsReport) estimate(coarse *SeasonsReport) {
	for i := range r.Seasons {
		a, b := &r.Seasons[i], &coarse.Seasons[i]
		most, diff := 0.0, 0.0
		rough := b.rises()
		for k, v := range a.rises() {
			most, diff = max(most, math.Abs(v)), max(diff, math.Abs(v-rough[k]))
		}
		if most > 0 {
			a.Error.Discretisation = answer.Num(diff / most / 3)
		}
	}
}
