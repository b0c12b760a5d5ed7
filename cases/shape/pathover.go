package shape

import (
	"math"

	"archload/cases/tree"
)

// checkPathOver wants a strings' path that gives every string a break angle over
// this arch, and a bridge that it does not tip. Angles that are given were
// checked with the keys.
func (f *fitter) checkPathOver() {
	c := f.c
	if c.Strings == nil || c.Strings.Path == nil {
		return
	}
	if at := c.Bridge.At; !f.made.Outline.Contains(at) {
		f.rep.AddKey("bridge.at", "the bridge's middle lies %.3g mm beyond the outline; want it on the plate", f.made.Outline.Distance(at))
		return
	}
	for i := range c.Strings.Each {
		front, back := c.BreakAngles(i, f.made.TopAtBridge)
		if !f.checkPathAngles(i, front, back) {
			return
		}
		c.WantBreak(f.rep, i, front, back)
	}
	if f.rep.Clean("strings", "bridge") {
		c.CheckRocking(f.rep, f.made.StringSum())
	}
}

// maxBreak is the steepest break angle admitted, deg, as in the keys.
const maxBreak = 45

// checkPathAngles wants angles that a string can have: it falls from the
// saddle both ways, by no more than given angles may. It reports whether all
// is well.
func (f *fitter) checkPathAngles(i int, front, back tree.Angle) bool {
	name := f.c.Strings.Each[i].Name
	for _, a := range []struct {
		angle tree.Angle
		side  string
	}{{front, "front"}, {back, "back"}} {
		switch {
		case math.IsNaN(float64(a.angle)):
			f.rep.AddKey("strings.path", "%s: the nut lies farther from the saddle than the string is long; want other heights", name)
		case a.angle < 0 || a.angle > maxBreak:
			f.rep.AddKey("strings.path", "%s: the path gives a %s angle of %.3g deg, want 0 to %d: it must fall from the saddle, which lies %.3g mm above the rim's gluing surface%s",
				name, a.side, a.angle, maxBreak, f.made.TopAtBridge+f.c.Contact(i), f.lowArch())
		}
	}
	return f.rep.Clean("strings.path")
}

// rocks tells of a bridge that rocks under a path's angles; of given ones the
// case's own warnings do.
func (f *fitter) rocks() []*tree.FileError {
	if f.c.Bridge == nil || f.c.Strings == nil || f.c.Strings.Path == nil {
		return nil
	}
	return f.c.Rocks(f.made.StringSum())
}
