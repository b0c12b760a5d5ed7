package swelling

import (
	"context"
	"math"

	"archload/cases/verify/problem"
	"archload/cases/verify/reference"
	"archload/fem"
	"archload/fem/contact"
	"archload/fem/vec3"
	"archload/materials"
	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// outline is a closed curve, smooth but for corners at every point.
func outline(p []mesh.Point, corners bool) (*plane.Curve, error) {
	if !corners {
		return plane.NewCurve(p, nil)
	}
	at := make([]bool, len(p))
	for i := range at {
		at[i] = true
	}
	return plane.NewCurve(p, at)
}

// rectangle is a domain about the origin, mm.
func rectangle(x, y, size float64) (*mesh.Plan, error) {
	o, err := outline([]mesh.Point{{-x, -y}, {x, -y}, {x, y}, {-x, y}}, true)
	if err != nil {
		return nil, err
	}
	return mesh.Triangulate(mesh.Domain{Outline: o, Size: size})
}

// shell is a plate that was pressed to its shape, free.
type shell struct {
	plan  *mesh.Plan
	plate mesh.Plate
	wood  materials.Orthotropic
	swell [3]float64 // by which it swells along L, R, T
}

// swollen swells it, held at the node nearest to the origin. It also returns the energy that it would bear if
// it could not move at all.
func (s *shell) swollen() (*contact.Result, float64, error) {
	m := mesh.Lift(s.plan, s.plate)
	model := &fem.Model{Nodes: m.Nodes, Sections: []fem.Section{{Wood: s.wood.Compliance(), Axes: materials.PlateAxes(materials.Cut{}), Pressed: true, Swell: s.swell}}}
	for _, t := range m.Tris {
		model.Shells = append(model.Shells, fem.ShellElem{Nodes: t})
	}
	held := int32(0)
	for i, p := range m.Points {
		if q := m.Points[held]; math.Hypot(p[0], p[1]) < math.Hypot(q[0], q[1]) {
			held = int32(i)
		}
	}
	for d := range 6 {
		model.Fixed = append(model.Fixed, fem.Fix{Node: held, Dof: d})
	}
	sys, err := fem.Assemble(model, 1)
	if err != nil {
		return nil, 0, err
	}
	p, err := sys.Prepare(1)
	if err != nil {
		return nil, 0, err
	}
	w := sys.Swell(fem.Swell{Outer: 1, Inner: 1})
	r := contact.Condense(p, nil, contact.Slip, nil).Swollen(w).RecoverPlate()
	still := *r
	still.U = make([]float64, len(r.U))
	still.Recover()
	return r, still.Energy.Total(), nil
}

// cylinder is a plate pressed to a cylinder about y, radius 300 mm at its outer face, 4 mm thick, of spruce that
// swells by 0.6 % around and 1.1 % in its thickness. An angle a of it becomes a (1 + e around - e thick), a
// radius r becomes r (1 + e thick) and a length y (1 + e along), all without stress. The largest distance of a node from
// that, relative to the largest movement, and its energy over that of the same wood held.
func cylinder(context.Context) (problem.Readings, error) {
	const r, h = 300.0, 4.0
	plan, err := rectangle(120, 100, 6)
	if err != nil {
		return nil, err
	}
	card, err := materials.Find("sitka-spruce")
	if err != nil {
		return nil, err
	}
	e := [3]float64{0.001, 0.006, 0.011}
	s := shell{plan: plan, plate: mesh.Plate{Outer: barrel{r}, Thickness: surface.Flat(h)}, wood: card.Wood, swell: e}
	res, held, err := s.swollen()
	if err != nil {
		return nil, err
	}
	var got, want [][3]float64
	most := 0.0
	for i, n := range res.Plate.Model.Nodes {
		a := math.Atan2(n.P[0], n.P[2]+r)
		rho, turn := math.Hypot(n.P[0], n.P[2]+r), a*(e[1]-e[2]) // small movements, as the shell has them
		sin, cos := math.Sincos(a)
		want = append(want, [3]float64{rho * (e[2]*sin + turn*cos), e[0] * n.P[1], rho * (e[2]*cos - turn*sin)})
		got = append(got, [3]float64(res.U[6*i:6*i+3]))
		most = max(most, vec3.Norm(want[i]))
	}
	miss := 0.0
	shift := vec3.Sub(got[0], want[0]) // the node that is held does not move
	for i := range got {
		miss = max(miss, vec3.Norm(vec3.Sub(vec3.Sub(got[i], want[i]), shift)))
	}
	return problem.Readings{"miss": miss / most, "energy": res.Energy.Total() / held}, nil
}

// sphere is a plate pressed to a sphere, radius 300 mm at its outer face, 4 mm thick, that swells in its
// thickness alone, by 1 %. Free fibres would come nearer by e/R in both directions, which no sphere admits
// without stretching: far from its free edge it keeps its shape and bears a moment D (1 + nu) e/R. The stress at
// the outer face near the middle over E/(1 - nu) (h/2) e/R.
func sphere(context.Context) (problem.Readings, error) {
	const r, h, e, young, nu = 300.0, 4.0, 0.01, 8000.0, 0.3
	var ring []mesh.Point
	for k := range 96 {
		sin, cos := math.Sincos(2 * math.Pi * float64(k) / 96)
		ring = append(ring, mesh.Point{180 * cos, 180 * sin})
	}
	o, err := outline(ring, false)
	if err != nil {
		return nil, err
	}
	plan, err := mesh.Triangulate(mesh.Domain{Outline: o, Size: 6})
	if err != nil {
		return nil, err
	}
	s := shell{plan: plan, plate: mesh.Plate{Outer: problem.Dome{R: r}, Thickness: surface.Flat(h)}, swell: [3]float64{0, 0, e},
		wood: reference.Isotropic(young, nu)}
	res, _, err := s.swollen()
	if err != nil {
		return nil, err
	}
	sum, n := 0.0, 0
	for i, t := range plan.Tris {
		c := [2]float64{}
		for _, k := range t {
			c[0], c[1] = c[0]+plan.Points[k][0]/3, c[1]+plan.Points[k][1]/3
		}
		if math.Hypot(c[0], c[1]) > 50 {
			continue
		}
		st := res.ShellStress(i, 1)
		sum, n = sum+st[0]+st[1], n+2
	}
	return problem.Readings{"stress": sum / float64(n) / (young / (1 - nu) * h / 2 * e / (r - h/2))}, nil
}

// barrel is a cylinder about y, its top at z = 0.
type barrel struct{ r float64 }

// At returns the height and its derivatives.
func (b barrel) At(p mesh.Point) surface.Jet {
	z := math.Sqrt(b.r*b.r - p[0]*p[0])
	return surface.Jet{Z: z - b.r, Zx: -p[0] / z, Zxx: -b.r * b.r / (z * z * z)}
}
