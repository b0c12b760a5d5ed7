package design

import (
	"context"
	"slices"

	"archload/cases"
	"archload/cases/shape"
	"archload/cases/tree"
	"archload/fem/contact"
	"archload/mesh"
)

// Adapt returns the prepared top of another case. It compares the case with the
// top's own and computes anew no more than what the difference touches; all
// else is shared with t, which stays as it is. The answer is that of a top
// prepared afresh to the rounding of the last digits: a foot that has moved
// stands on the triangles that were made for it elsewhere, and an arch of another
// shape on those of the old one, as long as they are fine enough; under a hand (o.AnyFoot) an arch whose rim follows the
// thickness keeps its fit. o.Refine is not looked at: the mesh is as fine as that of t.
// See "How a prepared top is reused" in the package's documentation for what
// each change costs. Errors are those of Prepare.
func Adapt(ctx context.Context, t *Top, c *cases.Case, o Options) (*Top, error) {
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	if err := o.atRest(c); err != nil {
		return nil, err
	}
	d := differenceOf(t, c)
	if d.surfaces {
		o.Say("arch")
	}
	var spent Stages
	var g *shape.Geometry
	var err error
	fit := shape.FitGeometry
	if o.AnyFoot {
		fit = shape.FitNear
	}
	o.Clock.time(&spent.Mesh, func() { g, err = fit(c, t.Built.Geometry, d.keys) })
	switch {
	case err != nil:
		return nil, err
	case d.mesh || !t.serves(g):
		return prepare(ctx, g, spent, o, t.refine)
	case d.factor:
		return refactored(ctx, t, g, spent, o)
	}
	return refitted(t, g, d, o)
}

// serves says whether the triangles of a top are fine enough for other surfaces on the
// same plan.
func (t *Top) serves(g *shape.Geometry) bool {
	b := t.Built
	return g.Serves(b.Geometry, b.Mesh.Plan, t.refine) && (b.Back == nil || g.Back.Serves(b.Geometry.Back, b.Back.Mesh.Plan, t.refine))
}

// CostOf is what Adapt would have to do to serve another case. An arch may turn out to ask
// for smaller triangles when it is fitted; then it costs a new mesh.
func CostOf(t *Top, c *cases.Case) Cost { return differenceOf(t, c).cost }

// difference is what distinguishes a case from that of a top.
type difference struct {
	keys []string // that differ
	cost Cost     // the dearest of them

	surfaces bool // the plate's surfaces
	mesh     bool // the plan of triangles no longer serves
	factor   bool // the stiffness of the plate, of a brace or the rim
	bridge   bool // the bridge's body or its contact points
	loads    bool // the forces on the plate itself
}

// differenceOf finds in what a case differs from that of a top. Nothing says
// that it has to be only a little.
func differenceOf(t *Top, c *cases.Case) difference {
	d := difference{keys: ChangedKeys(t.Built.Case, c)}
	for _, k := range d.keys {
		cost := costBetween(t.Built.Case, c, k)
		if movesFoot(k) {
			cost = footCost(t, c)
		} else if cost == Refactor {
			d.factor = true
		}
		d.cost = max(d.cost, cost)
		d.surfaces = d.surfaces || shapes(k)
		d.bridge = d.bridge || !Light(k)
		d.loads = d.loads || tree.IsWithin(k, "load")
	}
	d.mesh = d.cost == Remesh
	return d
}

// shapes says whether a key changes the plate's surfaces.
func shapes(key string) bool {
	return tree.IsWithin(key, "plate.outline") || tree.IsWithin(key, "plate.arch") || tree.IsWithin(key, "plate.thickness") || key == "plate.thickness_scale" || key == "plate.thickness_change"
}

// refactored is a top on the same plan of triangles in other wood, of another
// arch or thickness, with other sections of braces or another rim. Where the same nodes
// couple it is eliminated in the same order.
func refactored(ctx context.Context, t *Top, g *shape.Geometry, spent Stages, o Options) (*Top, error) {
	lifted, circ := t.Built.Mesh, t.circles
	if g.Plate != t.Built.Plate {
		lifted, circ = mesh.Lift(t.Built.Mesh.Plan, g.Plate), &circles{}
	}
	b, err := build(g, lifted, t.Built.backOn(g), t.Built)
	if err != nil {
		return nil, err
	}
	feet := slices.DeleteFunc(slices.Clone(t.Factored.Model.Zone), func(n int32) bool { return int(n) >= b.PlateN })
	b.Model.Zone = united(feet, b.Model.Zone) // the nodes of sides and blocks may have other numbers now
	return solid(ctx, &Top{Built: b, refine: t.refine, Spent: spent, circles: circ, zoned: t.zoned}, o, t.Factored)
}

// refitted is the same top under other strings, another bridge or other loads;
// the factor stays.
func refitted(t *Top, g *shape.Geometry, d difference, o Options) (*Top, error) {
	q, b := *t, *t.Built
	b.Case, b.Geometry = g.Case, g
	q.Built, q.Spent, q.Workers, q.clock = &b, Stages{}, o.WorkerCount(), o.Clock
	if d.loads || b.Back != nil { // the strings pull at a body's blocks
		if loads := b.loads(); !slices.Equal(loads, b.Loads) {
			b.Loads = loads
			q.Cond = q.Cond.WithLoads(loads)
		}
	}
	if b.Bridge == nil {
		return &q, nil
	}
	if !d.bridge && b.guidedAlike() {
		b.Bridge = b.Bridge.regapped(&b)
		q.Stand = q.Stand.Over(q.Cond)
		return &q, nil
	}
	var err error
	if b.Bridge, err = newBridgeModel(&b, t.Built, q.Workers); err != nil {
		return nil, err
	}
	return &q, q.bear(t)
}

// bear sets the new bridge of t, a copy of another top in the making, on the plate.
// Contact points beyond the nodes that may carry them ask for another order of
// elimination, which then serves any foot under the same base; points that press
// elsewhere for another reduction of the plate;
// and a body or a bedding of its own for another contact problem.
func (t *Top) bear(from *Top) error {
	b := t.Built
	zone := united(from.Factored.Model.Zone, b.contactNodes(b.Bridge))
	if len(zone) > len(from.Factored.Model.Zone) {
		sys := from.Factored.WithZone(united(zone, b.underBase()))
		factored, err := sys.Prepare(t.Workers)
		if err != nil {
			return Explain(b.Case, err)
		}
		t.Factored, b.Model = factored, sys.Model
		t.Cond = contact.Condense(factored, nil, b.Bridge.Hold, b.Loads)
	}
	if t.Factored == from.Factored && b.Bridge.bearsAlike(from.Built.Bridge) && slices.Equal(b.Loads, from.Built.Loads) {
		return nil
	}
	cond, same := t.Cond.Under(b.Bridge.Pads, b.Bridge.Body.Guides...)
	if !same || b.Bridge.Hold != from.Built.Bridge.Hold {
		cond = t.Cond.Moved(b.Bridge.Pads, b.Bridge.Hold, b.Bridge.Body.Guides...)
	}
	t.Cond = cond
	var err error
	t.Stand, err = cond.Problem(&b.Bridge.Body)
	return err
}

// united is the union of two rising lists.
func united(a, b []int32) []int32 {
	out := append(slices.Clone(a), b...)
	slices.Sort(out)
	return slices.Compact(out)
}

// ActsAs says whether full load does the same to two tops: whether they share
// the contact problem, and gaps, strings and loads are the same.
func (t *Top) ActsAs(o *Top) bool {
	if t.Cond != o.Cond || t.Stand != o.Stand {
		return false
	}
	if t.Stand == nil {
		return true
	}
	a, b := t.Fit(), o.Fit()
	return slices.Equal(a.Gap, b.Gap) && slices.Equal(a.Loads, b.Loads) && a.Friction == b.Friction
}
