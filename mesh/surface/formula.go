package surface

import (
	"cmp"
	"fmt"
	"math"

	"archload/mesh/plane"
)

// FormulaSpec describes an arch in a maker's few numbers.
type FormulaSpec struct {
	Outline      plane.Region
	Height       float64     // of the outer surface at the apex, above z = 0, mm
	Rim          float64     // of the outer surface at the outline, mm
	Apex         plane.Point // mm
	RecurveDepth float64     // greatest depth taken off by the trough, mm; 0: no trough
	RecurveAt    float64     // distance of the trough's floor from the outline, mm; 0 means 22
	Cell         float64     // edge of the spline cells, mm; 0 means 6
}

// NewFormula returns the arch of a formula over any outline:
//
//	z = rim + A φ(u) − depth (d/at)² exp(1 − (d/at)²),  φ(u) = 2u²/(1+u).
//
// u solves the Poisson equation −Δu = s with u = 0 on the outline, scaled to
// 1 at the apex, so that it takes the outline's shape whatever that is. Its
// source s = exp(α·(p−apex) − |p−apex|²/2R²) is turned up on one side until
// u is highest at the apex wanted; R is infinite if that will do. φ makes the
// arch run out level at the outline, as a carved edge does, between u^1.5 and
// u². d is the distance from the outline, and A makes the apex as high as
// wanted. The sum is brought onto a spline, so that all second derivatives are
// continuous, also where the distance has a ridge.
//
// An apex that no such arch can have, for instance within 15 mm of the
// outline, is refused.
func NewFormula(spec FormulaSpec) (Surface, error) {
	if err := spec.check(); err != nil {
		return nil, err
	}
	rim, err := rimOf(spec.Outline)
	if err != nil {
		return nil, err
	}
	const nearest = 15.0 // mm
	if f := rim.nearest(spec.Apex); !f.inside || f.dist < nearest {
		return nil, fmt.Errorf("arch formula: apex (%g, %g): want it at least %g mm inside the outline, found %.1f",
			spec.Apex[0], spec.Apex[1], nearest, f.signed())
	}
	dome, err := newDome(rim, rim.cellSize(spec.Cell))
	if err != nil {
		return nil, err
	}
	return spec.settle(rim, dome)
}

// check refuses numbers that describe no arch.
func (s *FormulaSpec) check() error {
	switch {
	case s.Outline == nil:
		return fmt.Errorf("arch formula: no outline given")
	case !finite(s.Height, s.Rim, s.Apex[0], s.Apex[1], s.RecurveDepth, s.RecurveAt, s.Cell):
		return fmt.Errorf("arch formula: want finite numbers")
	case s.Height <= s.Rim:
		return fmt.Errorf("arch formula: height %g mm at the apex: want more than the rim's %g", s.Height, s.Rim)
	case s.RecurveDepth < 0 || s.RecurveAt < 0 || s.Cell < 0:
		return fmt.Errorf("arch formula: recurve_depth %g, recurve_at %g, cell %g mm: want none negative",
			s.RecurveDepth, s.RecurveAt, s.Cell)
	case s.RecurveDepth > s.Height-s.Rim:
		return fmt.Errorf("arch formula: recurve_depth %g mm: want at most the arch's rise of %g",
			s.RecurveDepth, s.Height-s.Rim)
	}
	return nil
}

// trough returns the depth taken off at the distance d from the outline, mm.
func (s *FormulaSpec) trough(d float64) float64 {
	r := d / cmp.Or(s.RecurveAt, usualAt)
	return s.RecurveDepth * r * r * math.Exp(1-r*r)
}

// settle builds the arch on the dome. The trough may push the highest point
// aside a little; the dome's source point is moved against that until the
// apex lies where it was wanted.
func (s *FormulaSpec) settle(rim *rimLine, dome *dome) (Surface, error) {
	const closeEnough = 0.25 // mm
	target := s.Apex
	var arch *Spline
	off := math.Inf(1)
	for range 6 {
		u, err := dome.with(target)
		if err != nil {
			return nil, err
		}
		arch = s.project(rim, dome, u)
		top := summit(arch, s.Apex)
		off = plane.Dist(top, s.Apex)
		if off < closeEnough {
			break
		}
		target = plane.Point{target[0] + s.Apex[0] - top[0], target[1] + s.Apex[1] - top[1]}
	}
	if off > 1 {
		return nil, fmt.Errorf("arch formula: apex (%g, %g): the highest point comes out %.1f mm from it, "+
			"want an apex nearer to the middle or a shallower recurve", s.Apex[0], s.Apex[1], off)
	}
	return arch, nil
}

// project brings the formula onto a spline by least squares over a fine grid,
// and makes its height at the apex exact.
func (s *FormulaSpec) project(rim *rimLine, dome *dome, u *Spline) *Spline {
	top := u.At(s.Apex).Z
	scale := (s.Height - s.Rim + s.trough(rim.nearest(s.Apex).dist)) / phi(1)
	arch := dome.fit.project(func(p plane.Point, d float64) float64 {
		return s.Rim + scale*phi(u.At(p).Z/top) - s.trough(d)
	})
	rise := (s.Height - s.Rim) / (arch.At(s.Apex).Z - s.Rim)
	for i, c := range arch.coef {
		arch.coef[i] = s.Rim + rise*(c-s.Rim)
	}
	return arch
}

// phi is the dome's height over the Poisson solution, both from 0 to 1; it
// goes on evenly a little way below 0.
func phi(u float64) float64 { return 2 * u * u / (1 + max(u, -0.5)) }
