package aging

import (
	"archload/cases/answer"
	"archload/materials"
)

// YearsReport is what the strings do to a design over the years. Units are those of a solve.
type YearsReport struct {
	Format   int            `json:"format"`
	Units    string         `json:"units"`
	Title    string         `json:"title"`
	Nodes    int            `json:"nodes"`
	Order    string         `json:"order"`  // linear, or second: each age on its moved shape
	Strung   AgeReport      `json:"strung"` // the day the strings come on: no creep yet
	Years    []AgeReport    `json:"years"`  // rising
	Foot     *FootYears     `json:"foot"`   // null without a bridge
	Creep    []CreepReport  `json:"creep"`
	Range    [2]float64     `json:"range"` // of creep, times that of the cards
	Moments  []MomentReport `json:"moments"`
	Together []Meeting      `json:"together,omitempty"` // each age with each season, if the case has seasons
	Worst    *WorstMeetings `json:"worst,omitempty"`    // of them
	Cautions []string       `json:"cautions"`
}

// OrderAside says in a heading by which theory the ages are told, if not the linear one.
func (r *YearsReport) OrderAside() string { return orderAside(r.Order) }

func orderAside(order string) string {
	if order == "second" {
		return " on the moved shape"
	}
	return ""
}

// AgeReport is the design at one age; ranges by how much creep may differ, null without a bridge.
type AgeReport struct {
	At       string               `json:"at"`
	Years    float64              `json:"years"`
	Sink     Range                `json:"sink"`          // mm, of the bridge (without one, of the deepest place), from slack strings
	Action   Range                `json:"action_change"` // mm at the octave, from slack strings, positive when strings come lower
	GapLeft  Range                `json:"gap_left"`      // mm, greatest under the foot
	Middle   Range                `json:"share_middle"`  // of the foot's force on its middle third
	Strength StrengthYears        `json:"strength"`
	Bridge   *answer.BridgeReport `json:"bridge"`           // with the cards' creep
	Gauges   []answer.GaugeReport `json:"gauges"`           // with the cards' creep
	Linear   *LinearAge           `json:"linear,omitempty"` // beside numbers on the moved shape, with the cards' creep
	Energy   float64              `json:"energy"`           // N·mm, of the softened design
	Error    answer.ErrorReport   `json:"error"`
}

// LinearAge is an age by linear theory.
type LinearAge struct {
	Sink    answer.Num `json:"sink"`
	Action  answer.Num `json:"action_change"`
	GapLeft answer.Num `json:"gap_left"`
	Middle  answer.Num `json:"share_middle"`
	Used    answer.Num `json:"used"`
}

// Range is a number with the cards' creep, and its least and greatest as creep may differ; null where it cannot
// be had.
type Range struct {
	Low  answer.Num `json:"low"`
	Mid  answer.Num `json:"mid"`
	High answer.Num `json:"high"`
}

// StrengthYears is how much of the wood's strength is used by a load that stays.
type StrengthYears struct {
	Left answer.Num `json:"left"` // share of short-term strength that such a load leaves, Madison curve
	Used Range      `json:"used"` // of what is left
}

// FootYears tells when the middle of the foot comes to bear; null if not in time.
type FootYears struct {
	MiddleTouches answer.Num `json:"middle_touches_years"` // first station of the middle third to carry; 0: when strung
	MiddleCloses  answer.Num `json:"middle_closes_years"`  // last one
}

// MomentReport is a point of the foot that comes to bear, or lets go.
type MomentReport struct {
	Years  float64 `json:"years"`
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	Closes bool    `json:"closes"`

	pad int
}

// CreepReport is the creep of one wood of the design: its compliance after t years is 1 + a tⁿ times the
// elastic one.
type CreepReport struct {
	Wood         string  `json:"wood"`
	Along        float64 `json:"along"`
	Across       float64 `json:"across"`
	Shear        float64 `json:"shear"`
	RollingShear float64 `json:"rolling_shear"`
	Power        float64 `json:"power"`
}

// creepOf tells a card's creep.
func creepOf(c materials.Card) CreepReport {
	k := c.Creep
	return CreepReport{Wood: c.Name, Along: k.Along, Across: k.Across, Shear: k.Shear, RollingShear: k.RollingShear, Power: k.Power}
}

// Failed names the built-in checks that an age does not pass.
func (r *YearsReport) Failed() []string {
	var out []string
	for i := range r.Years {
		for _, f := range r.Years[i].Error.Failed() {
			out = append(out, r.Years[i].At+": "+f)
		}
	}
	return out
}

// Meeting is an age with a season.
type Meeting struct {
	At       string     `json:"at"`
	Years    float64    `json:"years"`
	Season   string     `json:"season"`
	ArchRise float64    `json:"arch_rise"`     // mm over the rim, from the day that it was strung
	Action   answer.Num `json:"action_change"` // mm at the octave, from the day that it was strung, positive when strings come lower; null without a bridge
	GapLeft  answer.Num `json:"gap_left"`      // mm, greatest under the foot
	Middle   answer.Num `json:"share_middle"`  // of the foot's force on its middle third
	Used     answer.Num `json:"used"`          // of the strength that a load of this age leaves
	Across   answer.Num `json:"across_used"`   // of the strength across the grain that it leaves
}

// Worst is the age and the season of a worst number.
type Worst struct {
	At     string     `json:"at"`
	Season string     `json:"season"`
	Value  answer.Num `json:"value"` // in the number's unit
}

// WorstMeetings are the ages with the seasons that ask most of a design; null where there is none.
type WorstMeetings struct {
	Lowest  *Worst `json:"action_lowest"`  // strings come lowest, mm lower
	Highest *Worst `json:"action_highest"` // strings come highest, mm lower, mostly below 0
	Gap     *Worst `json:"gap_left"`
	Used    *Worst `json:"used"`
	Across  *Worst `json:"across_used"`
}
