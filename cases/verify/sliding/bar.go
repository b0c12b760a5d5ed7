package sliding

import (
	"math"

	"archload/cases/verify/problem"
	"archload/fem/element"
)

// pulledBar is an elastic bar that lies on rough ground, pressed on it by p a length, and is
// pulled at one end by P. It slides over P/(μp) from there, and the end moves by
// P²/(2EAμp) (balance of an element, integrated twice). Pads stand a apart, the one
// at the end for half a; with P/(μpa) whole, its movement is that of the bar exactly. Of
// the work P³/(4EAμp), pull and press rising together, a third is dissipated: the
// bar stores P³/(6EAμp).
func pulledBar() (problem.Readings, error) {
	const n, slides, a, mu, p = 41, 24, 5.0, 0.4, 0.5 // pads, of them that slide, mm, 1, N/mm
	sec := element.Rectangle{Width: 8, Height: 6, E: 1e4, Gxy: 1e3, Gxz: 1e3}
	pull := slides * mu * p * a
	s := &stand{}
	var xs []float64
	for i := range n {
		xs = append(xs, a*float64(i))
	}
	s.bar(sec, 0, xs)
	for i, x := range xs {
		share := 1.0
		if i == 0 || i == n-1 {
			share = 0.5
		}
		at := [3]float64{x, 0, 0}
		s.pad(int32(i), at, level())
		s.load(int32(i), at, [3]float64{0, 0, -share * p * a})
	}
	s.load(0, [3]float64{}, [3]float64{-pull, 0, 0})
	s.guide(n-1, [3]float64{1, 0, 0}, true) // all pads lie in one line
	r, err := s.rub(mu)
	if err != nil {
		return nil, err
	}
	ea := sec.E * sec.Area()
	length, most := 0.0, 0.0
	for i, sl := range r.State.Slides {
		switch {
		case sl && i == 0:
			length += a / 2
		case sl:
			length += a
		}
		most = max(most, r.State.Slid[i])
	}
	end, work := pull*pull/(2*ea*mu*p), pull*pull*pull/(4*ea*mu*p)
	return problem.Readings{
		"slip length": length / (pull / (mu * p)),
		"movement":    -r.BodyMove(0, [3]float64{})[0] / end,
		"slid":        most / end,
		"work":        r.State.Work / work,
		"dissipated":  r.State.Lost / work,
		"balance":     math.Abs(r.Checks.Energy),
	}, nil
}
