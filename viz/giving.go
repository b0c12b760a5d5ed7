package viz

import (
	"fmt"

	"archload/cases/answer"
	"archload/cases/stability"
	"archload/viz/canvas"
	"archload/viz/figure"
	"archload/viz/scale"
)

// GivingPictures draws the shapes in which a top would lose its stability.
func GivingPictures(g *stability.Giving, r *stability.GivingReport) []Page {
	var out []Page
	for i := range r.Stability.Modes {
		out = append(out, Page{
			Name:  fmt.Sprintf("gives-way-%02d", i+1),
			Words: "In which shape the top would give way, in plan, from outside, neck up, bass left: what goes out has one colour, what goes in the other; its size is not known.",
			draw:  func(bare bool) (*canvas.Picture, error) { return givingPicture(g, r, i, bare) },
		})
	}
	return out
}

func givingPicture(g *stability.Giving, r *stability.GivingReport, i int, bare bool) (*canvas.Picture, error) {
	b, m := g.Linear.Top.Built, &r.Stability.Modes[i]
	c := canvas.Caption{Title: r.Title, Bare: bare,
		Subtitle: fmt.Sprintf("would give way so at %.2f times the load, by linear theory", m.Factor),
		Facts:    []string{b.Case.Plate.Wood + ", " + b.Case.Plate.Made},
		Footer:   fmt.Sprintf("archload; %d nodes; an indication", r.Mesh.Nodes)}
	d := figure.Drawing{Grain: float64(b.Case.Plate.GrainAngle)}
	d.Outline, d.Holes = answer.OutlinesOf(b)
	d.Braces = strips(b.Case.Braces, false)
	f := figure.Field{Name: "outward movement over the greatest", Nodal: g.Upward(i), Kind: scale.Signed, Plain: true, Range: &[2]float64{-1, 1}}
	return figure.PlanView(figure.PlanInput{Caption: c, Plan: b.Mesh.Plan, Field: &f, Drawing: d})
}
