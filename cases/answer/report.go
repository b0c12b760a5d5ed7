package answer

import (
	"math"

	"archload/cases/body"
	"archload/cases/design"
	"archload/cases/pull"
)

// Report is the answer in the maker's words, unrounded: lengths mm, forces N,
// stress MPa, mass g, energy N·mm, angles degrees. It is what the JSON output
// holds and what texts and pictures are made from.
type Report struct {
	Format    int                 `json:"format"`
	Units     string              `json:"units"`
	Title     string              `json:"title"`
	Mesh      MeshReport          `json:"mesh"`
	Top       TopReport           `json:"top"`
	Mass      MassReport          `json:"mass"`
	Strings   *pull.StringsReport `json:"strings"`
	Bridge    *BridgeReport       `json:"bridge"`
	Gauges    []GaugeReport       `json:"gauges"`
	Bench     *BenchReport        `json:"bench"` // null without readings
	Braces    []BraceReport       `json:"braces"`
	Reactions ReactionsReport     `json:"reactions"`
	Flow      *FlowReport         `json:"flow"`             // null without a load straight down
	Body      *body.Report        `json:"body,omitempty"`   // left out without a body
	Motion    *Motion             `json:"motion,omitempty"` // left out unless [motion] judged asks for it
	// Outlook is what seasons and years do, by the keys of their quantities and in their units; left out unless asked for.
	Outlook  map[string]float64 `json:"outlook,omitempty"`
	Energy   EnergyReport       `json:"energy"`
	Strength StrengthReport     `json:"strength"`
	Decades  DecadesReport      `json:"over_decades"`
	Error    ErrorReport        `json:"error"`
	Timing   design.Stages      `json:"timing"`
	Warnings []string           `json:"warnings"`
}

// PressesNow is what the strings press a whole body's top with where it has moved to, N downward, and
// whether that is another number than at the angles of the case to the tenth of a newton that is shown:
// their ends and the saddle move, so they pass over it at another angle.
func (r *Report) PressesNow() (now float64, another bool) {
	if r.Body == nil || r.Strings == nil || r.Flow == nil {
		return 0, false
	}
	return r.Flow.Load, math.Abs(r.Flow.Load-r.Strings.Downforce) >= 0.05
}

// MeshReport describes the triangles.
type MeshReport struct {
	Nodes     int     `json:"nodes"`
	Triangles int     `json:"triangles"`
	Dofs      int     `json:"dofs"`
	MinAngle  float64 `json:"min_angle"` // deg
}

// EnergyReport is the strain energy by kind, N·mm.
type EnergyReport struct {
	Membrane float64 `json:"membrane"`
	Bending  float64 `json:"bending"`
	Shear    float64 `json:"shear"`
	Braces   float64 `json:"braces"`
	Bridge   float64 `json:"bridge"`
	Bedding  float64 `json:"bedding"`
	Rim      float64 `json:"rim"`            // sides, linings, posts and supports
	Back     float64 `json:"back,omitempty"` // of a body, with its bars
	Total    float64 `json:"total"`
	Released float64 `json:"released"` // by grip where a point lets go while it still drags

	Dissipated float64 `json:"dissipated,omitempty"` // by friction where the foot slides
}

// DecadesReport is an indication of what decades of load do, no more: strength by the Madison curve, the
// sink by the creep of the woods' cards with half of it and a third more, as archload years has them.
type DecadesReport struct {
	Years        float64 `json:"years"`
	StrengthUsed Num     `json:"strength_used"` // of what such a load leaves
	Sink         [2]Num  `json:"sink"`          // mm, of the bridge (without one, of the deepest place): least and most; null where the creep of a wood is not known
}

// ErrorReport holds the built-in checks and the discretisation estimate, all
// relative.
type ErrorReport struct {
	Equilibrium     float64 `json:"equilibrium"`
	Moment          float64 `json:"moment"`
	Energy          float64 `json:"energy"`
	Complementarity float64 `json:"complementarity"`
	Discretisation  Num     `json:"discretisation"`
	// Mesh is what the triangles may cost each number, by the key of its quantity
	// and in that quantity's unit; "gauge_sink[1]" is that of the first gauge. A number
	// that is not known on both meshes has none.
	Mesh map[string]Num `json:"mesh,omitempty"`
	// Edge is one standard deviation of each number by what scatters in the making of
	// sides, lining and back, by key and unit as in Mesh, where it was asked for and they are modelled.
	Edge map[string]Num `json:"edge,omitempty"`
	// Outside is the greatest force that its stand gives to a body over what the
	// strings pull, where they alone act: they leave it in balance.
	Outside float64 `json:"outside,omitempty"`
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
		{"balance of the strings in the body", e.Outside, maxEquilibrium},
	} {
		if !(c.got <= c.limit) {
			out = append(out, c.name)
		}
	}
	return out
}
