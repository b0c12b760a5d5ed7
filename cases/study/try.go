package study

import (
	"context"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
)

// Try tries reliefs on a prepared top. Each shape is followed once: with the
// gap of the least depth up to full load. A deeper one is the same path at less
// load, because the contact is homogeneous in load and gap together (see
// contact.State.Likewise); only where misfit or a hollow across the foot adds to the
// gap must every depth be followed by itself.
//
// On the moved shape the same holds about the shape that one relief gives it: another depth is off by the square
// of what it changes, a few 1 in 10⁴ of the sink. The relief of the bench sheet is settled by itself.
func Try(ctx context.Context, p *design.Top, o TrialOptions) (*Trial, error) {
	if p.Built.Bridge == nil {
		return nil, p.Built.Case.Fault("bridge", "a relief lies under a bridge; want a table [bridge] and [strings]")
	}
	t := &Trial{Format: cases.Format, Units: cases.UnitsNote, Title: p.Built.Case.Title, Downforce: p.Built.Geometry.StringSum().Downforce}
	t.Crushing = answer.Num(answer.CrushingLimit(p.Built.Case))
	tr := &trier{top: p, moved: o.Moved}
	if o.Moved != nil {
		tr.top = o.Moved.About
	}
	for _, shape := range o.Shapes {
		pts, err := tr.shape(ctx, shape, o.Depths)
		if err != nil {
			return nil, err
		}
		t.Points = append(t.Points, pts...)
	}
	return t, tr.sheet(ctx, p, t, o)
}
