package contact

import (
	"slices"
	"sync"

	"archload/fem"
	"archload/fem/parallel"
	"archload/fem/sparse"
)

// Pad is one contact point of a body's bearing area.
type Pad struct {
	Node    int32              // body node that carries it on a rigid arm
	At      [3]float64         // on the plate's unloaded outer surface, mm
	Dir     [3][3]float64      // unit vectors: outward normal, two tangents
	Spread  []fem.SurfacePoint // where its force goes, in equal parts
	Area    float64            // mm²
	Gap     float64            // before loading, mm
	Bedding [2]float64         // squash under 1 N, normal and tangential, mm/N
}

// Hold says how a closed pad is held sideways.
type Hold uint8

// The kinds of hold.
const (
	Grip  Hold = iota // a closed pad sticks where it is
	Slip              // frictionless
	Rough             // dry friction with the coefficient of the load case
)

// guided says whether the guides may have to hold the body.
func (h Hold) guided() bool { return h != Grip }

func (h Hold) rows() int {
	if h == Slip {
		return 1
	}
	return 3
}

// Condensed is the plate reduced to its pads: the compliance between all pad
// movements, and what the loads on the plate itself move there. It costs the
// top of the factor once and serves every body, gap and load over
// the same bearing area.
type Condensed struct {
	plate  *fem.Prepared
	pads   []Pad // geometry only: gaps and bedding come with the problem
	hold   Hold
	cols   []sparse.Column      // one for each row: pad-major, normal first
	pulls  []sparse.Column      // of guides that hang on the plate, whose rows come last: with the held freedoms
	c      []float64            // len(cols)², mm/N, row-major
	idle   *sync.Pool           // of factors of the active set, for their memory
	reach  func() *sparse.Reach // of the plate's contact nodes; made when first asked for
	loadF  []float64            // nodal loads on the plate at full load
	loadU  []float64            // displacement under them; nil without loads
	loadAt []float64            // movement of each row under them, mm
	loadE  float64              // loads' own work coefficient F·K⁻¹F, N·mm
	push   []float64            // nodal forces beside the loads, see WithPush; nil: none

	swollen *fem.Swollen // what the plate's wood does by itself; nil: nothing
	swellU  []float64    // displacement under that
	swellAt []float64    // movement of each row under it, mm
}

// Condense reduces the plate to the given pads, and to the guides that hang on it.
// loads act on the plate itself and rise with the string load.
func Condense(p *fem.Prepared, pads []Pad, hold Hold, loads []fem.PointForce, guides ...Guide) *Condensed {
	c := &Condensed{plate: p, pads: pads, hold: hold, idle: factors(), reach: sync.OnceValue(p.Factor.Reach)}
	c.setRows(guides)
	if len(c.cols) > 0 {
		c.c = p.Factor.Compliance(c.cols)
	}
	c.setLoads(loads)
	return c
}

// setRows gives every row of the pads, and of the guides that hang on the plate, its
// column over the plate's freedoms.
func (c *Condensed) setRows(guides []Guide) {
	const some = 16
	per := c.hold.rows()
	c.cols, c.pulls = make([]sparse.Column, len(c.pads)*per), nil
	parallel.Chunks(c.workers(), len(c.pads), some, func(from, to int) {
		for i := from; i < to; i++ {
			copy(c.cols[i*per:], c.plate.Columns(c.pads[i].Spread, c.pads[i].Dir[:per]))
		}
	})
	for i := range guides {
		if c.hold.guided() && guides[i].onPlate() {
			c.pulls = append(c.pulls, guides[i].pull(c.plate))
			c.cols = append(c.cols, c.plate.Movable(c.pulls[len(c.pulls)-1]))
		}
	}
}

// padRows is the number of rows of all pads; those of guides come after.
func (c *Condensed) padRows() int { return len(c.pads) * c.hold.rows() }

// addForces takes the forces on the rows off the nodal loads.
func (c *Condensed) addForces(load, lambda []float64) {
	for i, col := range c.cols {
		if k := i - c.padRows(); k >= 0 {
			col = c.pulls[k]
		}
		for k, d := range col.Dofs {
			load[d] -= lambda[i] * col.Vals[k]
		}
	}
}

func (c *Condensed) setLoads(loads []fem.PointForce) {
	c.loadF = make([]float64, 6*len(c.plate.Model.Nodes))
	for i := range loads {
		c.plate.AddLoad(c.loadF, loads[i])
	}
	if len(loads) == 0 {
		c.readLoads()
		return
	}
	c.moveByLoads()
}

// moveByLoads finds what loads and push move.
func (c *Condensed) moveByLoads() {
	c.loadU, c.loadE = slices.Clone(c.loadF), 0
	for i, f := range c.push {
		c.loadU[i] += f
	}
	c.plate.Solve(c.loadU)
	c.readLoads()
	for i, f := range c.loadF {
		c.loadE += f * c.loadU[i]
	}
}

// readLoads reads off how every row moves under the loads.
func (c *Condensed) readLoads() {
	c.loadAt = make([]float64, len(c.cols))
	if c.loadU == nil {
		return
	}
	for i := range c.cols {
		c.loadAt[i] = dotColumn(c.cols[i], c.loadU)
	}
}
