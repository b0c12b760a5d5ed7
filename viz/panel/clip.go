package panel

import (
	"image/color"
	"math"
)

// Clip lets only what lies within r, and within the rectangles of the calls
// before, show; until Unclip.
func (l *List) Clip(r Rect) {
	var c pixels
	c.x0, c.y0, c.x1, c.y1 = l.snapped(r)
	if n := len(l.clips); n > 0 {
		o := l.clips[n-1]
		c = pixels{max(c.x0, o.x0), max(c.y0, o.y0), min(c.x1, o.x1), min(c.y1, o.y1)}
	}
	l.clips = append(l.clips, c)
}

// Unclip takes back the last Clip.
func (l *List) Unclip() {
	if n := len(l.clips); n > 0 {
		l.clips = l.clips[:n-1]
	}
}

// emit adds what shows of a triangle.
func (l *List) emit(t [3]Vertex) {
	for _, v := range t {
		if math.IsNaN(v.X+v.Y) || math.IsInf(v.X+v.Y, 0) {
			return
		}
	}
	n := len(l.clips)
	if n == 0 {
		l.Vertices = append(l.Vertices, t[:]...)
		return
	}
	c := l.clips[n-1]
	lo, hi := t[0], t[0]
	for _, v := range t[1:] {
		lo.X, lo.Y, hi.X, hi.Y = min(lo.X, v.X), min(lo.Y, v.Y), max(hi.X, v.X), max(hi.Y, v.Y)
	}
	switch {
	case hi.X <= c.x0 || lo.X >= c.x1 || hi.Y <= c.y0 || lo.Y >= c.y1 || c.x1 <= c.x0 || c.y1 <= c.y0:
	case lo.X >= c.x0 && hi.X <= c.x1 && lo.Y >= c.y0 && hi.Y <= c.y1:
		l.Vertices = append(l.Vertices, t[:]...)
	default:
		l.cut(t, c)
	}
}

// cut adds the part of a triangle within c, as a fan.
func (l *List) cut(t [3]Vertex, c pixels) {
	var room [2][8]Vertex
	shape := append(room[0][:0], t[:]...)
	next := room[1][:0]
	for side := range 4 {
		next = cutSide(next[:0], shape, side, c)
		shape, next = next, shape
	}
	for i := 1; i+1 < len(shape); i++ {
		l.Vertices = append(l.Vertices, shape[0], shape[i], shape[i+1])
	}
}

// cutSide appends the part of a shape on the inner side of one edge of c:
// left, top, right, bottom.
func cutSide(dst, shape []Vertex, side int, c pixels) []Vertex {
	inside := func(v Vertex) float64 {
		switch side {
		case 0:
			return v.X - c.x0
		case 1:
			return v.Y - c.y0
		case 2:
			return c.x1 - v.X
		}
		return c.y1 - v.Y
	}
	for i, v := range shape {
		w := shape[(i+1)%len(shape)]
		a, b := inside(v), inside(w)
		if a >= 0 {
			dst = append(dst, v)
		}
		if (a >= 0) != (b >= 0) && a != 0 && b != 0 {
			dst = append(dst, between(v, w, a/(a-b)))
		}
	}
	return dst
}

// between returns the vertex at t of the way from v to w.
func between(v, w Vertex, t float64) Vertex {
	mix := func(a, b float64) float64 { return a + (b-a)*t }
	part := func(a, b uint8) uint8 { return uint8(math.Round(mix(float64(a), float64(b)))) }
	return Vertex{
		mix(v.X, w.X), mix(v.Y, w.Y), mix(v.U, w.U), mix(v.V, w.V),
		color.NRGBA{part(v.Paint.R, w.Paint.R), part(v.Paint.G, w.Paint.G), part(v.Paint.B, w.Paint.B), part(v.Paint.A, w.Paint.A)},
	}
}
