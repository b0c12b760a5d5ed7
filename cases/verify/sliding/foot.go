package sliding

import (
	"context"
	"math"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/verify/problem"
	"archload/testdata"
)

// foot is a case file solved with friction: none and much of it beside hold = "slip" and
// "grip", fitted and relieved; its mirror image; its energy.
func foot(ctx context.Context, _ problem.Density) (problem.Readings, error) {
	out := problem.Readings{}
	for _, c := range []struct {
		name   string
		relief float64 // mm
	}{{"fitted", 0}, {"relieved", 0.05}} {
		for _, end := range []struct {
			hold     string
			friction float64
		}{{"slip", 0}, {"grip", 1e4}} {
			want, err := solve(ctx, "foot", end.hold, 0, c.relief)
			if err != nil {
				return nil, err
			}
			got, err := solve(ctx, "foot", "friction", end.friction, c.relief)
			if err != nil {
				return nil, err
			}
			out[c.name+" "+end.hold] = apart(got, want)
		}
	}
	one, err := solve(ctx, "foot", "friction", 0.4, 0.05)
	if err != nil {
		return nil, err
	}
	other, err := solve(ctx, "foot-mirrored", "friction", 0.4, 0.05)
	if err != nil {
		return nil, err
	}
	out["mirrored"] = math.Abs(other.Bridge.Sink/one.Bridge.Sink-1) + math.Abs(other.Energy.Dissipated/one.Energy.Dissipated-1) +
		math.Abs(other.Bridge.Tilt.Sideways+one.Bridge.Tilt.Sideways)
	out["dissipated"] = one.Energy.Dissipated / (one.Energy.Dissipated + one.Energy.Total)
	out["energy"] = math.Abs(one.Error.Energy)
	out["reached"] = float64(one.Bridge.FrictionReached)
	return out, nil
}

// solve answers a case of the tables with another hold and relief.
func solve(ctx context.Context, name, hold string, friction, relief float64) (*answer.Report, error) {
	c, err := cases.Load(testdata.Files, "verification/sliding/"+name+".toml")
	if err != nil {
		return nil, err
	}
	b := *c.Bridge
	b.Hold, b.Friction = hold, friction
	for i := range b.Relief.Stations {
		b.Relief.Stations[i].Value *= relief
	}
	c.Bridge = &b
	s, err := design.Solve(ctx, c, design.Options{NoError: true, NoFlow: true})
	if err != nil {
		return nil, err
	}
	return answer.Summarize(s), nil
}

// apart is how far the forces under two feet lie apart at most, of all force.
func apart(a, b *answer.Report) float64 {
	most, sum := 0.0, 0.0
	for i, p := range a.Bridge.Contact {
		q := b.Bridge.Contact[i]
		most = max(most, math.Abs(p.Force-q.Force), math.Abs(p.Drag[0]-q.Drag[0]), math.Abs(p.Drag[1]-q.Drag[1]))
		sum += q.Force
	}
	return most / sum
}
