package answer

import (
	"archload/cases/design"
	"archload/fem/contact"
)

// The thirds of the bearing length.
const (
	bassEnd = iota
	middleThird
	trebleEnd
)

// Third tells in which third of the bearing length pad i lies: 0 at the bass end,
// 1 in the middle, 2 at the treble end.
func Third(st *design.BridgeModel, i int) int {
	const rounding = 1e-9 // a pad on the border belongs to the middle, in a mirror image too
	switch a := st.Along[i]; {
	case a < 1.0/3-rounding:
		return bassEnd
	case a <= 2.0/3+rounding:
		return middleThird
	}
	return trebleEnd
}

// rows is how many forces a pad has in State.Lambda: a foot that slips has none along
// the surface.
func rows(s *design.Solution) int {
	if s.Top.Built.Bridge.Hold == contact.Slip {
		return 1
	}
	return 3
}

// padForce is what pad i presses on the plate with, along the surface's normal,
// and its drag on it across and along, N.
func padForce(s *design.Solution, i int) (normal float64, drag [2]float64) {
	per := rows(s)
	l := s.Result.State.Lambda
	if per == 3 {
		drag = [2]float64{-l[3*i+1], -l[3*i+2]}
	}
	return l[i*per], drag
}

// FootDown is what the foot gives to the top straight down, N: of what it presses with square to the surface,
// and of its drag along it. On level wood drag has no such part. Both are 0 without a bridge.
func FootDown(s *design.Solution) (square, drag float64) {
	b := s.Top.Built.Bridge
	if b == nil {
		return 0, 0
	}
	per := rows(s)
	for i := range b.Pads {
		for a := range per {
			down := s.Result.State.Lambda[i*per+a] * b.Pads[i].Dir[a][2] // up on the bridge, down on the top
			if a == 0 {
				square += down
			} else {
				drag += down
			}
		}
	}
	return square, drag
}
