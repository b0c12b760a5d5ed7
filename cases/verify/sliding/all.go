package sliding

import (
	"context"

	"archload/cases/verify/problem"
)

// All returns the problems of this package by the name that the tables use.
func All() map[string]problem.Problem {
	once := func(f func() (problem.Readings, error)) problem.Problem {
		return problem.Problem{Solve: func(context.Context, problem.Density) (problem.Readings, error) { return f() }}
	}
	return map[string]problem.Problem{
		"bar over rough ground":            once(pulledBar),
		"bar on rough ground swells":       once(slab),
		"places that rub through a change": once(rubbing),
		"block on a slope":                 once(block),
		"beam over rough supports":         once(roughBeam),
		"friction by brute force":          once(bruteForce),
		"foot with friction":               {Solve: foot},
	}
}
