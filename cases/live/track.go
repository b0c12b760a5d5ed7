package live

import (
	"cmp"
	"math"
	"slices"

	"archload/cases/design"
	"archload/cases/study"
	"archload/fem/contact"
)

// track is the way of the contact from no load to full load. One track serves
// every design on the same top and bridge whose gaps are those of the track
// times one number and whose loads are its loads times another: a deeper relief
// is the same way gone less far.
type track struct {
	state      *contact.State
	fit        contact.LoadCase // that was followed
	plate      bool             // whether there are loads on the plate too
	gap, force float64          // of the design over those of the track, 1
}

// shallowGap is how small the greatest gap of a track that goes ahead is made, mm, so
// that it serves every relief that is deeper.
const shallowGap = 0.02

// closings is the order in which the contact points of a foot first closed.
type closings struct {
	at    [][3]float64 // the points, mm
	rank  []int        // their place in the order
	never int          // the first rank of those that never closed: these come by their gap
}

// closings of a track on a prepared top.
func (t *track) closings(p *design.Top) *closings {
	c := &closings{rank: make([]int, len(p.Built.Bridge.Pads)), never: len(t.state.Events)}
	open := make([]int, len(c.rank))
	for i := range p.Built.Bridge.Pads {
		c.at, open[i] = append(c.at, p.Built.Bridge.Pads[i].At), i
	}
	slices.SortStableFunc(open, func(i, j int) int { return cmp.Compare(t.state.Gap[i], t.state.Gap[j]) })
	for k, i := range open {
		c.rank[i] = c.never + k
	}
	for k, e := range t.state.Events {
		if e.Closes {
			c.rank[e.Pad] = min(c.rank[e.Pad], k)
		}
	}
	return c
}

// guess is the order in which the points of another foot are likely to close, and how many of
// them: as the nearest points of the one known did; nil if none is known.
func (c *closings) guess(p *design.Top) (order []int32, likely int) {
	if c == nil || len(c.at) == 0 {
		return nil, 0
	}
	rank, order := make([]int, len(p.Built.Bridge.Pads)), make([]int32, len(p.Built.Bridge.Pads))
	for i := range p.Built.Bridge.Pads {
		if rank[i], order[i] = c.rank[c.nearest(i, p.Built.Bridge.Pads[i].At)], int32(i); rank[i] < c.never {
			likely++
		}
	}
	slices.SortStableFunc(order, func(i, j int32) int { return cmp.Compare(rank[i], rank[j]) })
	return order, min(likely+likely/spareLikely, len(order))
}

// spareLikely: for so many points that are known to close one more is taken for likely to, that whose gap is least. One that closes though
// it was not likely costs a look at all that closed before it.
const spareLikely = 24

// nearest is the known point nearest to point i of another foot, which mostly stands where it did.
func (c *closings) nearest(i int, at [3]float64) (best int) {
	if i < len(c.at) && c.at[i] == at {
		return i
	}
	least := math.Inf(1)
	for k, o := range c.at {
		if d := (at[0]-o[0])*(at[0]-o[0]) + (at[1]-o[1])*(at[1]-o[1]); d < least {
			best, least = k, d
		}
	}
	return best
}

// newTrack follows the load. near tells how the pads of a similar design closed, or
// is nil. ahead asks for a way that serves a shallower relief too, as a hand on its depth wants; it is
// longer, up to so much load as closes that one.
func newTrack(p *design.Top, near *closings, ahead bool) (*track, error) {
	t := &track{fit: p.Fit(), plate: len(p.Built.Loads) > 0, gap: 1, force: 1}
	if most := greatest(t.fit.Gap); ahead && most > shallowGap && relieved(p) {
		t.gap = most / shallowGap
		for i := range t.fit.Gap {
			t.fit.Gap[i] /= t.gap
		}
	}
	t.fit.History = true
	t.fit.Order, t.fit.Likely = near.guess(p)
	var err error
	t.state, err = p.Stand.Follow(t.fit)
	return t, err
}

// relieved says whether the gap is one that a slider of the relief's depth
// would scale.
func relieved(p *design.Top) bool { return study.Scales(p) && p.Built.Case.Bridge.Relief.Depth > 0 }

// at is the contact at a fraction of the load.
func (t *track) at(load float64) *contact.State { return t.state.Likewise(t.gap, t.force, load) }

// alike is the track as it serves another design on the same top and bridge, as far as it
// reaches; nil if it does not.
func (t *track) alike(p *design.Top) *track {
	fit := p.Fit()
	gap, ok := ratio(fit.Gap, t.fit.Gap)
	force, same := ratio(forces(fit.Loads), forces(t.fit.Loads))
	if greatest(fit.Gap) == 0 {
		gap = force // with no gap the way is the same at any load
	}
	if fit.Friction != t.fit.Friction || !ok || !same || t.plate && force != 1 {
		return nil
	}
	for i := range fit.Loads {
		if fit.Loads[i].At != t.fit.Loads[i].At || fit.Loads[i].Node != t.fit.Loads[i].Node {
			return nil
		}
	}
	q := *t
	q.gap, q.force = gap, force
	return &q
}

// reaches says whether full load lies on the track.
func (t *track) reaches() bool { return t.force <= t.gap }

// tracks are those that are kept for the way back to a relief of another shape, the newest last.
// They are never changed.
type tracks []*track

// mostTracks is how many are kept: one for each shape of relief, and some.
const mostTracks = 6

// with returns the tracks with one more, without the oldest if they are too many.
func (l tracks) with(t *track) tracks {
	return append(slices.Clone(l[max(0, len(l)+1-mostTracks):]), t)
}

// serving is the newest track that serves a design; nil if none does. short says that one
// would, did it reach that far: the relief has become shallower.
func (l tracks) serving(p *design.Top) (serves *track, short bool) {
	for _, t := range slices.Backward(l) {
		switch s := t.alike(p); {
		case s == nil:
		case s.reaches():
			return s, false
		default:
			short = true
		}
	}
	return nil, short
}

// sameRatio is how far two ratios of one list may lie apart, relative: rounding.
const sameRatio = 1e-13

// ratio finds the number by which all of b must be multiplied to give a; ok is
// false if there is none above zero. Of zeros alone it is 1.
func ratio(a, b []float64) (by float64, ok bool) {
	if len(a) != len(b) {
		return 0, false
	}
	by = 1.0
	if most := greatest(b); most > 0 {
		by = greatest(a) / most
	}
	if !(by > 0) || math.IsInf(by, 0) {
		return 0, false
	}
	scale := greatest(a)
	for i := range a {
		if math.Abs(a[i]-by*b[i]) > sameRatio*scale {
			return 0, false
		}
	}
	if math.Abs(by-1) < sameRatio {
		by = 1
	}
	return by, true
}

// forces lists the components of some loads, N.
func forces(loads []contact.BodyLoad) []float64 {
	var out []float64
	for _, l := range loads {
		out = append(out, l.F[:]...)
	}
	return out
}

// greatest is the greatest size in a list; 0 of none.
func greatest(list []float64) float64 {
	most := 0.0
	for _, v := range list {
		most = max(most, math.Abs(v))
	}
	return most
}
