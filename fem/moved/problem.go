package moved

import (
	"archload/fem"
	"archload/fem/contact"
)

// Problem is a prepared plate with what stands on it and the whole load.
type Problem struct {
	Plate *fem.Prepared
	Cond  *contact.Condensed // of Plate, with the loads on it
	Stand *contact.Problem   // on Cond; nil without a body
	Body  *contact.Body      // of Stand
	Fit   contact.LoadCase   // gaps, and the loads on the body
	Foot  float64            // mm, how far the contact plane lies below the body's nodes
	// Condense reduces the plate anew with another factor.
	Condense func(p *fem.Prepared) *contact.Condensed
	Workers  int
}

// setting is a stiffness with its factor and the plate's compliance under the pads.
type setting struct {
	plate *fem.Prepared
	cond  *contact.Condensed
	stand *contact.Problem
}

func (p *Problem) first() setting { return setting{p.Plate, p.Cond, p.Stand} }

// tangent is the setting of the stiffness at movements u.
func (p *Problem) tangent(u []float64) (setting, error) {
	sys := p.Plate.WithTangent(u, p.Workers)
	plate, err := sys.PrepareLike(p.Plate, p.Workers)
	if err != nil {
		return setting{}, err
	}
	s := setting{plate: plate, cond: p.Condense(plate)}
	if p.Stand != nil {
		s.stand, err = s.cond.Problem(p.Body)
	}
	return s, err
}
