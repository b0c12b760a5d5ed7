package panel

// Point is a place on the page, points from the left and the top.
type Point struct{ X, Y float64 }

// Rect is a rectangle of the page, points.
type Rect struct{ X, Y, W, H float64 }

// Right returns the x of the right edge, points.
func (r Rect) Right() float64 { return r.X + r.W }

// Bottom returns the y of the lower edge, points.
func (r Rect) Bottom() float64 { return r.Y + r.H }

// Centre returns the middle.
func (r Rect) Centre() Point { return Point{r.X + r.W/2, r.Y + r.H/2} }

// Inset returns the rectangle with dx less on the left and on the right, dy
// less above and below.
func (r Rect) Inset(dx, dy float64) Rect {
	return Rect{r.X + dx, r.Y + dy, max(0, r.W-2*dx), max(0, r.H-2*dy)}
}

// Holds tells whether the place lies in the rectangle; the right and the
// lower edge do not belong to it.
func (r Rect) Holds(p Point) bool {
	return p.X >= r.X && p.X < r.Right() && p.Y >= r.Y && p.Y < r.Bottom()
}

// Meet returns what both rectangles cover; its width or height is 0 if nothing.
func (r Rect) Meet(s Rect) Rect {
	x0, y0 := max(r.X, s.X), max(r.Y, s.Y)
	x1, y1 := min(r.Right(), s.Right()), min(r.Bottom(), s.Bottom())
	return Rect{x0, y0, max(0, x1-x0), max(0, y1-y0)}
}

// Empty tells whether nothing lies inside.
func (r Rect) Empty() bool { return !(r.W > 0 && r.H > 0) }
