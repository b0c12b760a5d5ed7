package problem

import (
	"context"
	"math"
	"testing/fstest"

	"archload/cases/answer"
	"archload/mesh"
)

// strungBody is the course guitar as a whole body under its strings, on coarse triangles, in grip, with a flat back
// that says nothing of its thickness.
const strungBody = `
format = 1
base = "course-guitar-body"
[body.back]
flat = true
[bridge]
hold = "grip"
[mesh]
size = 14
`

// solveStrungBody reads what statics tells of a body that carries itself: what the stand gives over the strings' pull,
// the lengthwise force through top, sides and back over the strings' own, their moment about the neck's joint over
// pull times arm, and the thickness of the back over that of the top by its weight.
func solveStrungBody(ctx context.Context, d Density) (Readings, error) {
	s, err := solveCase(ctx, fstest.MapFS{"a.toml": {Data: []byte(strungBody)}}, "a.toml", d)
	if err != nil {
		return nil, err
	}
	r := answer.Summarize(s)
	b, c := r.Body, s.Top.Built.Case
	pull := 0.0
	for _, t := range r.Strings.Each {
		pull += t.Tension * math.Cos(t.FrontAngle*math.Pi/180)
	}
	g := s.Top.Built.Geometry
	foot := mesh.Point{float64(c.Bridge.At[0]), float64(c.Bridge.At[1])}
	arm := g.Plate.Outer.At(foot).Z + float64(c.Bridge.SaddleHeight) -
		math.Tan(r.Strings.Each[0].FrontAngle*math.Pi/180)*(b.Blocks.Neck.At[1]-foot[1]) - b.Joint.Z
	return Readings{
		"outside": b.Outside,
		"through": (b.Thrust.Top + b.Thrust.Back + b.Thrust.BassSide + b.Thrust.TrebleSide) / pull,
		"joint":   b.Joint.Moment / (pull * arm),
		"back":    r.Mass.Back / (g.Outline.Area() * 1e-3 * s.Top.Built.Case.Cards["body.back.wood"].Wood.Density * 1e-3) / 5,
	}, nil
}
