package scene

import "math"

type vec = [3]float64

func add(a, b vec) vec                 { return vec{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }
func sub(a, b vec) vec                 { return vec{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }
func times(a vec, s float64) vec       { return vec{s * a[0], s * a[1], s * a[2]} }
func plus(a vec, s float64, b vec) vec { return vec{a[0] + s*b[0], a[1] + s*b[1], a[2] + s*b[2]} }
func dot(a, b vec) float64             { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }
func norm(a vec) float64               { return math.Sqrt(dot(a, a)) }

func cross(a, b vec) vec {
	return vec{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// unit returns a made one long; a vector without length stays as it is.
func unit(a vec) vec {
	if l := norm(a); l > 0 {
		return times(a, 1/l)
	}
	return a
}
