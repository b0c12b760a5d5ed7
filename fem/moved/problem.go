package moved

import (
	"errors"
	"fmt"
	"math"

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
	// Condense reduces the plate anew with another factor.
	Condense func(p *fem.Prepared) *contact.Condensed
	Workers  int
}

// Effort says what an answer took.
type Effort struct {
	Steps    int // linear contact problems
	Tangents int // factors beside the first
	Parts    int // load steps; 1: the whole load at once
}

// GivesWayError says that no equilibrium was found up to the load that was asked for.
type GivesWayError struct {
	Share float64 // of the load up to which there is one
}

// Error says at what share the equilibrium is lost.
func (e GivesWayError) Error() string {
	return fmt.Sprintf("no equilibrium on the moved shape beyond %.3g of the load: there the plate gives way", e.Share)
}

// Solve finds the equilibrium under a share of the load, which may be above 1. Errors are those of
// the contact, and GivesWayError.
func (p *Problem) Solve(share float64) (*contact.Result, Effort, error) {
	w := &walk{p: p, on: p.first(), at: answer{u: make([]float64, 6*len(p.Plate.Model.Nodes))}}
	if err := w.reach(share); err != nil {
		return nil, w.effort, err
	}
	return w.result(), w.effort, nil
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

// walk is a load on its way.
type walk struct {
	p      *Problem
	on     setting
	effort Effort

	share float64 // of the load, reached
	at    answer  // there
}

// leastPart is the smallest part of the load that is tried.
const leastPart = 1.0 / 64

// reach raises the load to a share of the whole, in parts where it must be.
func (w *walk) reach(share float64) error {
	part := share - w.share
	for w.share < share {
		to := math.Min(share, w.share+part)
		if share-to < 1e-9 {
			to = share
		}
		err := w.settle(to)
		switch {
		case err == nil:
			w.share = to
			w.effort.Parts++
			part *= 2
		case !errors.Is(err, errLost):
			return err
		case part/2 < leastPart*share:
			return GivesWayError{w.share}
		default:
			part /= 2
		}
	}
	return nil
}
