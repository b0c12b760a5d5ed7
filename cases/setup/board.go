package setup

import (
	"math"

	"archload/cases"
	"archload/cases/shape"
	"archload/cases/tree"
	"archload/mesh"
)

// setting is what a maker sets: the neck, the saddle, the anchor.
type setting struct {
	neck   float64 // deg
	saddle float64 // mm
	anchor float64 // mm above the rim's gluing surface
}

// board is the strings over the board of one design.
type board struct {
	c     *cases.Case
	g     *shape.Geometry
	joint float64 // mm from the saddle to where the neck turns
	outer [2]int  // bass and treble outer string
	was   setting
}

// newBoard reads the design. Faults: no strings, no bridge, angles that are given
// instead of following from the path, or a path by the nut alone.
func newBoard(c *cases.Case, g *shape.Geometry) (*board, error) {
	switch {
	case c.Strings == nil || c.Bridge == nil:
		return nil, c.Fault("strings", "an action sheet needs strings on a bridge; want the tables [strings] and [bridge]")
	case c.Strings.Path == nil || c.Strings.Path.NeckAngle == nil:
		return nil, c.Fault("strings.path", "an action sheet needs the neck as it is set; want [strings.path] with neck_angle, fret_plane, anchor_height and anchor_distance")
	}
	b := &board{c: c, g: g}
	b.was = setting{float64(*c.Strings.Path.NeckAngle), float64(c.Bridge.SaddleHeight), float64(c.Strings.Path.AnchorHeight)}
	b.joint = bodyEnd(g) - c.Bridge.At[1]
	if scale := float64(c.Strings.ScaleOf(0)); !(b.joint > 0 && b.joint < scale) {
		return nil, c.Fault("strings.scale", "the body ends %.0f mm before the saddle; want a speaking length beyond that, found %g", b.joint, scale)
	}
	forces := g.StringForces()
	for i, f := range forces {
		if f.X < forces[b.outer[0]].X {
			b.outer[0] = i
		}
		if f.X > forces[b.outer[1]].X {
			b.outer[1] = i
		}
	}
	return b, nil
}

// bodyEnd is where the outline's neck end crosses the centre line, mm; there the
// neck is taken to turn.
func bodyEnd(g *shape.Geometry) float64 {
	lo, hi := g.Outline.Bounds()
	in, out := g.Case.Bridge.At[1], hi[1]+1
	if in < lo[1] || in > hi[1] {
		in = (lo[1] + hi[1]) / 2
	}
	for range 60 {
		mid := (in + out) / 2
		if g.Outline.Contains(mesh.Point{0, mid}) {
			in = mid
		} else {
			out = mid
		}
	}
	return in
}

// fretPlane is where the fret plane passes over the top at the bridge, mm, with the
// neck turned about its joint, where the plane keeps its height.
func (b *board) fretPlane(neck float64) float64 {
	const rad = math.Pi / 180
	return float64(*b.c.Strings.Path.FretPlane) + b.joint*(math.Tan(neck*rad)-math.Tan(b.was.neck*rad))
}

// with is the case set otherwise.
func (b *board) with(s setting) *cases.Case {
	c, str, path, br := *b.c, *b.c.Strings, *b.c.Strings.Path, *b.c.Bridge
	neck, plane := tree.Angle(s.neck), tree.Length(b.fretPlane(s.neck))
	path.NeckAngle, path.FretPlane, path.AnchorHeight = &neck, &plane, tree.Length(s.anchor)
	br.SaddleHeight = tree.Length(s.saddle)
	str.Path, c.Strings, c.Bridge = &path, &str, &br
	return &c
}

// slack is the height of bass and treble outer string over the fret plane at the
// octave with the strings slack, mm: half way between saddle and nut,
// ((h - f) cos b + a) / 2 with the letters of cases.StringPath.
func (b *board) slack(s setting) [2]float64 {
	c := b.with(s)
	var out [2]float64
	for k, i := range b.outer {
		over := (c.Contact(i) - b.fretPlane(s.neck)) * math.Cos(s.neck*math.Pi/180)
		out[k] = (over + float64(*c.Strings.Path.NutAction)) / 2
	}
	return out
}

// breakAngle is the mean bend of the strings over the saddle, deg.
func breakAngle(forces []cases.StringForce) float64 {
	sum := 0.0
	for _, f := range forces {
		sum += f.FrontAngle + f.BackAngle
	}
	return sum / float64(len(forces))
}
