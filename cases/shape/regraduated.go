package shape

import (
	"slices"

	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// changedSurface is a thickness from which wood was taken, or on which some was left, at places: the
// outer surface stays, and so does the rim's height.
type changedSurface struct {
	surface.Surface             // as graduated
	change          *graduation // mm
}

// At returns thickness and derivatives at a place.
func (s *changedSurface) At(p mesh.Point) surface.Jet {
	j, d := s.Surface.At(p), s.change.At(p)
	return surface.Jet{Z: j.Z + d.Z, Zx: j.Zx + d.Zx, Zy: j.Zy + d.Zy, Zxx: j.Zxx + d.Zxx, Zxy: j.Zxy + d.Zxy, Zyy: j.Zyy + d.Zyy}
}

// unchanged is a thickness as graduated.
func unchanged(s surface.Surface) surface.Surface {
	if c, ok := s.(*changedSurface); ok {
		return c.Surface
	}
	return s
}

// regraduate takes the case's thickness_change into the thickness.
func (f *fitter) regraduate() {
	const key = "plate.thickness_change"
	list := f.c.Plate.ThicknessChange
	if len(list) == 0 || !f.rep.Clean("plate") {
		return
	}
	if !f.touched(key, "plate.outline", "plate.thickness", "plate.thickness_scale") {
		f.made.Plate.Thickness = f.old.Plate.Thickness
		return
	}
	var at []mesh.Point
	var by []float64
	for _, r := range list {
		at, by = append(at, mesh.Point{float64(r[0]), float64(r[1])}), append(by, float64(r[2]))
	}
	s, err := surface.NewThinPlate(at, by)
	if err != nil {
		f.rep.AddKey(key, "%w", err)
		return
	}
	f.made.Plate.Thickness = &changedSurface{f.made.Plate.Thickness, &graduation{fit: s, hull: plane.Hull(at), least: slices.Min(by), most: slices.Max(by)}}
}

// thicknessKey is the key by which the thickness was set last.
func (f *fitter) thicknessKey() string {
	if len(f.c.Plate.ThicknessChange) > 0 {
		return "plate.thickness_change"
	}
	return "plate.thickness"
}
