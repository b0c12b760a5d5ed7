package shape

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
	moved := func(keys ...string) bool { return f.touched(append(keys, "plate.outline", "plate.hole")...) }
	if f.c.Bridge != nil && moved("bridge.at", "bridge.width", "bridge.length", "bridge.foot") {
		f.checkFeet()
	}
	for _, s := range f.standing() {
		if moved(s.table) {
			f.onWood(tree.EntryKey(s.table, s.entry)+".at", s.name, s.points)
		}
	}
}

// standing is an entry of the case that stands on the plate: the points that
// must lie on wood.
type standing struct {
	table  string
	entry  int // from 1
	name   string
	points []mesh.Point
}

// standing lists all but the bridge's feet.
func (f *fitter) standing() []standing {
	var out []standing
	add := func(table string, i int, name string, points ...mesh.Point) {
		out = append(out, standing{table, i + 1, name, points})
	}
	spread := func(table string, i int, name string, at mesh.Point, size *[2]tree.Length) {
		lo, hi := Rect(at, size)
		add(table, i, name, rectPoints(lo, hi)...)
	}
	for i, l := range f.c.Loads {
		if l.OnBlock() != "" {
			continue
		}
		spread("load", i, l.Name, l.At, l.Size)
	}
	for i, m := range f.c.Masses {
		spread("mass", i, m.Name, m.At, m.Size)
	}
	for i, t := range f.c.Taps {
		spread("tap", i, t.Name, t.At, t.Size)
	}
	for i, g := range f.c.Gauges {
		if g.On == "back" {
			continue
		}
		add("gauge", i, g.Name, g.At)
	}
	for i, s := range f.c.Supports {
		if s.At != nil {
			add("support", i, s.Name, *s.At)
		}
	}
	for i, p := range f.c.Posts {
		add("post", i, p.Name, p.At)
	}
	return out
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
