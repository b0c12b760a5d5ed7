package viz

import (
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/mesh"
)

// flowRange is the share of the plate's area whose values the legend of a load
// flow covers; the few beyond, under the foot, take its end colour.
const flowRange = 0.98

// flowPages are the pages of the load flow; none without one.
func (u subject) flowPages(d Drawing) []Page {
	s, r := u.s, u.r
	if r.Flow == nil || len(r.Flow.Lines) == 0 {
		return nil
	}
	lines, rim := d, d
	for _, l := range r.Flow.Lines {
		lines.Flow = append(lines.Flow, Smoothed(l.Points))
	}
	force := r.Flow.Lines[0].Force
	lines.FlowNote = fmt.Sprintf("line of force: each carries %s N, %.1f %% of the load", reading(force), 100*force/r.Flow.Load)
	lines.Gauges, rim.Gauges = postMarks(s, r), postMarks(s, r)
	lines.Rim, rim.Rim = rimHoldOf(s, r, false), rimHoldOf(s, r, true)
	field := Field{Name: "vertical force through plate and braces", Unit: "N/mm", PerTriangle: s.FlowField(), Plain: true}
	field.Range = &[2]float64{0, Quantile(s.Top.Built.Mesh.Plan, field.PerTriangle, flowRange)}
	return []Page{
		u.planPage("load-flow", lines, field),
		{Name: "rim-reaction", picture: func() (*Picture, error) {
			c := u.caption()
			c.Subtitle = "what the edge holds up, " + loadWords(r)
			return PlanView(PlanInput{Caption: c, Drawing: rim})
		}},
	}
}

// Quantile is the value of a field of the triangles that a share q of the plan's area does not exceed.
func Quantile(p *mesh.Plan, v []float64, q float64) float64 {
	order := make([]int, len(v))
	all := 0.0
	for i := range order {
		order[i] = i
		all += area(p, p.Tris[i])
	}
	slices.SortStableFunc(order, func(a, b int) int { return int(sign(v[a] - v[b])) })
	sum := 0.0
	for _, i := range order {
		if sum += area(p, p.Tris[i]); sum >= q*all {
			return v[i]
		}
	}
	return v[order[len(order)-1]]
}

// Smoothed draws a line of force without the small corners of the triangles:
// points every few millimetres, each drawn toward its neighbours' mean three
// times. The ends stay.
func Smoothed(l [][2]float64) []mesh.Point {
	const step = 2.5 // mm
	pts := make([]pt, len(l))
	for i, p := range l {
		pts[i] = pt{p[0], p[1]}
	}
	n := max(1, int(math.Round(polyLength(pts)/step)))
	out := make([]mesh.Point, n+1)
	for i := range out {
		q, _ := along(pts, float64(i)/float64(n))
		out[i] = mesh.Point{q.X, q.Y}
	}
	for range 3 {
		last := out[0]
		for i := 1; i < n; i++ {
			here := out[i]
			for k := range here {
				out[i][k] = (last[k] + 2*here[k] + out[i+1][k]) / 4
			}
			last = here
		}
	}
	return out
}

// postMarks marks what each post between top and back holds up.
func postMarks(s *cases.Solution, r *cases.Report) []Mark {
	var out []Mark
	for i, p := range r.Reactions.Posts {
		at := s.Top.Built.Case.Posts[i].At
		out = append(out, Mark{Name: p.Name + " holds up", At: at, Value: p.Force, Unit: "N", Post: true})
	}
	return out
}

// drawFlow draws lines of force with an arrow head on each, toward the rim.
func (v *planView) drawFlow(g *page) {
	halo := pen{width: 1.9, color: faded(paperColor(), 0.55)}
	for _, l := range v.in.Drawing.Flow {
		q := v.lay.frame.all(l)
		g.stroke([][]pt{q}, false, halo)
		g.stroke([][]pt{q}, false, flowPen())
	}
	var heads []pt
	for _, l := range v.in.Drawing.Flow {
		q := v.lay.frame.all(l)
		if polyLength(q) < 24 {
			continue
		}
		for _, share := range []float64{0.6, 0.7, 0.5, 0.8, 0.4, 0.9} {
			at, angle := along(q, share)
			if !crowded(heads, at) {
				g.head(at, angle, flowPen().color)
				heads = append(heads, at)
				break
			}
		}
	}
}

// crowded tells whether an arrow head stands near.
func crowded(heads []pt, at pt) bool {
	return slices.ContainsFunc(heads, func(h pt) bool { return math.Hypot(h.X-at.X, h.Y-at.Y) < 6 })
}
