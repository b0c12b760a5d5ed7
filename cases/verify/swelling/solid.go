package swelling

import (
	"context"

	"archload/cases/aging"
	"archload/cases/design"
	"archload/cases/verify/problem"
)

// solidPlate is the plate of the 3D solid on an edge, carved or pressed, after a change of moisture at its
// outer and inner face: how far three places of its outer surface rise, mm, and its energy, N·mm.
func solidPlate(rim, made string, outer, inner float64) func(context.Context) (problem.Readings, error) {
	return func(ctx context.Context) (problem.Readings, error) {
		c, err := load("solid")
		if err != nil {
			return nil, err
		}
		c.Rim.Support, c.Plate.Made = rim, made
		if outer != inner {
			c.Season.Moisture, c.Season.MoistureOuter, c.Season.MoistureInner = nil, &outer, &inner
		}
		r, err := aging.Seasons(ctx, c, aging.Wish{}, design.Options{NoError: true})
		if err != nil {
			return nil, err
		}
		s := &r.Seasons[0]
		return problem.Readings{"middle": s.Gauges[0].Displacement[2], "long": s.Gauges[1].Displacement[2],
			"cross": s.Gauges[2].Displacement[2], "energy": s.Energy.Total}, nil
	}
}
