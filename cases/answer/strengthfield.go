package answer

import (
	"math"

	"archload/cases/design"
	"archload/cases/shape"
	"archload/materials"
	"archload/mesh"
	"archload/mesh/plane"
)

// stresses are those of every plate triangle at both faces and in the middle.
type stresses struct{ outer, inner, mean [][6]float64 }

// plateStresses recovers them.
func plateStresses(s *design.Solution) stresses {
	n := len(s.Top.Built.Mesh.Tris)
	f := stresses{make([][6]float64, n), make([][6]float64, n), make([][6]float64, n)}
	s.Top.Each(n, func(i int) { f.outer[i], f.inner[i], f.mean[i] = s.Result.ShellStresses(i) })
	return f
}

// strengthField is the strength used at each plate triangle; NaN where a
// circle would cross an edge or a strength is not known.
type strengthField struct {
	used, rolling, shear []float64
	face                 []string
}

// newStrengthField has room for n circles.
func newStrengthField(n int) strengthField {
	return strengthField{used: make([]float64, n), rolling: make([]float64, n), shear: make([]float64, n), face: make([]string, n)}
}

// judge fills entry i from the triangles under its circle; none: NaN.
func judge(s *design.Solution, f *strengthField, i int, all stresses, tris []int32, st materials.Strength) {
	if tris == nil {
		f.used[i], f.rolling[i], f.shear[i] = math.NaN(), math.NaN(), math.NaN()
		return
	}
	across, shear := InPlane(s.Top.Built)
	o, in, m := MeanStress(all.outer, tris), MeanStress(all.inner, tris), MeanStress(all.mean, tris)
	uo, ui := HoffmanUsed(o, across, shear, st), HoffmanUsed(in, across, shear, st)
	f.used[i], f.face[i] = uo, "outer"
	if ui > uo {
		f.used[i], f.face[i] = ui, "inner"
	}
	f.rolling[i] = shearUsed(st.RollingShear, o[3], in[3], m[3])
	f.shear[i] = math.Max(shearUsed(st.ShearL, o[4], in[4], m[4]), shearUsed(st.ShearL, o[5], in[5], m[5]))
}

// circleField is the strength used in the circle about each triangle's centre.
func circleField(s *design.Solution, all stresses, st materials.Strength) strengthField {
	f := newStrengthField(len(s.Top.Built.Mesh.Tris))
	circles := s.Top.Circles()
	s.Top.Each(len(circles), func(i int) { judge(s, &f, i, all, circles[i], st) })
	return f
}

// edgeStep is the spacing of the circles that touch a hole's edge, mm.
const edgeStep = 1.0

// edgeField is the strength used in circles that touch a hole's edge. Wood
// gives way there first, and circles about the triangles' centres touch the
// edge only by luck.
func edgeField(s *design.Solution, all stresses, st materials.Strength) (strengthField, []mesh.Point) {
	at := EdgePlaces(s.Top.Built)
	f, shape := newStrengthField(len(at)), design.Circle()
	for i, c := range at {
		tris, _ := s.Top.Built.CircleAbout(c, s.Top.Built.Plate.Thickness.At(c).Z, shape)
		judge(s, &f, i, all, tris, st)
	}
	return f, at
}

// EdgePlaces are the middles of the circles that touch a hole's edge. They begin
// at the hole's end toward the tail, so that a mirrored hole has the mirrored
// circles.
func EdgePlaces(b *design.Built) []mesh.Point {
	var at []mesh.Point
	var rings [][]mesh.Point
	for _, h := range b.Geometry.Holes {
		for _, ring := range shape.FromTail(h.Polyline(0.02)) {
			rings = append(rings, plane.Evenly(ring, edgeStep))
		}
	}
	for _, ring := range rings {
		for i, a := range ring {
			next := ring[(i+1)%len(ring)]
			d := design.Unit2(next[0]-a[0], next[1]-a[1])
			mid := mesh.Point{(a[0] + next[0]) / 2, (a[1] + next[1]) / 2}
			r := b.Plate.Thickness.At(mid).Z / 2
			at = append(at, mesh.Point{mid[0] + r*d[1], mid[1] - r*d[0]})
		}
	}
	return at
}

// StrengthFields are the shares of the plate's strength used at each triangle
// of the plan, percent: Hoffman's criterion at the worse face, and rolling
// shear. NaN where a circle of one thickness would cross an edge.
func StrengthFields(s *design.Solution) (used, rolling []float64) {
	card, err := s.Top.Built.Case.Wood("plate.wood")
	if err != nil {
		card.Strength = materials.Strength{}
	}
	f := circleField(s, plateStresses(s), card.Strength)
	for i := range f.used {
		f.used[i] *= 100
		f.rolling[i] *= 100
	}
	return f.used, f.rolling
}
