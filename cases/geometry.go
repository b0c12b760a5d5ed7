package cases

import (
	"errors"
	"fmt"
	"math"

	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// FitNotes is what Geometry learned on the way.
type FitNotes struct {
	Outline   *plane.Curve
	Holes     []*plane.Curve
	RimHeight float64         // outer surface at the outline above z = 0, mm
	Arch      *surface.Report // nil for an arch by formula
	Thickness *surface.Report // nil for a constant thickness
	Warnings  []*FileError    // admitted, but worth a second look

	ofArch   []*FileError // those of Warnings that the fit of the arch gave
	ofThick  []*FileError // and that of the thickness
	holeKeys []string     // key of each hole of the domain
	lineKeys []string     // key of each line of the domain
}

// Geometry turns a case into the input of the mesher and the plate's surfaces.
// The domain's lines are the braces and then the support lines, in the order
// of the case; its lengths are divided by the case's refine. Faults come as Faults:
// curves that cross themselves, data from which no surface follows, feet,
// loads or gauges that stand beside the wood. Holes and lines beside the wood
// are found by the mesher; see PlaceFault.
func Geometry(c *Case) (mesh.Domain, mesh.Plate, *FitNotes, error) {
	g := shaper{c: c, rep: c.rep.fresh(), notes: &FitNotes{}}
	g.curves()
	if err := g.rep.err(); err != nil {
		return mesh.Domain{}, mesh.Plate{}, nil, err
	}
	g.checkPlaces()
	g.surfaces()
	if err := g.rep.err(); err != nil {
		return mesh.Domain{}, mesh.Plate{}, nil, err
	}
	bends := newBendMap(g.notes.Outline, g.plate.Outer)
	g.checkSurfaces(bends)
	if err := g.rep.err(); err != nil {
		return mesh.Domain{}, mesh.Plate{}, nil, err
	}
	return g.domain(bends), g.plate, g.notes, nil
}

// shaper makes the geometry of one case.
type shaper struct {
	c     *Case
	rep   *report
	notes *FitNotes
	plate mesh.Plate
}

// fresh returns a report that knows the same places and holds no faults.
func (r *report) fresh() *report {
	out := newReport()
	out.order, out.places = r.order, r.places
	return out
}

// curves makes the outline and the holes.
func (g *shaper) curves() {
	g.notes.Outline = g.curve("plate.outline", &g.c.Plate.Outline)
	for i := range g.c.Plate.Holes {
		h := &g.c.Plate.Holes[i]
		key := entryKey("plate.hole", i+1)
		outline := h.Outline
		if outline == nil {
			outline = oval(*h.At, float64(h.Size[0]), float64(h.Size[1]))
		}
		hole := g.curve(key, outline)
		if hole == nil {
			continue
		}
		g.notes.Holes = append(g.notes.Holes, hole)
		g.notes.holeKeys = append(g.notes.holeKeys, key)
		if h.Mirrored {
			g.notes.Holes = append(g.notes.Holes, hole.Mirrored())
			g.notes.holeKeys = append(g.notes.holeKeys, key)
		}
	}
}

// curve lays a curve through an outline's points; a fault names the point.
func (g *shaper) curve(key string, o *Outline) *plane.Curve {
	curve, err := plane.NewCurve(o.Points, o.Corner)
	if err == nil {
		return curve
	}
	var ce *plane.CurveError
	switch {
	case errors.As(err, &ce) && ce.Point >= 0 && ce.Point < len(o.lines):
		g.rep.add(o.lines[ce.Point], key, fmt.Errorf("at %s: %s", spot(ce.At), ce.Msg))
	case errors.As(err, &ce):
		g.rep.addKey(key, "%s", ce.Msg)
	default:
		g.rep.addKey(key, "%w", err)
	}
	return nil
}

// ovalPoints is the number of points of an oval; the spline through them is
// within 1e-4 of its size of the true ellipse.
const ovalPoints = 32

// oval is an ellipse with the given width across and along, mm.
func oval(at mesh.Point, across, along float64) *Outline {
	o := &Outline{Points: make([]mesh.Point, ovalPoints)}
	for i := range o.Points {
		s, c := math.Sincos(2 * math.Pi * float64(i) / ovalPoints)
		o.Points[i] = mesh.Point{at[0] + across/2*c, at[1] + along/2*s}
	}
	return o
}

// domain is the mesher's input.
func (g *shaper) domain(bends *bendMap) mesh.Domain {
	d := mesh.Domain{
		Outline: g.notes.Outline, Holes: g.notes.Holes, Fine: g.fine(),
		Size: g.c.Mesh.edge(float64(g.c.Mesh.Size)), Curvature: bends.mean,
	}
	for i, b := range g.c.Braces {
		d.Lines = append(d.Lines, b.Line)
		g.notes.lineKeys = append(g.notes.lineKeys, entryKey("brace", i+1)+".line")
	}
	for i, s := range g.c.Supports {
		if len(s.Line) > 0 {
			d.Lines = append(d.Lines, s.Line)
			g.notes.lineKeys = append(g.notes.lineKeys, entryKey("support", i+1)+".line")
		}
	}
	return d
}

// edge returns the edge length wanted at a feature, mm: its own, but not above
// the general one, divided by refine.
func (m Mesh) edge(feature float64) float64 { return min(feature, float64(m.Size)) / m.Refine }

// PlaceFault turns the mesher's *mesh.PlaceError into a *FileError that names
// the key; any other error is returned as it is.
func (c *Case) PlaceFault(notes *FitNotes, err error) error {
	var pe *mesh.PlaceError
	if !errors.As(err, &pe) {
		return err
	}
	key := "plate.outline"
	switch {
	case pe.Part == "hole" && pe.Index < len(notes.holeKeys):
		key = notes.holeKeys[pe.Index]
	case pe.Part == "line" && pe.Index < len(notes.lineKeys):
		key = notes.lineKeys[pe.Index]
	case pe.Part == "size":
		key = "mesh.size"
	}
	return c.Fault(key, "at %s: %s", spot(pe.At), pe.Msg)
}
