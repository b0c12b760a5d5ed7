package shape

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/tree"
	"archload/mesh"
	"archload/mesh/plane"
)

// fitter makes the geometry of one case. It takes from the geometry of another
// one what the keys in which the two differ do not touch.
type fitter struct {
	c       *cases.Case
	rep     *tree.FaultLog
	made    *Geometry
	old     *Geometry // nil: nothing to take
	changed []string  // keys
	near    bool      // an arch whose rim rises a little may be raised, see FitNear
	part    int       // that is being fitted
	top     *Geometry // of a back: what it lies under; nil for a top
}

// touched says whether one of the changed keys is, holds, or lies below, one of
// these.
func (f *fitter) touched(keys ...string) bool {
	return f.old == nil || slices.ContainsFunc(f.changed, func(k string) bool { return slices.ContainsFunc(keys, tree.Related(k)) })
}

// fresh returns a report that knows the same places and holds no faults.
func fresh(r *tree.FaultLog) *tree.FaultLog {
	out := tree.NewFaultLog()
	out.Order, out.Places = r.Order, r.Places
	return out
}

// warn adds a doubt.
func (f *fitter) warn(key, form string, args ...any) {
	f.made.told[f.part] = append(f.made.told[f.part], f.c.Fault(key, form, args...))
}

// plan makes the outline and the holes.
func (f *fitter) plan() {
	if !f.touched("plate.outline", "plate.hole") {
		f.made.Outline, f.made.Holes, f.made.holeKeys = f.old.Outline, f.old.Holes, f.old.holeKeys
		return
	}
	f.curves()
}

// curves makes the outline and the holes.
func (f *fitter) curves() {
	if f.top != nil {
		f.made.Outline, f.made.Blocks = f.top.Outline, f.top.Blocks
	} else {
		f.made.Outline = f.curve("plate.outline", &f.c.Plate.Outline)
	}
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
