package design

import (
	"context"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/shape"
	"archload/cases/tree"
	"archload/fem"
	"archload/fem/contact"
	"archload/fem/vec3"
	"archload/fem/vibration"
	"archload/mesh"
)

// State says what a design is when it vibrates.
type State string

// The states.
const (
	Free   State = "free"   // the plate as on a tapping bench: no edge, no sides, no strings
	Bare   State = "bare"   // on its edge, without strings and bridge
	Strung State = "strung" // under its strings
)

// Moving is a design that vibrates.
type Moving struct {
	Case      *cases.Case
	State     State
	Built     *Built
	Structure *vibration.Structure
	Free      int       // motions that nothing holds
	Solution  *Solution // what the strings do at rest; nil but for Strung
	Strings   []StringSpan
	Bearing   int // pads that bear
	Refine    float64
}

// Vibrating builds a design in a state; one that is to stand on its edge and has nothing to hold it
// is free. It is a fault to ask for a strung one without strings and bridge. Other errors are those of a solve.
func Vibrating(ctx context.Context, c *cases.Case, state State, o Options) (*Moving, error) {
	switch {
	case state == Strung:
		return strung(ctx, c, o)
	case state == Bare && c.InTheHand():
		state = Free
	case state == Bare:
		if err := c.Held(); err != nil {
			return nil, err
		}
	}
	alone := alone(c, state)
	g, err := shape.NewGeometry(alone)
	if err != nil {
		return nil, err
	}
	b, err := MeshAndBuild(g, o.refine())
	if err != nil {
		return nil, err
	}
	m := &Moving{Case: c, State: state, Built: b, Refine: o.refine()}
	if state == Free || b.Back != nil {
		m.Free = 6
	}
	b.hangFree()
	o.Say("assemble")
	sys, err := fem.Assemble(b.Model, o.WorkerCount())
	if err != nil {
		return nil, err
	}
	m.Structure, err = vibration.New(vibration.Input{Plate: sys, Workers: o.WorkerCount()})
	return m, err
}

// alone is the case without strings, bridge and loads; a free plate without all that holds it.
func alone(c *cases.Case, state State) *cases.Case {
	a := *c
	a.Strings, a.Bridge, a.Loads, a.Season = nil, nil, nil, nil
	if state == Free {
		a.Rim.Support, a.Rim.Squeeze, a.Supports, a.Posts = "free", 0, nil, nil
	}
	return &a
}

// strung builds a design under its strings: what bears at full load stays in contact.
func strung(ctx context.Context, c *cases.Case, o Options) (*Moving, error) {
	if c.Strings == nil || c.Bridge == nil {
		return nil, c.Fault("strings", "want strings and a bridge, or another --state than strung")
	}
	o.NoFlow, o.NoError = true, true
	sol, err := Solve(ctx, c, o)
	if err != nil {
		return nil, err
	}
	return Swinging(sol, o.WorkerCount())
}

// Swinging builds a design under its strings from its solution, which must have a bridge.
func Swinging(sol *Solution, workers int) (*Moving, error) {
	b := sol.Top.Built
	c := b.Case
	m := &Moving{Case: c, State: Strung, Built: b, Solution: sol, Refine: sol.Top.refine, Strings: StringSpans(c, b.Geometry.TopAtBridge)}
	in := vibration.Input{Body: &b.Bridge.Body, Workers: workers, Pads: BearingPads(b.Bridge, sol.Result.State), Stays: stays(b, m.Strings)}
	m.Bearing = len(in.Pads)
	if c.Moving().Stress {
		in.Loaded = sol.Result.U
	}
	var err error
	if in.Plate, err = weighed(sol.Top, workers); err != nil {
		return nil, err
	}
	m.Structure, err = vibration.New(in)
	return m, err
}

// weighed is the plate of a top with the masses of its own case: a top that took over the stiffness
// of another one may be of heavier or lighter wood.
func weighed(t *Top, workers int) (*fem.System, error) {
	own, err := Build(t.Built.Geometry, t.Built.Mesh, t.Built.backOn(t.Built.Geometry))
	if err != nil {
		return nil, err
	}
	was := t.Factored.Model
	if slices.EqualFunc(own.Model.Sections, was.Sections, func(a, b fem.Section) bool { return a.Density == b.Density }) &&
		slices.EqualFunc(own.Model.Beams, was.Beams, func(a, b fem.BeamElem) bool { return a.Mass == b.Mass }) {
		return t.Factored.System, nil
	}
	return fem.Assemble(own.Model, workers)
}

// Altered sums stiffness and mass of another case in the same state on the same triangles, its
// freedoms in the same order: one in which nothing in plan has moved, nor the outer surface. The
// same places of the foot bear, and what the load's own stress lends is left out.
func (m *Moving) Altered(c *cases.Case, workers int) (*vibration.Structure, error) {
	if m.State != Strung {
		c = alone(c, m.State)
	}
	carved := func(key string) bool { return tree.IsWithin(key, "plate.arch") }
	g, err := shape.FitGeometry(c, m.Built.Geometry, slices.DeleteFunc(ChangedKeys(m.Built.Case, c), carved))
	if err != nil {
		return nil, err
	}
	b, err := Build(g, mesh.Lift(m.Built.Mesh.Plan, g.Plate), m.Built.backOn(g))
	if err != nil {
		return nil, err
	}
	if m.State != Strung {
		b.hangFree()
	}
	in := vibration.Input{Workers: workers}
	if in.Plate, err = fem.Assemble(b.Model, workers); err != nil {
		return nil, err
	}
	if m.State == Strung {
		in.Body, in.Pads, in.Stays = &b.Bridge.Body, BearingPads(b.Bridge, m.Solution.Result.State), stays(b, m.Strings)
	}
	return vibration.Sum(in)
}

// BearingPads are the pads that carry force. Those that stick at full load stay stuck, as
// a small swing takes little off their drag; those that slide are free sideways.
func BearingPads(br *BridgeModel, st *contact.State) []vibration.Pad {
	rows := 3
	if br.Hold == contact.Slip {
		rows = 1
	}
	var pads []vibration.Pad
	for i := range br.Pads {
		if st.Lambda[i*rows] <= 0 {
			continue
		}
		held := rows
		if br.Hold == contact.Rough && st.Slides[i] {
			held = 1
		}
		pads = append(pads, vibration.Pad{Pad: br.Pads[i], Rows: held})
	}
	return pads
}

// stays are the strings as springs at the saddle: each length of a string resists a movement along
// it with EA/l and one square to it with T/l. In a body its far end goes with a block.
func stays(b *Built, strings []StringSpan) []vibration.Stay {
	var list []vibration.Stay
	for _, s := range strings {
		if b.Back != nil {
			list = append(list, b.length(s, "neck"), b.length(s, "tail"))
			continue
		}
		t := vibration.Stay{Node: b.SaddleNode(s.Force.X), At: b.Saddle(s.Force.X)}
		addLength(&t.Stiffness, [3]float64{0, cosDeg(s.Force.FrontAngle), -sinDeg(s.Force.FrontAngle)}, s.EA/s.Front, (s.Force.Tension+s.Force.Rise)/s.Front)
		addLength(&t.Stiffness, [3]float64{0, -cosDeg(s.Force.BackAngle), -sinDeg(s.Force.BackAngle)}, s.EA/s.Back, s.Force.Tension/s.Back)
		list = append(list, t)
	}
	return list
}

// length is the length of a string from the saddle toward a block of a body.
func (b *Built) length(s StringSpan, block string) vibration.Stay {
	at := b.Saddle(s.Force.X)
	t := vibration.Stay{Node: b.SaddleNode(s.Force.X), At: at, Far: b.BlockNode(block) + 1}
	dir, l, tension := [3]float64{0, cosDeg(s.Force.FrontAngle), -sinDeg(s.Force.FrontAngle)}, s.Front, s.Force.Tension+s.Force.Rise
	if block == "tail" {
		dir, l, tension = [3]float64{0, -cosDeg(s.Force.BackAngle), -sinDeg(s.Force.BackAngle)}, s.Back, s.Force.Tension
	}
	t.FarAt = vec3.Add(at, scale(dir, l))
	addLength(&t.Stiffness, dir, s.EA/l, tension/l)
	return t
}

// addLength adds along e eᵀ + across (1 - e eᵀ).
func addLength(k *[3][3]float64, e [3]float64, along, across float64) {
	for i := range 3 {
		k[i][i] += across
		for j := range 3 {
			k[i][j] += (along - across) * e[i] * e[j]
		}
	}
}

func sinDeg(a float64) float64 { return math.Sin(a * math.Pi / 180) }
func cosDeg(a float64) float64 { return math.Cos(a * math.Pi / 180) }

// Tones finds the lowest tones.
func (m *Moving) Tones(count int) (*vibration.Tones, error) {
	t, err := m.Structure.Tones(count, m.Free)
	if err != nil {
		return nil, Explain(m.Case, err)
	}
	return t, nil
}

// Spots are the places of the outer surface under a rectangle about a point.
func (m *Moving) Spots(at mesh.Point, size *[2]tree.Length) []fem.SurfacePoint {
	return m.Built.spots(at, size)
}

// Carries is the frequency up to which the triangles carry bending waves, Hz: there the shortest
// wave, across the grain or along it whichever is softer, is edgesPerWave of their edges long. With
// as many, a tone of a flat plate is found to about 2 % (the tones of the published checks, by
// their wavelength).
func (m *Moving) Carries() (float64, error) {
	card, err := m.Case.Wood("plate.wood")
	if err != nil {
		return 0, err
	}
	w, h := card.Wood, math.Inf(1)
	for i := range m.Built.Mesh.Nodes {
		h = min(h, m.Built.Mesh.Nodes[i].H)
	}
	soft := min(w.EL, w.ER, w.ET)
	if m.Case.Plate.Cut == "quarter" {
		soft = min(w.EL, w.ER)
	}
	edge := float64(m.Case.Mesh.Size) / m.Case.Mesh.Refine / m.Refine
	k := 2 * math.Pi / (edgesPerWave * edge)
	return k * k * math.Sqrt(soft*h*h/12/(w.Density*1e-12)) / (2 * math.Pi), nil
}

const edgesPerWave = 8
