package contact

import (
	"slices"

	"archload/fem"
	"archload/fem/sparse"
	"archload/fem/vec3"
)

// Under returns the condensed plate under other pads, if they press on the
// same places in the same directions, and the guides hang on it alike: what stands
// on them may differ.
func (c *Condensed) Under(pads []Pad, guides ...Guide) (*Condensed, bool) {
	if len(pads) != len(c.pads) {
		return nil, false
	}
	var pulls []sparse.Column
	for i := range guides {
		if c.hold.guided() && guides[i].onPlate() {
			pulls = append(pulls, guides[i].pull(c.plate))
		}
	}
	same := func(a, b sparse.Column) bool { return slices.Equal(a.Dofs, b.Dofs) && slices.Equal(a.Vals, b.Vals) }
	if !slices.EqualFunc(pulls, c.pulls, same) {
		return nil, false
	}
	for i := range pads {
		if pads[i].Dir != c.pads[i].Dir || !slices.Equal(pads[i].Spread, c.pads[i].Spread) {
			return nil, false
		}
	}
	q := *c
	q.pads = pads
	return &q, true
}

// Moved returns the same plate under the same loads reduced to other pads and guides,
// whose triangles have none but contact nodes. It is Condense to rounding, for a
// small part of the cost: the flexibility of all contact nodes is found by the first
// that asks, and serves all that come of it by Under, Moved, WithLoads and WithPush.
func (c *Condensed) Moved(pads []Pad, hold Hold, guides ...Guide) *Condensed {
	q := *c
	q.pads, q.hold = pads, hold
	q.setRows(guides)
	q.c = c.reach().Compliance(q.cols)
	q.readLoads()
	q.swollen, q.swellU, q.swellAt = nil, nil, nil
	return &q
}

// Ready finds the flexibility of the contact nodes, if that is not known yet, so that the next Moved
// need not.
func (c *Condensed) Ready() {
	if len(c.cols) > 0 {
		c.reach()
	}
}

// Over returns the same body on the same plate under other loads or push on the plate
// itself, which WithLoads or WithPush gave it.
func (s *Problem) Over(c *Condensed) *Problem {
	if s.plate == c {
		return s
	}
	q := *s
	q.plate = c
	return &q
}

// WithLoads returns the condensed plate under other loads on the plate itself.
func (c *Condensed) WithLoads(loads []fem.PointForce) *Condensed {
	q := *c
	q.loadU, q.loadE = nil, 0
	q.setLoads(loads)
	return &q
}

// WithPush returns the condensed plate under nodal loads and, beside them, nodal forces that stand for
// what its stiffness K leaves out: with push = K u - f(u), f(u) the forces that hold the plate at
// movements u of any size, the linear answer is u itself where it is in balance. Results are then
// those of large movements; their loads are without the push.
func (c *Condensed) WithPush(loads, push []float64) *Condensed {
	q := *c
	q.push, q.loadF = push, loads
	q.moveByLoads()
	return &q
}

// Loads returns a share of the nodal loads on the plate, pads left out.
func (c *Condensed) Loads(share float64) []float64 {
	return slices.Clone(c.loadsAt(LoadCase{Unapplied: 1 - share}))
}

// PadForce is what the plate gives to the body at pad i, N, under forces on the rows as a State has
// them.
func (c *Condensed) PadForce(lambda []float64, i int) (f [3]float64) {
	per := c.hold.rows()
	for a := range per {
		f = vec3.Add(f, vec3.Scale(c.pads[i].Dir[a], lambda[per*i+a]))
	}
	return f
}

// GuideForces are those on the body among the forces on the rows, N or N·mm; none if the guides do not hold.
func (c *Condensed) GuideForces(lambda []float64) []float64 { return lambda[c.padRows():] }
