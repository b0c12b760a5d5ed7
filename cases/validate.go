package cases

import (
	"math"
	"strings"

	"archload/cases/tree"
	"archload/mesh"
	"archload/mesh/plane"
)

// validate checks what no single key can know. A check is passed over when a
// key that it needs is faulty already.
func (c *Case) validate(r *tree.FaultLog) {
	c.checkOutline(r)
	c.checkArch(r)
	c.checkHoles(r)
	c.checkBraces(r)
	c.checkStrings(r)
	c.checkBridge(r)
	c.checkBody(r)
	c.checkGauges(r)
	c.checkBench(r)
	c.checkMotion(r)
	c.Season.Check(r)
}

// checkArch wants exactly one source of the arch, and a rim that is not
// thinner than the plate.
func (c *Case) checkArch(r *tree.FaultLog) {
	a := &c.Plate.Arch
	if r.Clean("plate.arch") {
		count := 0
		for _, given := range []bool{a.Contours != nil, a.Templates != nil, a.Points != nil, a.Formula != nil} {
			if given {
				count++
			}
		}
		if count != 1 {
			r.AddKey("plate.arch", "want exactly one of contours, templates, points, formula, found %d", count)
		}
	}
	if !r.Clean("plate.arch.rim_height", "plate.thickness") {
		return
	}
	rim := c.Plate.EvenThickness()
	if a.RimHeight != nil {
		if *a.RimHeight < rim/2 {
			r.AddKey("plate.arch.rim_height", "want >= %g mm, half the thickness (the plate lies on z = 0 or is let in by half), found %g", rim/2, *a.RimHeight)
		}
		rim = *a.RimHeight
	}
	if a.Formula != nil && a.Formula.Height < rim && r.Clean("plate.arch.formula") {
		r.AddKey("plate.arch.formula.height", "want >= %g mm, the height of the rim, found %g", rim, a.Formula.Height)
	}
}

// checkHoles wants each hole described once.
func (c *Case) checkHoles(r *tree.FaultLog) {
	for i, h := range c.Plate.Holes {
		key := tree.EntryKey("plate.hole", i+1)
		oval := h.At != nil || h.Size != nil
		switch {
		case !r.Clean(key):
		case h.Outline != nil && oval:
			r.AddKey(key, "want either outline or an oval (at and size), found both")
		case h.Outline == nil && (h.At == nil || h.Size == nil):
			r.AddKey(key, "want outline = \"...\", or an oval with at = [x, y] and size = [across, along]")
		}
	}
}

// checkBraces wants braces that are longer than wide and have room.
func (c *Case) checkBraces(r *tree.FaultLog) {
	for i, b := range c.Braces {
		key := tree.EntryKey("brace", i+1)
		if !r.Clean(key) {
			continue
		}
		long := plane.PathLength(b.Line)
		switch {
		case len(b.Line) < 2:
			r.AddKey(key+".line", "want at least two points [[x, y], [x, y]], found %d", len(b.Line))
			continue
		case repeats(b.Line) > 0:
			r.AddKey(key+".line", "want each point once, found point %d again", repeats(b.Line))
			continue
		case long < b.Width.Max():
			r.AddKey(key+".width", "want less than the brace's length of %.4g mm, found %g", long, b.Width.Max())
		}
		room := float64(c.Rim.SideHeight)
		if c.Rim.Sided() && r.Clean("rim") && b.HeightScale*b.Height.Max() >= room {
			r.AddKey(key+".height", "want less than the side height of %g mm (the bar would touch the back), found %g", room, b.HeightScale*b.Height.Max())
		}
	}
}

// repeats returns the number (from 1) of the first point that stands where
// its forerunner does, or 0.
func repeats(line []mesh.Point) int {
	for i := 1; i < len(line); i++ {
		if line[i] == line[i-1] {
			return i + 1
		}
	}
	return 0
}

// checkBench checks loads and supports.
func (c *Case) checkBench(r *tree.FaultLog) {
	for i, l := range c.Loads {
		key := tree.EntryKey("load", i+1) + ".force"
		if l.Force == [3]tree.Force{} && r.Clean(key) {
			r.AddKey(key, "want a force that is not zero, found [0, 0, 0]")
		}
		c.checkOn(r, tree.EntryKey("load", i+1), &l)
	}
	for i, s := range c.Supports {
		key := tree.EntryKey("support", i+1)
		switch {
		case !r.Clean(key):
		case (s.At == nil) == (len(s.Line) == 0):
			r.AddKey(key, "want either at = [x, y] or line = [[x, y], [x, y]]")
		case len(s.Line) == 1:
			r.AddKey(key+".line", "want at least two points, found 1 (a point support is at = [x, y])")
		case repeats(s.Line) > 0:
			r.AddKey(key+".line", "want each point once, found point %d again", repeats(s.Line))
		}
	}
}

// AtRest refuses a design that has no state of rest under load: nothing loads it, or nothing
// holds it. It may swing, and dry, all the same. The error, if any, is Faults.
func (c *Case) AtRest() error {
	var list tree.Faults
	if c.Strings == nil && c.Bridge == nil && len(c.Loads) == 0 {
		list = append(list, c.Fault("", "nothing loads the plate; want [strings] with a [bridge], or [[load]]"))
	}
	if err := c.Held(); err != nil {
		list = append(list, err)
	}
	if list == nil {
		return nil
	}
	return list
}

// InTheHand says whether nothing at all is to hold the plate: a free rim without supports.
func (c *Case) InTheHand() bool { return c.Rim.Support == "free" && len(c.Supports) == 0 }

// Held refuses a plate that nothing holds: a free rim needs three points of support that are not
// in line, or a rail and a point beside it. nil if it is held.
func (c *Case) Held() *tree.FileError {
	if c.Rim.Support != "free" {
		return nil
	}
	var at []mesh.Point
	for _, s := range c.Supports {
		if s.At != nil {
			at = append(at, *s.At)
		}
		at = append(at, s.Line...)
	}
	switch {
	case len(at) == 0:
		return c.Fault("rim.support", "nothing holds the plate; want a rim that is hinged, clamped or elastic, or [[support]] with the free one")
	case spanArea(at) < 1:
		return c.Fault("rim.support", "the plate would tip over its supports, which lie in one line; want a further [[support]] beside it")
	}
	return nil
}

// SwellsAlone says whether the plate lies free and nothing loads it, so that seasons are all that moves it.
func (c *Case) SwellsAlone() bool {
	return c.InTheHand() && c.Season != nil &&
		c.Strings == nil && c.Bridge == nil && len(c.Loads) == 0 && len(c.Posts) == 0 && c.Rim.Squeeze == 0
}

// spanArea is twice the area of the largest triangle between the first point
// and any two others, mm².
func spanArea(p []mesh.Point) float64 {
	best := 0.0
	for i := range p {
		for j := range p {
			cross := (p[i][0]-p[0][0])*(p[j][1]-p[0][1]) - (p[i][1]-p[0][1])*(p[j][0]-p[0][0])
			best = max(best, math.Abs(cross))
		}
	}
	return best
}

// checkStrings wants one way to each tension, and both break angles.
func (c *Case) checkStrings(r *tree.FaultLog) {
	s := c.Strings
	if s == nil {
		return
	}
	if c.Bridge == nil && r.Clean("bridge") {
		r.AddKey("strings", "strings press through a bridge; want a table [bridge]")
	}
	if len(s.Each) == 0 && r.Clean("strings.each") {
		r.AddKey("strings.each", "want at least one string, found none; want each = [...], or notes and gauges")
	}
	s.checkCourses(r)
	s.checkPath(r)
	for i := range s.Each {
		key := tree.EntryKey("strings.each", i+1)
		if r.Clean(key, "strings.scale") {
			s.checkTension(r, i, key)
		}
		c.checkAngles(r, i, key)
	}
}

// checkTension wants a tension, or a note with scale and weight.
func (s *Strings) checkTension(r *tree.FaultLog, i int, key string) {
	e := &s.Each[i]
	var weights []string
	for _, w := range []struct {
		key   string
		given bool
	}{{"plain", e.Plain > 0}, {"wound", e.Wound > 0}, {"unit_weight", e.UnitWeight > 0}} {
		if w.given {
			weights = append(weights, w.key)
		}
	}
	switch {
	case len(weights) > 1:
		r.AddKey(key, "%s: want one of plain, wound (diameters) and unit_weight, found %s", e.Name, strings.Join(weights, " and "))
	case e.Tension > 0 && len(weights) > 0:
		r.AddKey(key, "%s: want either tension, or note and %s from which it follows, found both", e.Name, weights[0])
	case e.Tension > 0:
	case len(weights) == 0 || e.Note.Freq == 0:
		r.AddKey(key, "%s: want tension, or note with plain or wound (its diameter) or unit_weight", e.Name)
	case s.ScaleOf(i) == 0:
		r.AddKey(key, "%s: a tension from its note needs the speaking length; want strings.scale", e.Name)
	case s.tension(i) > maxTension:
		r.AddKey(key, "%s: want a tension of at most %d N, found %.4g from its note, scale and weight", e.Name, maxTension, s.tension(i))
	}
}

// maxTension is more than any string holds, N: a plain steel wire of 1 mm
// breaks at about 2000 N.
const maxTension = 2000

// checkAngles wants both break angles and some downforce; where they follow
// from a path, only the arch can tell.
func (c *Case) checkAngles(r *tree.FaultLog, i int, key string) {
	s := c.Strings
	e := &s.Each[i]
	switch {
	case s.Path != nil || !r.Clean(key, "strings.front_angle", "strings.back_angle", "strings.path"):
	case (e.FrontAngle == nil && s.FrontAngle == nil) || (e.BackAngle == nil && s.BackAngle == nil):
		r.AddKey("strings", "want front_angle and back_angle, the string's break over the saddle in degrees, or [strings.path] from which they follow")
	default:
		c.WantBreak(r, i, angle(e.FrontAngle, s.FrontAngle), angle(e.BackAngle, s.BackAngle))
	}
}

// WantBreak refuses string i if it does not press on the saddle.
func (c *Case) WantBreak(r *tree.FaultLog, i int, front, back tree.Angle) {
	if front+back <= 0 {
		r.AddKey(tree.EntryKey("strings.each", i+1), "%s: want a break angle, front and back together > 0 deg, found 0: the string would not press on the saddle", c.Strings.Each[i].Name)
	}
}
