package movement

import (
	"context"

	"archload/cases/verify/problem"
)

// All returns the package's problems by the name that the tables use.
func All() map[string]problem.Problem {
	usual, paths := []int{8, 16, 32}, []int{8, 16}
	all := map[string]problem.Problem{
		"edge load square supported":  square(false, 0),
		"edge loads square supported": square(false, 1),
		"edge load square clamped":    square(true, 0),
		"edge loads square clamped":   square(true, 1),
		"squeezed cylinder":           meshed(usual, squeezedCylinder),
		"pressed sphere":              meshed(paths, pressedSphere),
		"low arch 1.5":                meshed(usual, arch(1.5)),
		"low arch 2":                  meshed(usual, arch(2)),
		"hinged roof 12.7":            meshed(paths, hingedRoof(12.7)),
		"bent strip":                  meshed(usual, bentStrip),
	}
	for _, name := range []string{"high", "treble"} {
		all["carved plate "+name] = problem.Problem{Solve: func(ctx context.Context, _ problem.Density) (problem.Readings, error) { return carved(ctx, name) }}
	}
	for name, clamped := range map[string]bool{"supported": false, "clamped": true} {
		all["edge load wood "+name+" x"] = wooden(clamped, 1, 0)
		all["edge load wood "+name+" y"] = wooden(clamped, 0, 1)
		all["edge load wood "+name+" xy"] = wooden(clamped, 1, 1)
	}
	return all
}
