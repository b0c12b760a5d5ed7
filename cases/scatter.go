package cases

import (
	"context"
	"maps"
	"slices"

	"archload/materials"
)

// plank is one piece of wood. All parts of one role that are of one wood are
// cut from it: both bars, say. Two designs share a plank if role and wood are
// the same.
type plank struct {
	role string // "top", "braces", "bridge", "saddle beam", "sides"
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
	switch withoutEntries(key) {
	case "plate.wood":
		return "top"
	case "brace.wood":
		return "braces"
	case "rim.side_wood":
		return "sides"
	}
	return "bridge"
}

// planks lists the pieces of wood of a case: the top first, then by key. A
// saddle beam of the base's wood is cut from the same piece as the base.
func (c *Case) planks() []plank {
	var out []plank
	keys := slices.Sorted(maps.Keys(c.cards))
	slices.SortStableFunc(keys, func(a, b string) int { return woodOrder(a) - woodOrder(b) })
	for _, key := range keys {
		if c.Bridge != nil && key == "bridge.saddle_beam.wood" && c.Bridge.Build != "posts" {
			continue
		}
		p := plank{role: roleOf(key), card: c.cards[key], keys: []string{key}}
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
	return slices.Index([]string{"plate.wood", "brace.wood", "bridge.wood", "bridge.saddle_beam.wood", "rim.side_wood"}, withoutEntries(key))
}

// redo says how much of a solve a scattering constant asks to be done again.
type redo uint8

const (
	redoSummary redo = iota // strengths and densities: the numbers drawn from a result
	redoContact             // the bridge: its body, its bedding and the contact
	redoFactor              // the top and what is glued to it: everything but the mesh
)

// constant is one number of one plank that scatters.
type constant struct {
	plank int // in the list of planks
	key   string
	cv    float64 // coefficient of variation, 1
	from  materials.Source
	redo  redo
}

// constants lists what scatters in a plank, as far as the model knows it: a
// brace is a beam and has no ER, ET, GRT; strength counts in the top, and
// crushing under the foot in the bridge too; density counts in what is weighed.
func (p plank) constants(at int) []constant {
	keys := []string{"EL", "ER", "ET", "GLR", "GLT", "GRT"}
	deep := redoFactor
	var light []string
	switch p.role {
	case "top":
		light = []string{"density", "MOR", "compression_along", "compression_across", "shear_along", "tension_across"}
	case "braces":
		keys = []string{"EL", "GLR", "GLT"}
		light = []string{"density"}
	case "bridge":
		deep = redoContact
		light = []string{"compression_across"}
	case "saddle beam":
		deep = redoContact
		keys = []string{"EL", "GLR", "GLT"}
	}
	var out []constant
	add := func(keys []string, deep redo) {
		for _, k := range keys {
			cv, from := materials.Scatter(k)
			out = append(out, constant{plank: at, key: k, cv: cv, from: from, redo: deep})
		}
	}
	add(keys, deep)
	add(light, redoSummary)
	return out
}

// cutFrom is the case in other planks: times holds, for each of its planks, by
// key, how many times as great a constant is.
func (c *Case) cutFrom(planks []plank, times []map[string]float64) *Case {
	out := *c
	out.cards = maps.Clone(c.cards)
	for i, p := range planks {
		if len(times[i]) == 0 {
			continue
		}
		card := p.card.Varied(times[i])
		for _, k := range p.keys {
			out.cards[k] = card
		}
	}
	return &out
}

// recut answers a prepared and solved case once more in other planks, on the
// same mesh and in the same order of unknowns, and does no more again than
// deep says.
func (s *Solution) recut(ctx context.Context, c *Case, deep redo) (*Solution, error) {
	b, err := Build(c, s.Top.Built.Plate, s.Top.Built.Mesh)
	if err != nil {
		return nil, err
	}
	p := &Top{Built: b, Factored: s.Top.Factored, cond: s.Top.cond, stand: s.Top.stand, notes: s.Top.notes}
	switch deep {
	case redoSummary:
		return &Solution{Top: p, Result: s.Result, Flow: s.Flow}, nil
	case redoContact:
		err = p.restand(s.Top)
	case redoFactor:
		err = p.solid(ctx, Options{Workers: 1}, s.Top.Factored)
	}
	if err != nil {
		return nil, err
	}
	out, err := p.answer()
	if err != nil {
		return nil, err
	}
	if c.Rim.Support == "elastic" { // what the edge holds up is read off the flow
		out.FindFlow()
	}
	return out, nil
}

// reportOf is the report of a recut solution; base is that of the solution
// before, of which a summary alone keeps all but strength and mass.
func (s *Solution) reportOf(deep redo, base *Report) *Report {
	if deep != redoSummary {
		return Summarize(s)
	}
	r := *base
	r.Mass, r.Strength = s.masses(), s.strength()
	return &r
}
