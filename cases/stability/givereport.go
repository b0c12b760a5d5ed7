package stability

import (
	"math"

	"archload/cases"
	"archload/cases/answer"
)

// GivingReport says at how many times its load a design would lose its stability.
type GivingReport struct {
	Format    int               `json:"format"`
	Units     string            `json:"units"`
	Title     string            `json:"title"`
	Times     float64           `json:"times"` // what every force of the case was multiplied by, 1; factors are of that load
	Mesh      answer.MeshReport `json:"mesh"`
	Stability Factors           `json:"stability"`
	Cautions  []string          `json:"cautions"`
}

// Factors are the lowest factors on the load, ascending, and their shapes.
type Factors struct {
	Factors   []float64   `json:"factors"`
	Modes     []GivingWay `json:"modes"`
	NoneBelow answer.Num  `json:"none_below"` // no other factor than those listed lies below this one, by a count
	Bearing   int         `json:"bearing"`    // points of the foot that stay in contact
	Path      *GivingPath `json:"path"`       // on the moved shape; null if not asked for
	// OverDecades is an indication of what fifty years of load leave of the lowest factor, with the most and the
	// least creep of the woods, the contact followed; null where a wood's creep is not known.
	OverDecades [2]answer.Num `json:"over_decades"`
}

// GivingPath is the load followed on the moved shape.
type GivingPath struct {
	Limit     answer.Num  `json:"limit"`      // factor at which the top gives way; null: not up to the last point
	KnockDown answer.Num  `json:"knock_down"` // that over the lowest linear factor, 1
	Points    []PathPoint `json:"points"`
}

// AddPath adds the load followed on the moved shape.
func (r *GivingReport) AddPath(p *Raised) {
	g := &GivingPath{Limit: answer.None(), KnockDown: answer.None(), Points: p.Points}
	if p.Limit > 0 {
		g.Limit = answer.Num(p.Limit)
		if f := r.Stability.Factors; len(f) > 0 {
			g.KnockDown = answer.Num(p.Limit / f[0])
		}
	}
	r.Stability.Path = g
}

// GivingWay is the shape in which stability is lost.
type GivingWay struct {
	Factor float64 `json:"factor"`
	X      float64 `json:"x"` // mm, place of the top that moves most
	Y      float64 `json:"y"`
	Inward bool    `json:"inward"` // the load does more work when it moves inward there; false: outward
	// Elsewhere is the largest movement of the other sign over that, 0 to 1: 0, one dent; 1, as much
	// out as in.
	Elsewhere float64 `json:"elsewhere"`
}

// SummarizeGiving puts factors and shapes in the maker's words.
func SummarizeGiving(g *Giving, times float64) *GivingReport {
	b := g.Linear.Top.Built
	r := &GivingReport{Format: cases.Format, Units: cases.UnitsNote, Title: b.Case.Title, Times: times, Cautions: cautions(b.Case)}
	r.Mesh = answer.MeshReport{Nodes: len(b.Model.Nodes), Triangles: len(b.Model.Shells), Dofs: 6 * len(b.Model.Nodes), MinAngle: b.Mesh.Quality().MinAngle}
	s := &r.Stability
	s.Factors, s.Modes, s.NoneBelow = []float64{}, []GivingWay{}, answer.None()
	switch {
	case g.Modes.Below > 0:
		s.NoneBelow = answer.Num(g.Modes.Below)
	case g.Modes.Most > 0:
		s.NoneBelow = answer.Num(g.Modes.Most)
	}
	s.Bearing = g.Bearing
	s.OverDecades = [2]answer.Num{answer.None(), answer.None()}
	for k, f := range g.OverDecades {
		if f > 0 {
			s.OverDecades[k] = answer.Num(f)
		}
	}
	for i, f := range g.Modes.Factors {
		s.Factors = append(s.Factors, f)
		s.Modes = append(s.Modes, g.way(i))
	}
	return r
}

// way describes shape i by the top's nodes alone.
func (g *Giving) way(i int) GivingWay {
	b, shape := g.Linear.Top.Built, g.Modes.Shapes[i]
	w := GivingWay{Factor: g.Modes.Factors[i]}
	up, down, at := 0.0, 0.0, [2]int{}
	for n := range b.PlateN {
		z := shape[6*n+2]
		if z > up {
			up, at[0] = z, n
		}
		if z < down {
			down, at[1] = z, n
		}
	}
	most, other, node := -down, up, at[1]
	if up > -down {
		most, other, node = up, -down, at[0]
	}
	if most > 0 {
		w.Elsewhere = other / most
	}
	p := b.Model.Nodes[node].P
	w.X, w.Y = p[0], p[1]
	w.Inward = (g.work(i) > 0) == (node == at[1])
	return w
}

// work is what the load's forces do on shape i, N·mm at the size it has; below zero the shape is of the sense
// against them.
func (g *Giving) work(i int) float64 {
	work, shape := 0.0, g.Modes.Shapes[i]
	for k, f := range g.Linear.Result.Load {
		if k%6 < 3 {
			work += f * shape[k]
		}
	}
	return work
}

// cautions say what the factors leave out.
func cautions(c *cases.Case) []string {
	list := []string{
		"an indication: a top that bends on its way gives way before, and wood that creeps or is softer than the card earlier still",
		"the shape as carved, without misfit, ripple or a crack; what bears at this load stays in contact",
	}
	if c.Strings != nil {
		list = append(list, "the strings keep their direction and their tension, and do not hold the saddle")
	}
	return append(list, "no factor makes it safe to raise the tension of real strings: cracks, glue and crushing come first")
}

// Upward is the movement of the top's nodes along z in shape i, the greatest 1 or -1, in the sense in which
// the load does work.
func (g *Giving) Upward(i int) []float64 {
	b, shape := g.Linear.Top.Built, g.Modes.Shapes[i]
	most := 0.0
	up := make([]float64, b.PlateN)
	for n := range up {
		up[n] = shape[6*n+2]
		most = max(most, math.Abs(up[n]))
	}
	if g.work(i) < 0 {
		most = -most
	}
	for n := range up {
		up[n] /= most
	}
	return up
}
