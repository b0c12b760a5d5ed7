package problem

import (
	"math"

	"archload/cases/verify/reference"
	"archload/fem"
	"archload/fem/element"
	"archload/materials"
)

// The rib of these checks: 6 mm wide, 12 mm high, E 10 GPa. Its shear moduli
// are so large that it is Euler's beam; where it is bent in one plane alone,
// torsion does not count.
func eulerRib() element.Rectangle {
	return element.Rectangle{Width: 6, Height: 12, E: 1e4, Gxy: 1e9, Gxz: 1e9}
}

// partRib labels the ribs; the panel is part 0.
const partRib fem.Part = 1

// glueRib glues a rib under the panel along nodes that lie on a line along x,
// the way the program glues braces. The ends named are built in: the section
// cannot lean there.
func (p *panel) glueRib(nodes []int, builtIn ...int) {
	lean := make([]int32, len(nodes))
	for k, n := range nodes {
		lean[k] = p.AddLean(p.Nodes[n])
	}
	for _, k := range builtIn {
		p.Fixed = append(p.Fixed, fem.Fix{Node: lean[k], Dof: 3}) // the lean; see fem.Model.AddLean
	}
	for k := 1; k < len(nodes); k++ {
		e := fem.BeamElem{
			Nodes: [2]int32{int32(nodes[k-1]), int32(nodes[k])}, Glued: true, Lean: [2]int32{lean[k-1], lean[k]},
			Across: [3]float64{0, 1, 0}, Up: [3]float64{0, 0, 1}, Section: eulerRib(), Part: partRib,
		}
		for end := range 2 {
			e.Glue[end] = p.under(nodes[k-1+end])
			e.Offset[end] = [3]float64{0, 0, -6}
		}
		p.Beams = append(p.Beams, e)
	}
}

// under returns the inner face below a node.
func (p *panel) under(node int) fem.SurfacePoint {
	for i, s := range p.Shells {
		for k, n := range s.Nodes {
			if int(n) == node {
				at := fem.SurfacePoint{Shell: int32(i), Zeta: -1}
				at.L[k] = 1
				return at
			}
		}
	}
	return fem.SurfacePoint{}
}

// centreRib hangs a rib on nodes along x, its axis in the plate's mid-plane.
func (p *panel) centreRib(nodes []int) {
	for k := 1; k < len(nodes); k++ {
		p.Beams = append(p.Beams, fem.BeamElem{Nodes: [2]int32{int32(nodes[k-1]), int32(nodes[k])},
			Up: [3]float64{0, 0, 1}, Section: eulerRib(), Part: partRib})
	}
}

// ribForces returns the section forces of a rib's stretch.
func (a *solved) ribForces(i int) element.BeamForces {
	r := fem.Result{Plate: a.sys, U: a.u}
	return r.BeamForces(i)
}

// teeBeam is a cantilever strip 250 x 60 x 4 mm, E 10 GPa, nu 0, with the rib
// under its middle, its sections kept plane by a large shear modulus: under 5 N
// at the tip, downward, and under an end moment of 1 N m. n divisions along it.
func teeBeam(d Density) (Readings, error) {
	const long, wide = 250.0, 60.0 // mm
	wood := reference.RigidInShear(reference.Isotropic(1e4, 0))
	wood.GLR = 1e6
	p := newPanel(d, d.N, 2, func(u, v float64) (x, n [3]float64) {
		return [3]float64{long * u, wide * (v - 0.5), 0}, n
	}, makeup{h: 4, wood: wood})
	nodes := make([]int, d.N+1)
	for i := range nodes {
		nodes[i] = d.N + 1 + i
		p.Nodes[nodes[i]].P = [3]float64{long * float64(i) / float64(d.N), 0, 0} // a straight rib
	}
	p.glueRib(nodes, 0)
	p.hold("xyzXYZ", On(0, 0))
	if err := p.build(); err != nil {
		return nil, err
	}
	tip := nodes[d.N]
	ends := [3]int{d.N, tip, 3*d.N + 2}
	for k, n := range ends {
		p.force(n, 2, -5*[3]float64{0.25, 0.5, 0.25}[k])
	}
	a, err := p.solve()
	if err != nil {
		return nil, err
	}
	out := Readings{"sink": -a.move(tip, 2)}
	f, half := a.ribForces(0), long/float64(2*d.N)
	out["rib"], out["rib moment"] = f.N/teeShare(long-half), f.My[1]/teeMoment(long-half)
	return out, p.teeTurned(out, ends, 1000)
}

// teeTurned bends the T by an end moment, N mm, brought in as the stresses of
// plane sections, and reads the tip's sink and the stretch of the plate's
// middle.
func (p *panel) teeTurned(out Readings, ends [3]int, moment float64) error {
	clear(p.load)
	s := teeSection()
	turn := moment / s.ei // curvature
	for k, n := range ends {
		share := [3]float64{0.25, 0.5, 0.25}[k]
		p.force(n, 0, share*s.plate*turn*s.z)
		p.force(n, 4, share*1e4*320*turn)
	}
	pull := s.bar * turn * (s.z - 8) // compression, in the middle of the rib
	p.force(ends[1], 0, pull)
	p.force(ends[1], 4, -8*pull+1e4*864*turn)
	a, err := p.solve()
	if err != nil {
		return err
	}
	out["turned"], out["stretch"] = -a.move(ends[1], 2), a.move(ends[1], 0)/250
	return nil
}

// The T section by parallel axes: what 5 N at a distance bring to the rib, N
// and N mm.
func teeShare(arm float64) float64 {
	s := teeSection()
	return -5 * arm / s.ei * s.bar * (8 - s.z)
}

func teeMoment(arm float64) float64 { return 5 * arm / teeSection().ei * 1e4 * 864 }

// tee is the T section: E A of plate and bar, N, the common axis below the
// plate's, mm, and E I about it, N mm².
type tee struct{ plate, bar, z, ei float64 }

func teeSection() tee {
	s := tee{plate: 1e4 * 240, bar: 1e4 * 72}
	s.z = 8 * s.bar / (s.plate + s.bar)
	s.ei = 1e4*320 + s.plate*s.z*s.z + 1e4*864 + s.bar*(8-s.z)*(8-s.z)
	return s
}

// ribbedPlate is the clamped test plate under 1 kPa with a rib along its
// middle, below it or, for contrast, in its mid-plane; Kirchhoff and Euler.
func ribbedPlate(below bool) func(d Density) (Readings, error) {
	return func(d Density) (Readings, error) {
		if d.N%2 > 0 {
			return nil, errOddMesh
		}
		p := newPanel(d, d.N, d.N, flat(reference.WoodLong, reference.WoodWide), makeup{h: 4, wood: ribbedWood()})
		nodes := make([]int, d.N+1)
		for i := range nodes {
			nodes[i] = d.N/2*(d.N+1) + i
			p.Nodes[nodes[i]].P = [3]float64{reference.WoodLong * float64(i) / float64(d.N), reference.WoodWide / 2, 0}
		}
		x0, x1, y0, y1 := edge(reference.WoodLong, reference.WoodWide)
		for _, e := range []place{x0, x1, y0, y1} {
			p.hold("xyzXYZ", e)
		}
		if below {
			p.glueRib(nodes, 0, d.N)
		} else {
			p.centreRib(nodes)
		}
		if err := p.build(); err != nil {
			return nil, err
		}
		p.spread(uniform(0, 0, -1e-3))
		a, err := p.solve()
		if err != nil {
			return nil, err
		}
		mid := d.N / 2
		out := Readings{"sink": -a.move(nodes[mid], 2), "energy": a.work()}
		f, g := a.ribForces(mid-1), a.ribForces(mid)
		out["rib"] = (f.N + g.N) / 2
		out["bottom"] = out["rib"]/72 + math.Abs(f.My[2]+g.My[0])/2*6/864
		return out, nil
	}
}

func ribbedWood() materials.Orthotropic { return reference.RigidInShear(reference.TestWood()) }

// work is half the work of the loads: the strain energy of shells and beams.
func (a *solved) work() (sum float64) {
	for i, f := range a.load {
		sum += f * a.u[i] / 2
	}
	return sum
}
