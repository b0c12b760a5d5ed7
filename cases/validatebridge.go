package cases

import (
	"math"
	"slices"

	"archload/cases/tree"
)

// touching is how far a foot may pass the base's end, mm: the same length in inches
// differs in its last digits.
const touching = 1e-9

// checkBridge checks the bridge's own dimensions and how it stands.
func (c *Case) checkBridge(r *tree.FaultLog) {
	b := c.Bridge
	if b == nil {
		return
	}
	if c.Strings == nil && r.Clean("strings") {
		r.AddKey("bridge", "no glue holds the bridge, only the strings; want a table [strings]")
	}
	b.checkFeet(r)
	b.checkBody(r)
	b.checkRelief(r)
	b.checkHollow(r)
	c.checkPosts(r)
	c.checkSaddlePart(r)
	if c.Strings != nil && r.Clean("strings", "bridge") {
		c.checkTipping(r)
	}
}

// checkFeet fills in the continuous foot, and wants feet in order on the base.
func (b *Bridge) checkFeet(r *tree.FaultLog) {
	half := b.Length / 2
	if len(b.Feet) == 0 && r.Clean("bridge.foot") {
		b.Feet = []Foot{{From: -half, To: half, Bearing: "full", Wall: 3}}
	}
	for i, f := range b.Feet {
		key := tree.EntryKey("bridge.foot", i+1)
		switch {
		case !r.Clean(key, "bridge.length"):
		case f.From >= f.To:
			r.AddKey(key, "want from < to, found from %g to %g mm", f.From, f.To)
		case f.From < -half-touching || f.To > half+touching:
			r.AddKey(key, "want a foot on the base, which reaches from %g to %g mm, found from %g to %g", -half, half, f.From, f.To)
		case i > 0 && f.From <= b.Feet[i-1].To:
			r.AddKey(key, "want the feet in order from bass to treble with a gap between them, found %g after %g mm", f.From, b.Feet[i-1].To)
		}
	}
	if len(b.Feet) > 2 {
		r.AddKey("bridge.foot", "want one continuous foot or two feet, found %d", len(b.Feet))
	}
}

// checkBody wants a height profile on the base, and the saddle above it.
func (b *Bridge) checkBody(r *tree.FaultLog) {
	if !r.Clean("bridge.height", "bridge.length") {
		return
	}
	half := float64(b.Length) / 2
	if n := len(b.Height.Stations); n > 0 {
		first, last := b.Height.Stations[0].At, b.Height.Stations[n-1].At
		if first < -half || last > half {
			r.AddKey("bridge.height", "want stations on the base, which reaches from %g to %g mm, found %g to %g", -half, half, first, last)
		}
	}
	if middle := b.Height.Value(0); r.Clean("bridge.saddle_height") && float64(b.SaddleHeight) < middle {
		r.AddKey("bridge.saddle_height", "want >= %g mm, the height of the base at its middle, found %g", middle, b.SaddleHeight)
	}
}

// checkRelief wants one description of the relief, and wood left above it.
func (b *Bridge) checkRelief(r *tree.FaultLog) {
	if !r.Clean("bridge.relief", "bridge.height", "bridge.length", "bridge.foot", "bridge.misfit") || len(b.Feet) == 0 {
		return
	}
	rel := &b.Relief
	if len(rel.Stations) > 0 && rel.Depth > 0 {
		r.AddKey("bridge.relief", "want either depth and shape, or stations, found both")
		return
	}
	from, to := b.Reach()
	if rel.Depth > 0 && (from >= 0 || to <= 0) {
		r.AddKey("bridge.relief.depth", "a relief deepest at x = 0 needs feet on both sides of it, found feet from %g to %g mm; want stations", from, to)
		return
	}
	if x, height, depth := b.thinnestBase(); depth >= height {
		r.AddKey(reliefKey(rel), "want less than the base's height of %.3g mm at x = %.4g, found %.3g", height, x, depth)
	} else if deepest := b.maxRelief(); deepest > maxRelief {
		r.AddKey(reliefKey(rel), "want a fit within %g mm (the top cannot follow more), found %.3g", float64(maxRelief), deepest)
	}
}

// thinnestBase returns where the relief leaves the least wood of the base, the
// base's height there and the relief's depth, mm.
func (b *Bridge) thinnestBase() (x, height, depth float64) {
	const steps = 64
	least := math.Inf(1)
	for _, f := range b.Feet {
		for k := range steps + 1 {
			at := float64(f.From) + float64(f.To-f.From)*float64(k)/steps
			h, d := b.Height.Value(at), b.ReliefAlong(at)+float64(b.Relief.Across)
			if h-d < least {
				least, x, height, depth = h-d, at, h, d
			}
		}
	}
	return x, height, depth
}

// maxRelief is the deepest relief admitted, mm: ten times what makers take.
const maxRelief = 5

// reliefKey is the key that holds the depth.
func reliefKey(r *Relief) string {
	if len(r.Stations) > 0 {
		return "bridge.relief.stations"
	}
	return "bridge.relief.depth"
}

// checkTipping refuses strings that would tip the bridge: sideways, when one
// presses beyond the feet, and fore and aft.
func (c *Case) checkTipping(r *tree.FaultLog) {
	from, to := c.Bridge.Reach()
	for i := range c.Strings.Each {
		if x := c.Strings.x(i); x < from || x > to {
			r.AddKey(tree.EntryKey("strings.each", i+1), "%s presses at x = %.4g mm, beyond the feet (%g to %g mm): it would tip the bridge; want it above them", c.Strings.Each[i].Name, x, from, to)
		}
	}
	if c.Strings.Path == nil { // or else the arch has a say: see checkPathOver
		c.CheckRocking(r, c.StringSum(0))
	}
}

// CheckRocking refuses strings whose push outweighs the downforce over half the
// foot's width.
func (c *Case) CheckRocking(r *tree.FaultLog, sum StringSum) {
	half := float64(c.Bridge.Width) / 2
	if rock := math.Abs(sum.Rocking); rock > half {
		r.AddKey("bridge.width", "the strings' push of %.3g N tips the bridge: it shifts the downforce by %.3g mm, and half the foot's width is %g mm; want like break angles, a lower saddle or a wider foot", sum.Along, rock, half)
	}
}

// Warnings returns what is admitted but worth a second look, in the order of
// the keys.
func (c *Case) Warnings() []*tree.FileError {
	return slices.Concat(c.Rep.Notes, c.slips(), c.archDoubts(), c.stringSlips(), c.bridgeDoubts(), c.reliefDoubts(), c.benchSlips(), c.gaugeDoubts(), c.woodSlips())
}

// bridgeDoubts tells of a bridge that rocks under given angles and of a relief's
// idle key.
func (c *Case) bridgeDoubts() []*tree.FileError {
	if c.Bridge == nil || c.Strings == nil {
		return nil
	}
	var out []*tree.FileError
	if c.Strings.Path == nil {
		out = c.Rocks(c.StringSum(0))
	}
	return append(out, c.reliefSlips()...)
}

// Rocks tells of a bridge that rocks under its strings.
func (c *Case) Rocks(sum StringSum) []*tree.FileError {
	if width := float64(c.Bridge.Width); math.Abs(sum.Rocking) > width/6 {
		return []*tree.FileError{c.Fault("bridge.width", "the strings' push of %.3g N shifts the downforce by %.3g mm, out of the middle third of the foot's width of %g mm: the bridge rocks", sum.Along, sum.Rocking, width)}
	}
	return nil
}
