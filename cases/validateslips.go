package cases

import (
	"fmt"
	"math"
	"slices"

	"archload/cases/tree"
	"archload/mesh"
)

// What lies beyond these bounds is taken for a slip of the pen or of the unit.
const (
	halfTouch = 1.0 // mm: so near the centre line half an outline begins and ends

	lightestTop, heaviestTop = 1.0, 12.0 // mm, a constant thickness

	slackest, tightest = 0.25, 4.0 // 1, a string's tension over the set's median

	softestWood, stiffestWood  = 3000.0, 30000.0 // MPa, EL: balsa lies about at the one, no timber above the other
	lightestWood, heaviestWood = 200.0, 1400.0   // kg/m³
)

// checkOutline refuses half an outline: the curve would be closed down the
// centre line. Ends that are marked as corners mean a straight edge there, as
// of a test plate drawn from a corner.
func (c *Case) checkOutline(r *tree.FaultLog) {
	p := c.Plate.Outline.Points
	if len(p) < 3 || !r.Clean("plate.outline") {
		return
	}
	if k := c.Plate.Outline.Corner; len(k) == len(p) && k[0] && k[len(k)-1] {
		return
	}
	onLine := func(p mesh.Point) bool { return -halfTouch < p[0] && p[0] < halfTouch }
	if !onLine(p[0]) || !onLine(p[len(p)-1]) {
		return
	}
	least, most := p[0][0], p[0][0]
	for _, q := range p {
		least, most = min(least, q[0]), max(most, q[0])
	}
	side := ""
	switch {
	case least > -halfTouch && most >= halfTouch:
		side = "treble"
	case most < halfTouch && least <= -halfTouch:
		side = "bass"
	default:
		return
	}
	r.AddKey("plate.outline", "this is one half of an outline (all points on the %s side of the centre line); want the whole curve", side)
}

// slips lists the values of the plate that are admitted but unlikely.
func (c *Case) slips() []*tree.FileError {
	t := float64(c.Plate.Thickness.Const)
	if t == 0 || lightestTop <= t && t <= heaviestTop {
		return nil
	}
	dim, _ := tree.DimensionOf(tree.Length(0))
	return []*tree.FileError{c.Fault("plate.thickness", "%g mm is unlikely for a top%s", t, meant(dim, t, []string{"in", "cm"}, between(lightestTop, heaviestTop)))}
}

// stringSlips names each string whose tension lies far from the others'.
func (c *Case) stringSlips() []*tree.FileError {
	if c.Strings == nil {
		return nil
	}
	s := c.Strings
	pulls := make([]float64, len(s.Each))
	for i := range pulls {
		pulls[i] = float64(s.tension(i))
	}
	middle := Median(pulls)
	likely := between(slackest*middle, tightest*middle)
	var out []*tree.FileError
	for i, t := range pulls {
		if !likely(t) {
			out = append(out, c.Fault(tree.EntryKey("strings.each", i+1), "%s pulls %.4g N, far from the median of the set, %.4g N%s", s.Each[i].Name, t, middle, s.unitMeant(i, t, likely)))
		}
	}
	return out
}

// unitMeant asks for the unit with which string i would pull like the others.
func (s *Strings) unitMeant(i int, pull float64, likely func(float64) bool) string {
	e := &s.Each[i]
	switch {
	case e.Plain > 0:
		dim, _ := tree.DimensionOf(tree.Length(0))
		d := float64(e.Plain)
		return meant(dim, d, []string{"in"}, func(x float64) bool { return likely(pull * (x / d) * (x / d)) })
	case e.Wound > 0:
		dim, _ := tree.DimensionOf(tree.Length(0))
		d := float64(e.Wound)
		return meant(dim, d, []string{"in"}, func(x float64) bool { return likely(pull * (x / d) * (x / d)) })
	case e.UnitWeight > 0:
		dim, _ := tree.DimensionOf(tree.LineMass(0))
		w := float64(e.UnitWeight)
		return meant(dim, w, []string{"lb/in", "g/m"}, func(x float64) bool { return likely(pull * x / w) })
	}
	dim, _ := tree.DimensionOf(tree.Force(0))
	return meant(dim, pull, []string{"lb", "kg"}, likely)
}

// benchSlips names each load that presses upward, unless the others press down by as much:
// a couple is meant.
func (c *Case) benchSlips() []*tree.FileError {
	var out []*tree.FileError
	up, all := 0.0, 0.0 // N
	for _, l := range c.Loads {
		up += float64(l.Force[2])
		all += math.Abs(float64(l.Force[2]))
	}
	if math.Abs(up) <= 1e-9*all {
		return nil
	}
	for i, l := range c.Loads {
		if l.Force[2] > 0 {
			out = append(out, c.Fault(tree.EntryKey("load", i+1)+".force", "%s presses upward with %g N; down is negative z", l.Name, float64(l.Force[2])))
		}
	}
	return out
}

// woodSlips names each wood whose stiffness along the grain or density no
// timber has. (A number meant in GPa or g/cm3 is no card: package materials.)
func (c *Case) woodSlips() []*tree.FileError {
	var out []*tree.FileError
	seen := map[string]bool{}
	for _, key := range tree.SortedKeys(c.Cards) {
		card := c.Cards[key]
		if seen[card.Name] {
			continue
		}
		seen[card.Name] = true
		at := func(string) string { return key }
		if c.Woods[card.Name] != nil {
			at = func(value string) string { return tree.JoinKey(tree.JoinKey("wood", card.Name), value) }
		}
		if x, likely := card.Wood.EL, between(softestWood, stiffestWood); !likely(x) {
			dim, _ := tree.DimensionOf(tree.Stress(0))
			out = append(out, c.Fault(at("EL"), "EL of %g MPa is unlikely for wood%s", x, meant(dim, x, []string{"psi"}, likely)))
		}
		out = append(out, c.modulusDoubts(key, at)...)
		if x, likely := card.Wood.Density, between(lightestWood, heaviestWood); !likely(x) {
			dim, _ := tree.DimensionOf(tree.Density(0))
			out = append(out, c.Fault(at("density"), "a density of %g kg/m3 is unlikely for wood%s", x, meant(dim, x, []string{"lb/ft3"}, likely)))
		}
	}
	return out
}

// reliefSlips tells of ends that the relief's shape does not use.
func (c *Case) reliefSlips() []*tree.FileError {
	const key = "bridge.relief.ends"
	rel := &c.Bridge.Relief
	switch {
	case !c.Rep.IsSet(key):
	case len(rel.Stations) > 0:
		return []*tree.FileError{c.Fault(key, "changes nothing: the stations give the whole relief")}
	case rel.Shape != "flat":
		return []*tree.FileError{c.Fault(key, "changes nothing: only shape = \"flat\" has ends, found %q", rel.Shape)}
	}
	return nil
}

// between tells whether a value lies in a range, its ends included.
func between(low, high float64) func(float64) bool {
	return func(x float64) bool { return low <= x && x <= high }
}

// meant asks for the first of the units with which the number would be likely;
// nothing, if there is none.
func meant(dim tree.Dimension, x float64, units []string, likely func(float64) bool) string {
	for _, u := range units {
		if f, ok := dim.Factor(u); ok && likely(x*f) {
			return fmt.Sprintf("; was %q meant?", fmt.Sprintf("%.6g %s", x, u))
		}
	}
	return ""
}

// Median returns the middle of the values, the mean of the middle two for an
// even number; 0 without any.
func Median(values []float64) float64 {
	s := slices.Sorted(slices.Values(values))
	n := len(s)
	if n == 0 {
		return 0
	}
	return (s[(n-1)/2] + s[n/2]) / 2
}

// checkMotion wants directions that point somewhere.
func (c *Case) checkMotion(r *tree.FaultLog) {
	for i := range c.Taps {
		d := c.Taps[i].Direction
		if math.Hypot(math.Hypot(d[0], d[1]), d[2]) == 0 {
			r.AddKey(tree.EntryKey("tap", i+1)+".direction", "want a direction, found [0, 0, 0]")
		}
	}
}

// What lies beyond these bounds is hardly meant.
const (
	deepRelief = 0.5 // mm: makers take 0.1 to 0.2 (common practice, no published source)
	farReading = 5.0 // mm: a top that sinks so far has collapsed
	oneLine    = 1   // contour line alone says nothing of how high the arch is
)

// gaugeDoubts tells of gauges that cannot be read where they stand, of readings that no
// top gives, and of two gauges of one name.
func (c *Case) gaugeDoubts() []*tree.FileError {
	var out []*tree.FileError
	seen := map[string]int{}
	dim, _ := tree.DimensionOf(tree.Length(0))
	for i, g := range c.Gauges {
		key := tree.EntryKey("gauge", i+1)
		if other, twice := seen[g.Name]; twice {
			out = append(out, c.Fault(key, "gauge %d is called %q too; tables and pictures cannot tell them apart", other, g.Name))
		}
		seen[g.Name] = i + 1
		if c.underFoot(g.At) {
			out = append(out, c.Fault(key+".at", "%s stands under the foot at %s, where no dial gauge reaches", g.Name, tree.Spot(g.At)))
		}
		if g.Measured != nil && math.Abs(float64(*g.Measured)) > farReading {
			likely := func(x float64) bool { return math.Abs(x) <= farReading }
			out = append(out, c.Fault(key+".measured", "a reading of %g mm is unlikely for a top%s", float64(*g.Measured), meant(dim, float64(*g.Measured), []string{"thou"}, likely)))
		}
	}
	return out
}

// underFoot tells whether a foot of the bridge covers a place.
func (c *Case) underFoot(p mesh.Point) bool {
	if c.Bridge == nil {
		return false
	}
	for i := range c.Bridge.Feet {
		if lo, hi := c.Bridge.FootRect(i); lo[0] < p[0] && p[0] < hi[0] && lo[1] < p[1] && p[1] < hi[1] {
			return true
		}
	}
	return false
}

// reliefDoubts tells of a relief that no top follows.
func (c *Case) reliefDoubts() []*tree.FileError {
	if c.Bridge == nil {
		return nil
	}
	rel := &c.Bridge.Relief
	if deepest := c.Bridge.maxRelief(); deepest > deepRelief {
		ask := ""
		if d := float64(rel.Depth); d > 0 && d/10 <= deepRelief {
			ask = "; was " + tree.WithUnit(d/10, "mm") + " meant?"
		}
		return []*tree.FileError{c.Fault(reliefKey(rel), "a relief of %.3g mm is unlikely: usual ones are 0.1 to 0.2 mm, and the ends would bear alone%s", deepest, ask)}
	}
	return nil
}

// archDoubts tells of an arch known by a single contour line.
func (c *Case) archDoubts() []*tree.FileError {
	t := c.Plate.Arch.Contours
	if t == nil || c.Plate.Arch.Templates != nil || c.Plate.Arch.Points != nil || len(t.Lines) == 0 {
		return nil
	}
	if lines := slices.Compact(slices.Sorted(slices.Values(t.Lines))); len(lines) > oneLine {
		return nil
	}
	return []*tree.FileError{c.Fault("plate.arch.contours", "one contour line alone does not say how high the arch is: its apex is guessed; want more lines, or a spot height at the apex")}
}

// modulusDoubts tells of a modulus that would fit the wood if it were in GPa.
func (c *Case) modulusDoubts(name string, at func(string) string) []*tree.FileError {
	card := c.Cards[name]
	w := card.Wood
	dim, _ := tree.DimensionOf(tree.Stress(0))
	var out []*tree.FileError
	for _, m := range []struct {
		key   string
		value float64
		least float64 // of EL, 1: below all timbers
	}{{"ER", w.ER, 0.01}, {"ET", w.ET, 0.01}, {"GLR", w.GLR, 0.01}, {"GLT", w.GLT, 0.01}, {"GRT", w.GRT, 0.0005}} {
		likely := between(m.least*w.EL, w.EL)
		if ask := meant(dim, m.value, []string{"GPa"}, likely); ask != "" && !likely(m.value) {
			out = append(out, c.Fault(at(m.key), "%s of %g MPa is unlikely beside EL of %g MPa%s", m.key, m.value, w.EL, ask))
		}
	}
	return out
}
