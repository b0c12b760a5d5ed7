package answer

import (
	"fmt"
	"math"

	"archload/cases"
	"archload/cases/design"
	"archload/materials"
)

// GlueReport is what the glue line between a brace and the plate bears, MPa,
// each a mean over 10 mm of line and the brace's width. The limits are those of
// the softer of the two woods: a sound joint fails in the wood beside the glue
// (trade knowledge, from memory).
type GlueReport struct {
	Shear     Spot          `json:"shear"` // greatest, along and across the line together
	ShearUsed Num           `json:"shear_used"`
	Peel      Spot          `json:"peel"` // greatest pull square to the plate's face; 0 if it presses everywhere
	PeelUsed  Num           `json:"peel_used"`
	Along     []glueStation `json:"along"`
}

// glueStation is the glue line at one place.
type glueStation struct {
	X     float64 `json:"x"`
	Y     float64 `json:"y"`
	Shear float64 `json:"shear"` // MPa, without sign
	Peel  float64 `json:"peel"`  // MPa, positive where the brace would come off
}

const (
	glueWindow = 10.0 // mm, length of the mean
	glueStep   = 2.0  // mm, from one window to the next
)

// glueLine is a brace's section force along its line: in the middle of each
// stretch, and nothing at its two ends.
type glueLine struct {
	at    []float64    // mm along the line in plan
	force [][3]float64 // N, on the face toward the line's end
	x     [][3]float64 // nodes of the plate along the line
	up    [][3]float64 // their normals
	s     []float64    // mm along the line, of the nodes
}

func lineOf(s *design.Solution, b design.Bar) *glueLine {
	g := &glueLine{at: []float64{0}, force: [][3]float64{{}}}
	node := func(n int32) {
		p := s.Top.Built.Model.Nodes[n]
		l := 0.0
		if k := len(g.x); k > 0 {
			l = g.s[k-1] + math.Hypot(p.P[0]-g.x[k-1][0], p.P[1]-g.x[k-1][1])
		}
		g.x, g.up, g.s = append(g.x, p.P), append(g.up, p.N), append(g.s, l)
	}
	node(s.Top.Built.Model.Beams[b.First].Nodes[0])
	for i := b.First; i < b.First+b.Count; i++ {
		node(s.Top.Built.Model.Beams[i].Nodes[1])
		k := len(g.s)
		g.at = append(g.at, (g.s[k-2]+g.s[k-1])/2)
		g.force = append(g.force, s.Result.SectionForce(i))
	}
	g.at, g.force = append(g.at, g.length()), append(g.force, [3]float64{})
	return g
}

func (g *glueLine) length() float64 { return g.s[len(g.s)-1] }

// lerp is v between its stations.
func lerp(at []float64, v [][3]float64, s float64) (out [3]float64) {
	k := 1
	for k < len(at)-1 && at[k] < s {
		k++
	}
	t := min(1, max(0, (s-at[k-1])/(at[k]-at[k-1])))
	for c := range out {
		out[c] = v[k-1][c] + t*(v[k][c]-v[k-1][c])
	}
	return out
}

// handOver is the force that the plate gives the brace between a and b, N:
// square to the plate's face, outward, and in the face.
func (g *glueLine) handOver(a, b float64) (out, in float64) {
	p, q := lerp(g.at, g.force, a), lerp(g.at, g.force, b)
	n := lerp(g.s, g.up, (a+b)/2)
	var f [3]float64
	size, all := 0.0, 0.0
	for c := range f {
		f[c] = p[c] - q[c] // the brace's own balance: q - p + f = 0
		out += f[c] * n[c]
		size += n[c] * n[c]
		all += f[c] * f[c]
	}
	out /= math.Sqrt(size)
	return out, math.Sqrt(math.Max(0, all-out*out))
}

// glueReport goes along one brace. The plate is above: where it pulls the brace
// outward, the glue is in tension. The couples that a brace's twist adds across
// its width are left out.
func glueReport(s *design.Solution, i int) GlueReport {
	br := &s.Top.Built.Case.Braces[s.Top.Built.Bars[i].Brace]
	g := lineOf(s, s.Top.Built.Bars[i])
	r := GlueReport{ShearUsed: None(), PeelUsed: None()}
	l := g.length()
	window := math.Min(glueWindow, l)
	n := cases.Pieces(l-window, glueStep)
	for k := range n + 1 {
		a := (l - window) * float64(k) / float64(n)
		mid := a + window/2
		area := window * br.Width.Value(mid/l)
		out, in := g.handOver(a, a+window)
		p := lerp(g.s, g.x, mid)
		st := glueStation{X: p[0], Y: p[1], Shear: in / area, Peel: out / area}
		r.Along = append(r.Along, st)
		if st.Shear > r.Shear.Value || k == 0 {
			r.Shear = Spot{Value: st.Shear, X: st.X, Y: st.Y}
		}
		if st.Peel > r.Peel.Value || k == 0 {
			r.Peel = Spot{Value: math.Max(0, st.Peel), X: st.X, Y: st.Y}
		}
	}
	woods := []string{"plate.wood", fmt.Sprintf("brace[%d].wood", s.Top.Built.Bars[i].Brace+1)}
	if limit := softer(s.Top.Built.Case, func(m materials.Strength) float64 { return m.ShearL }, woods...); limit > 0 {
		r.ShearUsed = Num(r.Shear.Value / limit)
	}
	if limit := softer(s.Top.Built.Case, func(m materials.Strength) float64 { return m.TensionPerp }, woods...); limit > 0 {
		r.PeelUsed = Num(r.Peel.Value / limit)
	}
	return r
}
