package viz

import (
	"fmt"
	"math"

	"archload/cases/answer"
	"archload/cases/design"

	"archload/mesh"
	"archload/viz/canvas"
	"archload/viz/figure"
	"archload/viz/scale"
)

// flowRange is the share of the plate's area whose values the legend of a load
// flow covers; the few beyond, under the foot, take its end colour.
const flowRange = 0.98

// drawLoadFlow draws lines of equal force over what goes through each mm of the
// plate.
func (u subject) drawLoadFlow() (*canvas.Picture, error) {
	s, r := u.s, u.r
	d := drawingOf(s, r)
	for _, l := range r.Flow.Lines {
		d.Flow = append(d.Flow, figure.Smoothed(l.Points))
	}
	force := r.Flow.Lines[0].Force
	d.FlowNote = fmt.Sprintf("line of force: each carries %s N, %.1f %% of the load", scale.Reading(force), 100*force/r.Flow.Load)
	d.Gauges, d.Rim = postMarks(s, r), rimHoldOf(s, r, false)
	field := figure.Field{Name: "vertical force through plate and braces", Unit: "N/mm", PerTriangle: answer.FlowField(s), Plain: true}
	field.Range = &[2]float64{0, figure.Quantile(s.Top.Built.Mesh.Plan, field.PerTriangle, flowRange)}
	return u.drawLoaded(d, field)
}

// drawRimReaction draws what the edge holds up from place to place.
func (u subject) drawRimReaction() (*canvas.Picture, error) {
	d := drawingOf(u.s, u.r)
	d.Gauges, d.Rim = postMarks(u.s, u.r), rimHoldOf(u.s, u.r, true)
	c := u.caption()
	c.Subtitle = "what the edge holds up, " + loadWords(u.r)
	return figure.PlanView(figure.PlanInput{Caption: c, Drawing: d})
}

// postMarks marks what each post between top and back holds up.
func postMarks(s *design.Solution, r *answer.Report) []figure.Mark {
	var out []figure.Mark
	for i, p := range r.Reactions.Posts {
		at := s.Top.Built.Case.Posts[i].At
		out = append(out, figure.Mark{Name: p.Name + " holds up", At: at, Value: p.Force, Unit: "N", Post: true})
	}
	return out
}

// rimHoldOf takes the rim's hold from a load flow; spread adds the bars.
func rimHoldOf(s *design.Solution, r *answer.Report, spread bool) *figure.RimHold {
	c := r.Flow.Sectors
	h := &figure.RimHold{Neck: c.Neck, Tail: c.Tail, Bass: c.Bass, Treble: c.Treble, Load: r.Flow.Load}
	if !spread {
		return h
	}
	st := answer.RimStations(s)
	for i, p := range st {
		h.Bars = append(h.Bars, figure.EdgeForce{At: mesh.Point{p.X, p.Y}, PerMM: rimMean(st, i), Sector: p.Sector})
	}
	return h
}

// rimMean is the hold about station i, N/mm: a mean over the edge to both sides,
// in which what is nearer counts more, by the square of a cosine that is nothing
// at figure.BarWindow, so that the line is smooth.
func rimMean(st []answer.RimStation, i int) float64 {
	n := len(st)
	force, length := st[i].Force, st[i].Along
	for _, dir := range [2]int{1, n - 1} {
		gone := 0.0
		for j := i; ; {
			k := (j + dir) % n
			gone += math.Hypot(st[k].X-st[j].X, st[k].Y-st[j].Y)
			if j = k; gone > figure.BarWindow || j == i {
				break
			}
			c := math.Cos(math.Pi / 2 * gone / figure.BarWindow)
			force, length = force+c*c*st[j].Force, length+c*c*st[j].Along
		}
	}
	return force / length
}
