package cases

import (
	"math"
	"slices"

	"archload/cases/tree"
	"archload/mesh"
)

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
