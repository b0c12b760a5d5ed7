package viz

import (
	"archload/cases/answer"
	"archload/cases/design"

	"archload/viz/canvas"
	"archload/viz/figure"
)

// subject is what a page is about.
type subject struct {
	s    *design.Solution
	r    *answer.Report
	bare bool // for a report, which says itself what its pages are about
}

func (u subject) caption() canvas.Caption {
	c := captionOf(u.s, u.r)
	c.Bare = u.bare
	return c
}

// drawPlan draws a field over the plate; the subtitle names it.
func (u subject) drawPlan(d figure.Drawing, f figure.Field, subtitle string) (*canvas.Picture, error) {
	c := u.caption()
	c.Subtitle = subtitle
	return figure.PlanView(figure.PlanInput{Caption: c, Plan: u.s.Top.Built.Mesh.Plan, Field: &f, Drawing: d})
}

// drawLoaded draws a field of the loaded plate.
func (u subject) drawLoaded(d figure.Drawing, f figure.Field) (*canvas.Picture, error) {
	return u.drawPlan(d, f, f.Name+", "+loadWords(u.r))
}
