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
	Pads  []contact.Pad      // under the body
	Loads []fem.PointForce   // of Cond, those of the cords left out
	Cords []Cord             // what pulls at the body and at rigid bodies of the plate
	// Swell is what the wood has done by itself; nil: nothing. Beside it the whole load acts: a share is one of Swell.
	Swell *fem.Swollen
	// From is how the body stood before its plate, its forces or its wood have changed, on the moved shape: contact
	// and friction go on from there (contact.Problem.Onward) with the whole load on. nil: the load rises from nothing.
	From *contact.Standing
	// Condense reduces the plate anew with another factor.
	Condense func(p *fem.Prepared) *contact.Condensed
	// Linear is the answer to the whole load where nothing has moved: what the iteration begins from; nil: not known.
	Linear  *contact.Result
	Workers int
	Stop    func() error // asked before each step; an error of it ends the iteration. nil: none
}

// Cord pulls at the body and at two rigid bodies of the plate with forces that keep their size and
// follow the straight lines between the places where it is tied: a string over a bridge.
type Cord struct {
	Load int // of the body, which is what the cord gives to it
	Ends [2]CordEnd
}

// CordEnd is one end of a cord.
type CordEnd struct {
	Was fem.PointForce // its pull at a rigid body at the whole load, where nothing has moved; among the loads on the plate
	At  [3]float64     // where it is tied to that body, mm
}

// setting is a stiffness with its factor and the plate's compliance under the pads.
type setting struct {
	plate *fem.Prepared
	cond  *contact.Condensed
	stand *contact.Problem
	swell *fem.Swollen // in which it is eased; nil: nothing
}

func (p *Problem) first() setting { return setting{p.Plate, p.Cond, p.Stand, nil} }

// changes says whether the whole load acts from the outset, and a share is one of what has changed.
func (p *Problem) changes() bool { return p.From != nil || p.Swell != nil }

// load is the share of the load at a share of the way.
func (p *Problem) load(share float64) float64 {
	if p.changes() {
		return 1
	}
	return share
}

// eased is a setting with a share of what the wood does by itself.
func (p *Problem) eased(on setting, share float64) setting {
	if p.Swell == nil {
		return on
	}
	on.swell = p.Swell
	if share != 1 {
		on.swell = p.Swell.Times(share)
	}
	sys := on.swell.Eased()
	sys.K = on.plate.K
	on.plate = &fem.Prepared{System: sys, Factor: on.plate.Factor}
	on.cond = on.cond.Eased(on.plate, on.swell)
	if on.stand != nil {
		on.stand = on.stand.Over(on.cond)
	}
	return on
}

// tangent is a setting with the stiffness at movements u.
func (p *Problem) tangent(on setting, u []float64) (setting, error) {
	sys := on.plate.WithTangent(u, p.Workers)
	plate, err := sys.PrepareLike(p.Plate, p.Workers)
	if err != nil {
		return setting{}, err
	}
	s := setting{plate: plate, cond: p.Condense(plate), swell: on.swell}
	if s.swell != nil {
		s.cond = s.cond.Eased(plate, s.swell)
	}
	if p.Stand != nil {
		s.stand, err = s.cond.Problem(p.Body)
	}
	return s, err
}
