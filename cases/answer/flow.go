package answer

import (
	"math"

	"archload/cases/design"
	"archload/mesh"
)

// FlowReport is the path of the load through plate and braces: lines of force
// from foot to rim, each with the force it stands for.
type FlowReport struct {
	Load       float64           `json:"load"`       // N, downward on the plate
	Divergence float64           `json:"divergence"` // greatest error of the balance at a node over the load, 1
	Correction float64           `json:"correction"` // what was changed to balance it over the flow itself, 1
	Greatest   Spot              `json:"greatest"`   // N/mm, in a circle of the plate's thickness
	Sectors    SectorsReport     `json:"sectors"`    // N, what the plate gives to each part of its rim
	Supports   float64           `json:"supports"`   // N, what posts and bench supports take from it
	Direct     float64           `json:"direct"`     // N, of it so near the load that no line is drawn
	Braces     []BraceFlowReport `json:"braces"`
	Lines      []FlowLineReport  `json:"lines"`
}

// BraceFlowReport is what one brace does for the flow.
type BraceFlowReport struct {
	Name     string  `json:"name"`
	Carries  float64 `json:"carries"` // N, greatest vertical force along it, positive toward its line's end
	X        float64 `json:"x"`       // mm, where
	Y        float64 `json:"y"`
	HandOver float64 `json:"hand_over"` // N, taken from the plate and given back elsewhere
	Share    float64 `json:"share"`     // 1, hand-over over the load
}

// FlowLineReport is one line of force.
type FlowLineReport struct {
	Force  float64      `json:"force"`   // N, half of it to each side
	EndsAt string       `json:"ends_at"` // "neck", "tail", "bass", "treble", or "support"
	Points [][2]float64 `json:"points"`  // mm, from the foot
}

// flowLines is how many lines a load is divided into: each is 2.5 % of it.
const flowLines = 40

// lineTolerance is how far a line's points may leave out of its bends, mm.
const lineTolerance = 0.05

// FlowLines is where the load goes at the solution's own load, once FindFlow
// has found it; nil without a load straight down.
func FlowLines(s *design.Solution) (*FlowReport, error) {
	f := s.Flow
	if f == nil {
		return nil, s.FlowFault
	}
	r := &FlowReport{Load: f.Total, Divergence: f.Divergence, Correction: f.Correction, Braces: []BraceFlowReport{}}
	r.Greatest = greatestFlow(s)
	lo, hi := s.Top.Built.Span()
	parts := rimParts(s.Top.Built)
	for n, v := range f.Rim {
		if block := s.Top.Built.BlockAt(int32(n)); block != "" {
			*r.Sectors.at(block) += f.Support[n]
		} else {
			r.Supports += f.Support[n]
		}
		if v == 0 {
			continue
		}
		p := s.Top.Built.Model.Nodes[n].P
		if at, outline := parts[mesh.Point{p[0], p[1]}]; outline {
			r.Sectors.add(at, v)
		} else { // a post at the edge of a hole
			r.Supports += v
		}
	}
	for _, b := range f.Braces {
		r.Braces = append(r.Braces, BraceFlowReport{Name: s.Top.Built.Bars[b.Group].Name, Carries: b.Force, X: b.At[0], Y: b.At[1],
			HandOver: b.HandOver, Share: b.HandOver / f.Total})
	}
	lines, err := f.Lines(flowLines)
	if err != nil {
		return nil, err
	}
	r.Direct = f.Total
	for _, l := range lines {
		r.Direct -= l.Force
		one := FlowLineReport{Force: l.Force, EndsAt: "support", Points: thinned(l.Points, lineTolerance)}
		if end := l.Points[len(l.Points)-1]; !l.Inside {
			one.EndsAt = s.Top.Built.SectorOf(end[0], end[1], lo, hi)
		}
		r.Lines = append(r.Lines, one)
	}
	return r, nil
}

// FlowField is the size of the vertical force that goes through plate and
// braces at each triangle of the plan, N/mm; nil without a load flow.
func FlowField(s *design.Solution) []float64 {
	if s.Flow == nil {
		return nil
	}
	out := make([]float64, len(s.Flow.Whole))
	for i, t := range s.Flow.Whole {
		out[i] = math.Hypot(t[0], t[1])
	}
	return out
}

// greatestFlow finds where most force goes through a millimetre of plan,
// averaged over a circle as wide as the plate is thick.
func greatestFlow(s *design.Solution) Spot {
	shape := design.Circle()
	worst := Spot{}
	for i := range s.Flow.Whole {
		tris, whole := s.Top.Built.CircleAt(i, shape)
		if !whole {
			continue
		}
		var m [2]float64
		for _, t := range tris {
			m[0] += s.Flow.Whole[t][0] / float64(len(tris))
			m[1] += s.Flow.Whole[t][1] / float64(len(tris))
		}
		if v := math.Hypot(m[0], m[1]); v > worst.Value {
			c := s.Top.Built.Centroid(i)
			worst = Spot{Value: v, X: c[0], Y: c[1]}
		}
	}
	return worst
}

// RimStation is what the rim takes at one node of the outline.
type RimStation struct {
	X, Y  float64 // mm
	Force float64 // N, upward on the plate
	Along float64 // mm of outline that belong to the node

	Sector string // "neck", "tail", "bass" or "treble"
}

// RimStations lists what the plate gives to its rim, anticlockwise; nil without
// a load flow.
func RimStations(s *design.Solution) []RimStation {
	if s.Flow == nil {
		return nil
	}
	loop := s.Top.Built.Mesh.Rim
	lo, hi := s.Top.Built.Span()
	var out []RimStation
	for k, n := range loop {
		a, p, b := s.Top.Built.Mesh.Points[loop[(k+len(loop)-1)%len(loop)]], s.Top.Built.Mesh.Points[n], s.Top.Built.Mesh.Points[loop[(k+1)%len(loop)]]
		out = append(out, RimStation{X: p[0], Y: p[1], Force: s.Flow.Rim[n], Sector: s.Top.Built.SectorOf(p[0], p[1], lo, hi),
			Along: (math.Hypot(p[0]-a[0], p[1]-a[1]) + math.Hypot(b[0]-p[0], b[1]-p[1])) / 2})
	}
	return out
}

// thinned leaves out points of a polyline that lie within tol (mm) of the
// chord between those kept, and rounds to a hundredth of a millimetre (D. H.
// Douglas, T. K. Peucker, 1973).
func thinned(l [][2]float64, tol float64) [][2]float64 {
	keep := make([]bool, len(l))
	keep[0], keep[len(l)-1] = true, true
	for open := [][2]int{{0, len(l) - 1}}; len(open) > 0; {
		a, b := open[len(open)-1][0], open[len(open)-1][1]
		open = open[:len(open)-1]
		far, most := -1, tol
		for i := a + 1; i < b; i++ {
			if d := offChord(l[a], l[b], l[i]); d > most {
				far, most = i, d
			}
		}
		if far > 0 {
			keep[far] = true
			open = append(open, [2]int{a, far}, [2]int{far, b})
		}
	}
	var out [][2]float64
	for i, p := range l {
		if keep[i] {
			out = append(out, [2]float64{math.Round(100*p[0]) / 100, math.Round(100*p[1]) / 100})
		}
	}
	return out
}

// offChord is the distance of p from the piece a b, mm.
func offChord(a, b, p [2]float64) float64 {
	dx, dy := b[0]-a[0], b[1]-a[1]
	u := 0.0
	if l := dx*dx + dy*dy; l > 0 {
		u = min(1, max(0, ((p[0]-a[0])*dx+(p[1]-a[1])*dy)/l))
	}
	return math.Hypot(p[0]-a[0]-u*dx, p[1]-a[1]-u*dy)
}
