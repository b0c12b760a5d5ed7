package answer

import (
	"math"

	"archload/cases/design"
)

// BraceReport is what one brace carries.
type BraceReport struct {
	Name   string         `json:"name"`
	Mass   float64        `json:"mass"`
	Axial  Spot           `json:"axial"`  // N of greatest size, tension positive, and where
	Moment Spot           `json:"moment"` // N·mm of greatest size, tension at the bottom positive, and where
	Energy float64        `json:"energy"`
	Glue   GlueReport     `json:"glue"`
	Along  []BraceStation `json:"along"` // one for each stretch, at its middle
}

// BraceStation is what a brace carries at one place of its line.
type BraceStation struct {
	X      float64 `json:"x"`
	Y      float64 `json:"y"`
	Axial  float64 `json:"axial"`  // N, tension positive
	Moment float64 `json:"moment"` // N·mm, tension at the bottom positive
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
