package viz

import (
	"fmt"

	"archload/cases/answer"
	"archload/cases/bench/carve"
	"archload/mesh"
	"archload/viz/canvas"
	"archload/viz/figure"
	"archload/viz/scale"
)

// CarvingPictures shows where wood is to come off a plate that is being carved.
func CarvingPictures(r *carve.Report, title string) []Page {
	return []Page{{
		Name:  "take-off",
		Words: "What is to come off, in plan, from outside, neck up, bass left, in mm: above zero take off, below it is too thin already. The numbers stand where the caliper was: where it is too thin, and where most is to come off.",
		draw:  func(bare bool) (*canvas.Picture, error) { return carvingPicture(r, title, bare) },
	}}
}

// mostMarks is how many places of the caliper a picture tells.
const mostMarks = 12

func carvingPicture(r *carve.Report, title string, bare bool) (*canvas.Picture, error) {
	c := canvas.Caption{Title: title, Bare: bare, Subtitle: "what is to come off, beside the graduation of " + r.Target,
		Facts:  []string{fmt.Sprintf("%.0f g now, %.0f g to lose", r.Weight.Now, r.Weight.Now-r.Weight.Target), fmt.Sprintf("too thick at %d, too thin at %d of %d places", r.TooThick, r.TooThin, len(r.Places))},
		Footer: "archload; the surface through the caliper's readings less the graduation that is wanted"}
	d := figure.Drawing{}
	d.Outline, d.Holes = answer.OutlinesOf(r.Built)
	for i, p := range r.Foremost(mostMarks) {
		d.Gauges = append(d.Gauges, figure.Mark{Name: fmt.Sprintf("place %d: %.1f now, %.1f wanted", i+1, p.Now, p.Target), At: mesh.Point{p.X, p.Y}, Value: p.TakeOff, Unit: "mm"})
	}
	f := figure.Field{Name: "to come off", Unit: "mm", Nodal: r.TakeOff, Kind: scale.Signed}
	return figure.PlanView(figure.PlanInput{Caption: c, Plan: r.Built.Mesh.Plan, Field: &f, Drawing: d})
}
