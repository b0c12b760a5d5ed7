package cases

import (
	"math"

	"archload/mesh"
)

const unitsNote = "mm, N, MPa, g, N·mm, degrees; sink positive down, stress positive in tension"

// Summarize puts an answer in the maker's words.
func Summarize(s *Solution) *Report {
	c := s.Case
	r := &Report{Format: format, Units: unitsNote, Title: c.Title, Warnings: s.warnings()}
	q := s.Mesh.Quality()
	r.Mesh = MeshReport{Nodes: len(s.Model.Nodes), Triangles: len(s.Model.Shells), Dofs: 6 * len(s.Model.Nodes), MinAngle: q.MinAngle}
	r.Mass = s.masses()
	r.Top = s.topReport()
	r.Strings = c.stringsReport()
	if s.Bridge != nil {
		r.Bridge = s.bridgeReport()
	}
	r.Gauges = s.gauges()
	r.Bench = bench(r.Gauges)
	r.Braces = s.braceReports()
	r.Reactions = s.reactions()
	var err error
	if r.Flow, err = s.flowReport(); err != nil {
		r.Warnings = append(r.Warnings, err.Error())
	}
	e := s.Result.Energy
	r.Energy = EnergyReport{Membrane: e.Membrane, Bending: e.Bending, Shear: e.Shear, Braces: e.Braces,
		Bridge: e.Bridge, Bedding: e.Bedding, Rim: e.Rim, Total: e.Total()}
	if s.Result.State != nil {
		r.Energy.Released = s.Result.State.Lost
	}
	r.Strength = s.strength()
	r.Decades = DecadesReport{StrengthUsed: r.Strength.Used / decades, Sink: [2]Num{Num(s.sink()), Num(creep * s.sink())}}
	r.Warnings = append(r.Warnings, r.cautions()...)
	ch := s.Result.Checks
	r.Error = ErrorReport{Equilibrium: ch.Force, Moment: ch.Moment, Energy: ch.Energy,
		Complementarity: ch.Contact, Discretisation: s.discretisation()}
	r.Timing = s.Spent
	if s.Coarse != nil {
		r.Timing.add(s.Coarse.Spent, s.Prepared.spent.Mesh)
	}
	r.Timing.Total = r.Timing.Mesh + r.Timing.Assemble + r.Timing.Factor + r.Timing.Condense + r.Timing.Contact + r.Timing.Flow
	return r
}

// add counts the coarser solve's time too; shared was spent once for both.
func (s *Stages) add(o Stages, shared float64) {
	s.Mesh += math.Max(0, o.Mesh-shared)
	s.Assemble += o.Assemble
	s.Factor += o.Factor
	s.Condense += o.Condense
	s.Contact += o.Contact
}

func (s *Solution) masses() MassReport {
	m := MassReport{Bridge: None()}
	if card, err := s.Case.wood("plate.wood"); err == nil {
		m.Plate = s.Mesh.Mass(card.Wood.Density)
	}
	for _, b := range s.Bars {
		m.Braces += b.mass
	}
	if s.Bridge != nil {
		m.Bridge = Num(s.Bridge.mass)
		m.BridgeCentre = &s.Bridge.centre
	}
	return m
}

func spotOf(p mesh.Place) Spot { return Spot{Value: p.Value, X: p.At[0], Y: p.At[1]} }

func (s *Solution) topReport() TopReport {
	e := s.Plate.Extremes(s.Mesh)
	t := TopReport{Thinnest: spotOf(e.Thinnest), Thickest: spotOf(e.Thickest), Steepest: spotOf(e.Steepest),
		Apex: spotOf(e.Highest), ApexSink: None()}
	if at, inside := s.place.outer(e.Highest.At); inside {
		t.ApexSink = Num(-s.Result.MoveAt(at)[2])
	}
	for i := range s.plateN {
		if w := -s.Result.U[6*i+2]; i == 0 || w > t.MostSunk.Value {
			p := s.Mesh.Points[i]
			t.MostSunk = Spot{Value: w, X: p[0], Y: p[1]}
		}
	}
	return t
}

func (s *Solution) gauges() []GaugeReport {
	out := []GaugeReport{}
	for i := range s.Case.Gauges {
		g := &s.Case.Gauges[i]
		at, _ := s.place.outer(g.At)
		u := s.Result.MoveAt(at)
		r := GaugeReport{Name: g.Name, X: g.At[0], Y: g.At[1], Sink: -u[2], Measured: None(), Displacement: u,
			Outer: s.faceStress(int(at.Shell), 1), Inner: s.faceStress(int(at.Shell), -1)}
		if g.Measured != nil {
			r.Measured = Num(*g.Measured)
		}
		out = append(out, r)
	}
	return out
}

// faceStress picks the three stresses in the plate's own wood plane.
func (s *Solution) faceStress(shell int, zeta float64) FaceStress {
	t := s.Result.ShellStress(shell, zeta)
	across, shear := s.inPlane()
	return FaceStress{Along: t[0], Across: t[across], Shear: t[shear]}
}

// inPlane says which stress components lie in the plate: with R across the
// plate RR and LR, with T across it TT and LT.
func (b *Built) inPlane() (across, shear int) {
	axes := b.Model.Sections[0].Axes
	if math.Abs(axes[1][2]) > math.Abs(axes[2][2]) {
		return 2, 4
	}
	return 1, 5
}

// braceReports gives each brace's greatest axial force and moment.
func (s *Solution) braceReports() []BraceReport {
	out := []BraceReport{}
	for k, b := range s.Bars {
		r := BraceReport{Name: b.name, Mass: b.mass, Glue: s.glueReport(k)}
		for i := b.first; i < b.first+b.count; i++ {
			f := s.Result.BeamForces(i)
			e := &s.Model.Beams[i]
			p, q := s.Model.Nodes[e.Nodes[0]].P, s.Model.Nodes[e.Nodes[1]].P
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

// reactions sums what holds the plate, and by sector.
func (s *Solution) reactions() ReactionsReport {
	r := ReactionsReport{Applied: s.Result.Applied}
	lo, hi := s.span()
	posts := len(s.Result.Reactions) - len(s.Model.Springs) + s.firstPost
	for i, re := range s.Result.Reactions {
		p := re.At
		for k := range 3 {
			r.Total[k] += re.F[k]
		}
		if i >= posts {
			r.Posts = append(r.Posts, PostReport{Name: s.Case.Posts[i-posts].Name, Force: re.F[2]})
			continue
		}
		*r.Sectors.at(s.sectorOf(p[0], p[1], lo, hi)) += re.F[2]
	}
	return r
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

// sectorOf names the part of the rim a place belongs to: the two blocks'
// widths, else the side.
func (b *Built) sectorOf(x, y, lo, hi float64) string {
	r := &b.Case.Rim
	neck := y > (lo+hi)/2
	switch {
	case neck && math.Abs(x) <= float64(r.NeckBlock)/2:
		return "neck"
	case !neck && math.Abs(x) <= float64(r.TailBlock)/2:
		return "tail"
	case x < 0:
		return "bass"
	}
	return "treble"
}

// discretisation estimates the relative error of the bridge's sink (without a
// bridge, of the deepest place's). The same case on triangles twice as large
// gives a second value; the error of a method of second order falls to a
// quarter from one to the other, so a third of their difference is left
// (L. F. Richardson's extrapolation). NaN if the coarser case was not solved.
func (s *Solution) discretisation() Num {
	if s.Coarse == nil {
		return None()
	}
	fine, coarse := s.sink(), s.Coarse.sink()
	if fine == 0 {
		return None()
	}
	return Num(math.Abs(fine-coarse) / 3 / math.Abs(fine))
}

func (s *Solution) sink() float64 {
	if s.Bridge != nil {
		return -s.Result.Body[6*s.Bridge.mid+2]
	}
	return s.topReport().MostSunk.Value
}

// BodyPoint is the deformed place of the saddle at x from the bridge's middle.
func (s *Solution) saddleMove(x float64) [3]float64 {
	return s.Result.BodyMove(s.saddleNode(x), s.saddle(x))
}
