package moved

import (
	"errors"
	"fmt"
	"math"

	"archload/fem/contact"
)

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
