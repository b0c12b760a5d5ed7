package swelling

import (
	"context"

	"archload/cases"
	"archload/cases/aging"
	"archload/cases/design"
	"archload/testdata"
)

// seasonOf takes a case file of the tables to its one season.
func seasonOf(ctx context.Context, name string) (*aging.SeasonReport, error) {
	c, err := load(name)
	if err != nil {
		return nil, err
	}
	r, err := aging.Seasons(ctx, c, aging.Wish{}, design.Options{NoError: true})
	if err != nil {
		return nil, err
	}
	return &r.Seasons[0], nil
}

// load reads a case file of the tables.
func load(name string) (*cases.Case, error) {
	return cases.Load(testdata.Files, "verification/swelling/"+name+".toml")
}

// yearsOf lets a case file of the tables stand for some ages.
func yearsOf(ctx context.Context, c *cases.Case, at string) (*aging.YearsReport, error) {
	ages, err := aging.Ages(at)
	if err != nil {
		return nil, err
	}
	return aging.Years(ctx, c, aging.Wish{Ages: ages}, design.Options{NoError: true})
}
