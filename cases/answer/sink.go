package answer

import (
	"archload/cases/design"
)

// Sink is that of the bridge's base at its middle from the slack strings;
// without a bridge, of the deepest place of the top. mm.
func Sink(s *design.Solution) float64 {
	if s.Top.Built.Bridge != nil {
		return -s.Result.Body[6*s.Top.Built.Bridge.Mid+2] + fromSlack(s, 0)
	}
	return topReport(s).MostSunk.Value
}

// fromSlack is how far the slack bridge comes down at x to rest on the contact
// grid's outermost points instead of on the true ends of its feet, mm: a part
// of its sink that Result counts from.
func fromSlack(s *design.Solution, x float64) float64 {
	br := s.Top.Built.Case.Bridge
	from, to := br.Reach()
	a, b := br.Gap(from, 0), br.Gap(to, 0)
	ends := func(x float64) float64 { return a + (b-a)*(x-from)/(to-from) }
	for _, c := range s.Top.Built.Bridge.Cells {
		if design.MeanGap(br, c) < ends(c.X)-1e-9 {
			return 0 // it rests inside the ends: a misfit
		}
	}
	rest := s.Result.State.SlackRest
	return -(rest[2] - rest[4]*(br.At[0]+x-s.Top.Built.Bridge.Body.Nodes[0][0])) - ends(x)
}

// saddleMove is the movement of the string's place on the saddle at x from the
// bridge's middle, mm, from the slack strings.
func saddleMove(s *design.Solution, x float64) [3]float64 {
	u := s.Result.BodyMove(s.Top.Built.SaddleNode(x), s.Top.Built.Saddle(x))
	u[2] -= fromSlack(s, x)
	return u
}
