package swelling

import (
	"context"
	"io/fs"

	"archload/cases"
	"archload/cases/aging"
	"archload/cases/design"
	"archload/cases/verify/problem"
	"archload/testdata"
)

// All returns the problems of this package by the name that the tables use.
func All() map[string]problem.Problem {
	once := func(f func(ctx context.Context) (problem.Readings, error)) problem.Problem {
		return problem.Problem{Solve: func(ctx context.Context, _ problem.Density) (problem.Readings, error) { return f(ctx) }}
	}
	return map[string]problem.Problem{
		"wood and water":    once(woodAndWater),
		"wood and time":     once(woodAndTime),
		"swelling free":     once(freePlate),
		"swelling gradient": once(flatPlate),
		"swelling strip":    once(twoLayers),
		"swelling cylinder": once(cylinder),
		"swelling sphere":   once(sphere),
	}
}

// seasonOf takes a case file of the tables to its one season.
func seasonOf(ctx context.Context, name string) (*aging.SeasonReport, error) {
	c, err := load(testdata.Files, name)
	if err != nil {
		return nil, err
	}
	r, err := aging.Seasons(ctx, c, design.Options{NoError: true})
	if err != nil {
		return nil, err
	}
	return &r.Seasons[0], nil
}

func load(fsys fs.FS, name string) (*cases.Case, error) {
	return cases.Load(fsys, "verification/swelling/"+name+".toml")
}
