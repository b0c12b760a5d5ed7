package answer

import (
	"errors"
	"fmt"

	"archload/cases/design"
	"archload/cases/tree"
	"archload/materials"
)

// Where a result deserves a word of caution.
const (
	// woodFriction is about the most that wood gives on varnished wood: 0.3 to
	// 0.5 (common practice, no published source).
	woodFriction = 0.5
)

// LongTerm is the share of short-term strength that decades of load leave, 1.
func LongTerm() float64 { return materials.LastingShare(design.OldYears) }

// cautions lists what a result itself warns of.
func (r *Report) cautions() []string {
	var out []string
	if b := r.Bridge; b != nil && float64(b.FrictionNeeded) > woodFriction {
		out = append(out, fmt.Sprintf("to stick as computed the foot must drag %.2f times as hard as it presses; wood gives 0.3 to 0.5, so parts of it will slide: solve again with hold = \"friction\" in [bridge]", float64(b.FrictionNeeded)))
	}
	if b := r.Bridge; b != nil && b.RoughReport != nil && b.Glides {
		out = append(out, fmt.Sprintf("a friction of %.2f does not hold the bridge: it glides, and the strings at the saddle alone hold it", float64(b.Friction)))
	}
	s := r.Strength
	switch {
	case float64(s.Used) >= 1:
		out = append(out, "the wood's strength is exceeded: expect a crack where the worst place is")
	case float64(s.Used) >= LongTerm():
		out = append(out, fmt.Sprintf("more than %.0f %% of the wood's strength are used: under string load for years it may crack", 100*LongTerm()))
	}
	if float64(s.FootUsed) >= 1 {
		out = append(out, "the foot crushes the wood under it")
	}
	if float64(s.RollingShearUsed) >= 1 {
		out = append(out, "rolling shear exceeds the wood's strength: expect the plate to split inside its thickness")
	}
	return out
}

// warnings lists what deserves a second look.
func warnings(b *design.Built) []string {
	out := []string{}
	var loose tree.Faults // tones and a response it has all the same
	if errors.As(b.Case.AtRest(), &loose) {
		for _, w := range loose {
			out = append(out, w.Error())
		}
	}
	for _, w := range b.Geometry.Warnings {
		out = append(out, w.Error())
	}
	for _, w := range b.Case.Warnings() {
		out = append(out, w.Error())
	}
	return out
}
