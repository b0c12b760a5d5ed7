package passage

import "math"

// FadeTime is how long one picture takes to go over into another, s.
const FadeTime = 0.8

// Fade returns the weight of the new picture, 0 to 1, so many seconds after it came,
// and whether the old one still shows.
func Fade(t float64) (share float64, on bool) {
	share = eased(t / FadeTime)
	return share, share < 1
}

// eased goes from 0 to 1 while u does, slow at both ends.
func eased(u float64) float64 {
	u = math.Max(0, math.Min(1, u))
	return u * u * (3 - 2*u)
}
