package hand

import (
	"context"
	"fmt"
	"math"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/shape"
	"archload/mesh"
	"archload/mesh/surface"
)

// Change is one way to meet a target.
type Change struct {
	What string     `json:"what"` // "wood off everywhere", "bass bar"
	By   float64    `json:"by"`   // mm of thickness, or of the bar's greatest height; negative: less
	Sink answer.Num `json:"sink"` // mm, by a fresh solve on the case's own triangles; null where the change is too great to be tried
	Far  bool       `json:"far"`  // it asks for more than this change alone should do
}

// lever is something that can be changed: wood of a zone, or the height of a bar.
type lever struct {
	what string
	full float64 // mm, what it measures now
	zone [2]float64
	bar  int // in the case; -1: a zone
}

// How far one change may go: a quarter of what is there.
const mostChange = 0.25

// zones are how many bands of equal width a plate is parted into, from the edge inward.
const zones = 3

// levers lists what can be changed on a plate.
func levers(g *shape.Geometry) []lever {
	far, sum, count := 0.0, 0.0, 0
	lo, hi := g.Outline.Bounds()
	const step = 10.0
	for y := lo[1]; y <= hi[1]; y += step {
		for x := lo[0]; x <= hi[0]; x += step {
			if q := (mesh.Point{x, y}); g.Outline.Contains(q) {
				far = math.Max(far, g.Outline.Distance(q))
				sum += g.Plate.Thickness.At(q).Z
				count++
			}
		}
	}
	mean := sum / math.Max(1, float64(count))
	band := far / zones
	list := []lever{{what: "thickness everywhere", full: mean, zone: [2]float64{-math.MaxFloat64, math.MaxFloat64}, bar: -1},
		{what: fmt.Sprintf("thickness at the edge, up to %.0f mm from it", band), full: mean, zone: [2]float64{-math.MaxFloat64, band}, bar: -1},
		{what: fmt.Sprintf("thickness from %.0f to %.0f mm from the edge", band, 2*band), full: mean, zone: [2]float64{band, 2 * band}, bar: -1},
		{what: fmt.Sprintf("thickness in the middle, from %.0f mm from the edge", 2*band), full: mean, zone: [2]float64{2 * band, math.MaxFloat64}, bar: -1}}
	for i := range g.Case.Braces {
		if b := &g.Case.Braces[i]; b.Fitted {
			list = append(list, lever{what: "height of " + b.Name, full: b.HeightScale * b.Height.Max(), bar: i})
		}
	}
	return list
}

// fade is the width over which a zone goes over into the next, mm.
const fade = 16.0

// zoned is a thickness with some more in a zone of distances from the outline.
type zoned struct {
	surface.Surface
	g    *shape.Geometry
	zone [2]float64
	by   float64 // mm
}

// At returns the thickness and its derivatives; those of the fade are first order, across the edge.
func (z zoned) At(p mesh.Point) surface.Jet {
	j := z.Surface.At(p)
	_, q, d := z.g.Outline.Nearest(p)
	in := [2]float64{}
	if d > 0 {
		in = [2]float64{(p[0] - q[0]) / d, (p[1] - q[1]) / d}
	}
	if !z.g.Outline.Contains(p) {
		d = -d
	}
	share, slope := ramp(d-z.zone[0]), rampSlope(d-z.zone[0])
	share, slope = share*ramp(z.zone[1]-d), slope*ramp(z.zone[1]-d)-share*rampSlope(z.zone[1]-d)
	j.Z += z.by * share
	j.Zx, j.Zy = j.Zx+z.by*slope*in[0], j.Zy+z.by*slope*in[1]
	return j
}

// ramp goes from 0 to 1 over the fade about 0.
func ramp(d float64) float64 {
	t := math.Min(1, math.Max(0, d/fade+0.5))
	return t * t * (3 - 2*t)
}

// rampSlope is its derivative, 1/mm.
func rampSlope(d float64) float64 {
	t := math.Min(1, math.Max(0, d/fade+0.5))
	return 6 * t * (1 - t) / fade
}

// changed is a geometry with a lever moved by so many mm.
func (l *lever) changed(g *shape.Geometry, by float64) *shape.Geometry {
	out := *g
	if l.bar < 0 {
		out.Plate.Thickness = zoned{g.Plate.Thickness, g, l.zone, by}
		return &out
	}
	c := *g.Case
	c.Braces = append(c.Braces[:0:0], c.Braces...)
	c.Braces[l.bar].HeightScale *= 1 + by/l.full
	out.Case = &c
	return &out
}

// trier solves a loading with levers moved.
type trier struct {
	l     *loading
	plate [2]*shape.Geometry // without and with the weight; nil: nothing is on it without
	gauge int
	o     design.Options
}

// sink is how far the gauge gives way under the weight with a lever moved.
func (t *trier) sink(ctx context.Context, l *lever, by, refine float64) (float64, error) {
	o := t.o
	o.Refine, o.NoError, o.Progress = refine, true, nil
	var at [2]float64
	for k, g := range t.plate {
		if g == nil {
			continue
		}
		s, err := design.SolveShaped(ctx, l.changed(g, by), o)
		if err != nil {
			return 0, err
		}
		r, _ := answer.ReadingAt(s, g.Case.Gauges[t.gauge].At)
		at[k] = r.Sink
	}
	return at[1] - at[0], nil
}

// coarse is how many times as large triangles are on which a change is searched.
const coarse = 0.5

// meet finds the changes that bring gauge i from now to a target, mm.
func (l *loading) meet(ctx context.Context, i int, target, now float64, o design.Options) ([]Change, error) {
	t := &trier{l: l, gauge: i, o: o}
	own := o.Refine
	if own == 0 {
		own = 1
	}
	var err error
	if l.without != nil {
		if t.plate[0], err = shape.NewGeometry(l.without); err != nil {
			return nil, err
		}
	}
	if t.plate[1], err = shape.NewGeometry(l.with); err != nil {
		return nil, err
	}
	list := levers(t.plate[1])
	base, err := t.sink(ctx, &list[0], 0, coarse*own)
	if err != nil {
		return nil, err
	}
	var out []Change
	for k := range list {
		o.Say(fmt.Sprintf("target, %s", list[k].what))
		c, err := t.search(ctx, &list[k], base, target/now, own)
		if err != nil {
			return nil, err
		}
		out = append(out, c)
	}
	return out, nil
}

// search moves one lever until the sink is so many times as great. With the slope p of ln s by ln of the lever, found by a small
// step, s goes nearly as its power p; the power is corrected by the first proposal and the second is checked.
func (t *trier) search(ctx context.Context, l *lever, base, times, own float64) (Change, error) {
	c := Change{What: l.what, Sink: answer.None()}
	const small = 0.02
	s, err := t.sink(ctx, l, -small*l.full, coarse*own)
	if err != nil {
		return c, err
	}
	power := math.Log(s/base) / math.Log(1-small)
	for range 2 {
		share := math.Expm1(math.Log(times) / power)
		if math.IsNaN(share) || math.Abs(share) > mostChange {
			c.By, c.Far = math.Copysign(mostChange, share)*l.full, true
			return c, nil
		}
		c.By = share * l.full
		if s, err = t.sink(ctx, l, c.By, coarse*own); err != nil {
			return c, err
		}
		if near := math.Abs(math.Log(s / base / times)); near < 0.002 {
			break
		}
		if p := math.Log(s/base) / math.Log1p(share); p*power > 0 {
			power = p
		}
	}
	if s, err = t.sink(ctx, l, c.By, own); err != nil {
		return c, err
	}
	c.Sink = answer.Num(s)
	return c, nil
}
