package design

import (
	"math"
	"slices"

	"archload/cases/tree"
	"archload/mesh"
	"archload/mesh/plane"
)

// checkPlaces wants everything that stands on the plate to stand on wood; it
// looks at what the changed keys may have moved.
func (f *fitter) checkPlaces() {
	c := f.c
	moved := func(keys ...string) bool { return f.touched(append(keys, "plate.outline", "plate.hole")...) }
	if c.Bridge != nil && moved("bridge.at", "bridge.width", "bridge.length", "bridge.foot") {
		f.checkFeet()
	}
	if moved("load") {
		for i := range c.Loads {
			lo, hi := rect(c.Loads[i].At, c.Loads[i].Size)
			f.onWood(tree.EntryKey("load", i+1)+".at", c.Loads[i].Name, rectPoints(lo, hi))
		}
	}
	if moved("mass") {
		for i, m := range c.Masses {
			lo, hi := rect(m.At, m.Size)
			f.onWood(tree.EntryKey("mass", i+1)+".at", m.Name, rectPoints(lo, hi))
		}
	}
	if moved("tap") {
		for i, t := range c.Taps {
			lo, hi := rect(t.At, t.Size)
			f.onWood(tree.EntryKey("tap", i+1)+".at", t.Name, rectPoints(lo, hi))
		}
	}
	if moved("gauge") {
		for i, gauge := range c.Gauges {
			f.onWood(tree.EntryKey("gauge", i+1)+".at", gauge.Name, []mesh.Point{gauge.At})
		}
	}
	if moved("support") {
		for i, s := range c.Supports {
			if s.At != nil {
				f.onWood(tree.EntryKey("support", i+1)+".at", s.Name, []mesh.Point{*s.At})
			}
		}
	}
	if moved("post") {
		for i, p := range c.Posts {
			f.onWood(tree.EntryKey("post", i+1)+".at", p.Name, []mesh.Point{p.At})
		}
	}
}

// checkFeet wants every foot of the bridge to stand on wood.
func (f *fitter) checkFeet() {
	for i := range f.c.Bridge.Feet {
		key := "bridge.at"
		if foot := tree.EntryKey("bridge.foot", i+1); f.rep.IsSet(foot) {
			key = foot
		}
		lo, hi := f.c.Bridge.FootRect(i)
		f.onWood(key, "the foot", rectPoints(lo, hi))
	}
}

// overHole reports whether a point lies over a hole.
func (f *fitter) overHole(p mesh.Point) bool {
	return slices.ContainsFunc(f.made.Holes, func(h *plane.Curve) bool { return h.Contains(p) })
}

// onWood reports the point of a thing that lies farthest beyond the outline,
// or else the first over a hole.
func (f *fitter) onWood(key, thing string, pts []mesh.Point) {
	const touch = 1e-3 // mm: a point on the outline is on wood
	worst, far := mesh.Point{}, touch
	for _, p := range pts {
		if f.made.Outline.Contains(p) {
			continue
		}
		if d := f.made.Outline.Distance(p); d > far {
			worst, far = p, d
		}
	}
	if far > touch {
		f.rep.AddKey(key, "%s reaches %.3g mm beyond the outline at %s; want it on the plate", thing, far, tree.Spot(worst))
		return
	}
	for _, p := range pts {
		if f.overHole(p) {
			f.rep.AddKey(key, "%s stands over a sound hole at %s; want it on wood", thing, tree.Spot(p))
			return
		}
	}
}

// checkStep is the distance of the places that are looked at, mm.
const checkStep = 2.0

// rectPoints returns points over a rectangle, its corners among them.
func rectPoints(lo, hi mesh.Point) []mesh.Point {
	nx := int(math.Ceil((hi[0] - lo[0]) / checkStep))
	ny := int(math.Ceil((hi[1] - lo[1]) / checkStep))
	var out []mesh.Point
	for i := range nx + 1 {
		for j := range ny + 1 {
			u, v := float64(i)/max(float64(nx), 1), float64(j)/max(float64(ny), 1)
			out = append(out, mesh.Point{lo[0] + u*(hi[0]-lo[0]), lo[1] + v*(hi[1]-lo[1])})
		}
	}
	return out
}
