package study

import (
	"context"
	"maps"
	"slices"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/tone"
	"archload/materials"
)

// plank is one piece of wood. All parts of one role that are of one wood are
// cut from it: both bars, say. Two designs share a plank if role and wood are
// the same.
type plank struct {
	role string // "top", "braces", "bridge", "saddle beam", "sides", "back", "back bars"
	card materials.Card
	keys []string // of Case.cards
}

// words name a plank for the maker.
func (p plank) words() string { return p.role + " of " + p.card.Name }

// same says whether both are cut from one piece: the same role, the same name
// of the wood and the same mean values.
func (p plank) same(o plank) bool {
	return p.role == o.role && p.card.Name == o.card.Name && p.card.Wood == o.card.Wood && p.card.Strength == o.card.Strength
}

// roleOf says which role the wood of a key plays.
func roleOf(key string) string {
	switch design.WithoutEntries(key) {
	case "plate.wood":
		return "top"
	case "brace.wood":
		return "braces"
	case "rim.side_wood":
		return "sides"
	case "body.back.wood":
		return "back"
	case "body.back.brace.wood":
		return "back bars"
	}
	return "bridge"
}

// planks lists the pieces of wood of a case: the top first, then by key. A
// saddle beam of the base's wood is cut from the same piece as the base.
func planks(c *cases.Case) []plank {
	var out []plank
	keys := slices.Sorted(maps.Keys(c.Cards))
	slices.SortStableFunc(keys, func(a, b string) int { return woodOrder(a) - woodOrder(b) })
	for _, key := range keys {
		if c.Bridge != nil && key == "bridge.saddle_beam.wood" && c.Bridge.Build != "posts" || key == "body.block_wood" {
			continue // there is none, or it is rigid
		}
		p := plank{role: roleOf(key), card: c.Cards[key], keys: []string{key}}
		if i := slices.IndexFunc(out, p.same); i >= 0 {
			out[i].keys = append(out[i].keys, key)
			continue
		}
		if key == "bridge.saddle_beam.wood" {
			p.role = "saddle beam"
		}
		out = append(out, p)
	}
	return out
}

// woodOrder is the place of a key among those that name woods.
func woodOrder(key string) int {
	return slices.Index([]string{"plate.wood", "brace.wood", "bridge.wood", "bridge.saddle_beam.wood", "rim.side_wood", "body.back.wood", "body.back.brace.wood"}, design.WithoutEntries(key))
}

// constant is one number of one plank that scatters.
type constant struct {
	plank int // in the list of planks
	key   string
	cv    float64 // coefficient of variation, 1
	from  materials.Source
}

// constants lists what scatters in a plank, as far as the model knows it: a
// brace is a beam and has no ER, ET, GRT; strength counts in the top, and
// crushing under the foot in the bridge too; density counts in what is weighed.
func (p plank) constants(at int) []constant {
	keys := []string{"EL", "ER", "ET", "GLR", "GLT", "GRT"}
	var light []string
	switch p.role {
	case "top":
		light = []string{"density", "MOR", "compression_along", "compression_across", "shear_along", "tension_across"}
	case "braces", "back bars":
		keys = []string{"EL", "GLR", "GLT"}
		light = []string{"density"}
	case "bridge":
		light = []string{"compression_across"}
	case "saddle beam":
		keys = []string{"EL", "GLR", "GLT"}
	}
	var out []constant
	for _, k := range append(keys, light...) {
		cv, from := p.card.Spread(k)
		out = append(out, constant{plank: at, key: k, cv: cv, from: from})
	}
	return out
}

// cutFrom is the case in other planks: times holds, for each of its planks, by
// key, how many times as great a constant is.
func cutFrom(c *cases.Case, planks []plank, times []map[string]float64) *cases.Case {
	out := *c
	out.Cards = maps.Clone(c.Cards)
	for i, p := range planks {
		if len(times[i]) == 0 {
			continue
		}
		card := p.card.Varied(times[i])
		for _, k := range p.keys {
			out.Cards[k] = card
		}
	}
	return &out
}

// answerIn answers a solved case once more as another case says, one that
// differs in its planks. Where none of them is stiffer or softer the result is
// the same.
func answerIn(ctx context.Context, s *design.Solution, c *cases.Case) (*design.Solution, error) {
	top, err := design.Adapt(ctx, s.Top, c, design.Options{Workers: 1})
	if err != nil {
		return nil, err
	}
	if top.ActsAs(s.Top) {
		return &design.Solution{Top: top, Result: s.Result, Flow: s.Flow}, nil
	}
	out, err := top.Answer()
	if err != nil {
		return nil, err
	}
	if answer.EdgeByFlow(c) {
		out.FindFlow()
	}
	return out, nil
}

// reportOf is the report of s answered in other planks; base is that of the
// solution before, of which the same result leaves all but strength and mass.
func reportOf(s *design.Solution, before *design.Solution, base *answer.Report) *answer.Report {
	if s.Result != before.Result {
		r := answer.Summarize(s)
		tone.Judge(r, s, 1)
		return r
	}
	r := *base
	r.Mass, r.Strength, r.Motion = answer.MassOf(s.Top.Built), answer.Strength(s), nil
	tone.Judge(&r, s, 1)
	return &r
}

// companion is the report of a solution that is compared with; how it swings is in it if its case
// asks for that.
func companion(s *design.Solution, workers int) *answer.Report {
	r := answer.SummarizeCompanion(s)
	tone.Judge(r, s, workers)
	return r
}
