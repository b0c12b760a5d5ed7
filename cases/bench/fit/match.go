package fit

import (
	"cmp"
	"math"
	"slices"

	"archload/cases/motion"
)

// matcher takes readings for what the model says, in the ways that are likely.
type matcher struct {
	readings []reading // weights, bars and gauges first, then tones, lowest first
	states   map[*setup]*state
	at       []float64 // the unknowns that the states were found for
	slopesAt []float64 // those that their slopes were
	slack    float64   // by how much more a tone's logarithm may be off: the model is linear about a place far away
}

// mostWays is how many ways are kept as one reading after the other is taken in.
const mostWays = 60

// ways lists the likeliest ways to take the readings, the best first.
func (m *matcher) ways(start *belief) []*belief {
	list := []*belief{start}
	for i := range m.readings {
		var next []*belief
		for _, b := range list {
			next = append(next, m.takings(b, i)...)
		}
		slices.SortStableFunc(next, func(a, b *belief) int { return cmp.Compare(a.cost, b.cost) })
		list = next[:min(len(next), mostWays)]
	}
	for _, b := range list {
		b.cost += m.unheard(b) + m.slipped(b)
	}
	slices.SortStableFunc(list, func(a, b *belief) int { return cmp.Compare(a.cost, b.cost) })
	return list
}

// takings are the ways to take reading i.
func (m *matcher) takings(b *belief, i int) []*belief {
	r := &m.readings[i]
	out := []*belief{b.leaving()}
	if r.kind != tone {
		if g := m.guessOf(r); g != nil {
			value, sd, unit := r.measured()
			out = append(out, b.taking(g, m.at, value, sd, unit, 0))
		}
		return out
	}
	st := m.states[r.setup]
	for k := range st.tones {
		if m.taken(b, r.setup, k) {
			continue
		}
		t := &st.tones[k]
		y, v := b.expects(&t.guess, m.at)
		value, sd, unit := r.measured()
		sd = math.Hypot(sd, m.slack)
		if off := value - y; off*off > farthest*farthest*(v+sd*sd) {
			continue
		}
		way := b.taking(&t.guess, m.at, value, sd, unit, k)
		if r.pattern != nil {
			way.cost += unlike(*r.pattern, t.pattern)
		}
		out = append(out, way)
	}
	return out
}

// What speaks against a way: deviations beyond which a tone is not looked at; a tone that shows another pattern
// than the one seen (one look in a hundred errs); a tone that was not heard though a higher one was (one in
// four).
const farthest = 6.0

var (
	otherPattern = -2 * math.Log(0.01)
	nearPattern  = -2 * math.Log(0.3)
	notHeard     = -2 * math.Log(0.25)
)

// unlike is what speaks against a tone that shows one pattern being the one in which another was seen. On a piece that is
// no rectangle two lines bend until they are a ring, and the other way round.
func unlike(seen, shown motion.Pattern) float64 {
	bends := func(p motion.Pattern) bool { return p.Across*p.Along == 0 && p.Across+p.Along <= 2 }
	switch {
	case seen == shown:
		return 0
	case seen.Ring != shown.Ring && bends(seen) && bends(shown):
		return nearPattern
	}
	return otherPattern
}

// modelShare is how far the model itself may be off, of a logarithm: what is left of the triangles and of the theory in
// the published checks, and wood that is not quite the same everywhere.
const modelShare = 0.002

// measured is a reading as it is compared, with its deviation, and the unit that likelihoods go by.
func (r *reading) measured() (value, sd, unit float64) {
	if r.logged() {
		return math.Log(r.value), math.Hypot(r.sd, modelShare), 1
	}
	return r.value, math.Hypot(r.sd, modelShare*r.value), math.Max(math.Abs(r.value), r.sd)
}

// taken says whether an earlier reading is taken for a tone.
func (m *matcher) taken(b *belief, s *setup, k int) bool {
	for i, t := range b.took {
		if t == k && m.readings[i].kind == tone && m.readings[i].setup == s {
			return true
		}
	}
	return false
}

// guessOf is what the model says of a reading that can mean one thing only; nil if it says nothing.
func (m *matcher) guessOf(r *reading) *guess {
	st := m.states[r.setup]
	switch r.kind {
	case weight:
		return &st.mass
	case gauge:
		return &st.sinks[r.order]
	}
	if k := st.barTone(r.kind, r.order); k >= 0 {
		return &st.tones[k].guess
	}
	return nil
}

// guessAs is what the model says of a reading that is taken for a tone, or can mean one thing only.
func (m *matcher) guessAs(r *reading, as int) *guess {
	if r.kind == tone {
		return &m.states[r.setup].tones[as].guess
	}
	return m.guessOf(r)
}

// barTone is the place of a bar's tone of a kind by its order; -1 if it was not found.
func (st *state) barTone(of kind, order int) int {
	for k := range st.tones {
		t := &st.tones[k]
		if t.odd != (of == torsion) || of == flexure && t.pattern.Along > 0 {
			continue
		}
		if order == 0 {
			return k
		}
		order--
	}
	return -1
}

// unheard is the cost of the tones below the highest that was taken which nobody heard. A reading that was left out was
// one that somebody heard.
func (m *matcher) unheard(b *belief) float64 {
	cost := 0.0
	for s, st := range m.states {
		misread := 0
		heard := make([]bool, len(st.tones))
		top := math.Inf(-1)
		for i, k := range b.took {
			r := &m.readings[i]
			switch {
			case r.kind != tone || r.setup != s:
			case k == leftOut:
				misread++
			default:
				heard[k] = true
				y, _ := b.expects(&st.tones[k].guess, m.at)
				top = math.Max(top, y)
			}
		}
		for k := range st.tones {
			if y, _ := b.expects(&st.tones[k].guess, m.at); !heard[k] && y < top {
				if misread--; misread < 0 {
					cost += notHeard
				}
			}
		}
	}
	return cost
}

// sorted puts readings in the order in which they are taken in.
func sorted(list []reading) []reading {
	out := slices.Clone(list)
	slices.SortStableFunc(out, func(a, b reading) int {
		if (a.kind == tone) != (b.kind == tone) {
			if a.kind == tone {
				return 1
			}
			return -1
		}
		if a.kind == tone {
			return cmp.Compare(a.value, b.value)
		}
		return cmp.Compare(a.kind, b.kind)
	})
	return out
}
