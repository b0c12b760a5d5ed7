package shape

import (
	"errors"
	"slices"

	"archload/cases"
	"archload/cases/tree"
	"archload/mesh"
)

// NewGeometry fits the plan and the surfaces of a case. Faults come as Faults:
// curves that cross themselves, data from which no surface follows, feet,
// loads or gauges that stand beside the wood, strings whose path over this
// arch gives no break angle. Holes and lines beside the wood are found by the
// mesher; see PlaceFault.
func NewGeometry(c *cases.Case) (*Geometry, error) { return FitGeometry(c, nil, nil) }

// FitGeometry fits what the changed keys touch and takes the rest from old; nil
// has nothing to take.
func FitGeometry(c *cases.Case, old *Geometry, changed []string) (*Geometry, error) {
	return (&fitter{c: c, old: old, changed: changed}).all()
}

// FitNear is FitGeometry for a hand that moves: where no more than the height of the rim changes, as with
// another thickness, an arch is not fitted anew but its rim raised. It is then as smooth, and believes each of its data as
// much, as the one in old: a fit of its own differs from it within the error of the mesh.
func FitNear(c *cases.Case, old *Geometry, changed []string) (*Geometry, error) {
	return (&fitter{c: c, old: old, changed: changed, near: true}).all()
}

// all fits all parts.
func (f *fitter) all() (*Geometry, error) {
	c := f.c
	f.rep, f.made = fresh(c.Rep), &Geometry{Case: c}
	for _, step := range []func(){f.plan, f.checkOutline, f.blocks, f.stand, f.check, f.back} {
		if step(); len(f.rep.Faults) > 0 {
			return nil, f.rep.Err()
		}
	}
	f.made.Warnings = slices.Concat(f.made.told[ofThickness], f.made.told[ofArch], f.made.told[ofSurfaces], f.made.told[ofBack], f.rocks())
	return f.made, nil
}

// back fits the back, as a top is fitted, in the same outline. It is made anew
// with every key of its own, and with those of the top that it is made after.
func (f *fitter) back() {
	if !f.c.Bodied() {
		return
	}
	if f.old != nil && f.old.Back != nil && !f.touched("body", "rim", "plate.outline", "plate.arch", "plate.thickness", "plate.thickness_scale", "mesh", "gauge") {
		f.made.Back, f.made.told[ofBack] = f.old.Back, f.old.told[ofBack]
		return
	}
	alone := f.c.BackAlone()
	b := fitter{c: alone, rep: fresh(alone.Rep), made: &Geometry{Case: alone, isBack: true}, top: f.made}
	for _, step := range []func(){b.plan, b.surfaces, b.check} {
		if step(); len(b.rep.Faults) > 0 {
			break
		}
	}
	var faults tree.Faults
	if errors.As(b.rep.Err(), &faults) {
		for _, e := range faults {
			f.rep.Add(placeOf(f.rep, e), cases.BackKey(e.Key), e.Err)
		}
		return
	}
	for _, told := range b.made.told {
		for _, e := range told {
			f.made.told[ofBack] = append(f.made.told[ofBack], backFault(e))
		}
	}
	for i, g := range f.c.Gauges {
		if g.On == "back" {
			b.onWood(tree.EntryKey("gauge", i+1)+".at", g.Name, []mesh.Point{g.At})
		}
	}
	if errors.As(b.rep.Err(), &faults) {
		for _, e := range faults {
			f.rep.Add(placeOf(f.rep, e), e.Key, e.Err)
		}
	}
	f.made.Back = b.made
	f.checkSides()
}

// placeOf is where a fault was found.
func placeOf(r *tree.FaultLog, e *tree.FileError) tree.Place {
	for _, src := range r.Order {
		if src.Label == e.File {
			return tree.Place{Src: src, Line: e.Line}
		}
	}
	return r.Find(cases.BackKey(e.Key))
}
