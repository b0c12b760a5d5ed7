package movement

import (
	"context"
	"fmt"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/stability"
	"archload/cases/verify/problem"
	"archload/testdata"
)

// carved follows a carved plate from its case file to one and four times its load. Read are the sinks
// of its two feet over the times, mm, and its two lowest linear factors.
func carved(ctx context.Context, name string) (problem.Readings, error) {
	c, err := cases.Load(testdata.Files, "verification/moved/"+name+".toml")
	if err != nil {
		return nil, err
	}
	out := problem.Readings{}
	var o design.Options
	o.NoError, o.NoFlow = true, true
	for _, times := range []float64{1, 4} {
		s, err := stability.Solve(ctx, stability.Times(c, times), o)
		if err != nil {
			return nil, err
		}
		for _, g := range answer.Summarize(s.Solution).Gauges {
			out[fmt.Sprintf("%s at %g", g.Name, times)] = g.Sink / times
		}
	}
	g, err := stability.Find(ctx, c, 2, o)
	if err != nil {
		return nil, err
	}
	out["first factor"], out["second factor"] = g.Modes.Factors[0], g.Modes.Factors[1]
	return out, nil
}
