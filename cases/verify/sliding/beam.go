package sliding

import (
	"archload/cases/verify/problem"
	"archload/fem/element"
)

// roughBeam is a beam of span L and depth h that lies with its underside on two rough
// supports and carries F in the middle. Bending moves the ends of its underside
// outward by θh/2 each, θ = FL²/(16EI); a drag H at both ends takes off
// H (h²L/(8EI) + L/(2EA)): an end turned back by the moment Hh/2 over the whole span, and half
// the beam shortened (Bernoulli's beam, shear without effect on the turn of an end). With
// μF/2 less than what would hold it, it slides; what is left is the slide.
func roughBeam() (problem.Readings, error) {
	const span, force, mu = 200.0, 100.0, 0.4
	sec := element.Rectangle{Width: 10, Height: 20, E: 1e4, Gxy: 1e13, Gxz: 1e13}
	ei, ea, h := sec.E*sec.Iy(), sec.E*sec.Area(), sec.Height
	free, give := force*span*span/(16*ei)*h/2, h*h*span/(8*ei)+span/(2*ea)
	beam := func(mu float64) (slid, drag, lost float64, err error) {
		s := &stand{}
		s.bar(sec, h/2, []float64{0, span / 4, span / 2, 3 * span / 4, span})
		for _, i := range []int32{0, 4} {
			for _, y := range []float64{-4, 4} {
				s.pad(i, [3]float64{s.body.Nodes[i][0], y, 0}, level())
			}
		}
		s.load(2, s.body.Nodes[2], [3]float64{0, 0, -force})
		s.guide(2, [3]float64{1, 0, 0}, false)
		s.guide(2, [3]float64{0, 1, 0}, false)
		r, err := s.rub(mu)
		if err != nil {
			return 0, 0, 0, err
		}
		a, b := [3]float64{0, 0, 0}, [3]float64{span, 0, 0}
		slid = (r.BodyMove(4, b)[0] - r.BodyMove(0, a)[0]) / 2
		return slid, -(r.State.Lambda[7] + r.State.Lambda[10]), r.State.Lost, nil
	}
	slid, _, lost, err := beam(mu)
	if err != nil {
		return nil, err
	}
	still, drag, _, err := beam(100)
	if err != nil {
		return nil, err
	}
	want := free - mu*force/2*give
	return problem.Readings{
		"slide":      slid / want,
		"dissipated": lost / (mu * force / 2 * want),
		"held":       drag / (free / give),
		"still":      still / free,
	}, nil
}
