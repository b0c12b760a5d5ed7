package scene

import "archload/fem/vec3"

// The light falls from the left and a little from above, low over what faces
// the page, so that a carved arch reads as relief. It goes with the camera, as
// one turns a plate in the hand before a window.
const (
	lightRight, lightUp, lightBack = -0.83, 0.18, 0.50

	darkest   = 0.45  // factor of a face turned away from the light
	brightest = 1.08  // factor of a face turned toward it
	turnedOff = -0.46 // cosine between normal and light below which a face is darkest
	turnedOn  = 0.66  // cosine above which it is brightest
)

// Light returns the direction toward the light for a camera, a unit vector in
// the scene's axes.
func (c Camera) Light() [3]float64 {
	right, up, back := c.Axes()
	return unit(plus(plus(vec3.Scale(right, lightRight), lightUp, up), lightBack, back))
}

// Halfway is the direction half way between the light and the eye, a unit vector.
func (c Camera) Halfway() [3]float64 {
	_, _, back := c.Axes()
	return unit(vec3.Add(c.Light(), back))
}

// Shade returns the factor by which light changes a colour's sRGB components,
// for the cosine between the normal, on the side that is seen, and the light.
func Shade(cosine float64) float64 {
	s := (cosine - turnedOff) / (turnedOn - turnedOff)
	return darkest + (brightest-darkest)*min(1, max(0, s))
}
