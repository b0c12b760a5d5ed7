package swelling

import (
	"context"
	"math"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/tree"
	"archload/cases/verify/problem"
	"archload/materials"
)

// creepAlike is a plate of wood that creeps alike in all directions: its sink after 50 years over the first
// one, over 1 + a tⁿ; its stress stays, so that the strength used then is the first one over what of its strength the wood
// has left, percent.
func creepAlike(ctx context.Context) (problem.Readings, error) {
	c, err := load("creep-alike")
	if err != nil {
		return nil, err
	}
	r, err := yearsOf(ctx, c, "50y")
	if err != nil {
		return nil, err
	}
	k := c.Cards["plate.wood"].Creep
	return problem.Readings{
		"sink":     float64(r.Years[0].Sink.Mid) / float64(r.Strung.Sink.Mid) / grownBy(k, 50),
		"strength": 100 * float64(r.Strung.Strength.Used.Mid/r.Years[0].Strength.Used.Mid),
	}, nil
}

// layer is one of two layers that bend together.
type layer struct{ area, inertia, young, a float64 } // mm², mm⁴, MPa, 1

// compliance is its strain under a unit stress that has lain on it for t years, 1/MPa.
func (l layer) compliance(t, n float64) float64 { return (1 + l.a*math.Pow(t, n)) / l.young }

// bentFor integrates two layers at a distance e under a moment that stays: the curvature after some years over
// the first one. By superposition each change of force strains by the compliance of the time since then; with the
// moments m1, m2 and the force f between them, over the changes up to t,
//
//	Σ J1 dm1/I1 = Σ J2 dm2/I2,  Σ (J1/A1 + J2/A2) df = e Σ J1 dm1/I1,  m1 + m2 + f e = 1,
//
// step by step on times that rise by a fixed ratio, each change in the middle of its step.
func bentFor(up, low layer, e, years, n float64) float64 {
	const steps = 600
	times := []float64{0}
	for k := range steps + 1 {
		times = append(times, years*math.Pow(1e-9, 1-float64(k)/steps))
	}
	var at []float64
	var dm1, dm2, df []float64
	first := 0.0
	for k, t := range times {
		mid := t
		if k > 0 {
			mid = (t + times[k-1]) / 2
		}
		bend1, bend2, pull := 0.0, 0.0, 0.0 // of earlier changes
		for j, s := range at {
			bend1 += up.compliance(t-s, n) * dm1[j] / up.inertia
			bend2 += low.compliance(t-s, n) * dm2[j] / low.inertia
			pull += (up.compliance(t-s, n)/up.area + low.compliance(t-s, n)/low.area) * df[j]
		}
		c1, c2 := up.compliance(t-mid, n)/up.inertia, low.compliance(t-mid, n)/low.inertia
		c := up.compliance(t-mid, n)/up.area + low.compliance(t-mid, n)/low.area
		add := 0.0
		if k == 0 {
			add = 1
		}
		// bend1 + c1 x = bend2 + c2 y; pull + c z = e (bend1 + c1 x); x + y + e z = add
		x := (add - (bend1-bend2)/c2 - e*(e*bend1-pull)/c) / (1 + c1/c2 + e*e*c1/c)
		y, z := (bend1-bend2+c1*x)/c2, (e*(bend1+c1*x)-pull)/c
		at, dm1, dm2, df = append(at, mid), append(dm1, x), append(dm2, y), append(df, z)
		if k == 0 {
			first = c1 * x
		}
		if k == len(times)-1 {
			return (bend1 + c1*x) / first
		}
	}
	return math.NaN()
}

// creepStrip is a strip of two layers that creep differently, on two rails: the growth of its sink in 50 years over
// that of the integration.
func creepStrip(ctx context.Context) (problem.Readings, error) {
	c, err := load("creep-strip")
	if err != nil {
		return nil, err
	}
	r, err := yearsOf(ctx, c, "1y,50y")
	if err != nil {
		return nil, err
	}
	wide, h1, h2 := c.Braces[0].Width.Value(0.5), float64(c.Plate.EvenThickness()), c.Braces[0].HeightAt(0.5)
	of := func(key string, h float64) layer {
		card := c.Cards[key]
		return layer{area: wide * h, inertia: wide * h * h * h / 12, young: card.Wood.EL, a: card.Creep.Along}
	}
	up, low, n := of("plate.wood", h1), of("brace[1].wood", h2), c.Cards["plate.wood"].Creep.Power
	out := problem.Readings{}
	for i, name := range []string{"1 y", "50 y"} {
		grown := r.Years[i].Gauges[0].Sink / r.Strung.Gauges[0].Sink
		out[name] = grown / bentFor(up, low, (h1+h2)/2, r.Years[i].Years, n)
	}
	return out, nil
}

// creepCloses is a relieved foot without friction, of wood and on wood that creeps alike: its middle comes to bear
// when 1 + a tⁿ is what the load would have to be for it, as gap and load stand in proportion. The growth at
// which the last station of the middle closes, over that load, from a foot that is less deep.
func creepCloses(ctx context.Context) (problem.Readings, error) {
	c, err := load("creep-closes")
	if err != nil {
		return nil, err
	}
	s, err := design.Solve(ctx, c, design.Options{NoError: true, NoFlow: true})
	if err != nil {
		return nil, err
	}
	closes := answer.Summarize(s).Bridge.MiddleClosesAt
	deep := *c
	bridge := *c.Bridge
	const grown = 1.3 // at which the last station is to close
	bridge.Relief.Depth *= tree.Length(grown / float64(closes))
	deep.Bridge = &bridge
	r, err := yearsOf(ctx, &deep, "1d,1y,10y,50y")
	if err != nil {
		return nil, err
	}
	k := c.Cards["plate.wood"].Creep
	return problem.Readings{"closes": grownBy(k, float64(r.Foot.MiddleCloses)) / grown}, nil
}

// grownBy is 1 + a tⁿ along the grain.
func grownBy(k materials.Creep, years float64) float64 { return 1 + k.Along*math.Pow(years, k.Power) }
