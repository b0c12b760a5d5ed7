package shape

import (
	"errors"

	"math"
	"slices"

	"archload/cases"
	"archload/cases/tree"
	"archload/mesh"
	"archload/mesh/plane"
)

// Edge lengths at features, mm, at refine = 1, and how far beyond the feature
// they reach. Measured on a prototype of the mesher: 3 mm under a foot resolves
// its pressure, 1.5 to 2 mm the stress at the eye of a sound hole.
const (
	FootEdge    = 3.0
	footMargin  = 6.0
	loadEdge    = 3.0
	postEdge    = 2.0
	braceEdge   = 5.0
	blockEdge   = 1.5 // where the edge leaves a block
	blockMargin = 4.0
	holeEdge    = 3.0 // along straight edges
	eyeEdge     = 1.5 // least, at the smallest eyes
	eyeShare    = 0.4 // of the edge's radius
)

// fine returns where the mesh is finer than elsewhere.
func (g *Geometry) fine() []mesh.Fine {
	var out []mesh.Fine
	m := g.Case.Mesh
	if b := g.Case.Bridge; b != nil {
		for i := range b.Feet {
			lo, hi := b.FootRect(i)
			out = append(out, mesh.Fine{
				Along:  []mesh.Point{{lo[0], b.At[1]}, {hi[0], b.At[1]}},
				Radius: float64(b.Width)/2 + footMargin, Size: Edge(m, FootEdge),
			})
		}
	}
	for _, b := range g.Case.Braces {
		out = append(out, mesh.Fine{Along: b.Line, Radius: b.Width.Max() / 2, Size: Edge(m, braceEdge)})
	}
	for _, h := range g.Holes {
		out = append(out, holeFine(h, m)...)
	}
	for _, l := range g.Case.Loads {
		if l.OnBlock() != "" {
			continue
		}
		lo, hi := Rect(l.At, l.Size)
		mid := (lo[1] + hi[1]) / 2
		out = append(out, mesh.Fine{
			Along:  []mesh.Point{{lo[0], mid}, {hi[0], mid}},
			Radius: (hi[1]-lo[1])/2 + footMargin, Size: Edge(m, loadEdge),
		})
	}
	for i := range g.Blocks {
		for _, end := range g.Blocks[i].Ends {
			out = append(out, mesh.Fine{Along: []mesh.Point{end}, Radius: blockMargin, Size: Edge(m, blockEdge)})
		}
	}
	for _, p := range g.Case.Posts {
		out = append(out, mesh.Fine{Along: []mesh.Point{p.At}, Radius: float64(p.Diameter)/2 + footMargin, Size: Edge(m, postEdge)})
	}
	for _, s := range g.Case.Supports {
		if s.At != nil {
			out = append(out, mesh.Fine{Along: []mesh.Point{*s.At}, Radius: footMargin, Size: Edge(m, loadEdge)})
		}
	}
	return out
}

// Rect returns the corners of a load's rectangle in plan, mm.
func Rect(at mesh.Point, size *[2]tree.Length) (lo, hi mesh.Point) {
	if size == nil {
		return at, at
	}
	for k := range 2 {
		lo[k], hi[k] = at[k]-float64(size[k])/2, at[k]+float64(size[k])/2
	}
	return lo, hi
}

// holeFine returns the sizes along a hole's edge: 0.4 of the edge's own
// radius, between eyeEdge and holeEdge, in steps of half a millimetre so that
// long stretches share one entry. It begins at the hole's end toward the tail, or
// once at each of several, so that a mirrored hole has the mirrored sizes.
func holeFine(h *plane.Curve, m cases.Mesh) []mesh.Fine {
	const step = 2.0 // mm along the edge
	var out []mesh.Fine
	for _, ring := range FromTail(h.Polyline(0.02)) {
		pts := plane.Evenly(ring, step)
		n := len(pts)
		sizes := make([]float64, n)
		for i := range n {
			r := circumradius(pts[(i+n-1)%n], pts[i], pts[(i+1)%n])
			sizes[i] = min(max(math.Round(2*eyeShare*r)/2, eyeEdge), holeEdge)
		}
		last := 0.0
		for i := range n {
			size, next := min(sizes[i], sizes[(i+1)%n]), pts[(i+1)%n]
			if size == last {
				out[len(out)-1].Along = append(out[len(out)-1].Along, next)
				continue
			}
			last = size
			out = append(out, mesh.Fine{Along: []mesh.Point{pts[i], next}, Radius: Edge(m, size), Size: Edge(m, size)})
		}
	}
	return out
}

// FromTail returns the closed polyline as it begins at its point nearest to the
// tail, once for each such point.
func FromTail(ring []mesh.Point) (out [][]mesh.Point) {
	const same = 1e-6 // mm
	least := math.Inf(1)
	for _, p := range ring {
		least = min(least, p[1])
	}
	for i, p := range ring {
		if p[1] <= least+same {
			out = append(out, slices.Concat(ring[i:], ring[:i]))
		}
	}
	return out
}

// circumradius is the radius of the circle through three points, mm; infinite
// if they are in line: product of the sides over four times the area.
func circumradius(a, b, c mesh.Point) float64 {
	side := func(p, q mesh.Point) float64 { return math.Hypot(q[0]-p[0], q[1]-p[1]) }
	area := math.Abs((b[0]-a[0])*(c[1]-a[1])-(c[0]-a[0])*(b[1]-a[1])) / 2
	return side(a, b) * side(b, c) * side(c, a) / (4 * area)
}

// Edge returns the edge length wanted at a feature, mm: its own, but not above
// the general one, divided by refine.
func Edge(m cases.Mesh, feature float64) float64 { return min(feature, float64(m.Size)) / m.Refine }

// Domain is the mesher's input. Its lines are the braces and then the support
// lines, in the order of the case, its seams those where the blocks end; its lengths
// are divided by the case's refine.
func (g *Geometry) Domain() mesh.Domain {
	c := g.Case
	d := mesh.Domain{
		Outline: g.Outline, Holes: g.Holes, Fine: g.fine(),
		Size: Edge(c.Mesh, float64(c.Mesh.Size)), Curvature: g.bends.mean,
	}
	for _, b := range c.Braces {
		d.Lines = append(d.Lines, b.Line)
	}
	for _, s := range c.Supports {
		if len(s.Line) > 0 && !g.Edging(s.Line) {
			d.Lines = append(d.Lines, s.Line)
		}
	}
	for i := range g.Blocks {
		d.Seams = append(d.Seams, g.Blocks[i].lines()...)
	}
	return d
}

// Serves says whether a plan of triangles that was laid for the shape old, so many times
// smaller than the case asks, serves this one, which differs in its surfaces at most.
func (g *Geometry) Serves(old *Geometry, plan *mesh.Plan, refine float64) bool {
	if g.bends == old.bends {
		return true
	}
	d := mesh.Domain{Outline: g.Outline, Size: Edge(g.Case.Mesh, float64(g.Case.Mesh.Size)), Scale: 1 / refine, Curvature: g.bends.mean}
	return d.Serves(plan)
}

// onRail is how far an edge may be from a rail that holds it, mm: half a rail's width or less.
const onRail = 0.5

// Edging says whether a rail lies along the plate's edge over its whole length: the edge is a line of
// the mesh already.
func (g *Geometry) Edging(rail []mesh.Point) bool {
	for i, a := range rail[:len(rail)-1] {
		b := rail[i+1]
		steps := int(plane.Dist(a, b)) + 1
		for k := range steps + 1 {
			if g.Outline.Distance(plane.Lerp(a, b, float64(k)/float64(steps))) > onRail {
				return false
			}
		}
	}
	return true
}

// OnRail says whether a place is one that a rail along the edge holds.
func OnRail(rail []mesh.Point, p mesh.Point) bool {
	for i, a := range rail[:len(rail)-1] {
		if _, d2 := plane.OnChord(a, rail[i+1], p); d2 <= onRail*onRail {
			return true
		}
	}
	return false
}

// lineKeys are the keys of the domain's lines.
func (g *Geometry) lineKeys() []string {
	var out []string
	for i := range g.Case.Braces {
		out = append(out, tree.EntryKey("brace", i+1)+".line")
	}
	for i, s := range g.Case.Supports {
		if len(s.Line) > 0 && !g.Edging(s.Line) {
			out = append(out, tree.EntryKey("support", i+1)+".line")
		}
	}
	return out
}

// PlaceFault turns the mesher's *mesh.PlaceError into a *FileError that names
// the key; any other error is returned as it is.
func (g *Geometry) PlaceFault(err error) error {
	var pe *mesh.PlaceError
	if !errors.As(err, &pe) {
		return err
	}
	key, lines := "plate.outline", g.lineKeys()
	switch {
	case pe.Part == "hole" && pe.Index < len(g.holeKeys):
		key = g.holeKeys[pe.Index]
	case pe.Part == "line" && pe.Index < len(lines):
		key = lines[pe.Index]
	case pe.Part == "line" && len(g.Blocks) == 2:
		key = "rim.tail_block"
		if pe.At[1] > (g.Blocks[0].Edge[1]+g.Blocks[1].Edge[1])/2 {
			key = "rim.neck_block"
		}
	case pe.Part == "size":
		key = "mesh.size"
	}
	fault := g.Case.Fault(key, "at %s: %s", tree.Spot(pe.At), pe.Msg)
	if g.isBack {
		return backFault(fault)
	}
	return fault
}
