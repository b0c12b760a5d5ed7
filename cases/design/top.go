package design

import (
	"errors"
	"sync"

	"context"

	"archload/cases"
	"archload/cases/shape"
	"archload/fem"
	"archload/fem/contact"
	"archload/fem/friction"
	"archload/mesh"
)

// Top is a prepared top: what is built, its stiffness factorised, and the
// plate's compliance under the bridge. It costs seconds; an answer on it costs
// milliseconds. It never changes: Adapt gives the top of another case, which
// shares what it can.
type Top struct {
	Built    *Built
	Factored *fem.Prepared
	Cond     *contact.Condensed // the plate's compliance at the pads and under the loads
	Stand    *contact.Problem   // nil without a bridge
	Workers  int                // goroutines that prepared it, and that work for it later
	Spent    Stages

	refine  float64 // on top of the case's own
	clock   Clock
	circles *circles
	zoned   footing // the base all of whose nodes may carry contact
}

// Prepare does the costly part of a solve: arch, mesh, factor and the plate's
// compliance under the bridge. Errors: Faults of the geometry, a *FileError at
// the key that leaves the plate loose, or that of ctx.
func Prepare(ctx context.Context, c *cases.Case, o Options) (*Top, error) {
	g, spent, err := timedGeometry(c, o)
	if err != nil {
		return nil, err
	}
	return prepare(ctx, g, spent, o, o.refine())
}

// PrepareGeometry is Prepare for a geometry that was fitted before.
func PrepareGeometry(ctx context.Context, g *shape.Geometry, o Options) (*Top, error) {
	return prepare(ctx, g, Stages{}, o, o.refine())
}

// timedGeometry is NewGeometry of a case that has a state of rest, with the time that it took.
func timedGeometry(c *cases.Case, o Options) (g *shape.Geometry, spent Stages, err error) {
	if err := o.atRest(c); err != nil {
		return nil, spent, err
	}
	o.Clock.time(&spent.Mesh, func() { g, err = shape.NewGeometry(c) })
	return g, spent, err
}

// prepare meshes, assembles, factorises and condenses a geometry. spent is the
// time that went into it.
func prepare(ctx context.Context, g *shape.Geometry, spent Stages, o Options, refine float64) (*Top, error) {
	o.Say("mesh")
	var b *Built
	var err error
	o.Clock.time(&spent.Mesh, func() { b, err = MeshAndBuild(g, refine) })
	if err != nil {
		return nil, err
	}
	return solid(ctx, &Top{Built: b, refine: refine, Spent: spent, circles: &circles{}}, o, nil)
}

// MeshAndBuild meshes a geometry, with triangles so many times smaller, and builds the
// model.
func MeshAndBuild(g *shape.Geometry, refine float64) (*Built, error) {
	d := g.Domain()
	d.Scale = 1 / refine
	plan, err := mesh.Triangulate(d)
	if err != nil {
		return nil, g.PlaceFault(err)
	}
	back, err := meshBack(g, refine)
	if err != nil {
		return nil, err
	}
	return Build(g, mesh.Lift(plan, g.Plate), back)
}

// meshBack meshes the back of a body; nil without one.
func meshBack(g *shape.Geometry, refine float64) (*mesh.Mesh, error) {
	if g.Back == nil {
		return nil, nil
	}
	d := g.Back.Domain()
	d.Scale = 1 / refine
	plan, err := mesh.Triangulate(d)
	if err != nil {
		return nil, g.Back.PlaceFault(err)
	}
	return mesh.Lift(plan, g.Back.Plate), nil
}

// solid completes a top of which no more is known than what is built: it
// assembles, factorises and condenses. The order of elimination is that of
// another top if its nodes couple alike.
func solid(ctx context.Context, t *Top, o Options, like *fem.Prepared) (*Top, error) {
	t.Workers, t.clock = o.WorkerCount(), o.Clock
	if b := t.Built; o.AnyFoot && b.Bridge != nil && t.zoned != baseOf(b.Case.Bridge) {
		b.Model.Zone, t.zoned = united(b.Model.Zone, b.underBase()), baseOf(b.Case.Bridge)
	}
	o.Say("assemble")
	var sys *fem.System
	var err error
	t.clock.time(&t.Spent.Assemble, func() { sys, err = assembled(t.Built.Model, like, o.WorkerCount()) })
	if err == nil {
		err = ctx.Err()
	}
	if err != nil {
		return nil, err
	}
	o.Say("factor")
	t.clock.time(&t.Spent.Factor, func() {
		if like != nil && sys.Alike(like.System) {
			t.Factored, err = sys.PrepareLike(like, o.WorkerCount())
			return
		}
		t.Factored, err = sys.Prepare(o.WorkerCount())
	})
	if err != nil {
		return nil, Explain(t.Built.Case, err)
	}
	if err = ctx.Err(); err != nil {
		return nil, err
	}
	o.Say("condense")
	t.clock.time(&t.Spent.Condense, func() { err = t.condense() })
	return t, err
}

// assembled assembles a model, with what it has in common with another top's.
func assembled(m *fem.Model, like *fem.Prepared, workers int) (*fem.System, error) {
	if like == nil {
		return fem.Assemble(m, workers)
	}
	return fem.AssembleLike(m, like.System, workers)
}

// condense reduces the factorised plate of a top in the making to its contact
// points and stands the bridge on them.
func (t *Top) condense() error {
	b := t.Built
	if b.Bridge == nil {
		t.Cond = contact.Condense(t.Factored, nil, contact.Slip, b.Loads)
		return nil
	}
	t.Cond = contact.Condense(t.Factored, b.Bridge.Pads, b.Bridge.Hold, b.Loads, b.Bridge.Body.Guides...)
	var err error
	t.Stand, err = t.Cond.Problem(&b.Bridge.Body)
	return err
}

// Fit is the load on the bridge and the gaps under it.
func (t *Top) Fit() contact.LoadCase {
	st := t.Built.Bridge
	f := contact.LoadCase{Gap: make([]float64, len(st.Pads)), Loads: st.Body.Loads, Friction: float64(t.Built.Case.Bridge.Friction)}
	for i := range f.Gap {
		f.Gap[i] = st.Pads[i].Gap
	}
	return f
}

// Explain puts a mechanical failure at the key that causes it.
func Explain(c *cases.Case, err error) error {
	var free *fem.UnsupportedError
	switch {
	case errors.As(err, &free):
		return c.Fault("rim.support", "%w: nothing holds the plate, or its supports leave a motion free, or a part of it hangs on nothing; give [rim] support or bench supports", err)
	case errors.Is(err, contact.ErrOverturns):
		return c.Fault("strings", "the strings' resultant falls outside the bridge's foot: the bridge would tip")
	case errors.Is(err, friction.ErrNoRest):
		return c.Fault("bridge.friction", "the foot finds no rest under the strings: it would tip or slide off")
	case errors.Is(err, contact.ErrMechanism):
		return errors.New("contact: the closed points do not hold the bridge; it would tip or slide off")
	}
	return err
}

// circles are the triangles under the circle about each triangle's centre, over
// which the strength used is averaged; nil where it would cross an edge. They
// are laid when first asked for and stay while the mesh does.
type circles struct {
	once sync.Once
	tris [][]int32
}
