package moved

import (
	"slices"

	"archload/fem"
	"archload/fem/contact"
	"archload/fem/element"
	"archload/fem/vec3"
)

// acting is what acts in a linear contact problem (2).
type acting struct {
	plate []float64          // nodal loads, pads left out
	body  []contact.BodyLoad // on the body
}

// standing is how the body stands on the plate; without forces: not yet, or there is none.
type standing struct {
	forces []float64 // on the rows of the pads, as a contact.State has them
	body   []float64 // movements of the body's nodes
}

// acting is a share of the load at movements u of the plate, and as the body stands. Forces go along with their places, on arms that have turned; pairs of forces
// between plate and body act at one place, so that what stands on the plate and leans is pushed on by what
// presses on its top, and a plate with its own cords stays in balance. All this is taken at the movements
// of the step before: it changes the stiffness by the tension over the length of a cord, a few
// N/mm beside thousands, so that the iteration hardly feels it.
func (p *Problem) acting(share float64, u []float64, on standing) acting {
	a := acting{plate: p.Cond.Loads(share)}
	for _, l := range p.Loads {
		l.F = vec3.Scale(l.F, share)
		p.Plate.AddTurned(a.plate, u, l)
	}
	if p.Stand == nil {
		return a
	}
	a.body = slices.Clone(p.Fit.Loads)
	if a.body == nil {
		a.body = slices.Clone(p.Body.Loads)
	}
	for i := range a.body {
		a.body[i].F = vec3.Scale(a.body[i].F, share)
	}
	if on.forces == nil {
		return a
	}
	b := &onBody{p: p, on: on, u: u}
	b.stand()
	for i := range a.body {
		a.body[i].At = vec3.Sub(b.place(a.body[i].Node, a.body[i].At), b.origin)
	}
	for i := range p.Cords {
		b.pull(&a, &p.Cords[i], share)
	}
	b.press(&a)
	b.guide(&a)
	return a
}

// onBody moves what acts between plate and body.
type onBody struct {
	p      *Problem
	on     standing
	u      []float64
	move   [][3]float64 // of each pad's place on the plate
	origin [3]float64   // the movement from which the body's own turns count: the mean of those, by the forces there
}

// stand finds how the places of the pads have moved.
func (b *onBody) stand() {
	sum := 0.0
	for i := range b.p.Pads {
		pad := &b.p.Pads[i]
		var d [3]float64
		for _, at := range pad.Spread {
			d = vec3.Add(d, b.p.Plate.TurnedMoveAt(b.u, at))
		}
		d = vec3.Scale(d, 1/float64(len(pad.Spread)))
		f := vec3.Norm(b.force(i))
		b.move, sum = append(b.move, d), sum+f
		b.origin = vec3.Add(b.origin, vec3.Scale(d, f))
	}
	if sum > 0 {
		b.origin = vec3.Scale(b.origin, 1/sum)
	}
}

// force is what the plate gives to the body at pad i.
func (b *onBody) force(i int) [3]float64 { return b.p.Cond.PadForce(b.on.forces, i) }

// place is where a place on a rigid arm of a node of the body has come to.
func (b *onBody) place(node int32, at [3]float64) [3]float64 {
	m := b.on.body[6*node : 6*node+6]
	arm := element.NewArm([3]float64(m[3:]), vec3.Sub(at, b.p.Body.Nodes[node]))
	return vec3.Add(at, vec3.Add([3]float64(m[:3]), arm.Shift()))
}

// pull turns a cord's forces into its lines.
func (b *onBody) pull(a *acting, c *Cord, share float64) {
	l := &a.body[c.Load]
	over := vec3.Add(l.At, b.origin)
	l.F = [3]float64{}
	for _, e := range c.Ends {
		tie := b.p.Plate.BodyPlace(b.u, e.Was.Body, e.At)
		way := vec3.Sub(over, tie)
		f := vec3.Scale(way, share*vec3.Norm(e.Was.F)/vec3.Norm(way))
		l.F = vec3.Sub(l.F, f)
		was := e.Was
		was.F = vec3.Scale(was.F, -share)
		b.p.Plate.AddLoad(a.plate, was)
		b.p.Plate.AddMovedForce(a.plate, b.u, e.Was.Body, tie, f)
	}
}

// press lets each pad's pair of forces act where the plate's face has gone.
func (b *onBody) press(a *acting) {
	for i := range b.p.Pads {
		pad, f := &b.p.Pads[i], b.force(i)
		if f == ([3]float64{}) {
			continue
		}
		part := vec3.Scale(f, -1/float64(len(pad.Spread)))
		for _, at := range pad.Spread {
			b.p.Plate.AddTurned(a.plate, b.u, fem.PointForce{At: at, F: part})
		}
		a.body = append(a.body, contact.BodyLoad{Node: pad.Node, At: b.p.Body.Nodes[pad.Node], M: vec3.Cross(vec3.Sub(b.move[i], b.origin), f)})
	}
}

// guide lets each guide that hangs on rigid bodies of the plate act where its place on the body has gone.
func (b *onBody) guide(a *acting) {
	for i, force := range b.p.Cond.GuideForces(b.on.forces) {
		g := &b.p.Body.Guides[i]
		f := vec3.Scale(g.Dir, force)
		at := b.place(g.Node, g.At)
		if !g.Turn {
			a.body = append(a.body, contact.BodyLoad{Node: g.Node, At: b.p.Body.Nodes[g.Node], M: vec3.Cross(vec3.Sub(vec3.Sub(at, g.At), b.origin), f)})
		}
		for _, on := range g.On {
			if on.Body > 0 {
				b.carry(a, g, on, f, at)
			}
		}
	}
}

// carry moves a guide's force f on a share of what it hangs on from where it was to a place.
func (b *onBody) carry(a *acting, g *contact.Guide, on contact.Share, f, at [3]float64) {
	back := vec3.Scale(f, -on.Part)
	if !g.Turn {
		b.p.Plate.AddLoad(a.plate, fem.PointForce{Body: on.Body, Place: g.At, F: vec3.Scale(back, -1)})
		b.p.Plate.AddMovedForce(a.plate, b.u, on.Body, at, back)
		return
	}
	ref := int(b.p.Plate.Model.Bodies[on.Body-1].Ref)
	for k, v := range vec3.Sub(element.Twisting([3]float64(b.u[6*ref+3:6*ref+6]), back), back) {
		a.plate[6*ref+3+k] += v
	}
}
