package verify

import (
	"context"

	"archload/cases"
	"archload/testdata"
)

// supportedCase solves the case file testdata/verification/supported-plate.toml
// by the whole chain, as `archload solve` does, and reads its gauges, its energy
// and its reactions; 32 stands for the case's own mesh.
func supportedCase(ctx context.Context, at density) (readings, error) {
	c, err := cases.Load(testdata.Files, "verification/supported-plate/supported-plate.toml")
	if err != nil {
		return nil, err
	}
	s, err := cases.Solve(ctx, c, cases.Options{Refine: float64(at.n) / defaultDensity, NoError: true})
	if err != nil {
		return nil, err
	}
	r := cases.Summarize(s)
	return readings{
		"under the block": r.Gauges[0].Sink, "middle": r.Gauges[1].Sink, "quarter": r.Gauges[2].Sink,
		"energy": r.Energy.Total, "reaction": r.Reactions.Total[2],
	}, nil
}

// supportedSeries sums M. Navier's series for the same plate.
func supportedSeries() (readings, error) {
	const a, b = woodLong, woodWide
	p := plateLaw(testWood(), 1)
	load := patch(5, a, b, 150, 110, 40, 24)
	at := func(x, y float64) float64 { return navier(p, a, b, x, y, load, 300).w }
	return readings{"under the block": at(150, 110), "middle": at(200, 150), "quarter": at(300, 225)}, nil
}
