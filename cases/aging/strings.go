package aging

import (
	"context"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/design"
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
func (s *step) keepLength(ctx context.Context, from, made *design.Solution, c *cases.Case, o design.Options) (*design.Solution, error) {
	built := made.Top.Built
	spans := design.StringSpans(c, built.Geometry.TopAtBridge)
	more := make([]float64, len(spans)) // N
	after, err := s.change.ready(ctx, from, c, o)
	if err != nil {
		return nil, err
	}
	for round := 0; ; round++ {
		loads := slices.Clone(built.Bridge.Body.Loads) // first those of the strings
		for i := range spans {
			l := &loads[i]
			times := 1 + more[i]/spans[i].Force.Tension
			l.F = [3]float64{times * l.F[0], times * l.F[1], times * l.F[2]}
		}
		now, err := after.follow(loads)
		if err != nil {
			return nil, err
		}
		off := 0.0
		for i := range spans {
			want := max(stretched(made, now, &spans[i], s.change.outer), -spans[i].Force.Tension)
			off = math.Max(off, math.Abs(want-more[i]))
			more[i] = want
		}
		if off < tensionClose || round == mostRounds {
			s.report.Strings = nil
			for i := range spans {
				f := &spans[i].Force
				s.report.Strings = append(s.report.Strings, StringSeason{Name: f.Name, Tension: f.Tension + more[i], Change: more[i]})
			}
			return now, nil
		}
	}
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
