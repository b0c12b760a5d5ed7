package problem

import (
	"math"
	"slices"

	"archload/cases/verify/reference"
	"archload/fem"
	"archload/fem/contact"
	"archload/fem/element"
	"archload/materials"
	"archload/mesh"
)

// trestle is an elastic or rigid bar along x that stands on pads at y = 0, each
// pad on a ground of its own: a spring, or a strip.
type trestle struct {
	model fem.Model
	pads  []contact.Pad
	body  contact.Body
	loads []loadOnPlate
}

// loadOnPlate is a force on the plate at full load.
type loadOnPlate struct {
	at fem.SurfacePoint
	f  [3]float64 // N
}

// firm is the bedding of a pad on rigid ground, mm/N: too little to count, enough
// to tell pads apart.
const firm = 1e-10

// groundWood is what the ground's triangles are made of; they only carry.
func groundWood() []fem.Section {
	return []fem.Section{{Wood: reference.Isotropic(1e4, 0).Compliance(), Axes: materials.GlobalAxes()}}
}

// stand adds a pad at x on a small triangle that moves up and down only, on
// a spring of k N/mm; k = +Inf holds it.
func (t *trestle) stand(x, k, gap float64) {
	if t.model.Sections == nil {
		t.model.Sections = groundWood()
	}
	first := int32(len(t.model.Nodes))
	for i := range 3 {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 3)
		t.model.Nodes = append(t.model.Nodes, mesh.Node{P: [3]float64{x + c, s, 0}, H: 1})
		n := first + int32(i)
		for d := range 6 {
			if d != 2 || math.IsInf(k, 1) {
				t.model.Fixed = append(t.model.Fixed, fem.Fix{Node: n, Dof: d})
			}
		}
	}
	t.model.Shells = append(t.model.Shells, fem.ShellElem{Nodes: [3]int32{first, first + 1, first + 2}})
	at := fem.SurfacePoint{Shell: int32(len(t.model.Shells) - 1), L: [3]float64{1.0 / 3, 1.0 / 3, 1.0 / 3}}
	if !math.IsInf(k, 1) {
		t.model.Springs = append(t.model.Springs, fem.Spring{At: at, Dir: [3]float64{0, 0, 1}, K: k})
	}
	t.bear(x, []fem.SurfacePoint{at}, gap)
}

// bear adds a pad at x on places of the plate.
func (t *trestle) bear(x float64, on []fem.SurfacePoint, gap float64) {
	for _, p := range on {
		for _, n := range t.model.Shells[p.Shell].Nodes {
			if !slices.Contains(t.model.Zone, n) {
				t.model.Zone = append(t.model.Zone, n)
			}
		}
	}
	t.pads = append(t.pads, contact.Pad{At: [3]float64{x, 0, 0}, Dir: [3][3]float64{{0, 0, 1}, {1, 0, 0}, {0, 1, 0}},
		Spread: on, Area: 1, Gap: gap, Bedding: [2]float64{firm, firm}})
}

// lay makes the bar of a section through the places xs and hangs the pads on
// its nearest nodes. Guides hold what is not of the plane problem.
func (t *trestle) lay(sec element.Rectangle, xs []float64) {
	for i, x := range xs {
		t.body.Nodes = append(t.body.Nodes, [3]float64{x, 0, 0})
		if i > 0 {
			t.body.Beams = append(t.body.Beams, contact.BodyBeam{Nodes: [2]int32{int32(i - 1), int32(i)}, Up: [3]float64{0, 0, 1}, Section: sec})
		}
	}
	mid := int32(len(xs) / 2)
	for _, g := range []contact.Guide{{Dir: [3]float64{1, 0, 0}}, {Dir: [3]float64{0, 1, 0}},
		{Dir: [3]float64{0, 0, 1}, Turn: true}, {Dir: [3]float64{1, 0, 0}, Turn: true}} {
		g.Node, g.At = mid, t.body.Nodes[mid]
		t.body.Guides = append(t.body.Guides, g)
	}
	for i := range t.pads {
		t.pads[i].Node = t.nodeAt(t.pads[i].At[0])
	}
}

// nodeAt returns the bar's node nearest to x.
func (t *trestle) nodeAt(x float64) int32 {
	best := 0
	for i, p := range t.body.Nodes {
		if math.Abs(p[0]-x) < math.Abs(t.body.Nodes[best][0]-x) {
			best = i
		}
	}
	return int32(best)
}

// press adds a force on the bar at x, N, positive downward.
func (t *trestle) press(x, force float64) {
	t.body.Loads = append(t.body.Loads, contact.BodyLoad{Node: t.nodeAt(x), At: [3]float64{x, 0, 0}, F: [3]float64{0, 0, -force}})
}

// met is the contact of a trestle at full load.
type met struct {
	*contact.State
	res *contact.Result
}

// follow raises the load from nothing to full.
func (t *trestle) follow() (*met, error) {
	sys, err := fem.Assemble(&t.model, 1)
	if err != nil {
		return nil, err
	}
	top, err := sys.Prepare(1)
	if err != nil {
		return nil, err
	}
	var loads []fem.PointForce
	for _, l := range t.loads {
		loads = append(loads, fem.PointForce{At: l.at, F: l.f})
	}
	s, err := contact.Condense(top, t.pads, contact.Slip, loads).Problem(&t.body)
	if err != nil {
		return nil, err
	}
	fit := contact.LoadCase{Gap: make([]float64, len(t.pads)), Loads: t.body.Loads}
	for i := range fit.Gap {
		fit.Gap[i] = t.pads[i].Gap
	}
	st, err := s.Follow(fit)
	if err != nil {
		return nil, err
	}
	return &met{State: st, res: s.Recover(st, fit)}, nil
}

// closes is the share of the load at which a pad first closes, NaN if never.
func (m *met) closes(pad int) float64 {
	for _, e := range m.Events {
		if int(e.Pad) == pad && e.Closes {
			return e.Load
		}
	}
	return math.NaN()
}

// eulerBar is 20 x 10 mm, E 10 GPa: E I = 16.66667 N m², without shear strain.
func eulerBar() element.Rectangle {
	return element.Rectangle{Width: 20, Height: 10, E: 1e4, Gxy: 1e13, Gxz: 1e13}
}

// relieved is a bar of 300 mm on ends of stiffness ke with a middle of
// stiffness km below a gap of 0.3 mm.
func relieved(ke, km float64) *trestle {
	t := &trestle{}
	t.stand(-150, ke, 0)
	t.stand(0, km, 0.3)
	t.stand(150, ke, 0)
	var xs []float64
	for k := range 9 {
		xs = append(xs, -150+37.5*float64(k))
	}
	t.lay(eulerBar(), xs)
	return t
}

// relievedBar reads the relieved bar on springs and on rigid ground.
func relievedBar() (Readings, error) {
	out := Readings{}
	soft := relieved(200, 400)
	soft.press(0, 180)
	m, err := soft.follow()
	if err != nil {
		return nil, err
	}
	out["closes"] = m.closes(1) * 180
	out["middle"], out["end"] = m.Lambda[1], m.Lambda[0]
	out["sink"] = -m.res.BodyMove(4, [3]float64{})[2]
	twice := relieved(200, 400)
	twice.press(0, 2*out["closes"])
	if m, err = twice.follow(); err != nil {
		return nil, err
	}
	out["middle at twice"] = m.Lambda[1]
	return out, nil
}
