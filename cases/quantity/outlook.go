package quantity

import "archload/cases/answer"

// The summary's headings of what seasons and years do.
const (
	HeadSeasons = "In other air"
	HeadYears   = "Over the years: an indication"
)

// ahead is a number that only an answer which was asked for seasons or years has: answer.Report.Outlook holds it,
// in Unit, under the quantity's own key.
func ahead(q Quantity) Quantity {
	q.Get = func(r *answer.Report) answer.Num {
		if v, ok := r.Outlook[q.Key]; ok {
			return answer.Num(v)
		}
		return answer.None()
	}
	return q
}

// ofSeasons is what the driest and the dampest season do, from the state in which the top was made.
func ofSeasons() []Quantity {
	const lower, quick = "lower", "if the change came at once"
	out := []Quantity{
		{Key: "dry_arch", Name: "arch rises in the driest season", Unit: "mm", Digits: 2, Plus: "rises", Minus: "falls", Series: 35, Column: "dry_arch_mm",
			Means: "How far the highest place of the arch rises over the rim as the wood goes from the made state to the driest season."},
		{Key: "damp_arch", Name: "arch rises in the dampest season", Unit: "mm", Digits: 2, Plus: "rises", Minus: "falls", Series: 36, Column: "damp_arch_mm",
			Means: "The same in the dampest season."},
		{Key: "dry_action", Name: "strings lower in the driest season", Unit: "mm", Digits: 2, Plus: lower, Minus: "higher", Series: 37, Column: "dry_action_lower_mm", Report: true,
			Means: "How much lower the strings come at the octave in the driest season."},
		{Key: "damp_action", Name: "strings lower in the dampest season", Unit: "mm", Digits: 2, Plus: lower, Minus: "higher", Series: 38, Column: "damp_action_lower_mm", Report: true,
			Means: "How much lower the strings come at the octave in the dampest season."},
		{Key: "dry_middle", Name: "middle of the foot carries in the driest season", Unit: "%", Digits: 1, Feet: 1, Series: 39, Column: "dry_middle_percent",
			Means: "What the middle third of the foot carries in the driest season, in which the arch under it is flattest."},
		{Key: "damp_middle", Name: "middle of the foot carries in the dampest season", Unit: "%", Digits: 1, Feet: 1, Series: 40, Column: "damp_middle_percent",
			Means: "What the middle third of the foot carries in the dampest season."},
		{Key: "season_gap", Name: "gap under the foot in the worst season", Unit: "mm", Digits: 3, Series: 41, Column: "season_gap_mm", Report: true,
			Means: "The greatest gap under the foot that a season opens."},
		{Key: "season_across", Name: "pull across the grain in the worst season", Unit: "%", Peak: true, Note: quick, Series: 42, Column: "season_across_percent", Report: true,
			Means: "What the greatest pull across the grain uses of the plate's strength there in the worst season: where a top splits. Slow drying relaxes part of it."},
		{Key: "season_glue", Name: "braces' glue in the worst season", Unit: "%", Peak: true, Note: quick, Series: 43, Column: "season_glue_percent",
			Means: "What a brace's glue line uses of the strength of the wood beside it in the worst season."},
		{Key: "season_used", Name: "strength used in the worst season", Unit: "%", Peak: true, Note: quick, Series: 44, Column: "season_used_percent",
			Means: "What the top's worst place uses of its strength in the worst season. Slow drying relaxes part of it."},
	}
	for i := range out {
		out[i].Compare, out[i].Summary = UnderDecides, HeadSeasons
		out[i] = ahead(out[i])
	}
	return out
}

// ofYears is what the strings do in ten and fifty years.
func ofYears() []Quantity {
	const lower, range50 = "lower", "creep as the wood cards have it"
	out := []Quantity{
		{Key: "sink_ten_years", Name: "sinks in 10 years", Unit: "mm", Digits: 3, Plus: "down", Note: range50, Series: 45, Column: "sink_10y_mm",
			Means: "How far the bridge (without one, the deepest place) has sunk after ten years under the strings."},
		{Key: "sink_ten_years_least", Name: "sinks in 10 years at least", Unit: "mm", Digits: 3, Plus: "down", Note: "half of that creep", Series: 46, Column: "sink_10y_least_mm",
			Means: "The same in wood that creeps half as much."},
		{Key: "sink_ten_years_most", Name: "sinks in 10 years at most", Unit: "mm", Digits: 3, Plus: "down", Note: "4/3 of that creep", Series: 47, Column: "sink_10y_most_mm",
			Means: "The same in wood that creeps a third more."},
		{Key: "sink_fifty_years", Name: "sinks in 50 years", Unit: "mm", Digits: 3, Plus: "down", Note: range50, Series: 48, Column: "sink_50y_mm", Report: true,
			Means: "How far the bridge (without one, the deepest place) has sunk after fifty years under the strings."},
		{Key: "sink_fifty_years_least", Name: "sinks in 50 years at least", Unit: "mm", Digits: 3, Plus: "down", Note: "half of that creep", Series: 49, Column: "sink_50y_least_mm",
			Means: "The same in wood that creeps half as much."},
		{Key: "sink_fifty_years_most", Name: "sinks in 50 years at most", Unit: "mm", Digits: 3, Plus: "down", Note: "4/3 of that creep", Series: 50, Column: "sink_50y_most_mm", Report: true,
			Means: "The same in wood that creeps a third more."},
		{Key: "action_ten_years", Name: "strings lower after 10 years", Unit: "mm", Digits: 3, Plus: lower, Minus: "higher", Series: 51, Column: "action_10y_lower_mm",
			Means: "How much of the string action ten years have taken away at the octave, from slack strings."},
		{Key: "action_fifty_years", Name: "strings lower after 50 years", Unit: "mm", Digits: 3, Plus: lower, Minus: "higher", Series: 52, Column: "action_50y_lower_mm", Report: true,
			Means: "How much of the string action fifty years have taken away at the octave, from slack strings."},
		{Key: "gap_ten_years", Name: "gap under the foot after 10 years", Unit: "mm", Digits: 3, Series: 53, Column: "gap_10y_mm",
			Means: "The greatest gap under the foot after ten years: a relieved foot closes with the years."},
		{Key: "gap_fifty_years", Name: "gap under the foot after 50 years", Unit: "mm", Digits: 3, Series: 54, Column: "gap_50y_mm",
			Means: "The greatest gap under the foot after fifty years."},
		{Key: "used_ten_years", Name: "strength used after 10 years", Unit: "%", Digits: 0, Peak: true, Note: "of what such a load leaves", Series: 55, Column: "used_10y_percent",
			Means: "What the top's worst place uses of the strength that ten years of load leave (Madison curve)."},
		{Key: "used_fifty_years", Name: "strength used after 50 years", Unit: "%", Digits: 0, Peak: true, Note: "of what such a load leaves", Series: 56, Column: "used_50y_percent", Report: true,
			Means: "What the top's worst place uses of the strength that fifty years of load leave (Madison curve)."},
	}
	for i := range out {
		out[i].Compare, out[i].Summary = UnderRest, HeadYears
		if out[i].Report {
			out[i].Compare = UnderDecides
		}
		out[i] = ahead(out[i])
	}
	return out
}
