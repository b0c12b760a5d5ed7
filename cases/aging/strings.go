package aging

import (
	"context"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/design"
	"archload/fem/contact"
	"archload/fem/vec3"
)

// Rounds of keepLength: strings are far softer than a top, so that each round leaves a twentieth or so of what
// was missing.
const (
	mostRounds   = 20
	tensionClose = 1e-6 // N
)

// keepLength takes the design to a season with strings that nobody tunes. A string whose place on the saddle moves by u
// grows by −u·(front + back), the directions in which it leaves, and its tension by EA/L of that,
// L being both lengths; it slips over the saddle, its far ends stay. Tension and movement are found in turn.
func (s *step) keepLength(ctx context.Context, from, made state, c *cases.Case, o design.Options) (state, error) {
	after, err := s.change.ready(ctx, from, c, o)
	if err != nil {
		return state{}, err
	}
	k := &kept{after: after, spans: design.StringSpans(c, made.linear.Top.Built.Geometry.TopAtBridge), water: s.change.outer}
	k.more = make([]float64, len(k.spans))
	now := state{}
	if now.linear, err = k.tune(made.linear, after.followLinear); err != nil {
		return now, err
	}
	if made.moved != nil {
		now.moved, err = k.tune(made.moved, func(loads []contact.BodyLoad) (*design.Solution, error) {
			linear, err := after.followLinear(loads)
			if err != nil {
				return nil, err
			}
			return after.followMoved(ctx, linear)
		})
		if err != nil {
			return now, err
		}
	}
	s.report.Strings = k.report()
	return now, nil
}

// kept are strings that keep their length.
type kept struct {
	after *ready
	spans []design.StringSpan
	more  []float64 // tension beyond that of the made state, N
	water float64   // percentage points that the bridge takes up
}

// tune finds the tensions with which a solution keeps the strings as long as they were when made.
func (k *kept) tune(made *design.Solution, follow func([]contact.BodyLoad) (*design.Solution, error)) (*design.Solution, error) {
	for round := 0; ; round++ {
		now, err := follow(k.loads(made))
		if err != nil {
			return nil, err
		}
		off := 0.0
		for i := range k.spans {
			want := max(stretched(made, now, &k.spans[i], k.water), -k.spans[i].Force.Tension)
			off = math.Max(off, math.Abs(want-k.more[i]))
			k.more[i] = want
		}
		if off < tensionClose || round == mostRounds {
			return now, nil
		}
	}
}

// loads are those on the bridge with the strings' tensions, which come first.
func (k *kept) loads(made *design.Solution) []contact.BodyLoad {
	loads := slices.Clone(made.Top.Built.Bridge.Body.Loads)
	for i := range k.spans {
		loads[i].F = vec3.Scale(loads[i].F, 1+k.more[i]/k.spans[i].Force.Tension)
	}
	return loads
}

// report tells the tensions.
func (k *kept) report() (out []StringSeason) {
	for i := range k.spans {
		f := &k.spans[i].Force
		out = append(out, StringSeason{Name: f.Name, Tension: f.Tension + k.more[i], Change: k.more[i]})
	}
	return out
}

// stretched is by how much a string's tension grows, N.
func stretched(made, now *design.Solution, s *design.StringSpan, water float64) float64 {
	b := now.Top.Built
	node, at := b.SaddleNode(s.Force.X), b.Saddle(s.Force.X)
	u, before := now.Result.BodyMove(node, at), made.Result.BodyMove(node, at)
	free := bridgeFree{b, water}.saddle(s.Force.X)
	sf, cf := math.Sincos(s.Force.FrontAngle * math.Pi / 180)
	sb, cb := math.Sincos(s.Force.BackAngle * math.Pi / 180)
	leaves := [3]float64{0, cf - cb, -sf - sb}
	grown := 0.0
	for k := range leaves {
		grown -= (u[k] + free[k] - before[k]) * leaves[k]
	}
	return s.EA * grown / (s.Front + s.Back)
}
