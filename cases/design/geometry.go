package design

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/tree"
	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// Geometry is the plate of a case: its plan and its surfaces. It is the first
// stage of an answer and knows no mesh and no mechanics. NewGeometry makes it;
// later stages never change it.
type Geometry struct {
	Case        *cases.Case
	Outline     *plane.Curve
	Holes       []*plane.Curve // mirrored ones too
	Plate       mesh.Plate
	RimHeight   float64           // outer surface at the outline above z = 0, mm
	TopAtBridge float64           // outer surface under the bridge's middle above z = 0, mm; 0 without a bridge
	Arch        *surface.Report   // nil for an arch by formula
	Thickness   *surface.Report   // nil for a constant thickness
	Warnings    []*tree.FileError // admitted, but worth a second look

	holeKeys []string // key of each hole
	bends    *bendMap
	told     [3][]*tree.FileError // those of Warnings that each part of the fit gave
}

// The parts of a fit that warn.
const (
	ofThickness = iota
	ofArch
	ofSurfaces // both together
)

// NewGeometry fits the plan and the surfaces of a case. Faults come as Faults:
// curves that cross themselves, data from which no surface follows, feet,
// loads or gauges that stand beside the wood, strings whose path over this
// arch gives no break angle. Holes and lines beside the wood are found by the
// mesher; see PlaceFault.
func NewGeometry(c *cases.Case) (*Geometry, error) { return fitGeometry(c, nil, nil) }

// fitter makes the geometry of one case. It takes from the geometry of another
// one what the keys in which the two differ do not touch.
type fitter struct {
	c       *cases.Case
	rep     *tree.FaultLog
	made    *Geometry
	old     *Geometry // nil: nothing to take
	changed []string  // keys
	part    int       // that is being fitted
}

// fitGeometry fits what the changed keys touch and takes the rest from old; nil
// has nothing to take.
func fitGeometry(c *cases.Case, old *Geometry, changed []string) (*Geometry, error) {
	f := fitter{c: c, rep: fresh(c.Rep), made: &Geometry{Case: c}, old: old, changed: changed}
	for _, step := range []func(){f.plan, f.stand, f.check} {
		if step(); len(f.rep.Faults) > 0 {
			return nil, f.rep.Err()
		}
	}
	f.made.Warnings = slices.Concat(f.made.told[ofThickness], f.made.told[ofArch], f.made.told[ofSurfaces], f.rocks())
	return f.made, nil
}

// touched says whether one of the changed keys is, holds, or lies below, one of
// these.
func (f *fitter) touched(keys ...string) bool {
	return f.old == nil || slices.ContainsFunc(f.changed, func(k string) bool { return slices.ContainsFunc(keys, tree.Related(k)) })
}

// plan makes the outline and the holes.
func (f *fitter) plan() {
	if !f.touched("plate.outline", "plate.hole") {
		f.made.Outline, f.made.Holes, f.made.holeKeys = f.old.Outline, f.old.Holes, f.old.holeKeys
		return
	}
	f.curves()
}

// Stand wants everything on wood and makes the surfaces.
func (f *fitter) stand() {
	f.checkPlaces()
	f.surfaces()
}

// check wants surfaces that can be carved and strings that can be strung over
// them.
func (f *fitter) check() {
	f.bend()
	if f.touched("plate.outline", "plate.hole", "plate.arch", "plate.thickness", "plate.thickness_scale") {
		f.part = ofSurfaces
		f.checkSurfaces(f.made.bends)
	} else {
		f.made.told[ofSurfaces] = f.old.told[ofSurfaces]
	}
	if b := f.c.Bridge; b != nil {
		f.made.TopAtBridge = f.made.Plate.Outer.At(b.At).Z
		f.checkPathOver()
	}
}

// bend samples how tightly the outer surface bends.
func (f *fitter) bend() {
	if f.old != nil && f.old.Outline == f.made.Outline && f.old.Plate.Outer == f.made.Plate.Outer {
		f.made.bends = f.old.bends
		return
	}
	f.made.bends = newBendMap(f.made.Outline, f.made.Plate.Outer)
}

// fresh returns a report that knows the same places and holds no faults.
func fresh(r *tree.FaultLog) *tree.FaultLog {
	out := tree.NewFaultLog()
	out.Order, out.Places = r.Order, r.Places
	return out
}

// curves makes the outline and the holes.
func (f *fitter) curves() {
	f.made.Outline = f.curve("plate.outline", &f.c.Plate.Outline)
	for i := range f.c.Plate.Holes {
		h := &f.c.Plate.Holes[i]
		key := tree.EntryKey("plate.hole", i+1)
		outline := h.Outline
		if outline == nil {
			outline = oval(*h.At, float64(h.Size[0]), float64(h.Size[1]))
		}
		hole := f.curve(key, outline)
		if hole == nil {
			continue
		}
		f.made.Holes = append(f.made.Holes, hole)
		f.made.holeKeys = append(f.made.holeKeys, key)
		if h.Mirrored {
			f.made.Holes = append(f.made.Holes, hole.Mirrored())
			f.made.holeKeys = append(f.made.holeKeys, key)
		}
	}
}

// curve lays a curve through an outline's points; a fault names the point.
func (f *fitter) curve(key string, o *cases.Outline) *plane.Curve {
	curve, err := plane.NewCurve(o.Points, o.Corner)
	if err == nil {
		return curve
	}
	var ce *plane.CurveError
	switch {
	case errors.As(err, &ce) && ce.Point >= 0 && ce.Point < len(o.Lines):
		f.rep.Add(o.Lines[ce.Point], key, fmt.Errorf("at %s: %s", tree.Spot(ce.At), ce.Msg))
	case errors.As(err, &ce):
		f.rep.AddKey(key, "%s", ce.Msg)
	default:
		f.rep.AddKey(key, "%w", err)
	}
	return nil
}

// ovalPoints is the number of points of an oval; the spline through them is
// within 1e-4 of its size of the true ellipse.
const ovalPoints = 32

// oval is an ellipse with the given width across and along, mm.
func oval(at mesh.Point, across, along float64) *cases.Outline {
	o := &cases.Outline{Points: make([]mesh.Point, ovalPoints)}
	for i := range o.Points {
		s, c := math.Sincos(2 * math.Pi * float64(i) / ovalPoints)
		o.Points[i] = mesh.Point{at[0] + across/2*c, at[1] + along/2*s}
	}
	return o
}

// Domain is the mesher's input. Its lines are the braces and then the support
// lines, in the order of the case; its lengths are divided by the case's
// refine.
func (g *Geometry) Domain() mesh.Domain {
	c := g.Case
	d := mesh.Domain{
		Outline: g.Outline, Holes: g.Holes, Fine: g.fine(),
		Size: edge(c.Mesh, float64(c.Mesh.Size)), Curvature: g.bends.mean,
	}
	for _, b := range c.Braces {
		d.Lines = append(d.Lines, b.Line)
	}
	for _, s := range c.Supports {
		if len(s.Line) > 0 {
			d.Lines = append(d.Lines, s.Line)
		}
	}
	return d
}

// lineKeys are the keys of the domain's lines.
func (g *Geometry) lineKeys() []string {
	var out []string
	for i := range g.Case.Braces {
		out = append(out, tree.EntryKey("brace", i+1)+".line")
	}
	for i, s := range g.Case.Supports {
		if len(s.Line) > 0 {
			out = append(out, tree.EntryKey("support", i+1)+".line")
		}
	}
	return out
}

// edge returns the edge length wanted at a feature, mm: its own, but not above
// the general one, divided by refine.
func edge(m cases.Mesh, feature float64) float64 { return min(feature, float64(m.Size)) / m.Refine }

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
	case pe.Part == "size":
		key = "mesh.size"
	}
	return g.Case.Fault(key, "at %s: %s", tree.Spot(pe.At), pe.Msg)
}
