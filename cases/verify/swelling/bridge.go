package swelling

import (
	"context"
	"math"

	"archload/cases/tree"
	"archload/cases/verify/problem"
)

// bridgeLifts is a bridge that swells, by e for its whole height, on a top that does not give: it lifts strings that keep their length
// by e times the height of the saddle, and each string's tension grows by
//
//	E (π d²/4) / L · e h (sin a + sin b),   L = (1 + 0.2) times the speaking length
//
// where a and b are the angles in which it leaves the saddle, and 0.2 is the share that the string behind the
// saddle is taken to add. Read are the tensions' changes over that, and the action at the octave, half way to the saddle, over e h / 2.
func bridgeLifts(ctx context.Context) (problem.Readings, error) {
	s, err := seasonOf(ctx, "length")
	if err != nil {
		return nil, err
	}
	c, err := load("length")
	if err != nil {
		return nil, err
	}
	const steel, long = 2e5, 1.2 // MPa; 1
	sin := func(deg tree.Angle) float64 { return math.Sin(float64(deg) * math.Pi / 180) }
	lift := airPoints * c.Cards["bridge.wood"].Water.Swell[1] * float64(c.Bridge.SaddleHeight)
	out := problem.Readings{"action": -float64(s.Bridge.ActionChange) / (lift / 2)}
	for i, name := range []string{"thin", "thick"} {
		d := float64(c.Strings.Each[i].Plain)
		grown := lift * (sin(*c.Strings.FrontAngle) + sin(*c.Strings.BackAngle))
		out[name] = s.Strings[i].Change / (steel * math.Pi / 4 * d * d / (long * float64(c.Strings.ScaleOf(i))) * grown)
	}
	return out, nil
}
