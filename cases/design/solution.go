package design

import (
	"errors"

	"archload/fem/contact"
	"archload/fem/flow"
)

// Solution is an answered case: its top and what full load does to it.
type Solution struct {
	Top    *Top
	Result *contact.Result
	Flow   *flow.Flow // where the load goes; nil if left out or the load does not press down
	Coarse *Solution  // the same case on triangles twice as large; nil if not wanted
	Aged   *Aged      // Coarse as decades leave it; nil if there is no Coarse or the creep of a wood is not known
	Spent  Stages

	Frictions []Friction // the same case with the least and the most friction of wood; nil if not wanted or the foot is not rough

	FlowFault   error // why a load that presses down has no flow
	CoarseFault error // why there is no Coarse where one was wanted
	AgedFault   error // why it could not be aged
}

// FindFlow computes the load flow, which Solve does and Refit leaves out for
// speed. A load that does not press down has none.
func (s *Solution) FindFlow() {
	s.Top.clock.time(&s.Spent.Flow, func() {
		var err error
		if s.Flow, err = flow.New(&s.Result.Complete().Result, PartBraces); err != nil {
			s.Flow = nil
			if !errors.Is(err, flow.ErrNoLoad) {
				s.FlowFault = err
			}
		}
	})
}
