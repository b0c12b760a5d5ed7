package problem

import (
	"context"
	"io/fs"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/testdata"
)

// supportedCase solves the case file testdata/verification/supported-plate.toml
// by the whole chain, as `archload solve` does, and reads its gauges, its energy
// and its reactions; 32 stands for the case's own mesh.
func supportedCase(ctx context.Context, at Density) (Readings, error) {
	s, err := solveCase(ctx, testdata.Files, "verification/supported-plate/supported-plate.toml", at)
	if err != nil {
		return nil, err
	}
	r := answer.Summarize(s)
	return Readings{
		"under the block": r.Gauges[0].Sink, "middle": r.Gauges[1].Sink, "quarter": r.Gauges[2].Sink,
		"energy": r.Energy.Total, "reaction": r.Reactions.Total[2],
	}, nil
}

// solveCase solves a case file by the whole chain, as `archload solve` does.
func solveCase(ctx context.Context, fsys fs.FS, name string, at Density) (*design.Solution, error) {
	c, err := cases.Load(fsys, name)
	if err != nil {
		return nil, err
	}
	return design.Solve(ctx, c, at.options())
}
