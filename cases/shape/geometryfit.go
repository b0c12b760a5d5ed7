package shape

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"archload/cases"
	"archload/cases/tree"
	"archload/mesh"
	"archload/mesh/surface"
)

// surfaces makes the thickness and the arch, or takes them. A fitted thickness
// is scaled, a fitted arch raised without another fit, and an arch is fitted anew
// only where its own data, the outline or the height of its rim change.
func (f *fitter) surfaces() {
	anew := f.touched("plate.outline")
	switch {
	case anew || f.touched("plate.thickness"):
		f.thickness()
	case !f.touched("plate.thickness_scale"):
		f.takeThickness(unchanged(f.old.Plate.Thickness))
	default:
		if s, fitted := unchanged(f.old.Plate.Thickness).(scaledSurface); fitted {
			f.takeThickness(scaledSurface{s.Surface, f.c.Plate.ThicknessScale})
		} else {
			f.thickness()
		}
	}
	if !f.rep.Clean("plate.thickness") {
		return
	}
	if !f.touched("plate.outline", "plate.arch", "plate.thickness", "plate.thickness_scale") {
		f.made.RimHeight = f.old.RimHeight
	} else {
		f.made.RimHeight = f.rimHeight()
	}
	if anew || f.touched(archData()...) || !f.keepsRim() {
		f.made.archRim = f.made.RimHeight
		f.arch()
		return
	}
	f.made.archRim = f.old.archRim
	f.made.Plate.Outer = f.raised(unraised(f.old.Plate.Outer))
	f.made.Arch, f.made.told[ofArch] = f.old.Arch, f.old.told[ofArch]
}

// takeThickness takes a graduation that has been fitted before.
func (f *fitter) takeThickness(s surface.Surface) {
	f.made.Plate.Thickness, f.made.Thickness, f.made.told[ofThickness] = s, f.old.Thickness, f.old.told[ofThickness]
}

// thickness makes the graduation.
func (f *fitter) thickness() {
	p := &f.c.Plate
	f.part = ofThickness
	f.made.Plate.Thickness = surface.Flat(p.EvenThickness())
	if p.Thickness.Const == 0 {
		data := f.data(p.Thickness.Contours, p.Thickness.Templates, p.Thickness.Points, p.Thickness.Noise)
		if s, rep := f.fit("plate.thickness", data, p.Thickness.Tables()); s != nil {
			g := newGraduation(s, p.Thickness.Tables())
			f.made.Plate.Thickness, f.made.Thickness = scaledSurface{g, p.ThicknessScale}, rep
			f.tellMisfits(g)
		}
	}
}

// arch makes the outer surface for the rim's height.
func (f *fitter) arch() {
	p := &f.c.Plate
	f.part = ofArch
	switch {
	case p.Arch.Formula != nil:
		f.formula()
		return
	case f.top != nil && f.c.Body.Back.Arch == nil:
		f.archOfBack()
		return
	}
	data := f.data(p.Arch.Contours, p.Arch.Templates, p.Arch.Points, p.Arch.Noise)
	data.Rim, data.RimStated = &f.made.RimHeight, p.Arch.RimHeight != nil
	f.shift(&data)
	if s, rep := f.fit("plate.arch", data, p.Arch.Tables()); s != nil {
		f.made.Plate.Outer, f.made.Arch = f.raised(s), rep
	}
}

// scaledSurface is a surface with all heights multiplied by a number.
type scaledSurface struct {
	surface.Surface
	by float64 // 1
}

// At returns height and derivatives at a place.
func (s scaledSurface) At(p mesh.Point) surface.Jet {
	j := s.Surface.At(p)
	return surface.Jet{Z: s.by * j.Z, Zx: s.by * j.Zx, Zy: s.by * j.Zy, Zxx: s.by * j.Zxx, Zxy: s.by * j.Zxy, Zyy: s.by * j.Zyy}
}

// rimHeight returns the height of the outer surface at the outline, mm: as
// stated, or the thickness there (its mean, if it varies).
func (f *fitter) rimHeight() float64 {
	if h := f.c.Plate.Arch.RimHeight; h != nil {
		return float64(*h)
	}
	if t := f.c.Plate.EvenThickness(); t > 0 {
		return float64(t)
	}
	rim := f.made.Outline.Polyline(0.05)
	sum, long := 0.0, 0.0
	for i, p := range rim {
		q := rim[(i+1)%len(rim)]
		l := math.Hypot(q[0]-p[0], q[1]-p[1])
		sum += l * f.made.Plate.Thickness.At(mesh.Point{(p[0] + q[0]) / 2, (p[1] + q[1]) / 2}).Z
		long += l
	}
	return sum / long
}

// data gathers tables of heights for the fit; absent tables are nil.
func (f *fitter) data(contours, templates, points *cases.HeightTable, noise tree.Length) surface.Data {
	d := surface.Data{Outline: f.made.Outline, Noise: float64(noise)}
	if contours != nil {
		if contours.Drawn {
			d.Rounding = drawnRounding
		}
		for _, c := range chains(contours) {
			d.Lines = append(d.Lines, surface.ContourLine{ID: c.name, Height: c.heights[0], Points: c.points, Rows: c.rows})
		}
	}
	if templates != nil {
		for _, c := range chains(templates) {
			d.Templates = append(d.Templates, surface.Template{ID: c.name, Points: c.points, Heights: c.heights, Rows: c.rows})
		}
	}
	if points != nil {
		for i := range points.X {
			d.Points = append(d.Points, surface.Sample{At: mesh.Point{points.X[i], points.Y[i]}, Z: points.Height[i]})
		}
	}
	return d
}

// drawnRounding is how far apart the places are to which a hand traces a line
// on a screen or a tablet, mm (as a ruler is read).
const drawnRounding = 0.1

// chain is the rows of a table that share a name, in their order.
type chain struct {
	name    string
	points  []mesh.Point
	heights []float64
	rows    []int32
}

// chains parts a table by the names of its lines.
func chains(h *cases.HeightTable) []chain {
	var out []chain
	index := map[string]int{}
	for i, name := range h.Lines {
		k, ok := index[name]
		if !ok {
			k = len(out)
			index[name] = k
			out = append(out, chain{name: name})
		}
		c := &out[k]
		c.points = append(c.points, mesh.Point{h.X[i], h.Y[i]})
		c.heights = append(c.heights, h.Height[i])
		c.rows = append(c.rows, int32(i))
	}
	return out
}

// fit fits one surface; faults and doubts of the data go to the rows of the
// tables they come from.
func (f *fitter) fit(key string, data surface.Data, tables []cases.KeyedTable) (*surface.Spline, *surface.Report) {
	s, rep, err := surface.FitLike(data, f.like())
	tableKey := key
	for _, t := range tables {
		if t.Table != nil {
			tableKey = key + "." + t.Key
		}
	}
	for _, w := range rep.Warnings {
		if w.Set == "" {
			f.warn(tableKey, "at %s: %s", tree.Spot(w.At), w.Msg)
			continue
		}
		at := rowPlace(tables, w.Set, w.Row, f.rep.Find(tableKey))
		f.made.told[f.part] = append(f.made.told[f.part], &tree.FileError{File: at.Src.Label, Line: at.Line, Key: "height", Err: errors.New(w.Msg)})
	}
	if f.part == ofArch { // a graduation's misfits: tellMisfits
		f.made.told[f.part] = append(f.made.told[f.part], beyondWords(rep.Beyond, tables, f.rep.Find(tableKey))...)
	}
	if err == nil {
		return s, &rep
	}
	var de *surface.DataError
	if !errors.As(err, &de) {
		f.rep.AddKey(tableKey, "%w", err)
		return nil, nil
	}
	where := ""
	if de.Line >= 0 {
		where = "at " + tree.Spot(de.At) + ": "
	}
	f.rep.Add(rowPlace(tables, de.Set, de.Line, f.rep.Find(tableKey)), tableKey, fmt.Errorf("%s%s", where, de.Msg))
	return nil, nil
}

// like is the surface that the old geometry had in place of the one that is being fitted,
// as it came from its fit; nil without one.
func (f *fitter) like() *surface.Spline {
	if f.old == nil {
		return nil
	}
	old := unraised(f.old.Plate.Outer)
	if f.part == ofThickness {
		old = nil
		if g, fitted := f.old.graduated(); fitted {
			old = g.fit
		}
	}
	s, _ := old.(*surface.Spline)
	return s
}

// rowPlace returns the place of a row of the named table, or the one given.
func rowPlace(tables []cases.KeyedTable, set string, row int32, otherwise tree.Place) tree.Place {
	for _, t := range tables {
		if t.Key == set && t.Table != nil && row >= 0 && int(row) < len(t.Table.Rows) {
			return t.Table.Rows[row]
		}
	}
	return otherwise
}

// checkSurfaces refuses a plate that is too thin anywhere or bends more
// tightly than it is thick, and warns where its thickness had to be held to the
// data and where its underside dips below z = 0.
func (f *fitter) checkSurfaces(bends *bendMap) {
	thin := extreme{z: math.Inf(1)}
	tight, tightAt := 0.0, mesh.Point{}
	dip, dipAt := 0.0, mesh.Point{}
	thick, top := make([]float64, len(bends.point)), make([]float64, len(bends.point))
	bends.eachApart(func(k int, p mesh.Point) {
		if thick[k] = math.NaN(); !math.IsNaN(bends.point[k]) && !f.overHole(p) {
			thick[k], top[k] = f.made.Plate.Thickness.At(p).Z, f.made.Plate.Outer.At(p).Z
		}
	})
	bends.each(func(k int, p mesh.Point) {
		t := thick[k]
		if t < thin.z {
			thin = extreme{t, p}
		}
		if b := t * bends.point[k]; b > tight {
			tight, tightAt = b, p
		}
		if d := t - top[k]; d > dip {
			dip, dipAt = d, p
		}
	})
	if g, fitted := f.made.graduated(); fitted {
		f.checkGraduation(g, bends)
	}
	if thin.z < thinnest && len(f.rep.Faults) == 0 {
		f.rep.AddKey(f.thicknessKey(), "want >= %g mm everywhere, found %.2g at %s", thinnest, thin.z, tree.Spot(thin.at))
	}
	if tight >= 1 {
		f.rep.AddKey("plate.arch", "the arch bends more tightly than the plate is thick at %s: radius %.2g mm; want a smoother arch%s", tree.Spot(tightAt),
			f.made.Plate.Thickness.At(tightAt).Z/tight, nearbyRows(f.c.Plate.Arch.Tables(), tightAt))
	}
	if dip > dipAllowed {
		f.warn("plate.arch", "the underside dips %.2g mm below the rim's gluing surface at %s, where a flat billet has no wood", dip, tree.Spot(dipAt))
	}
}

// formula makes the arch of a formula; one that rises nowhere is flat.
func (f *fitter) formula() {
	shape := f.c.Plate.Arch.Formula
	rim := f.made.RimHeight
	if float64(shape.Height) == rim && shape.RecurveDepth == 0 {
		f.made.Plate.Outer = surface.Flat(rim)
		return
	}
	shift := f.c.Plate.Arch.ApexShift
	s, err := surface.NewFormula(surface.FormulaSpec{
		Outline: f.made.Outline, Height: float64(shape.Height), Rim: rim,
		Apex:         mesh.Point{shape.Apex[0] + shift[0], shape.Apex[1] + shift[1]},
		RecurveDepth: float64(shape.RecurveDepth), RecurveAt: float64(shape.RecurveAt),
	})
	if err != nil {
		f.rep.AddKey("plate.arch.formula", "%s", strings.TrimPrefix(err.Error(), "arch formula: "))
		return
	}
	f.made.Plate.Outer = f.raised(s)
}

// stand wants everything on wood and makes the surfaces.
func (f *fitter) stand() {
	f.checkPlaces()
	f.surfaces()
	f.regraduate()
}

// check wants surfaces that can be carved and strings that can be strung over
// them.
func (f *fitter) check() {
	f.bend()
	if f.touched("plate.outline", "plate.hole", "plate.arch", "plate.thickness", "plate.thickness_scale", "plate.thickness_change") {
		f.part = ofSurfaces
		f.checkSurfaces(f.made.bends)
	} else {
		f.made.told[ofSurfaces] = f.old.told[ofSurfaces]
	}
	if b := f.c.Bridge; b != nil {
		f.made.TopAtBridge = f.made.Plate.Outer.At(b.At).Z
		f.checkPathOver()
		f.checkJoint()
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
