package answer

import (
	"math"

	"archload/cases/design"
	"archload/materials"
	"archload/mesh"
	"archload/mesh/plane"
)

// Strength finds the worst place of the plate. Stress is averaged over a
// circle as wide as the plate is thick, which does not cross an edge or a
// hole, because clear wood does not fail by a peak narrower than that.
func Strength(s *design.Solution) StrengthReport {
	r := StrengthReport{Used: None(), X: None(), Y: None(), RollingShearUsed: None(), ShearUsed: None(),
		FootPressure: None(), FootUsed: None()}
	card, err := s.Top.Built.Case.Wood("plate.wood")
	if err != nil {
		return r
	}
	all := plateStresses(s)
	f := circleField(s, all, card.Strength)
	for i := range f.used {
		r.take(f, i, s.Top.Built.Centroid(i))
	}
	edge, at := edgeField(s, all, card.Strength)
	for i := range edge.used {
		r.take(edge, i, at[i])
	}
	FootPressure(s, &r)
	return r
}

// take counts entry i of a field, which belongs to the place p.
func (r *StrengthReport) take(f strengthField, i int, p mesh.Point) {
	if u := f.used[i]; !math.IsNaN(u) && !(float64(r.Used) >= u) {
		r.Used, r.Surface = Num(u), f.face[i]
		r.X, r.Y = Num(p[0]), Num(p[1])
	}
	r.RollingShearUsed = Larger(r.RollingShearUsed, f.rolling[i])
	r.ShearUsed = Larger(r.ShearUsed, f.shear[i])
}

func Larger(a Num, b float64) Num {
	if math.IsNaN(b) || float64(a) >= b {
		return a
	}
	return Num(b)
}

// strengthField is the strength used at each plate triangle; NaN where a
// circle would cross an edge or a strength is not known.
type strengthField struct {
	used, rolling, shear []float64
	face                 []string
}

// stresses of every plate triangle at both faces and in the middle.
type stresses struct{ outer, inner, mean [][6]float64 }

func plateStresses(s *design.Solution) stresses {
	n := len(s.Top.Built.Mesh.Tris)
	f := stresses{make([][6]float64, n), make([][6]float64, n), make([][6]float64, n)}
	s.Top.Each(n, func(i int) { f.outer[i], f.inner[i], f.mean[i] = s.Result.ShellStresses(i) })
	return f
}

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
	o, in, m := Average(all.outer, tris), Average(all.inner, tris), Average(all.mean, tris)
	uo, ui := HoffmanUsed(o, across, shear, st), HoffmanUsed(in, across, shear, st)
	f.used[i], f.face[i] = uo, "outer"
	if ui > uo {
		f.used[i], f.face[i] = ui, "inner"
	}
	f.rolling[i] = shearUsed(st.RollingShear, o[3], in[3], m[3])
	f.shear[i] = math.Max(shearUsed(st.ShearL, o[4], in[4], m[4]), shearUsed(st.ShearL, o[5], in[5], m[5]))
}

func circleField(s *design.Solution, all stresses, st materials.Strength) strengthField {
	f := newStrengthField(len(s.Top.Built.Mesh.Tris))
	circles := s.Top.Circles.Of(s.Top)
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

// EdgePlaces are the middles of the circles that touch a hole's edge.
func EdgePlaces(b *design.Built) []mesh.Point {
	var at []mesh.Point
	for _, h := range b.Geometry.Holes {
		ring := plane.Evenly(h.Polyline(0.02), edgeStep)
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

func Average(stress [][6]float64, tris []int32) (m [6]float64) {
	for _, t := range tris {
		for k := range m {
			m[k] += stress[t][k] / float64(len(tris))
		}
	}
	return m
}

func HoffmanUsed(s [6]float64, across, shear int, st materials.Strength) float64 {
	_, factor := materials.Hoffman([3]float64{s[0], s[across], s[shear]}, st.Limits())
	return 1 / factor
}

func shearUsed(limit float64, stress ...float64) float64 {
	if limit <= 0 {
		return math.NaN()
	}
	worst := 0.0
	for _, v := range stress {
		worst = math.Max(worst, math.Abs(v)/limit)
	}
	return worst
}

// FootPressure finds the greatest mean pressure under the foot and compares it
// with the softer wood's crushing strength.
func FootPressure(s *design.Solution, r *StrengthReport) {
	if s.Top.Built.Bridge == nil {
		return
	}
	worst := 0.0
	for i := range s.Top.Built.Bridge.Cells {
		if mean, ok := meanPressure(s, i); ok {
			worst = math.Max(worst, mean)
		}
	}
	r.FootPressure = Num(worst)
	if limit := CrushingLimit(s.Top.Built.Case); limit > 0 {
		r.FootUsed = Num(worst / limit)
	}
}
