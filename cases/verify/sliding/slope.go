package sliding

import (
	"math"

	"archload/cases/verify/problem"
	"archload/fem/element"
	"archload/fem/vec3"
)

// block is a stiff block of 100 N on a slope of 20 degrees, on four pads: it sticks while
// μ is above tan 20°, with a drag of G sin 20°; with less it glides, and the guide up
// the slope takes what the drag leaves of G sin 20°.
func block() (problem.Readings, error) {
	const slope, weight = 20 * math.Pi / 180, 100.0
	sin, cos := math.Sincos(slope)
	out := problem.Readings{"sticks": 0, "glides": 0, "smooth": 0}
	for _, c := range []struct {
		name string
		mu   float64
	}{{"sticks", 1.0001 * math.Tan(slope)}, {"glides", 0.9999 * math.Tan(slope)}, {"smooth", 0}} {
		s := &stand{}
		s.bar(element.Rectangle{Width: 20, Height: 20, E: 1e7, Gxy: 1e7, Gxz: 1e7}, 0, []float64{-20, 20})
		// The slope falls toward y; the pads lie in the plane through the bar.
		dir := [3][3]float64{{0, sin, cos}, {1, 0, 0}, {0, cos, -sin}}
		for i, x := range []float64{-20, 20} {
			for _, y := range []float64{-10, 10} {
				s.pad(int32(i), vec3.Add([3]float64{x, 0, 0}, vec3.Scale(dir[2], y)), dir)
			}
			s.load(int32(i), s.body.Nodes[i], [3]float64{0, 0, -weight / 2})
		}
		s.guide(0, dir[2], false)
		s.guide(0, dir[1], false)
		s.guide(0, dir[0], true)
		r, err := s.rub(c.mu)
		if err != nil {
			return nil, err
		}
		press, drag := 0.0, 0.0
		for i := range s.pads {
			press += r.State.Lambda[3*i]
			drag -= r.State.Lambda[3*i+2]
		}
		out[c.name+" drag"] = drag / press
		out[c.name+" guide"] = -r.Guides[0]
		out[c.name+" sum"] = (drag - r.Guides[0]) / (weight * sin)
		if r.State.Glides {
			out[c.name] = 1
		}
	}
	return out, nil
}
