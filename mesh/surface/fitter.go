package surface

import (
	"fmt"
	"math"
)

// fitter holds the equations of one fit.
type fitter struct {
	spec *Data
	*ground
	data   []datum
	trough bool

	strange []strangeDatum // data that stand out from their neighbours, in order of the data
}

func newFitter(d *Data, old *ground) (*fitter, error) {
	for i := range d.Templates {
		if t := &d.Templates[i]; len(t.Points) != len(t.Heights) {
			return nil, &DataError{Set: "templates", Line: -1, Msg: fmt.Sprintf(
				"station %s: %d points but %d heights", t.ID, len(t.Points), len(t.Heights))}
		}
	}
	if d.Outline == nil {
		return nil, &DataError{Set: "outline", Line: -1, Msg: "no outline given"}
	}
	rim, err := old.rimOn(d.Outline)
	if err != nil {
		return nil, err
	}
	f := &fitter{spec: d, data: gather(d, rim)}
	if err := checkData(d, f.data); err != nil {
		return nil, err
	}
	f.trough = showsTrough(d, f.data)
	f.ground = newGround(d.Outline, roughnessOf(d, rim, f.trough), rim.cellSize(d.Cell))
	if old.alike(f.ground) {
		f.ground = old
	}
	f.data = append(f.data, rimData(d, rim, f.data)...)
	return f, nil
}

// showsTrough tells whether some height near the outline lies below the rim:
// only then is the roughness across the edge made cheap.
func showsTrough(d *Data, all []datum) bool {
	const near, depth = 40.0, 0.2 // mm
	if d.Rim == nil {
		return false
	}
	for i := range all {
		e := &all[i]
		if e.foot.inside && e.foot.dist > onOutline && e.foot.dist < near && e.z < *d.Rim-max(depth, 4*e.height) {
			return true
		}
	}
	return false
}

// refineSigma updates the standard deviations with the slopes of a fit.
func (f *fitter) refineSigma(t trial) {
	if t.spline == nil {
		return
	}
	for i := range f.data {
		e := &f.data[i]
		j := t.spline.At(e.at)
		e.setSigma(math.Hypot(j.Zx, j.Zy))
	}
}

// strangeDatum is a datum that lies off, mm, from a stiff fit.
type strangeDatum struct {
	*datum
	off float64
}
