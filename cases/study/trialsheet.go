package study

import (
	"context"
	"math"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/materials"
)

// sheet fills in the relief of the bench sheet and what the wood's scatter
// does to it.
func (t *trier) sheet(ctx context.Context, top *design.Top, tr *Trial, o TrialOptions) error {
	t.top = top
	own := t.top.Built.Case.Bridge.Relief
	if o.Sheet != nil {
		own = relief(t.top, o.Shapes[0], *o.Sheet)
	}
	q, err := t.with(ctx, own)
	if err != nil {
		return err
	}
	br := q.Built.Case.Bridge
	deepest := deepestOf(br)
	if deepest <= 0 {
		return nil
	}
	at := func(k float64) (TrialPoint, error) {
		if err := ctx.Err(); err != nil {
			return TrialPoint{}, err
		}
		pt, err := t.stiffer(ctx, q, k)
		if err != nil {
			return pt, err
		}
		pt.Shape, pt.Depth = own.Shape, deepest
		if len(own.Stations) > 0 {
			pt.Shape = "stations"
		}
		return pt, nil
	}
	pt, err := at(1)
	if err != nil {
		return err
	}
	softer, err := at(1 - materials.StiffnessScatter)
	if err != nil {
		return err
	}
	stiffer, err := at(1 + materials.StiffnessScatter)
	if err != nil {
		return err
	}
	tr.Bench = benchStations(br)
	tr.Sheet, tr.Wood = &pt, &TrialWood{Scatter: materials.StiffnessScatter, Softer: softer, Stiffer: stiffer}
	return nil
}

// stiffer tries a relief in wood that is all k times as stiff. On the moved shape that is the same movement as
// under 1/k of the load, with k times the forces.
func (t *trier) stiffer(ctx context.Context, q *design.Top, k float64) (TrialPoint, error) {
	if t.moved != nil {
		p, err := t.settled(ctx, q, 1/k)
		f := answer.Num(k)
		p.FootPressure, p.FootUsed, p.StrengthUsed = f*p.FootPressure, f*p.FootUsed, f*p.StrengthUsed
		return p, err
	}
	fit := q.Fit()
	for i := range fit.Gap {
		fit.Gap[i] *= k
	}
	st, err := q.Stand.Follow(fit)
	if err != nil {
		return TrialPoint{}, design.Explain(t.top.Built.Case, err)
	}
	return t.point(q, st, fit, true).inWood(k), nil
}

// inWood turns what a gap k times as deep does into what the gap itself does
// when all wood of top, bridge and sides is k times as stiff: the same forces,
// and every movement and gap 1/k of it, because the equations hold modulus
// times movement alone.
func (p TrialPoint) inWood(k float64) TrialPoint {
	p.GapLeft /= k
	p.Sink /= k
	p.TopBend /= k
	p.TopCurvature /= k
	return p
}

// deepestOf is the deepest gap of a foot before loading, mm.
func deepestOf(b *cases.Bridge) float64 {
	most := 0.0
	for _, c := range design.Cells(b) {
		most = math.Max(most, b.Gap(c.X, c.Y))
	}
	if b.Relief.Depth > 0 && b.Relief.Across == 0 && len(b.Misfit) == 0 {
		return float64(b.Relief.Depth)
	}
	return most
}

// benchStep is from one station of a bench sheet to the next, mm.
const benchStep = 10

// benchStations lists the relief along the feet at whole steps from the
// middle, and at the feet's ends.
func benchStations(b *cases.Bridge) []BenchStation {
	var out []BenchStation
	add := func(x float64) {
		out = append(out, BenchStation{X: x, Remove: b.ReliefAlong(x) + float64(b.Relief.Across), Gap: b.Gap(x, 0)})
	}
	for _, f := range b.Feet {
		from, to := float64(f.From), float64(f.To)
		add(from)
		for k := math.Ceil(from / benchStep); k*benchStep < to; k++ {
			if x := k * benchStep; x > from+benchStep/4 && x < to-benchStep/4 {
				add(x)
			}
		}
		add(to)
	}
	return out
}
