package cases

import (
	"math"

	"archload/cases/tree"
)

// checkPath checks the strings' path as far as it can be without the arch; see
// checkPathOver for the angles.
func (s *Strings) checkPath(r *tree.FaultLog) {
	if s.Path == nil || !r.Clean("strings.path") {
		return
	}
	s.checkPathKeys(r)
	for i := range s.Each {
		s.checkPathString(r, i)
	}
}

// checkPathKeys wants one description of the front.
func (s *Strings) checkPathKeys(r *tree.FaultLog) {
	p, key := s.Path, "strings.path"
	if s.FrontAngle != nil || s.BackAngle != nil {
		r.AddKey(key, "want either front_angle and back_angle, or the path from which both follow, found both")
	}
	byNeck := p.NeckAngle != nil || p.FretPlane != nil || p.NutAction != nil
	switch {
	case p.NutHeight != nil && byNeck:
		r.AddKey(key, "want either nut_height, or the neck as set (neck_angle and fret_plane), found both")
	case p.NutHeight == nil && (p.NeckAngle == nil || p.FretPlane == nil):
		r.AddKey(key, "want nut_height (string at the nut above the rim's gluing surface), or neck_angle with fret_plane (a straightedge on the frets, above the top at the bridge)")
	case p.NutHeight == nil && p.NutAction == nil:
		usual := tree.Length(usualNutAction)
		p.NutAction = &usual
	}
}

// checkPathString wants a string without angles of its own, with a speaking
// length, on the saddle's arc.
func (s *Strings) checkPathString(r *tree.FaultLog, i int) {
	e, key := &s.Each[i], tree.EntryKey("strings.each", i+1)
	R := float64(s.Path.SaddleRadius)
	switch {
	case !r.Clean(key, "strings.scale", "strings.spread"):
	case e.FrontAngle != nil || e.BackAngle != nil:
		r.AddKey(key, "%s: want either its own angle or [strings.path], found both", e.Name)
	case s.ScaleOf(i) == 0:
		r.AddKey("strings.scale", "missing, want the speaking length in mm, from which the path's front angle follows")
	case R > 0 && math.Abs(s.x(i)) >= R && r.Clean("strings.path.saddle_radius"):
		r.AddKey("strings.path.saddle_radius", "want more than %.4g mm, where %s lies from the middle, found %g", math.Abs(s.x(i)), e.Name, R)
	}
}
