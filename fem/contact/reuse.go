package contact

import (
	"slices"

	"archload/fem"
)

// Under returns the condensed plate under other pads, if they press on the
// same places in the same directions: what stands on them may differ.
func (c *Condensed) Under(pads []Pad) (*Condensed, bool) {
	if len(pads) != len(c.pads) {
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

// WithLoads returns the condensed plate under other loads on the plate itself.
func (c *Condensed) WithLoads(loads []fem.PointForce) *Condensed {
	q := *c
	q.loadU, q.loadE = nil, 0
	q.setLoads(loads)
	return &q
}
