package canvas

import "archload/mesh/plane"

// Frame takes points of the plate (mm) to the page (points).
type Frame struct {
	Scale  float64 // points per mm
	Origin Point   // place of the plate's origin
}

// At is the place on the page of a point of the plate.
func (f Frame) At(q plane.Point) Point {
	return Point{f.Origin.X + f.Scale*q[0], f.Origin.Y + f.Scale*q[1]}
}

// All takes the points of a line to the page.
func (f Frame) All(l []plane.Point) []Point {
	out := make([]Point, len(l))
	for i, q := range l {
		out[i] = f.At(q)
	}
	return out
}

// Lines takes several lines to the page.
func (f Frame) Lines(l [][]plane.Point) [][]Point {
	out := make([][]Point, len(l))
	for i, q := range l {
		out[i] = f.All(q)
	}
	return out
}

// Fit returns the frame that centres the mm box lo..hi in r as large as it
// goes.
func Fit(lo, hi plane.Point, r Rect) Frame {
	w, h := max(hi[0]-lo[0], 1e-9), max(hi[1]-lo[1], 1e-9)
	s := min(r.Width()/w, r.Height()/h)
	return Frame{s, Point{
		(r.X0+r.X1)/2 - s*(lo[0]+hi[0])/2,
		(r.Y0+r.Y1)/2 - s*(lo[1]+hi[1])/2,
	}}
}
