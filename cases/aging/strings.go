package aging

import (
	"context"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/design"
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
// L being both lengths; it slips over the saddle. Its far ends stay, but on a body, where they go with the blocks and
// pull at them. Tension and movement are found in turn.
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
		now.moved, err = k.tune(made.moved, func(p *pulls) (*design.Solution, error) {
			linear, err := after.followLinear(p)
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
func (k *kept) tune(made *design.Solution, follow func(*pulls) (*design.Solution, error)) (*design.Solution, error) {
	for round := 0; ; round++ {
		now, err := follow(k.pulls(made))
		if err != nil {
			return nil, err
		}
		off := 0.0
		for i := range k.spans {
			want := max(k.stretched(made, now, i), -k.spans[i].Force.Tension)
			off = math.Max(off, math.Abs(want-k.more[i]))
			k.more[i] = want
		}
		if off < tensionClose || round == mostRounds {
			return now, nil
		}
	}
}

// pulls are the loads with the strings' tensions: those on the bridge come first, those on the blocks last.
func (k *kept) pulls(made *design.Solution) *pulls {
	b := made.Top.Built
	p := &pulls{bridge: slices.Clone(b.Bridge.Body.Loads), plate: slices.Clone(b.Loads)}
	ties := len(b.StringTies())
	for i := range k.spans {
		times := 1 + k.more[i]/k.spans[i].Force.Tension
		p.bridge[i].F = vec3.Scale(p.bridge[i].F, times)
		for e := range min(2, 2*ties) {
			at := len(p.plate) - 2*(ties-i) + e
			p.plate[at].F = vec3.Scale(p.plate[at].F, times)
		}
	}
	return p
}

// report tells the tensions.
func (k *kept) report() (out []StringSeason) {
	for i := range k.spans {
		f := &k.spans[i].Force
		out = append(out, StringSeason{Name: f.Name, Tension: f.Tension + k.more[i], Change: k.more[i]})
	}
	return out
}

// stretched is by how much string i's tension grows, N.
func (k *kept) stretched(made, now *design.Solution, i int) float64 {
	b, s := now.Top.Built, &k.spans[i]
	node, at := b.SaddleNode(s.Force.X), b.Saddle(s.Force.X)
	free := bridgeFree{b, k.water}.saddle(s.Force.X)
	over := vec3.Add(vec3.Sub(now.Result.BodyMove(node, at), made.Result.BodyMove(node, at)), free)
	sf, cf := math.Sincos(s.Force.FrontAngle * math.Pi / 180)
	sb, cb := math.Sincos(s.Force.BackAngle * math.Pi / 180)
	grown := 0.0
	for e, leaves := range [2][3]float64{{0, cf, -sf}, {0, -cb, -sb}} {
		grown += vec3.Dot(leaves, vec3.Sub(endMove(made, now, i, e), over))
	}
	return s.EA * grown / (s.Front + s.Back)
}

// endMove is how an end of string i moves, mm: as its block does, or, without a body, not at all.
func endMove(made, now *design.Solution, i, end int) [3]float64 {
	b := now.Top.Built
	ties := b.StringTies()
	if ties == nil {
		return [3]float64{}
	}
	tie, block := ties[i][end], b.Loads[len(b.Loads)-2*(len(ties)-i)+end].Body
	of := func(s *design.Solution) [3]float64 { return s.Result.Plate.BodyPlace(s.Result.U, block, tie) }
	return vec3.Sub(of(now), of(made))
}
