package answer

import (
	"fmt"
	"math"

	"archload/cases"
	"archload/cases/body"
	"archload/cases/design"
	"archload/cases/pull"
)

// SummarizeCompanion puts an answer that was made to be compared with in the
// maker's words: it finds the load flow first where the edge's shares are read off it.
func SummarizeCompanion(s *design.Solution) *Report {
	own := *s
	if EdgeByFlow(s.Top.Built.Case) && own.Flow == nil {
		own.FindFlow()
	}
	return Summarize(&own)
}

// Summarize puts an answer in the maker's words.
func Summarize(s *design.Solution) *Report {
	c := s.Top.Built.Case
	r := &Report{Format: cases.Format, Units: cases.UnitsNote, Title: c.Title, Warnings: warnings(s.Top.Built)}
	q := s.Top.Built.Mesh.Quality()
	r.Mesh = MeshReport{Nodes: len(s.Top.Built.Model.Nodes), Triangles: len(s.Top.Built.Model.Shells), Dofs: 6 * len(s.Top.Built.Model.Nodes), MinAngle: q.MinAngle}
	r.Mass = MassOf(s.Top.Built)
	r.Top = topReport(s)
	r.Strings = pull.StringsOf(s.Top.Built.Geometry)
	if s.Top.Built.Bridge != nil {
		r.Bridge = bridgeReport(s)
		r.Bridge.setFrictions(s)
	}
	r.Gauges = gauges(s)
	r.Bench = Bench(r.Gauges)
	r.Braces = braceReports(s)
	var err error
	if r.Flow, err = FlowLines(s); err != nil {
		r.Warnings = append(r.Warnings, err.Error())
	}
	r.Reactions = reactions(s, r.Flow)
	e := s.Result.Energy
	r.Energy = EnergyReport{Membrane: e.Membrane, Bending: e.Bending, Shear: e.Shear, Braces: e.Of(design.PartBraces),
		Bridge: e.Of(design.PartBridge), Bedding: e.Of(design.PartBedding), Rim: e.Of(design.PartRim), Total: e.Total()}
	r.Energy.Back = e.Of(design.PartBack)
	r.Body = bodyReport(s)
	if s.Result.State != nil {
		r.Energy.Released = s.Result.State.Lost
		if rough(s) {
			r.Energy.Released, r.Energy.Dissipated = 0, s.Result.State.Lost
		}
	}
	r.Strength = Strength(s)
	r.Decades = decades(s, r.Strength.Used)
	r.Warnings = append(r.Warnings, r.cautions()...)
	if s.CoarseFault != nil {
		r.Warnings = append(r.Warnings, fmt.Sprintf("what the mesh costs is not known: no answer on triangles twice as large: %v", s.CoarseFault))
	}
	ch := s.Result.Checks
	r.Error = ErrorReport{Equilibrium: ch.Force, Moment: ch.Moment, Energy: ch.Energy,
		Complementarity: s.Result.Complementarity, Discretisation: discretisation(s)}
	if r.Body != nil && len(c.Loads) == 0 {
		r.Error.Outside = ch.Outside
	}
	r.Timing = s.Spent
	if s.Coarse != nil {
		add(&r.Timing, s.Coarse.Spent, s.Top.Spent.Mesh)
	}
	if s.Aged != nil {
		add(&r.Timing, s.Aged.Least.Spent, 0)
		add(&r.Timing, s.Aged.Most.Spent, 0)
	}
	r.Timing.Total = r.Timing.Mesh + r.Timing.Assemble + r.Timing.Factor + r.Timing.Condense + r.Timing.Contact + r.Timing.Flow
	return r
}

// decades is what years of load leave: sink and strength used change as those of the aged design on the coarser
// triangles do. Where that is not known the stress is taken as it is.
func decades(s *design.Solution, used Num) DecadesReport {
	d := DecadesReport{Years: design.OldYears, StrengthUsed: used / Num(LongTerm()), Sink: [2]Num{None(), None()}}
	if s.Aged != nil {
		for k, times := range s.Aged.Grown(Sink) {
			d.Sink[k] = Num(times * Sink(s))
		}
		times := s.Aged.Grown(func(a *design.Solution) float64 { return float64(Strength(a).Used) })
		d.StrengthUsed *= Num(max(times[0], times[1]))
	}
	return d
}

// add counts the coarser solve's time too; shared was spent once for both.
func add(s *design.Stages, o design.Stages, shared float64) {
	s.Mesh += math.Max(0, o.Mesh-shared)
	s.Assemble += o.Assemble
	s.Factor += o.Factor
	s.Condense += o.Condense
	s.Contact += o.Contact
}

// bodyReport is what a body does; nil without one.
func bodyReport(s *design.Solution) *body.Report {
	br := body.Bridge{Saddle: func(x float64) [3]float64 { return saddleMove(s, x) }}
	if s.Top.Built.Bridge != nil {
		br.Sink = Sink(s)
	}
	return body.Of(s, br)
}
