package scene

import "archload/fem/vec3"

type vec = [3]float64

// plus returns a + s b.
func plus(a vec, s float64, b vec) vec { return vec{a[0] + s*b[0], a[1] + s*b[1], a[2] + s*b[2]} }

// unit returns a made one long; a vector without length stays as it is.
func unit(a vec) vec {
	if l := vec3.Norm(a); l > 0 {
		return vec3.Scale(a, 1/l)
	}
	return a
}
