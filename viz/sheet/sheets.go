package sheet

import (
	"archload/cases"
	"archload/cases/shape"
)

// Options steers Sheets; the zero value is usable.
type Options struct {
	Paper Paper   // "" means A4
	Every float64 // from one cross-arch template to the next, mm; 0: the stations of the case's own templates, else 50
}

// Of lists the full-scale drawings of a design: plan with the contours of
// the arch, graduation map, templates of the arch outside and inside, braces,
// sound holes, and the bridge's foot. No
// solve is needed; faults of the geometry come as cases.Faults.
func Of(c *cases.Case, o Options) ([]*Sheet, error) {
	if o.Paper == "" {
		o.Paper = A4
	}
	g, err := shape.NewGeometry(c)
	if err != nil {
		return nil, err
	}
	s := shop{c: c, plate: g.Plate, notes: g, rim: g.Outline.Polyline(0.02), every: o.Every}
	list := []*Sheet{s.plan(), s.graduation(), s.crossArches(), s.longArches(), s.insides()}
	if len(fitted(c)) > 0 {
		list = append(list, s.braces())
	}
	if len(g.Holes) > 0 {
		list = append(list, s.holes())
	}
	if c.Bridge != nil {
		list = append(list, s.foot())
	}
	doubts := warnings(c, g)
	for _, sh := range list {
		sh.Paper, sh.subject, sh.Warnings = o.Paper, c.Title, doubts
		sh.warned()
	}
	return list, nil
}
