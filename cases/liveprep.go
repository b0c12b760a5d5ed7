package cases

import (
	"context"
	"reflect"
	"slices"

	"archload/fem"
	"archload/mesh"
)

// refitted puts a case on the prepared top that differs from its own in strings,
// bridge, gauges or the size of loads alone. What a new factor would not
// change is shared.
func (p *Top) refitted(c *Case, changed []string, workers int) (*Top, error) {
	if err := p.places(c); err != nil {
		return nil, err
	}
	if c.Bridge == nil {
		q := p.recast(c)
		q.reload(changed)
		return q, nil
	}
	if !slices.ContainsFunc(changed, func(k string) bool { return !light(k) }) {
		return p.regap(c), nil
	}
	q := p.recast(c)
	q.reload(changed)
	if err := q.rebridge(p, workers); err != nil {
		return nil, err
	}
	return q, nil
}

// places checks that everything still stands on wood.
func (p *Top) places(c *Case) error {
	g := shaper{c: c, rep: c.rep.fresh(), notes: p.notes}
	g.checkPlaces()
	return g.rep.err()
}

// recast is the prepared top under the name of another case.
func (p *Top) recast(c *Case) *Top {
	q, b := *p, *p.Built
	b.Case = c
	q.Built, q.spent = &b, Stages{}
	return &q
}

// reload takes other sizes of the loads on the plate.
func (p *Top) reload(changed []string) {
	if !slices.ContainsFunc(changed, func(k string) bool { return isWithin(k, "load") }) {
		return
	}
	p.Built.Loads = nil
	p.Built.loads()
	p.Built.squeeze()
	p.cond = p.cond.WithLoads(p.Built.Loads)
}

// rebridge builds the bridge anew on the top of old. A foot that leaves the
// contact nodes asks for another order of elimination.
func (p *Top) rebridge(old *Top, workers int) error {
	m := *p.Built.Model
	m.Zone = nil
	p.Built.Model = &m
	if err := p.Built.bridge(); err != nil {
		return err
	}
	zone := united(old.Factored.Model.Zone, m.Zone)
	p.Built.Model = old.Built.Model
	if len(zone) > len(old.Factored.Model.Zone) {
		sys := p.Factored.WithZone(zone)
		top, err := sys.Prepare(workers)
		if err != nil {
			return p.Built.Case.explain(err)
		}
		p.Factored, p.Built.Model = top, sys.Model
		return p.condense()
	}
	return p.restand(old)
}

// restand condenses again only if the contact points press elsewhere.
func (p *Top) restand(old *Top) error {
	for i := range p.Built.Bridge.pads {
		p.Built.Bridge.pads[i].At = p.Factored.Middle(p.Built.Bridge.pads[i].Spread)
	}
	cond, same := p.cond.Under(p.Built.Bridge.pads)
	if !same || old.Built.Bridge.hold != p.Built.Bridge.hold {
		return p.condense()
	}
	p.cond = cond
	var err error
	p.stand, err = cond.Problem(&p.Built.Bridge.body)
	return err
}

// united is the union of two rising lists.
func united(a, b []int32) []int32 {
	out := append(slices.Clone(a), b...)
	slices.Sort(out)
	return slices.Compact(out)
}

// refactored solves a case anew on the same plan of triangles: other wood,
// thickness, sections of braces, rim.
func (p *Top) refactored(ctx context.Context, c *Case, changed []string, o Options) (*Top, error) {
	if err := p.places(c); err != nil {
		return nil, err
	}
	q := &Top{clock: o.Clock, notes: p.notes}
	plate, lifted := p.Built.Plate, p.Built.Mesh
	if slices.ContainsFunc(changed, shapes) {
		o.say("arch")
		var err error
		if plate, q.notes, err = p.rethick(c); err != nil {
			return nil, err
		}
		lifted = mesh.Lift(p.Built.Mesh.Plan, plate)
	}
	var err error
	if q.Built, err = Build(c, plate, lifted); err != nil {
		return nil, err
	}
	if zone := united(p.Factored.Model.Zone, q.Built.Model.Zone); len(zone) > 0 {
		q.Built.Model.Zone = zone
	}
	return q, q.solid(ctx, o, p.Factored)
}

// rethick is the plate in another thickness, and what its fit tells. The arch
// is fitted again only if the rim's height goes with the thickness.
func (p *Top) rethick(c *Case) (mesh.Plate, *FitNotes, error) {
	notes := *p.notes
	notes.Warnings, notes.Thickness, notes.ofThick = nil, nil, nil
	g := shaper{c: c, rep: c.rep.fresh(), notes: &notes, plate: p.Built.Plate}
	fitted, isFit := p.Built.Plate.Thickness.(scaledSurface)
	if isFit && reflect.DeepEqual(c.Plate.Thickness, p.Built.Case.Plate.Thickness) {
		g.plate.Thickness, notes.Thickness = scaledSurface{fitted.Surface, c.Plate.ThicknessScale}, p.notes.Thickness
		notes.ofThick = p.notes.ofThick
		notes.Warnings = slices.Clone(notes.ofThick)
	} else {
		g.thickness()
	}
	if err := g.rep.err(); err != nil {
		return mesh.Plate{}, nil, err
	}
	if notes.RimHeight = g.rimHeight(); notes.RimHeight == p.notes.RimHeight {
		notes.Warnings = append(notes.Warnings, notes.ofArch...)
	} else {
		g.arch()
	}
	if err := g.rep.err(); err != nil {
		return mesh.Plate{}, nil, err
	}
	g.checkSurfaces(newBendMap(notes.Outline, g.plate.Outer))
	return g.plate, &notes, g.rep.err()
}

// remeshed solves a case anew; its surfaces are those of this top if nothing
// that they are fitted to has changed.
func (p *Top) remeshed(ctx context.Context, c *Case, changed []string, o Options) (*Top, error) {
	if slices.ContainsFunc(changed, shapes) {
		return Prepare(ctx, c, o)
	}
	n := p.notes
	g := shaper{c: c, rep: c.rep.fresh(), plate: p.Built.Plate,
		notes: &FitNotes{RimHeight: n.RimHeight, Arch: n.Arch, Thickness: n.Thickness, ofArch: n.ofArch, ofThick: n.ofThick}}
	g.notes.Warnings = slices.Concat(n.ofThick, n.ofArch)
	g.curves()
	if err := g.rep.err(); err != nil {
		return nil, err
	}
	bends := newBendMap(g.notes.Outline, g.plate.Outer)
	g.checkPlaces()
	g.checkSurfaces(bends)
	if err := g.rep.err(); err != nil {
		return nil, err
	}
	s := &shape{c: c, domain: g.domain(bends), plate: g.plate, notes: g.notes, clock: o.Clock}
	return s.prepare(ctx, o, o.refine())
}

// shapes says whether a key changes the plate's surfaces.
func shapes(key string) bool {
	return isWithin(key, "plate.outline") || isWithin(key, "plate.arch") || isWithin(key, "plate.thickness") || key == "plate.thickness_scale"
}

// solid assembles, factorises and condenses what is built. The order of
// elimination is that of another top if its nodes couple alike.
func (p *Top) solid(ctx context.Context, o Options, like *fem.Prepared) error {
	p.workers, p.circles = o.workers(), &circles{}
	o.say("assemble")
	var sys *fem.System
	var err error
	p.clock.time(&p.spent.Assemble, func() { sys, err = fem.Assemble(p.Built.Model, o.workers()) })
	if err == nil {
		err = ctx.Err()
	}
	if err != nil {
		return err
	}
	o.say("factor")
	p.clock.time(&p.spent.Factor, func() {
		if like != nil && sys.Alike(like.System) {
			p.Factored, err = sys.PrepareLike(like, o.workers())
			return
		}
		p.Factored, err = sys.Prepare(o.workers())
	})
	if err == nil {
		err = ctx.Err()
	} else {
		err = p.Built.Case.explain(err)
	}
	if err != nil {
		return err
	}
	o.say("condense")
	p.clock.time(&p.spent.Condense, func() { err = p.condense() })
	return err
}
