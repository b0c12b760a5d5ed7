package swelling

import (
	"context"

	"archload/cases/verify/problem"
)

// All returns the problems of this package by the name that the tables use.
func All() map[string]problem.Problem {
	once := func(f func(ctx context.Context) (problem.Readings, error)) problem.Problem {
		return problem.Problem{Solve: func(ctx context.Context, _ problem.Density) (problem.Readings, error) { return f(ctx) }}
	}
	return map[string]problem.Problem{
		"wood and water":         once(woodAndWater),
		"wood and time":          once(woodAndTime),
		"swelling free":          once(freePlate),
		"swelling body":          once(wholeBody),
		"swelling gradient":      once(flatPlate),
		"swelling air":           once(damperAir),
		"swelling strip":         once(twoLayers),
		"swelling softer":        once(softerInAir),
		"swelling bridge":        once(bridgeLifts),
		"swelling cylinder":      once(cylinder),
		"swelling sphere":        once(sphere),
		"swelling solid hinged":  once(solidPlate("hinged", "carved", 4, 4)),
		"swelling solid clamped": once(solidPlate("clamped", "carved", 4, 4)),
		"swelling solid pressed": once(solidPlate("hinged", "pressed", 4, 4)),
		"swelling solid faces":   once(solidPlate("hinged", "carved", 2, -2)),
		"creep alike":            once(creepAlike),
		"creep strip":            once(creepStrip),
		"creep closes":           once(creepCloses),
		"creep rubs":             once(creepRubs),
	}
}
