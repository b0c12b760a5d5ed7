package quantity

import (
	"fmt"
	"slices"

	"archload/cases/answer"
	"archload/cases/body"
	"archload/cases/design"
)

// The headings of the summary.
const (
	HeadTop      = "The top"
	HeadStrings  = "The strings"
	HeadBridge   = "The bridge"
	HeadPaths    = "Where the load goes"
	HeadStrength = "Strength of clear, straight-grained wood under short load"
	HeadTrust    = "How far to trust this"
)

// All is the table of quantities, in the order in which they are shown.
// A new answer is one entry here.
func All() []Quantity {
	return slices.Concat(ofBridge(), ofTop(), ofFoot(), ofEdge(), ofEnergy(), ofStrength(), ofBody(), ofMotion(), ofSeasons(), ofYears(), ofRest())
}

// bridged reads a number that only an answer with a bridge has.
func bridged(get func(*answer.BridgeReport) answer.Num) func(*answer.Report) answer.Num {
	return func(r *answer.Report) answer.Num {
		if r.Bridge == nil {
			return answer.None()
		}
		return get(r.Bridge)
	}
}

// ofBridge is how the bridge moves.
func ofBridge() []Quantity {
	return []Quantity{
		{Key: "bridge_sink", Name: "bridge sinks", Short: "sinks", Unit: "mm", Digits: 3, Plus: "down",
			Means:   "How far the middle of the bridge's base comes down from slack strings to pitch.",
			Compare: UnderDecides, Series: 1, Column: "bridge_sink_mm", Report: true, Window: true, Summary: HeadBridge,
			Get: bridged(func(b *answer.BridgeReport) answer.Num { return answer.Num(b.Sink) })},
		{Key: "bass_end_sink", Name: "bass end of the bridge sinks", Unit: "mm", Digits: 3, Plus: "down",
			Means:   "How far the bass end of the base comes down. If it is more than at the treble end, the arch is softer on the bass side.",
			Compare: UnderDecides, Report: true, Window: true, Summary: HeadBridge,
			Get: bridged(func(b *answer.BridgeReport) answer.Num { return answer.Num(b.EndSink[0]) })},
		{Key: "treble_end_sink", Name: "treble end of the bridge sinks", Unit: "mm", Digits: 3, Plus: "down",
			Means:   "How far the treble end of the base comes down.",
			Compare: UnderDecides, Report: true, Window: true, Summary: HeadBridge,
			Get: bridged(func(b *answer.BridgeReport) answer.Num { return answer.Num(b.EndSink[1]) })},
		{Key: "lean_along", Name: "bridge leans along", Unit: "deg", Digits: 3, Plus: "toward the neck", Minus: "toward the tail",
			Means:   "How far the bridge's top tips along the strings.",
			Compare: UnderRest, Series: 13, Column: "lean_to_neck_deg", Window: true, Summary: HeadBridge,
			Get: bridged(func(b *answer.BridgeReport) answer.Num { return answer.Num(b.Tilt.ForeAft) })},
		{Key: "lean_sideways", Name: "bridge leans sideways", Unit: "deg", Digits: 3, Plus: "treble side lower", Minus: "bass side lower",
			Means:   "How far the bridge tips across the strings, as one end sinks more than the other.",
			Compare: UnderDecides, Series: 14, Column: "lean_to_treble_deg", Summary: HeadBridge,
			Get: bridged(func(b *answer.BridgeReport) answer.Num { return answer.Num(b.Tilt.Sideways) })},
		{Key: "action_change", Name: "strings lower at the octave", Unit: "mm", Digits: 3, Plus: "lower",
			Means:   "How much of the string action the sinking saddle takes away at the octave.",
			Compare: UnderDecides, Series: 15, Column: "action_lower_mm", Report: true, Summary: HeadBridge,
			Get: bridged(func(b *answer.BridgeReport) answer.Num { return answer.Num(b.ActionChange) })},
	}
}

// ofTop is how the top moves.
func ofTop() []Quantity {
	return []Quantity{
		{Key: "most_sunk", Name: "top sinks most", Short: "top", Unit: "mm", Digits: 3, Plus: "down",
			Means:   "How far the top comes down where it sinks most.",
			Compare: UnderDecides, Series: 5, Column: "top_sinks_most_mm", Report: true, Summary: HeadTop,
			Get: func(r *answer.Report) answer.Num { return answer.Num(r.Top.MostSunk.Value) }},
		{Key: "apex_sink", Name: "apex sinks", Unit: "mm", Digits: 3, Plus: "down", Note: "each at its own apex",
			Means:   "How far the highest place of the arch comes down.",
			Compare: UnderRest, Series: 12, Column: "apex_sink_mm", Summary: HeadTop,
			Get: func(r *answer.Report) answer.Num { return r.Top.ApexSink }},
	}
}

// percentOf reads a share of a bridge on so many feet, 0: on any.
func percentOf(feet int, get func(*answer.BridgeReport) answer.Num) func(*answer.Report) answer.Num {
	return bridged(func(b *answer.BridgeReport) answer.Num {
		if feet != 0 && b.TwoFeet() != (feet == 2) {
			return answer.None()
		}
		return 100 * get(b)
	})
}

// rough reads a number that only a foot with friction has.
func rough(get func(*answer.RoughReport) answer.Num) func(*answer.Report) answer.Num {
	return bridged(func(b *answer.BridgeReport) answer.Num {
		if b.RoughReport == nil {
			return answer.None()
		}
		return get(b.RoughReport)
	})
}

// ofFoot is how the foot bears.
func ofFoot() []Quantity {
	return slices.Concat(ofThirds(), ofHeels(), []Quantity{
		{Key: "gap_left", Name: "gap left under the foot", Unit: "mm", Digits: 3,
			Means:  "The greatest gap that stays open between foot and top.",
			Series: 10, Column: "gap_left_mm", Report: true, Window: true, Summary: HeadBridge,
			Get: bridged(func(b *answer.BridgeReport) answer.Num { return answer.Num(b.GapLeft) })},
		{Key: "friction_needed", Name: "friction needed", Unit: "N per N", Digits: 3,
			Means:   "How hard the foot must drag for each newton it presses with, to stay where it is; wood gives 0.3 to 0.5.",
			Compare: UnderRest, Series: 16, Column: "friction_needed_1", Summary: HeadBridge,
			Get: bridged(func(b *answer.BridgeReport) answer.Num { return b.FrictionNeeded })},
		{Key: "slid", Name: "foot slides at most", Unit: "mm", Digits: 4,
			Means:   "How far a place of a foot with friction has slid on the top under load, at most.",
			Compare: UnderRest, Summary: HeadBridge,
			Get: rough(func(b *answer.RoughReport) answer.Num { return b.Slid })},
		{Key: "sliding", Name: "of the foot slides", Unit: "%", Digits: 1,
			Means:   "The share of the force under a foot with friction that rests on places that drag with all their friction.",
			Compare: UnderRest, Summary: HeadBridge,
			Get: rough(func(b *answer.RoughReport) answer.Num { return 100 * b.Sliding })},
	})
}

// ofThirds is how a continuous foot bears.
func ofThirds() []Quantity {
	percent := func(get func(*answer.BridgeReport) answer.Num) func(*answer.Report) answer.Num {
		return percentOf(1, get)
	}
	return []Quantity{
		{Key: "bass_share", Name: "bass end of the foot carries", Unit: "%", Digits: 1, Feet: 1,
			Means:   "What the third of the foot's length on the bass side carries of the force under the foot.",
			Compare: UnderDecides, Series: 7, Column: "bass_end_carries_percent", Window: true, Summary: HeadBridge,
			Get: percent(func(b *answer.BridgeReport) answer.Num { return answer.Num(b.Share.BassEnd) })},
		{Key: "middle_share", Name: "middle of the foot carries", Short: "middle", Unit: "%", Digits: 1, Feet: 1,
			Means:   "What the middle third of the foot's length carries of the force under the foot; a third of it under even pressure.",
			Compare: UnderDecides, Series: 2, Column: "middle_carries_percent", Report: true, Window: true, Summary: HeadBridge,
			Get: percent(func(b *answer.BridgeReport) answer.Num { return answer.Num(b.Share.Middle) })},
		{Key: "treble_share", Name: "treble end of the foot carries", Unit: "%", Digits: 1, Feet: 1,
			Means:   "What the third of the foot's length on the treble side carries of the force under the foot.",
			Compare: UnderDecides, Series: 8, Column: "treble_end_carries_percent", Window: true, Summary: HeadBridge,
			Get: percent(func(b *answer.BridgeReport) answer.Num { return answer.Num(b.Share.TrebleEnd) })},
		{Key: "middle_touches_at", Name: "middle of the foot first touches at", Unit: "% of load", Event: true, Feet: 1,
			Means:   "The share of full string load at which the relieved middle of the foot first touches the top.",
			Compare: UnderDecides, Series: 9, Column: "middle_touches_at_percent", Report: true, Summary: HeadBridge,
			Get: percent(func(b *answer.BridgeReport) answer.Num { return b.MiddleTouchesAt })},
		{Key: "middle_closes_at", Name: "middle of the foot has closed at", Short: "closes", Unit: "% of load", Event: true, Feet: 1,
			Means:   "The share of full string load at which the middle of the foot bears all along.",
			Compare: UnderDecides, Series: 3, Column: "middle_closes_at_percent", Report: true, Summary: HeadBridge,
			Get: percent(func(b *answer.BridgeReport) answer.Num { return b.MiddleClosesAt })},
	}
}

// ofHeels is how two feet bear.
func ofHeels() []Quantity {
	percent := func(get func(*answer.BridgeReport) answer.Num) func(*answer.Report) answer.Num {
		return percentOf(2, get)
	}
	heel := func(key, name, means string, get func(*answer.BridgeReport) answer.Num) Quantity {
		return Quantity{Key: key, Name: name, Unit: "%", Digits: 1, Means: means, Feet: 2, Compare: UnderDecides, Window: true,
			Summary: HeadBridge, Get: percent(get)}
	}
	out := []Quantity{
		heel("bass_foot_share", "bass foot carries", "What the bass foot carries of the force under both feet.", func(b *answer.BridgeReport) answer.Num { return answer.Num(b.Feet[0].Share) }),
		heel("bass_inner_share", "inner heel of the bass foot carries", "What the half of the bass foot toward the bridge's middle carries of the force under both feet.", func(b *answer.BridgeReport) answer.Num { return answer.Num(b.Feet[0].Inner) }),
		heel("treble_inner_share", "inner heel of the treble foot carries", "What the half of the treble foot toward the bridge's middle carries of the force under both feet.", func(b *answer.BridgeReport) answer.Num { return answer.Num(b.Feet[1].Inner) }),
		heel("treble_foot_share", "treble foot carries", "What the treble foot carries of the force under both feet.", func(b *answer.BridgeReport) answer.Num { return answer.Num(b.Feet[1].Share) }),
		{Key: "heels_touch_at", Name: "an inner heel first touches at", Unit: "% of load", Event: true, Feet: 2,
			Means:   "The share of full string load at which the first inner heel of the two feet touches the top.",
			Compare: UnderDecides, Series: 24, Column: "heels_touch_at_percent", Report: true, Summary: HeadBridge,
			Get: percent(func(b *answer.BridgeReport) answer.Num { return answer.HeelsTouchAt(b.Feet) })},
		{Key: "heels_close_at", Name: "both inner heels have closed at", Short: "heels close", Unit: "% of load", Event: true, Feet: 2,
			Means:   "The share of full string load at which both inner heels bear all along.",
			Compare: UnderDecides, Series: 25, Column: "heels_close_at_percent", Report: true, Summary: HeadBridge,
			Get: percent(func(b *answer.BridgeReport) answer.Num { return answer.HeelsCloseAt(b.Feet) })},
	}
	for i, column := range []string{"bass_foot_carries_percent", "bass_inner_heel_carries_percent", "treble_inner_heel_carries_percent", "treble_foot_carries_percent"} {
		out[i].Series, out[i].Column = 20+i, column
	}
	out[0].Short, out[0].Report, out[3].Report = "bass foot", true, true
	return out
}

// ofEdge is what holds the edge up.
func ofEdge() []Quantity {
	edge := func(key, part, means string, get func(*answer.SectorsReport) float64) Quantity {
		return Quantity{Key: key, Name: "edge holds up: " + part, Unit: "N", Digits: 1, Plus: "upward", Means: means, Compare: UnderRest,
			Summary: HeadPaths, Get: func(r *answer.Report) answer.Num { return answer.Num(get(&r.Reactions.Sectors)) }}
	}
	return []Quantity{
		edge("edge_neck", "neck", "What the neck block holds up.", func(s *answer.SectorsReport) float64 { return s.Neck }),
		edge("edge_tail", "tail", "What the tail block holds up.", func(s *answer.SectorsReport) float64 { return s.Tail }),
		edge("edge_bass", "bass side", "What the bass side holds up between the blocks.", func(s *answer.SectorsReport) float64 { return s.Bass }),
		edge("edge_treble", "treble side", "What the treble side holds up between the blocks.", func(s *answer.SectorsReport) float64 { return s.Treble }),
		{Key: "to_neck", Name: "of the load the neck block bears", Unit: "%", Digits: 0, Summary: HeadPaths,
			Means: "What arrives of the load at the neck block, straight from the top and by way of sides and back.",
			Get:   arriving(func(o *body.Onward) *body.BlockFlow { return &o.Neck })},
		{Key: "to_tail", Name: "of the load the tail block bears", Unit: "%", Digits: 0, Summary: HeadPaths,
			Means: "What arrives of the load at the tail block, straight from the top and by way of sides and back.",
			Get:   arriving(func(o *body.Onward) *body.BlockFlow { return &o.Tail })},
	}
}

// ofEnergy is where the work of the strings is stored.
func ofEnergy() []Quantity {
	part := func(key, name, means string, head Heading, get func(*answer.EnergyReport) float64) Quantity {
		return Quantity{Key: key, Name: name, Unit: "%", Digits: 1, Means: means, Compare: head, Summary: HeadPaths,
			Get: func(r *answer.Report) answer.Num { return answer.Num(100 * get(&r.Energy) / r.Energy.Total) }}
	}
	return []Quantity{
		{Key: "energy", Name: "energy in all", Unit: "N mm", Digits: 2, Means: "The work of the strings that top, bridge and edge store.",
			Compare: UnderRest, Series: 19, Column: "energy_Nmm", Summary: HeadPaths,
			Get: func(r *answer.Report) answer.Num { return answer.Num(r.Energy.Total) }},
		part("energy_stretching", "energy in stretching", "The share stored where the plate is stretched or squeezed in its plane, as an arch carries.", UnderRest, func(e *answer.EnergyReport) float64 { return e.Membrane }),
		part("energy_bending", "energy in bending", "The share stored where the plate is bent, as a flat plate carries.", UnderRest, func(e *answer.EnergyReport) float64 { return e.Bending }),
		part("energy_shear", "energy in shear", "The share stored where the plate is sheared through its thickness.", NotCompared, func(e *answer.EnergyReport) float64 { return e.Shear }),
		part("energy_braces", "energy in the braces", "The share stored in the braces.", UnderRest, func(e *answer.EnergyReport) float64 { return e.Braces }),
		part("energy_bridge", "energy in the bridge", "The share stored in the bridge.", NotCompared, func(e *answer.EnergyReport) float64 { return e.Bridge }),
		part("energy_bedding", "energy in the bedding", "The share stored in the wood right under the foot.", NotCompared, func(e *answer.EnergyReport) float64 { return e.Bedding }),
		{Key: "energy_back", Name: "energy in the back", Unit: "%", Digits: 1, Means: "The share stored in the back of a body with its bars.", Summary: HeadPaths,
			Get: func(r *answer.Report) answer.Num {
				if r.Body == nil {
					return answer.None()
				}
				return answer.Num(100 * r.Energy.Back / r.Energy.Total)
			}},
		part("energy_rim", "energy in rim and supports", "The share stored in sides and supports.", NotCompared, func(e *answer.EnergyReport) float64 { return e.Rim }),
	}
}

// ofStrength is how hard the wood works.
func ofStrength() []Quantity {
	return []Quantity{
		{Key: "strength_used", Name: "strength used", Short: "strength", Unit: "%", Peak: true,
			Means:   fmt.Sprintf("What the top's worst place uses of its wood's short-term strength: at 100 %% expect a crack at once, from %.0f %% on within %d years.", 100*answer.LongTerm(), design.OldYears),
			Compare: UnderDecides, Series: 4, Column: "strength_used_percent", Report: true, Summary: HeadStrength,
			Get: func(r *answer.Report) answer.Num { return 100 * r.Strength.Used }},
		{Key: "rolling_shear_used", Name: "rolling shear used", Unit: "%", Peak: true,
			Means:   "What the top uses of its strength against rolling the fibres over each other inside its thickness.",
			Summary: HeadStrength,
			Get:     func(r *answer.Report) answer.Num { return 100 * r.Strength.RollingShearUsed }},
		{Key: "shear_used", Name: "shear along the grain used", Unit: "%", Peak: true,
			Means: "What the top uses of its strength against shear along the grain.",
			Get:   func(r *answer.Report) answer.Num { return 100 * r.Strength.ShearUsed }},
		{Key: "foot_used", Name: "crushing under the foot", Short: "crushing", Unit: "%", Peak: true,
			Means:   "The pressure under the foot, of what crushes the softer wood there across the grain.",
			Compare: UnderDecides, Series: 6, Column: "foot_used_percent", Report: true, Summary: HeadStrength,
			Get: func(r *answer.Report) answer.Num { return 100 * r.Strength.FootUsed }},
		{Key: "foot_pressure", Name: "pressure under the foot", Unit: "MPa", Digits: 2, Peak: true,
			Means:  fmt.Sprintf("The greatest pressure under the foot, averaged over %d mm of it.", answer.FootWindow),
			Series: 11, Column: "foot_pressure_MPa", Summary: HeadStrength,
			Get: func(r *answer.Report) answer.Num { return r.Strength.FootPressure }},
	}
}

// ofRest is what goes in, what it weighs, and what the mesh costs.
func ofRest() []Quantity {
	return []Quantity{
		{Key: "downforce", Name: "strings press with", Unit: "N", Digits: 1, Plus: "down",
			Means:   "What all strings together press the bridge down with.",
			Compare: UnderRest, Series: 17, Column: "downforce_N", Summary: HeadStrings,
			Get: func(r *answer.Report) answer.Num {
				if r.Strings == nil {
					return answer.None()
				}
				return answer.Num(r.Strings.Downforce)
			}},
		{Key: "bridge_mass", Name: "mass of the bridge", Unit: "g", Digits: 1,
			Means:   "What the bridge weighs by its drawing and its wood: the base and what stands on it up to the strings: the saddle part, or posts, wheels and saddle beam.",
			Compare: UnderRest,
			Get:     func(r *answer.Report) answer.Num { return r.Mass.Bridge }},
		{Key: "mass", Name: "mass of plate and braces", Unit: "g", Digits: 1,
			Means:   "What the top weighs without the bridge.",
			Compare: UnderRest, Series: 18, Column: "plate_and_braces_g", Summary: HeadTop,
			Get: func(r *answer.Report) answer.Num { return answer.Num(r.Mass.Plate + r.Mass.Braces) }},
		{Key: "mesh_error", Name: "error from the mesh", Unit: "%", Digits: 1,
			Means:   "What the triangles may cost the sink of the bridge, of that sink; without a bridge, of the top's.",
			Compare: UnderMesh, Summary: HeadTrust,
			Get: func(r *answer.Report) answer.Num { return 100 * r.Error.Discretisation }},
	}
}
