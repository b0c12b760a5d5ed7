package swelling

import (
	"context"
	"math"

	"archload/cases"
	"archload/cases/design"
	"archload/cases/verify/problem"
	"archload/materials"
	"archload/mesh"
)

// Moisture of wood in air of 45 and 80 % at 21.1 °C, percent, as the tables of this package have it from the Wood
// Handbook's equation 4-5; and how far the two lie apart.
const (
	dryAir, dampAir = 8.46, 15.99
	airPoints       = dampAir - dryAir
)

// softerInAir is an arched plate under a weight whose wood does not swell: how far it has sunk further in damper air, over
// what two solves of it say with the moduli of either air set by hand, by equation 5-3 of the Wood Handbook (FPL-GTR-282):
// times (P12/Pg)^((12 − M)/(Mp − 12)), with Pg/P12 along the grain from the wood card.
func softerInAir(ctx context.Context) (problem.Readings, error) {
	s, err := seasonOf(ctx, "softer")
	if err != nil {
		return nil, err
	}
	c, err := load("softer")
	if err != nil {
		return nil, err
	}
	var at [2]float64
	for i, moisture := range []float64{dryAir, dampAir} {
		if at[i], err = sinkAt(ctx, c, moisture); err != nil {
			return nil, err
		}
	}
	return problem.Readings{"sink": s.Gauges[0].Displacement[2] / (at[1] - at[0]), "softer": at[1] / at[0]}, nil
}

// sinkAt is where the gauge of a case goes under its weight, in wood of a moisture, mm.
func sinkAt(ctx context.Context, c *cases.Case, moisture float64) (float64, error) {
	const across, shear = 0.654, 0.696 // green over 12 %: middle trends of the handbook, from memory
	wet := c.WithCards(func(card materials.Card) materials.Card {
		times := func(green float64) float64 {
			return math.Pow(1/green, (12-moisture)/(card.Water.GreenMoisture-12))
		}
		w := &card.Wood
		w.EL *= times(card.Water.GreenStiffness)
		w.ER, w.ET = w.ER*times(across), w.ET*times(across)
		w.GLR, w.GLT, w.GRT = w.GLR*times(shear), w.GLT*times(shear), w.GRT*times(shear)
		return card
	})
	sol, err := design.Solve(ctx, wet, design.Options{NoError: true, NoFlow: true})
	if err != nil {
		return 0, err
	}
	q := mesh.Point(c.Gauges[0].At)
	at, _ := sol.Top.Built.OnOuter(q) // the outer face, which stress moves beside the middle
	return sol.Result.FaceMove(at, [3]float64{q[0], q[1], sol.Top.Built.Plate.Outer.At(q).Z})[2], nil
}
