package answer

import (
	"encoding/json"
	"math"

	"archload/cases/design"
)

// Num is a number of a report; one that cannot be had is NaN and becomes null
// in JSON.
type Num float64

// None is the number that cannot be had.
func None() Num { return Num(math.NaN()) }

// Known says whether the number can be had.
func (n Num) Known() bool { return !math.IsNaN(float64(n)) && !math.IsInf(float64(n), 0) }

// MarshalJSON writes null for a number that cannot be had.
func (n Num) MarshalJSON() ([]byte, error) {
	if !n.Known() {
		return []byte("null"), nil
	}
	return json.Marshal(float64(n))
}

// UnmarshalJSON reads null as a number that cannot be had.
func (n *Num) UnmarshalJSON(b []byte) error {
	if string(b) == "null" {
		*n = None()
		return nil
	}
	return json.Unmarshal(b, (*float64)(n))
}

// Report is the answer in the maker's words, unrounded: lengths mm, forces N,
// stress MPa, mass g, energy N·mm, angles degrees. It is what the JSON output
// holds and what texts and pictures are made from.
type Report struct {
	Format    int             `json:"format"`
	Units     string          `json:"units"`
	Title     string          `json:"title"`
	Mesh      MeshReport      `json:"mesh"`
	Top       TopReport       `json:"top"`
	Mass      MassReport      `json:"mass"`
	Strings   *StringsReport  `json:"strings"`
	Bridge    *BridgeReport   `json:"bridge"`
	Gauges    []GaugeReport   `json:"gauges"`
	Bench     *BenchReport    `json:"bench"` // null without readings
	Braces    []BraceReport   `json:"braces"`
	Reactions ReactionsReport `json:"reactions"`
	Flow      *FlowReport     `json:"flow"` // null without a load straight down
	Energy    EnergyReport    `json:"energy"`
	Strength  StrengthReport  `json:"strength"`
	Decades   DecadesReport   `json:"over_decades"`
	Error     ErrorReport     `json:"error"`
	Timing    design.Stages   `json:"timing"`
	Warnings  []string        `json:"warnings"`
}

// MeshReport describes the triangles.
type MeshReport struct {
	Nodes     int     `json:"nodes"`
	Triangles int     `json:"triangles"`
	Dofs      int     `json:"dofs"`
	MinAngle  float64 `json:"min_angle"` // deg
}

// TopReport is the plate's shape and how far it sinks where it sinks most.
type TopReport struct {
	Thinnest Spot `json:"thinnest"` // mm
	Thickest Spot `json:"thickest"` // mm
	Steepest Spot `json:"steepest"` // deg, of the outer surface
	Apex     Spot `json:"apex"`     // mm above z = 0, before loading
	ApexSink Num  `json:"apex_sink"`
	MostSunk Spot `json:"most_sunk"` // mm
}

// Spot is a value at a place in plan.
type Spot struct {
	Value float64 `json:"value"`
	X     float64 `json:"x"` // mm
	Y     float64 `json:"y"` // mm
}

// MassReport holds the masses, g.
type MassReport struct {
	Plate        float64     `json:"plate"`
	Braces       float64     `json:"braces"`
	Bridge       Num         `json:"bridge"`
	BridgeCentre *[3]float64 `json:"bridge_centre"` // mm, of mass; null without a bridge
}

// StringsReport holds the strings' forces, N.
type StringsReport struct {
	Tension   float64        `json:"tension"`
	Downforce float64        `json:"downforce"`
	Along     float64        `json:"along"` // positive toward the neck
	Grip      float64        `json:"grip"`  // friction in the slots lets the push lie between along - grip and along + grip
	Rocking   *RockingReport `json:"rocking"`
	Each      []StringReport `json:"each"`
}

// RockingReport is how near the strings' push is to tipping the bridge; null
// without one.
type RockingReport struct {
	Moment    float64 `json:"moment"`       // N·mm, push times height of the contact above the top, positive toward the neck
	Lever     float64 `json:"friction"`     // N·mm, what friction in the slots can add to or take from it
	Shift     float64 `json:"shift"`        // mm, the downforce's at the contact plane, toward the neck
	HalfWidth float64 `json:"half_width"`   // mm, of the foot: beyond it the bridge tips
	Used      float64 `json:"used"`         // 1, shift over half width, without sign; beyond 1/3 one edge lifts
	UsedMost  float64 `json:"used_at_most"` // 1, the same where friction is at its worst
}

// StringReport is one string.
type StringReport struct {
	Name       string  `json:"name"`
	X          float64 `json:"x"`      // mm from the bridge's middle
	Height     float64 `json:"height"` // mm, of its contact above the top at the bridge's middle
	Tension    float64 `json:"tension"`
	Rise       float64 `json:"rise"` // N, of the speaking length alone: a plucked string
	FrontAngle float64 `json:"front_angle"`
	BackAngle  float64 `json:"back_angle"`
	Downforce  float64 `json:"downforce"`
	Along      float64 `json:"along"`
	Grip       float64 `json:"grip"` // N
}

// BridgeReport is how the bridge stands at full load.
type BridgeReport struct {
	Sink            float64         `json:"sink"` // of the base at its middle, mm, from the slack strings
	Tilt            TiltReport      `json:"tilt"`
	ActionChange    float64         `json:"action_change"` // at the octave, mm, positive when strings come lower
	Contact         []ContactReport `json:"contact"`
	Share           ShareReport     `json:"share"`
	MiddleTouchesAt Num             `json:"middle_touches_at"`
	MiddleClosesAt  Num             `json:"middle_closes_at"`
	FrictionNeeded  Num             `json:"friction_needed"`
	GapLeft         float64         `json:"gap_left"`  // greatest remaining, mm
	EndSink         [2]float64      `json:"end_sink"`  // of the base's bass and treble end, mm
	Spreading       float64         `json:"spreading"` // Σ f|x| / Σ f, mm: how far out the foot presses
	ByLoad          []LoadReport    `json:"by_load"`
	Guides          []float64       `json:"guides,omitempty"` // force across (N), along (N) and moment about the upright (N·mm) at the saddle, slip only
}

// Pressed is the sum of the foot's forces square to the surface, N. On slopes
// it differs from the downforce, as drag carries a part of that.
func (g *BridgeReport) Pressed() float64 {
	sum := 0.0
	for _, c := range g.Contact {
		sum += c.Force
	}
	return sum
}

// HighestSpot is the greatest pressure on one place of the contact grid, MPa.
func (g *BridgeReport) HighestSpot() float64 {
	most := 0.0
	for _, c := range g.Contact {
		most = math.Max(most, c.Pressure)
	}
	return most
}

// TiltReport is the bridge's lean, deg.
type TiltReport struct {
	ForeAft  float64 `json:"fore_aft"` // positive: the top leans toward the neck
	Sideways float64 `json:"sideways"` // positive: the treble side is lower
}

// ContactReport is one contact point; x and y on the plate.
type ContactReport struct {
	X        float64    `json:"x"`
	Y        float64    `json:"y"`
	Gap      float64    `json:"gap"`
	Force    float64    `json:"force"`
	Pressure float64    `json:"pressure"`
	Drag     [2]float64 `json:"drag"` // N, tangential force on the plate, across and along
}

// ShareReport is the part of the foot force that each third of the bearing
// length carries, 0 to 1.
type ShareReport struct {
	BassEnd   float64 `json:"bass_end"`
	Middle    float64 `json:"middle"`
	TrebleEnd float64 `json:"treble_end"`
}

// LoadReport is the foot force by thirds at one load.
type LoadReport struct {
	Load   float64    `json:"load"`
	Thirds [3]float64 `json:"thirds"` // N: bass end, middle, treble end
}

// GaugeReport is what a dial gauge and strain gauges would read.
type GaugeReport struct {
	Name         string     `json:"name"`
	X            float64    `json:"x"`
	Y            float64    `json:"y"`
	Sink         float64    `json:"sink"`
	Measured     Num        `json:"measured"`
	Displacement [3]float64 `json:"displacement"`
	Outer        FaceStress `json:"outer"`
	Inner        FaceStress `json:"inner"`
}

// FaceStress is the stress at one face in wood axes, MPa, positive in tension.
type FaceStress struct {
	Along  float64 `json:"along"`
	Across float64 `json:"across"`
	Shear  float64 `json:"shear"`
}

// BraceReport is what one brace carries.
type BraceReport struct {
	Name   string         `json:"name"`
	Mass   float64        `json:"mass"`
	Axial  Spot           `json:"axial"`  // N of greatest size, tension positive, and where
	Moment Spot           `json:"moment"` // N·mm of greatest size, tension at the bottom positive, and where
	Energy float64        `json:"energy"`
	Glue   GlueReport     `json:"glue"`
	Along  []BraceStation `json:"along"` // one for each stretch, at its middle
}

// BraceStation is what a brace carries at one place of its line.
type BraceStation struct {
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	Axial  float64 `json:"axial"`  // N, tension positive
	Moment float64 `json:"moment"` // N·mm, tension at the bottom positive
}

// ReactionsReport is what holds the plate, N.
type ReactionsReport struct {
	Total   [3]float64 `json:"total"`
	Applied [3]float64 `json:"applied"`
	// Sectors is what the plate's edge is held up with: by the ground, or on an
	// elastic rim by the sides.
	Sectors SectorsReport `json:"sectors"`
	// Back is what the back gives to the lower edge of the sides of an elastic
	// rim. It differs from Sectors part by part, as the arch's outward push tips
	// the curved sides: they bear down harder at bouts and blocks and lift at the
	// waist. The sums agree.
	Back  *SectorsReport `json:"back,omitempty"`
	Posts []PostReport   `json:"posts,omitempty"` // sectors and posts sum to the total
}

// PostReport is what one post between top and back holds up, N.
type PostReport struct {
	Name  string  `json:"name"`
	Force float64 `json:"force"`
}

// SectorsReport is the upward reaction at the two blocks and the two sides, N.
type SectorsReport struct {
	Neck   float64 `json:"neck"`
	Tail   float64 `json:"tail"`
	Bass   float64 `json:"bass"`
	Treble float64 `json:"treble"`
}

// EnergyReport is the strain energy by kind, N·mm.
type EnergyReport struct {
	Membrane float64 `json:"membrane"`
	Bending  float64 `json:"bending"`
	Shear    float64 `json:"shear"`
	Braces   float64 `json:"braces"`
	Bridge   float64 `json:"bridge"`
	Bedding  float64 `json:"bedding"`
	Rim      float64 `json:"rim"`
	Total    float64 `json:"total"`
	Released float64 `json:"released"` // by grip where a point lets go while it still drags
}

// StrengthReport is how much of the wood's short-term strength is used.
type StrengthReport struct {
	Used             Num    `json:"used"` // 1 over the load factor to the Hoffman criterion
	X                Num    `json:"x"`
	Y                Num    `json:"y"`
	Surface          string `json:"surface"` // "outer" or "inner"
	RollingShearUsed Num    `json:"rolling_shear_used"`
	ShearUsed        Num    `json:"longitudinal_shear_used"`
	FootPressure     Num    `json:"foot_pressure"` // MPa, mean over 8 mm of foot
	FootUsed         Num    `json:"foot_used"`
}

// DecadesReport is an indication of what years of load do, no more: strength
// times 0.6 (ten years of load, Wood Handbook), sink up to 1.6 times the
// elastic one (creep factor for structural timber, EN 1995-1-1).
type DecadesReport struct {
	StrengthUsed Num    `json:"strength_used"`
	Sink         [2]Num `json:"sink"` // mm, of the bridge (without one, of the deepest place): from and to
}

// ErrorReport holds the built-in checks and the discretisation estimate, all
// relative.
type ErrorReport struct {
	Equilibrium     float64 `json:"equilibrium"`
	Moment          float64 `json:"moment"`
	Energy          float64 `json:"energy"`
	Complementarity float64 `json:"complementarity"`
	Discretisation  Num     `json:"discretisation"`
}

// The limits of the built-in checks.
const (
	maxEquilibrium     = 1e-8
	maxEnergy          = 1e-6
	maxComplementarity = 1e-9
)

// Failed names the built-in checks that a run does not pass.
func (e ErrorReport) Failed() []string {
	var out []string
	for _, c := range []struct {
		name       string
		got, limit float64
	}{
		{"force equilibrium", e.Equilibrium, maxEquilibrium},
		{"moment equilibrium", e.Moment, maxEquilibrium},
		{"energy balance", e.Energy, maxEnergy},
		{"contact conditions", e.Complementarity, maxComplementarity},
	} {
		if !(c.got <= c.limit) {
			out = append(out, c.name)
		}
	}
	return out
}
