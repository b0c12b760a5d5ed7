package stage

import (
	"math"

	"archload/viz/cutout"
)

// pushLong is how long the arrow of the strip that pushes hardest at full load is drawn, mm.
const pushLong = 40.0

// strips cuts the scenes down to the strip that is wanted, and lets its ends push by one
// scale in all designs.
func (s *Shown) strips() {
	half := s.Want.Strip / 2
	if half <= 0 {
		return
	}
	most := 1.0 // N
	for _, d := range s.Designs {
		tail, neck := cutout.Push(d.Full, d.middle(), half)
		most = math.Max(most, math.Max(math.Abs(tail), math.Abs(neck)))
	}
	for i, d := range s.Designs {
		tail, neck := cutout.Push(d.Now, d.middle(), half)
		s.Scenes[i] = cutout.Strip(s.Scenes[i], d.middle(), half, tail, neck, pushLong/most)
	}
}

// middle is the bridge's place across, mm; 0 without a bridge.
func (d *Answered) middle() float64 {
	if b := d.Live.Case().Bridge; b != nil {
		return b.At[0]
	}
	return 0
}
