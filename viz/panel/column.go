package panel

// Column hands out rectangles of a page from the top down.
type Column struct {
	at   Rect
	next float64
	gap  float64
}

// NewColumn returns a column within r, padding points inside it, with gap
// points between what it hands out.
func NewColumn(r Rect, padding, gap float64) *Column {
	in := r.Inset(padding, padding)
	return &Column{at: in, next: in.Y, gap: gap}
}

// Row returns the next h points of the column.
func (c *Column) Row(h float64) Rect {
	r := Rect{c.at.X, c.next, c.at.W, h}
	c.next += h + c.gap
	return r
}

// Cells returns the next h points, cut into n equal parts with the gap
// between them.
func (c *Column) Cells(h float64, n int) []Rect {
	row := c.Row(h)
	out := make([]Rect, max(0, n))
	w := (row.W - c.gap*float64(n-1)) / float64(n)
	for i := range out {
		out[i] = Rect{row.X + float64(i)*(w+c.gap), row.Y, w, h}
	}
	return out
}

// Space leaves h points free.
func (c *Column) Space(h float64) { c.next += h }

// Width returns the width of what the column hands out, points.
func (c *Column) Width() float64 { return c.at.W }

// Next returns the y where the next row begins, points.
func (c *Column) Next() float64 { return c.next }

// Used returns the height from the top of the column's ground to below the
// last row, padding included: what EndScroll wants.
func (c *Column) Used(padding float64) float64 {
	return max(0, c.next-c.gap-c.at.Y) + 2*padding
}

// Rest returns what is left of the column's height.
func (c *Column) Rest() Rect {
	return Rect{c.at.X, c.next, c.at.W, max(0, c.at.Bottom()-c.next)}
}
