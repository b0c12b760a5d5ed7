package shape

import (
	"math"

	"archload/mesh"
	"archload/mesh/surface"
)

// shift moves the heights that an arch is fitted to in plan: the place of a height
// z above the rim's z0 moves by the case's apex_shift times the share
// (z - z0)/(zmax - z0), at least 0, so that the apex moves by all of it and the
// edge stays.
func (f *fitter) shift(d *surface.Data) {
	by := f.c.Plate.Arch.ApexShift
	if by == (mesh.Point{}) {
		return
	}
	base, most := f.made.RimHeight, math.Inf(-1)
	for _, l := range d.Lines {
		most = math.Max(most, l.Height)
	}
	for _, t := range d.Templates {
		for _, z := range t.Heights {
			most = math.Max(most, z)
		}
	}
	for _, p := range d.Points {
		most = math.Max(most, p.Z)
	}
	moved := func(p mesh.Point, z float64) mesh.Point {
		share := math.Max(0, (z-base)/math.Max(most-base, 1e-9))
		return mesh.Point{p[0] + share*by[0], p[1] + share*by[1]}
	}
	for i := range d.Lines {
		l := &d.Lines[i]
		for k, p := range l.Points {
			l.Points[k] = moved(p, l.Height)
		}
	}
	for i := range d.Templates {
		t := &d.Templates[i]
		for k, p := range t.Points {
			t.Points[k] = moved(p, t.Heights[k])
		}
	}
	for i := range d.Points {
		d.Points[i].At = moved(d.Points[i].At, d.Points[i].Z)
	}
}

// raisedSurface is an arch whose heights over its rim are multiplied by a number.
type raisedSurface struct {
	surface.Surface
	rim float64 // mm
	by  float64 // 1
}

// At returns height and derivatives at a place.
func (s raisedSurface) At(p mesh.Point) surface.Jet {
	j := scaledSurface{s.Surface, s.by}.At(p)
	j.Z += (1 - s.by) * s.rim
	return j
}

// mostRise is how far the rim of an arch may rise or sink without another fit, mm. A fifth of it moves the sink of
// the course guitar by 7e-5 of it, another mesh by some 5e-3.
const mostRise = 0.5

// keepsRim says whether the arch of the old geometry serves for the rim's height: that of a fit
// does for one that is near, to whoever is content with that.
func (f *fitter) keepsRim() bool {
	rise := f.made.RimHeight - f.old.archRim
	s, _ := unraised(f.old.Plate.Outer).(*surface.Spline)
	return rise == 0 || f.near && s.CanRise() && math.Abs(rise) <= mostRise
}

// raised takes an arch as it was fitted to the height of the case's rim and with its height_scale.
func (f *fitter) raised(s surface.Surface) surface.Surface {
	if by := f.made.RimHeight - f.made.archRim; by != 0 {
		s = f.onRim(s.(*surface.Spline), by)
	}
	if by := f.c.Plate.Arch.HeightScale; by != 1 {
		return raisedSurface{s, f.made.RimHeight, by}
	}
	return s
}

// onRim is a fitted arch with its rim raised; that of the old geometry if it is the same.
func (f *fitter) onRim(s *surface.Spline, by float64) *surface.Spline {
	if f.old != nil && f.old.RimHeight == f.made.RimHeight {
		if was, ok := unscaled(f.old.Plate.Outer).(*surface.Spline); ok && was.AsFitted() == s {
			return was
		}
	}
	return s.RimRaised(by)
}

// unscaled is the arch before the case's height_scale.
func unscaled(s surface.Surface) surface.Surface {
	if r, ok := s.(raisedSurface); ok {
		return r.Surface
	}
	return s
}

// unraised is the arch as it was fitted.
func unraised(s surface.Surface) surface.Surface {
	s = unscaled(s)
	if fit, ok := s.(*surface.Spline); ok {
		return fit.AsFitted()
	}
	return s
}

// archData are the keys that an arch is fitted from.
func archData() []string {
	return []string{"plate.arch.contours", "plate.arch.templates", "plate.arch.points", "plate.arch.formula",
		"plate.arch.noise", "plate.arch.rim_height", "plate.arch.apex_shift"}
}
