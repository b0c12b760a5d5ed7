package stage

import (
	"fmt"
	"math"

	"archload/cases/answer"
	"archload/mesh/plane"
	"archload/viz/scale"
	"archload/viz/scene"
)

// leastAxis is the end of the axis of the gap at least, mm: the hairs of a tight
// foot shall not look like a relief, and one relief shall not look like another.
const leastAxis = 0.2

// fresh are the scales that suit a state by itself. Movements and forces are
// those of full load, so that nothing is drawn anew while the load rises.
func (s *Shown) fresh(ranges [][2]float64) Scales {
	f := Scales{Enlarge: s.Want.Enlarge, Range: joined(ranges), Gap: leastAxis}
	if f.Enlarge == 0 {
		f.Enlarge = s.enlargeFor()
	}
	most := 0.0
	for _, d := range s.Designs {
		for _, c := range Stations(answer.FootColumns(d.Full)) {
			most = math.Max(most, c.PerMM)
			f.Gap = math.Max(f.Gap, c.Relief)
		}
	}
	f.Arrow = s.arrowFor()
	f.Force, f.Gap = roundAbove(most), roundAbove(f.Gap)
	return f
}

// About how long the longest arrow is drawn at full load, mm; and where the picture is of the foot alone.
const (
	arrowLong  = 42.0
	arrowShort = 16.0
)

// arrowFor is one scale of the arrows for all designs: that of full load, which no state
// on the way exceeds by much.
func (s *Shown) arrowFor() float64 {
	most := 0.0
	for _, d := range s.Designs {
		n := scene.GreatestForce(d.Flow, answer.FootColumns(d.Full))
		if load := s.Want.Load; load > 0 && load < 1 {
			n = math.Max(n, scene.GreatestForce(d.Flow, nil)/load)
		}
		most = math.Max(most, n)
	}
	if most <= 0 {
		return 1
	}
	if s.Want.Field.OnFoot() {
		return scale.StepNear(arrowShort / most)
	}
	return scale.StepNear(arrowLong / most)
}

// enlargeFor is the enlargement that suits all designs: of what the load does, or the air.
func (s *Shown) enlargeFor() float64 {
	if s.Want.Field != scene.Humidity {
		return enlargeFor(s.Designs)
	}
	least := math.Inf(1)
	for _, d := range s.Designs {
		now, _ := d.drawn(s.Want)
		least = math.Min(least, scene.EnlargeFor(now))
	}
	return least
}

// roundAbove is the next number above v of which a quarter reads easily.
func roundAbove(v float64) float64 {
	if v <= 0 {
		return 1
	}
	e := math.Pow(10, math.Floor(math.Log10(v)))
	for _, k := range []float64{1, 1.2, 1.6, 2, 3, 4, 5, 6, 8} {
		if k*e >= v {
			return k * e
		}
	}
	return 10 * e
}

// kept are the scales of a state that follows another. The enlargement and the
// foot's axes belong to the designs, the legend to the field as well.
func (f Scales) kept(last *Shown, w Want) Scales {
	if last == nil || !last.Want.SameNames(w) {
		return f
	}
	l := last.Scales
	if w.Enlarge == 0 && last.Want.Enlarge == 0 && (last.Want.Field == scene.Humidity) == (w.Field == scene.Humidity) && (w.Held || serves(l.Enlarge, f.Enlarge, 2.5)) {
		f.Enlarge = l.Enlarge
	}
	if w.Held || f.Force <= l.Force && serves(l.Force, f.Force, 2) {
		f.Force = l.Force
	}
	if w.Held || f.Gap <= l.Gap && serves(l.Gap, f.Gap, 2) {
		f.Gap = l.Gap
	}
	if l.Arrow > 0 && last.Want.Forces && (w.Held || serves(l.Arrow, f.Arrow, 2.1)) {
		f.Arrow = l.Arrow
	}
	if last.Want.Field == w.Field && last.Want.Inside == w.Inside && last.Want.Behind == w.Behind && last.Want.Arrange == w.Arrange && (w.Held || holds(l.Range, f.Range)) {
		f.Range = l.Range
	}
	return f
}

// Toward are the scales a share u, 0 to 1, of the way to others; the legend is theirs.
func (f Scales) Toward(to Scales, u float64) Scales {
	by := func(a, b float64) float64 {
		if a <= 0 || b <= 0 || a == b {
			return b
		}
		return a * math.Pow(b/a, u)
	}
	return Scales{Enlarge: by(f.Enlarge, to.Enlarge), Range: to.Range, Force: by(f.Force, to.Force), Gap: by(f.Gap, to.Gap), Arrow: by(f.Arrow, to.Arrow)}
}

// Rescaled says which scales of a picture are others than in the one before it, of the same designs, as far
// as both show them; colours: the legend is one of them.
func (s *Shown) Rescaled(was *Shown) (words []string, colours bool) {
	v, w := was.Want, s.Want
	add := func(a, b float64, both bool, format string) {
		if both && a != b {
			words = append(words, fmt.Sprintf(format, b, a))
		}
	}
	add(was.Enlarge, s.Enlarge, true, "movement is now drawn %.3g times as large, before %.3g")
	if a, b := was.Scenes[0].Scale, s.Scenes[0].Scale; a != nil && b != nil && v.Field == w.Field && v.Arrange == w.Arrange &&
		v.Inside == w.Inside && v.Behind == w.Behind && v.Field != scene.Tone && (a.Hi != b.Hi || a.Lo != b.Lo) {
		colours = true
		words = append(words, fmt.Sprintf("the colours now reach to %s %s, before %s", scale.Reading(b.Hi), s.Scenes[0].Unit, scale.Reading(a.Hi)))
	}
	foot := v.Cut.Kind == CrossArch && w.Cut.Kind == CrossArch && s.Designs[0].Bridge != nil
	add(was.Force, s.Force, foot, "the foot's forces now reach to %.3g N/mm, before %.3g")
	add(was.Gap, s.Gap, foot, "its gap to %.3g mm, before %.3g")
	add(was.Arrow, s.Arrow, v.Forces && w.Forces, "an arrow is now %.3g mm long for each newton, before %.3g")
	return words, colours
}

// serves tells whether an old size is as good as the one that suits: neither
// much larger nor much smaller.
func serves(old, suits, factor float64) bool {
	return old > 0 && suits > 0 && old <= factor*suits && suits <= factor*old
}

// holds tells whether an old range holds another and is not too wide for it.
func holds(old, suits [2]float64) bool {
	const slack = 1e-9
	wide, need := old[1]-old[0], suits[1]-suits[0]
	return wide > 0 && suits[0] >= old[0]-slack*wide && suits[1] <= old[1]+slack*wide && need >= 0.5*wide
}

// Beyond tells whether values of the field lie outside the legend, which stays
// while the hand moves, and the greatest of them, in the field's unit. The legend of a
// difference is made for each anew.
func (s *Shown) Beyond() (most float64, ok bool) {
	c := s.Scenes[0].Scale
	if c == nil || c.Step == 0 || len(s.Scenes) < len(s.Designs) {
		return 0, false
	}
	return s.reach[1], s.reach[1] > c.Hi+scale.Slack*c.Step
}

// Least is the least value of the field that is drawn, in its unit.
func (s *Shown) Least() float64 { return s.reach[0] }

// Station is a place along the foot, with what it gives to the top on each mm of
// the foot's length, which does not hang on how many stations there are.
type Station struct {
	answer.FootColumn
	From, To float64 // mm across, halfway to its neighbours
	PerMM    float64 // N/mm
}

// Stations are the places along the feet.
func Stations(cols []answer.FootColumn) []Station {
	out := make([]Station, len(cols))
	for i, c := range cols {
		lo, hi := math.Inf(1), math.Inf(1)
		if i > 0 && cols[i-1].Foot == c.Foot {
			lo = (c.X - cols[i-1].X) / 2
		}
		if i+1 < len(cols) && cols[i+1].Foot == c.Foot {
			hi = (cols[i+1].X - c.X) / 2
		}
		if math.IsInf(lo, 1) {
			lo = hi
		}
		if math.IsInf(hi, 1) {
			hi = lo
		}
		if math.IsInf(lo, 1) {
			lo, hi = 3, 3 // a foot of one station
		}
		out[i] = Station{FootColumn: c, From: c.X - lo, To: c.X + hi, PerMM: c.Force / (lo + hi)}
	}
	return out
}

// enlargeFor is one enlargement for all designs: what suits the stiffest, as
// long as no movement is drawn larger than a share of the plate's width.
func enlargeFor(designs []*Answered) float64 {
	const share = 0.06
	best, limit := 0.0, math.Inf(1)
	for _, d := range designs {
		best = math.Max(best, scene.EnlargeFor(d.Full))
		edge, _ := answer.Outlines(d.Full)
		lo, hi := plane.Bounds(edge)
		most := 0.0
		for _, v := range answer.SinkField(d.Full) {
			most = math.Max(most, math.Abs(v))
		}
		if most > 0 {
			limit = math.Min(limit, share*(hi[0]-lo[0])/most)
		}
	}
	if best <= limit {
		return best
	}
	return math.Max(1, scale.StepBelow(limit))
}

// joined is the range that holds all.
func joined(ranges [][2]float64) [2]float64 {
	out := ranges[0]
	for _, r := range ranges[1:] {
		out = [2]float64{math.Min(out[0], r[0]), math.Max(out[1], r[1])}
	}
	return out
}
