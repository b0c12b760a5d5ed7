package problem

import (
	"context"
	"math"
	"strconv"
	"testing/fstest"

	"archload/fem/eigen"
)

// solidTones finds the first tones of the plate of testdata/solid3d with its bar, by the
// whole chain from its case file, in Hz.
func solidTones(rim string) func(ctx context.Context, at Density) (Readings, error) {
	return func(ctx context.Context, at Density) (Readings, error) {
		all, err := solidFolder()
		if err != nil {
			return nil, err
		}
		d := solidPlate{rim: rim, load: "P", brace: true, made: "carved"}
		all["solid.toml"] = &fstest.MapFile{Data: []byte(d.text(nil))}
		s, err := solveCase(ctx, all, "solid.toml", at)
		if err != nil {
			return nil, err
		}
		sys := s.Result.Plate
		m, fixed := sys.Mass(), sys.FixedDofs()
		m.Fix(fixed)
		plan, err := sys.Analyse()
		if err != nil {
			return nil, err
		}
		modes, err := eigen.Lowest(&eigen.Problem{K: sys.K, M: m, Fixed: fixed, Plan: plan}, eigen.Options{Count: 6})
		if err != nil {
			return nil, err
		}
		out := Readings{}
		for i, v := range modes.Values {
			out[strconv.Itoa(i+1)] = math.Sqrt(v) / (2 * math.Pi)
		}
		return out, nil
	}
}
