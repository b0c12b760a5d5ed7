// Package vec3 is the algebra of vectors in space: sum, product by a number,
// scalar and vector product. A vector is a [3]float64 in right-handed axes x, y, z.
// Each of these is the one line that a book gives, inlined where it is called,
// and rounds as that line does. Thinned leaves out places of a polyline.
package vec3

import "math"

// Add returns a + b.
func Add(a, b [3]float64) [3]float64 { return [3]float64{a[0] + b[0], a[1] + b[1], a[2] + b[2]} }

// Sub returns a − b.
func Sub(a, b [3]float64) [3]float64 { return [3]float64{a[0] - b[0], a[1] - b[1], a[2] - b[2]} }

// Scale returns s a.
func Scale(a [3]float64, s float64) [3]float64 { return [3]float64{s * a[0], s * a[1], s * a[2]} }

// Dot returns a · b.
func Dot(a, b [3]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] }

// Cross returns a × b.
func Cross(a, b [3]float64) [3]float64 {
	return [3]float64{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

// Norm returns |a|.
func Norm(a [3]float64) float64 { return math.Sqrt(Dot(a, a)) }
