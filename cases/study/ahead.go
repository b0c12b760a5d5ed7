package study

import (
	"context"
	"fmt"
	"maps"
	"slices"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/materials"
)

// Ahead puts what seasons and years do among the answers of a prepared top (answer.Report.Outlook).
type Ahead func(ctx context.Context, r *answer.Report, t *design.Top, o design.Options) error

// What scatters in a plank beside the numbers of its card where seasons and years are asked for: all of its
// swelling goes together, and all of its creep.
const (
	swelling = "swelling"
	creep    = "creep"
)

// timely lists them for some planks, each at the end of its plank's place in the list.
func timely(planks []plank, bridge bool) []constant {
	var out []constant
	for i, p := range planks {
		for _, key := range []string{swelling, creep} {
			if bridge || p.role != "bridge" && p.role != "saddle beam" {
				cv, from := materials.Scatter(key)
				out = append(out, constant{plank: i, key: key, cv: cv, from: from})
			}
		}
	}
	return out
}

// times are the card's numbers that a constant's factor multiplies.
func (c constant) times(by float64) map[string]float64 {
	switch c.key {
	case swelling:
		return map[string]float64{"swell_L": by, "swell_R": by, "swell_T": by}
	case creep:
		return map[string]float64{"creep_along": by, "creep_across": by, "creep_shear": by, "creep_rolling_shear": by}
	}
	return map[string]float64{c.key: by}
}

// knownAhead says whether seasons and years do not feel a constant: weight, and the strength of what is not the top.
func (sp *Spread) knownAhead(c constant) bool {
	stiff := slices.Contains([]string{"EL", "ER", "ET", "GLR", "GLT", "GRT", swelling, creep}, c.key)
	return c.key == "density" || !stiff && sp.planks[c.plank].role != "top"
}

// lookAhead adds what seasons and years do to a report in a changed plank, or at a changed edge (c nil).
func (sp *Spread) lookAhead(ctx context.Context, r *answer.Report, t *design.Top, c *constant) error {
	if sp.ahead == nil {
		return nil
	}
	if c != nil && sp.knownAhead(*c) {
		r.Outlook = maps.Clone(sp.base.Outlook)
		return nil
	}
	return sp.ahead(ctx, r, t, design.Options{Workers: 1, NoError: true})
}

// startAhead adds it to the reports that the others count from. What cannot be had is a fault, and has no ranges.
func (sp *Spread) startAhead(ctx context.Context, s, on *design.Solution, o design.Options) error {
	if sp.ahead == nil {
		return nil
	}
	quiet := design.Options{Workers: o.WorkerCount(), NoError: true}
	err := sp.ahead(ctx, sp.base, on.Top, quiet)
	if err == nil && sp.own != sp.base {
		err = sp.ahead(ctx, sp.own, s.Top, quiet)
	}
	if err != nil && ctx.Err() == nil {
		sp.faults = append(sp.faults, fmt.Sprintf("no range of what seasons and years do: %v", err))
		sp.ahead = nil
	}
	return ctx.Err()
}
