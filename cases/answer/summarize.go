package answer

import (
	"fmt"
	"math"

	"archload/cases"
	"archload/cases/design"
	"archload/fem"
	"archload/mesh"
)

const UnitsNote = "mm, N, MPa, g, N·mm, degrees; sink positive down, stress positive in tension"

// Summarize puts an answer in the maker's words.
func Summarize(s *design.Solution) *Report {
	c := s.Top.Built.Case
	r := &Report{Format: cases.Format, Units: UnitsNote, Title: c.Title, Warnings: warnings(s.Top.Built)}
	q := s.Top.Built.Mesh.Quality()
	r.Mesh = MeshReport{Nodes: len(s.Top.Built.Model.Nodes), Triangles: len(s.Top.Built.Model.Shells), Dofs: 6 * len(s.Top.Built.Model.Nodes), MinAngle: q.MinAngle}
	r.Mass = MassOf(s.Top.Built)
	r.Top = topReport(s)
	r.Strings = stringsReport(s.Top.Built.Geometry)
	if s.Top.Built.Bridge != nil {
		r.Bridge = bridgeReport(s)
	}
	r.Gauges = gauges(s)
	r.Bench = Bench(r.Gauges)
	r.Braces = braceReports(s)
	var err error
	if r.Flow, err = flowReport(s); err != nil {
		r.Warnings = append(r.Warnings, err.Error())
	}
	r.Reactions = reactions(s, r.Flow)
	e := s.Result.Energy
	r.Energy = EnergyReport{Membrane: e.Membrane, Bending: e.Bending, Shear: e.Shear, Braces: e.Of(design.PartBraces),
		Bridge: e.Of(design.PartBridge), Bedding: e.Of(design.PartBedding), Rim: e.Of(design.PartRim), Total: e.Total()}
	if s.Result.State != nil {
		r.Energy.Released = s.Result.State.Lost
	}
	r.Strength = Strength(s)
	r.Decades = DecadesReport{StrengthUsed: r.Strength.Used / LongTerm, Sink: [2]Num{Num(Sink(s)), Num(Creep * Sink(s))}}
	r.Warnings = append(r.Warnings, r.cautions()...)
	if s.CoarseFault != nil {
		r.Warnings = append(r.Warnings, fmt.Sprintf("what the mesh costs is not known: no answer on triangles twice as large: %v", s.CoarseFault))
	}
	ch := s.Result.Checks
	r.Error = ErrorReport{Equilibrium: ch.Force, Moment: ch.Moment, Energy: ch.Energy,
		Complementarity: s.Result.Complementarity, Discretisation: discretisation(s)}
	r.Timing = s.Spent
	if s.Coarse != nil {
		add(&r.Timing, s.Coarse.Spent, s.Top.Spent.Mesh)
	}
	r.Timing.Total = r.Timing.Mesh + r.Timing.Assemble + r.Timing.Factor + r.Timing.Condense + r.Timing.Contact + r.Timing.Flow
	return r
}

// Add counts the coarser solve's time too; shared was spent once for both.
func add(s *design.Stages, o design.Stages, shared float64) {
	s.Mesh += math.Max(0, o.Mesh-shared)
	s.Assemble += o.Assemble
	s.Factor += o.Factor
	s.Condense += o.Condense
	s.Contact += o.Contact
}

// MassOf weighs the parts of a built case.
func MassOf(b *design.Built) MassReport {
	m := MassReport{Bridge: None()}
	if card, err := b.Case.Wood("plate.wood"); err == nil {
		m.Plate = b.Mesh.Mass(card.Wood.Density)
	}
	for k := range b.Bars {
		m.Braces += braceMass(b, k)
	}
	if b.Bridge != nil {
		m.Bridge = Num(b.Bridge.Mass)
		m.BridgeCentre = &b.Bridge.Centre
	}
	return m
}

// BraceMass is the mass of brace k of those that are fitted, g.
func braceMass(b *design.Built, k int) float64 {
	card, err := b.Case.Wood(fmt.Sprintf("brace[%d].wood", b.Bars[k].Brace+1))
	if err != nil {
		return 0 // Build would not have made it
	}
	return b.BraceMass(b.Bars[k], card.Wood)
}

// apex climbs from the highest node to the top of the surface: Newton's method
// on a slope of zero. Where that leads away (a flat plate, a rim higher than
// the middle) it stays at the node.
func apex(b *design.Built, node mesh.Place) Spot {
	const far, steps = 10, 8 // mm, 1
	p := node.At
	for range steps {
		j := b.Plate.Outer.At(p)
		det := j.Zxx*j.Zyy - j.Zxy*j.Zxy
		if !(det > 0) || j.Zxx >= 0 {
			return spotOf(node)
		}
		p[0] -= (j.Zx*j.Zyy - j.Zy*j.Zxy) / det
		p[1] -= (j.Zy*j.Zxx - j.Zx*j.Zxy) / det
		if math.Hypot(p[0]-node.At[0], p[1]-node.At[1]) > far {
			return spotOf(node)
		}
	}
	return Spot{Value: b.Plate.Outer.At(p).Z, X: p[0], Y: p[1]}
}

func spotOf(p mesh.Place) Spot { return Spot{Value: p.Value, X: p.At[0], Y: p.At[1]} }

func topReport(s *design.Solution) TopReport {
	e := s.Top.Built.Plate.Extremes(s.Top.Built.Mesh)
	t := TopReport{Thinnest: spotOf(e.Thinnest), Thickest: spotOf(e.Thickest), Steepest: spotOf(e.Steepest),
		Apex: apex(s.Top.Built, e.Highest), ApexSink: None()}
	if at, inside := s.Top.Built.Place.Outer(mesh.Point{t.Apex.X, t.Apex.Y}); inside {
		t.ApexSink = Num(-s.Result.MoveAt(at)[2])
	}
	for i := range s.Top.Built.PlateN {
		if w := -s.Result.U[6*i+2]; i == 0 || w > t.MostSunk.Value {
			p := s.Top.Built.Mesh.Points[i]
			t.MostSunk = Spot{Value: w, X: p[0], Y: p[1]}
		}
	}
	return t
}

func gauges(s *design.Solution) []GaugeReport {
	out := []GaugeReport{}
	for i := range s.Top.Built.Case.Gauges {
		g := &s.Top.Built.Case.Gauges[i]
		r, _ := ReadingAt(s, g.At)
		r.Name = g.Name
		if g.Measured != nil {
			r.Measured = Num(*g.Measured)
		}
		out = append(out, r)
	}
	return out
}

// stressAround averages the stress at one face over a circle as wide as the
// plate is thick, so that it does not depend on which triangle the place falls
// into; where the circle would cross an edge, it is that triangle's alone.
func stressAround(s *design.Solution, q mesh.Point, at fem.SurfacePoint, zeta float64) FaceStress {
	tris, whole := s.Top.Built.CircleAbout(q, s.Top.Built.Plate.Thickness.At(q).Z, design.Circle())
	if !whole {
		return faceStress(s, int(at.Shell), zeta)
	}
	var m FaceStress
	for _, t := range tris {
		f := faceStress(s, int(t), zeta)
		m.Along += f.Along / float64(len(tris))
		m.Across += f.Across / float64(len(tris))
		m.Shear += f.Shear / float64(len(tris))
	}
	return m
}

// faceStress picks the three stresses in the plate's own wood plane.
func faceStress(s *design.Solution, shell int, zeta float64) FaceStress {
	t := s.Result.ShellStress(shell, zeta)
	across, shear := InPlane(s.Top.Built)
	return FaceStress{Along: t[0], Across: t[across], Shear: t[shear]}
}

// InPlane says which stress components lie in the plate: with R across the
// plate RR and LR, with T across it TT and LT.
func InPlane(b *design.Built) (across, shear int) {
	axes := b.Model.Sections[0].Axes
	if math.Abs(axes[1][2]) > math.Abs(axes[2][2]) {
		return 2, 4
	}
	return 1, 5
}

// braceReports gives each brace's greatest axial force and moment.
func braceReports(s *design.Solution) []BraceReport {
	out := []BraceReport{}
	for k, b := range s.Top.Built.Bars {
		r := BraceReport{Name: b.Name, Mass: braceMass(s.Top.Built, k), Glue: glueReport(s, k)}
		for i := b.First; i < b.First+b.Count; i++ {
			f := s.Result.BeamForces(i)
			e := &s.Top.Built.Model.Beams[i]
			p, q := s.Top.Built.Model.Nodes[e.Nodes[0]].P, s.Top.Built.Model.Nodes[e.Nodes[1]].P
			x, y := (p[0]+q[0])/2, (p[1]+q[1])/2
			m := -f.My[1]
			r.Along = append(r.Along, BraceStation{X: x, Y: y, Axial: f.N, Moment: m})
			if math.Abs(f.N) > math.Abs(r.Axial.Value) {
				r.Axial = Spot{Value: f.N, X: x, Y: y}
			}
			if math.Abs(m) > math.Abs(r.Moment.Value) {
				r.Moment = Spot{Value: m, X: x, Y: y}
			}
			r.Energy += s.Result.BeamEnergy(i)
		}
		out = append(out, r)
	}
	return out
}

// reactions sums what holds the plate, and by sector. The supports of an elastic
// rim are under its sides; what holds the plate's own edge is read off the load
// flow, if there is one.
func reactions(s *design.Solution, flow *FlowReport) ReactionsReport {
	r := ReactionsReport{Applied: s.Result.Applied}
	var ground SectorsReport
	parts := rimParts(s.Top.Built)
	lo, hi := s.Top.Built.Span()
	posts := len(s.Result.Reactions) - len(s.Top.Built.Model.Springs) + s.Top.Built.FirstPost
	for i, re := range s.Result.Reactions {
		p := re.At
		for k := range 3 {
			r.Total[k] += re.F[k]
		}
		if i >= posts {
			k := (i - posts) / design.PostSprings
			if k == len(r.Posts) {
				r.Posts = append(r.Posts, PostReport{Name: s.Top.Built.Case.Posts[k].Name})
			}
			r.Posts[k].Force += re.F[2]
			continue
		}
		if at, ok := parts[mesh.Point{p[0], p[1]}]; ok {
			ground.add(at, re.F[2])
			continue
		}
		*ground.at(s.Top.Built.SectorOf(p[0], p[1], lo, hi)) += re.F[2]
	}
	r.Sectors = ground
	if EdgeByFlow(s.Top.Built.Case) && flow != nil {
		r.Back, r.Sectors = &ground, flow.Sectors
	}
	return r
}

// rimParts says for each node of the outline, by its place in plan, which part
// of its stretch of edge lies before which block or side: a node at a block's
// end is shared by length, so that the sectors do not jump with the mesh.
func rimParts(b *design.Built) map[mesh.Point]SectorsReport {
	const samples = 8 // on each side of the node
	lo, hi := b.Span()
	out := map[mesh.Point]SectorsReport{}
	loop := b.Mesh.Rim
	for k, n := range loop {
		p := b.Mesh.Points[n]
		var part SectorsReport
		stretch := 0.0
		for _, o := range []int32{loop[(k+len(loop)-1)%len(loop)], loop[(k+1)%len(loop)]} {
			q := b.Mesh.Points[o]
			length := math.Hypot(q[0]-p[0], q[1]-p[1]) / 2
			stretch += length
			for i := range samples {
				u := (float64(i) + 0.5) / (2 * samples)
				*part.at(b.SectorOf(p[0]+u*(q[0]-p[0]), p[1]+u*(q[1]-p[1]), lo, hi)) += length / samples
			}
		}
		out[p] = SectorsReport{Neck: part.Neck / stretch, Tail: part.Tail / stretch, Bass: part.Bass / stretch, Treble: part.Treble / stretch}
	}
	return out
}

// Add shares out a force.
func (s *SectorsReport) add(part SectorsReport, force float64) {
	s.Neck += part.Neck * force
	s.Tail += part.Tail * force
	s.Bass += part.Bass * force
	s.Treble += part.Treble * force
}

func (s *SectorsReport) at(name string) *float64 {
	switch name {
	case "neck":
		return &s.Neck
	case "tail":
		return &s.Tail
	case "bass":
		return &s.Bass
	}
	return &s.Treble
}

// Sink is that of the bridge's base at its middle from the slack strings;
// without a bridge, of the deepest place of the top. mm.
func Sink(s *design.Solution) float64 {
	if s.Top.Built.Bridge != nil {
		return -s.Result.Body[6*s.Top.Built.Bridge.Mid+2] + fromSlack(s, 0)
	}
	return topReport(s).MostSunk.Value
}

// fromSlack is how far the slack bridge comes down at x to rest on the contact
// grid's outermost points instead of on the true ends of its feet, mm: a part
// of its sink that Result counts from.
func fromSlack(s *design.Solution, x float64) float64 {
	br := s.Top.Built.Case.Bridge
	from, to := br.Reach()
	a, b := br.Gap(from, 0), br.Gap(to, 0)
	ends := func(x float64) float64 { return a + (b-a)*(x-from)/(to-from) }
	for _, c := range s.Top.Built.Bridge.Cells {
		if design.MeanGap(br, c) < ends(c.X)-1e-9 {
			return 0 // it rests inside the ends: a misfit
		}
	}
	rest := s.Result.State.SlackRest
	return -(rest[2] - rest[4]*(br.At[0]+x-s.Top.Built.Bridge.Body.Nodes[0][0])) - ends(x)
}

// saddleMove is the movement of the string's place on the saddle at x from the
// bridge's middle, mm, from the slack strings.
func saddleMove(s *design.Solution, x float64) [3]float64 {
	u := s.Result.BodyMove(s.Top.Built.SaddleNode(x), s.Top.Built.Saddle(x))
	u[2] -= fromSlack(s, x)
	return u
}
