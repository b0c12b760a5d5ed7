package piece

import (
	"context"
	"math"

	"archload/cases/bench"
	"archload/cases/bench/fit"
	"archload/cases/verify/problem"
	"archload/testdata"
)

// All returns the problems of this package by the name that the tables use.
func All() map[string]problem.Problem {
	all := map[string]problem.Problem{}
	for _, name := range []string{"blank", "half", "even", "slip", "steel-5", "steel-10", "strip"} {
		all["bench "+name] = problem.Problem{Solve: func(ctx context.Context, _ problem.Density) (problem.Readings, error) { return constants(ctx, name) }}
	}
	all["bench formulas"] = problem.Problem{Solve: func(context.Context, problem.Density) (problem.Readings, error) { return formulas(), nil }}
	return all
}

// constants fits a bench file: each constant by its key, and how many readings were left out.
func constants(ctx context.Context, name string) (problem.Readings, error) {
	f, err := bench.Load(testdata.Files, "verification/bench/"+name+".toml")
	if err != nil {
		return nil, err
	}
	r, err := fit.Fit(ctx, f, fit.Options{})
	if err != nil {
		return nil, err
	}
	out := problem.Readings{"left out": float64(len(r.LeftOut))}
	for key, c := range r.Wood[f.Name] {
		out[key] = c.Value
	}
	return out, nil
}

// formulas reads the thin blank of the tables by the formulas of the bench for rectangular blanks, MPa: beam functions
// for the two bending tones and w = xy for the twist (M. E. McIntyre and J. Woodhouse 1988, G. Caldersmith and E.
// Freeman 1990, from memory). They show what a fit is for.
func formulas() problem.Readings {
	const (
		a, b, h            = 400.0, 300.0, 4.0 // mm
		rho                = 400e-12           // tonne/mm³
		twist, ring, along = 44.408, 63.801, 129.077
	)
	bend := 22.3733 / (2 * math.Pi * math.Sqrt(12))
	of := func(f, l float64) float64 { return rho * math.Pow(f*l*l/(bend*h), 2) }
	return problem.Readings{"EL": of(along, a), "ER": of(ring, b), "GLR": math.Pi * math.Pi / 12 * rho * math.Pow(twist*a*b/h, 2)}
}
