package piece

import (
	"context"
	"maps"
	"math"

	"archload/cases/bench"
	"archload/cases/bench/fit"
	"archload/cases/motion"
	"archload/cases/verify/problem"
	"archload/testdata"
)

// All returns the problems of this package by the name that the tables use.
func All() map[string]problem.Problem {
	all := map[string]problem.Problem{}
	for _, name := range []string{"blank", "half", "even", "slip", "steel-5", "steel-10", "strip"} {
		all["bench "+name] = problem.Problem{Solve: func(ctx context.Context, _ problem.Density) (problem.Readings, error) { return constants(ctx, name) }}
	}
	return all
}

// constants fits a bench file: each constant by its key, how many readings were left out, and of a blank what simple
// formulas make of its tones.
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
	if f.Blank != nil {
		maps.Copy(out, byFormula(f.Blank, r.Readings))
	}
	return out, nil
}

// byFormula reads a rectangular blank, in the tones that the fitted wood has, by the formulas of the bench, MPa: beam
// functions for the two bending tones and w = xy for the twist (M. E. McIntyre and J. Woodhouse 1988, G. Caldersmith
// and E. Freeman 1990, from memory). They show what a fit is for.
func byFormula(b *bench.Blank, tones []fit.Reading) problem.Readings {
	long, wide, h := float64(b.Length), float64(b.Width), b.Thickness.Mean()
	rho := float64(b.Weight) * 1e-6 / (long * wide * h) // tonne/mm³
	bend := 22.3733 / (2 * math.Pi * math.Sqrt(12))
	of := func(f, l float64) float64 { return rho * math.Pow(f*l*l/(bend*h), 2) }
	out := problem.Readings{}
	for i := range tones {
		switch f := float64(tones[i].Fitted); tones[i].Pattern {
		case motion.PatternAlong:
			out["EL by formula"] = of(f, long)
		case motion.PatternAcross:
			out["ER by formula"] = of(f, wide)
		case motion.PatternTwist:
			out["GLR by formula"] = math.Pi * math.Pi / 12 * rho * math.Pow(f*long*wide/h, 2)
		}
	}
	return out
}
