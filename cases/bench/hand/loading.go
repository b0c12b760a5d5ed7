package hand

import (
	"fmt"
	"maps"
	"math"

	"archload/cases"
	"archload/cases/bench"
	"archload/cases/shape"
	"archload/cases/tree"
	"archload/materials"
	"archload/mesh"
)

// loading is a plate with and without the weight of a press.
type loading struct {
	without *cases.Case // nil for a bare plate, which nothing else loads
	with    *cases.Case
}

// newLoading puts the gauges of a press on a plate of a given wood, and its weight.
func newLoading(f *bench.File, p *bench.Press, wood materials.Card) *loading {
	c := *f.Top
	c.Cards = maps.Clone(c.Cards)
	c.Cards["plate.wood"] = wood
	c.Gauges = nil
	for i := range p.Gauges {
		c.Gauges = append(c.Gauges, cases.Gauge{Name: p.Gauges[i].Name, On: "top", At: p.Gauges[i].At})
	}
	down := [3]tree.Force{0, 0, tree.Force(-p.Newtons())}
	if p.State == bench.Strung {
		with := c
		with.Loads = append(append([]cases.TopLoad(nil), c.Loads...), cases.TopLoad{Name: p.Name, On: cases.OnBridge, At: p.At, Force: down})
		return &loading{without: &c, with: &with}
	}
	c.Strings, c.Bridge = nil, nil
	size := p.Size
	c.Loads = []cases.TopLoad{{Name: p.Name, On: "top", At: p.At, Size: &size, Force: down}}
	if len(p.Supports) > 0 {
		c.Rim.Support, c.Rim.Squeeze, c.Supports, c.Posts = "free", 0, nil, nil
		for i := range p.Supports {
			c.Supports = append(c.Supports, cases.Support{Name: fmt.Sprintf("support %d", i+1), At: &p.Supports[i]})
		}
	}
	return &loading{with: &c}
}

// standing tells of a weight or a gauge that stands beside the plate.
func (l *loading) standing(f *bench.File, n int) error {
	p := &f.Presses[n]
	empty := *l.with
	empty.Loads, empty.Gauges = nil, nil
	g, err := shape.NewGeometry(&empty)
	if err != nil {
		return err
	}
	fault := func(key, form string, args ...any) error {
		at := f.Rep.Find(key)
		return tree.Faults{{File: at.Src.Label, Line: at.Line, Key: key, Err: fmt.Errorf(form, args...)}}
	}
	key := tree.EntryKey("press", n+1)
	lo, hi := shape.Rect(p.At, &p.Size)
	for _, q := range []mesh.Point{lo, hi, {lo[0], hi[1]}, {hi[0], lo[1]}} {
		if p.State != bench.Strung && !g.Outline.Contains(q) {
			return fault(key, "%s: the weight at (%g, %g) stands partly off the wood", p.Name, p.At[0], p.At[1])
		}
	}
	if half := float64(widthOf(l.with)) / 2; p.State == bench.Strung && math.Abs(p.At[0]-l.with.Bridge.At[0]) > half {
		return fault(key, "%s: the weight at x = %g stands beside the bridge, %g mm long", p.Name, p.At[0], 2*half)
	}
	for i := range p.Gauges {
		if q := p.Gauges[i].At; !g.Outline.Contains(q) {
			return fault(tree.EntryKey(key+".gauge", i+1), "%s: the gauge at (%g, %g) stands off the wood", p.Name, q[0], q[1])
		}
	}
	return nil
}

// widthOf is the length of the bridge across the plate, mm; 0 without one.
func widthOf(c *cases.Case) tree.Length {
	if c.Bridge == nil {
		return 0
	}
	return c.Bridge.Length
}
