package design

import (
	"errors"

	"archload/fem/flow"
)

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
