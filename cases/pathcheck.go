package cases

import (
	"math"
	"slices"
)

// checkPath checks the strings' path and finds the top's height under the
// bridge, from which its angles follow. It reports whether angles can be had.
func (c *Case) checkPath(r *report) bool {
	s := c.Strings
	if s.Path == nil {
		return true
	}
	if !r.clean("strings.path") {
		return false
	}
	before := len(r.faults)
	s.checkPathKeys(r)
	for i := range s.Each {
		s.checkPathString(r, i)
	}
	if len(r.faults) > before || !r.clean("plate", "bridge", "strings.each", "strings.scale", "strings.spread") || c.Bridge == nil {
		return false
	}
	return c.findTop(r)
}

// checkPathKeys wants one description of the front.
func (s *Strings) checkPathKeys(r *report) {
	p, key := s.Path, "strings.path"
	if s.FrontAngle != nil || s.BackAngle != nil {
		r.addKey(key, "want either front_angle and back_angle, or the path from which both follow, found both")
	}
	byNeck := p.NeckAngle != nil || p.FretPlane != nil || p.NutAction != nil
	switch {
	case p.NutHeight != nil && byNeck:
		r.addKey(key, "want either nut_height, or the neck as set (neck_angle and fret_plane), found both")
	case p.NutHeight == nil && (p.NeckAngle == nil || p.FretPlane == nil):
		r.addKey(key, "want nut_height (string at the nut above the rim's gluing surface), or neck_angle with fret_plane (a straightedge on the frets, above the top at the bridge)")
	case p.NutHeight == nil && p.NutAction == nil:
		usual := Length(usualNutAction)
		p.NutAction = &usual
	}
}

// checkPathString wants a string without angles of its own, with a speaking
// length, on the saddle's arc.
func (s *Strings) checkPathString(r *report, i int) {
	e, key := &s.Each[i], entryKey("strings.each", i+1)
	R := float64(s.Path.SaddleRadius)
	switch {
	case !r.clean(key, "strings.scale", "strings.spread"):
	case e.FrontAngle != nil || e.BackAngle != nil:
		r.addKey(key, "%s: want either its own angle or [strings.path], found both", e.Name)
	case s.scale(i) == 0:
		r.addKey("strings.scale", "missing, want the speaking length in mm, from which the path's front angle follows")
	case R > 0 && math.Abs(s.x(i)) >= R && r.clean("strings.path.saddle_radius"):
		r.addKey("strings.path.saddle_radius", "want more than %.4g mm, where %s lies from the middle, found %g", math.Abs(s.x(i)), e.Name, R)
	}
}

// findTop fits the arch, for its height under the bridge. Faults of the plan
// and of the arch's data are reported as Geometry would.
func (c *Case) findTop(r *report) bool {
	if b := c.before; b != nil && b.topKnown && sameTop(b, c) {
		c.topAtBridge, c.topKnown = b.topAtBridge, true
		return true
	}
	g := shaper{c: c, rep: r.fresh(), notes: &FitNotes{}}
	g.curves()
	if len(g.rep.faults) == 0 {
		g.surfaces()
	}
	r.faults = append(r.faults, g.rep.faults...)
	if len(g.rep.faults) > 0 {
		return false
	}
	if at := c.Bridge.At; !g.notes.Outline.Contains(at) {
		r.addKey("bridge.at", "the bridge's middle lies %.3g mm beyond the outline; want it on the plate", g.notes.Outline.Distance(at))
		return false
	}
	c.topAtBridge, c.topKnown = g.plate.Outer.At(c.Bridge.At).Z, true
	return true
}

// sameTop says whether two cases have the same outer surface under the middle
// of their bridges.
func sameTop(a, b *Case) bool {
	return !slices.ContainsFunc(changedKeys(a, b), func(k string) bool {
		return shapes(k) || k == "bridge.at"
	})
}

// checkPathAngles wants angles that a string can have: it falls from the
// saddle both ways, by no more than given angles may. It reports whether all
// is well.
func (c *Case) checkPathAngles(r *report, i int) bool {
	front, back := c.breakAngles(i)
	name := c.Strings.Each[i].Name
	for _, a := range []struct {
		angle Angle
		side  string
	}{{front, "front"}, {back, "back"}} {
		switch {
		case math.IsNaN(float64(a.angle)):
			r.addKey("strings.path", "%s: the nut lies farther from the saddle than the string is long; want other heights", name)
		case a.angle < 0 || a.angle > maxBreak:
			r.addKey("strings.path", "%s: the path gives a %s angle of %.3g deg, want 0 to %d: it must fall from the saddle, which lies %.3g mm above the rim's gluing surface",
				name, a.side, a.angle, maxBreak, c.topAtBridge+c.contact(i))
		}
	}
	return r.clean("strings.path")
}

// hasAngles reports whether the strings' break angles are known: given, or the
// path could be followed.
func (c *Case) hasAngles() bool { return c.Strings.Path == nil || c.topKnown }

// maxBreak is the steepest break angle admitted, deg, as in the keys.
const maxBreak = 45
