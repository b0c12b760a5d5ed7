package canvas

import "math"

// Readable turns an angle so that text along it is not upside down.
func Readable(a float64) float64 {
	for a > math.Pi/2+1e-9 {
		a -= math.Pi
	}
	for a <= -math.Pi/2+1e-9 {
		a += math.Pi
	}
	return a
}

// Along returns the place and direction at share t of a polyline's length.
func Along(l []Point, t float64) (Point, float64) {
	total := 0.0
	for i := 1; i < len(l); i++ {
		total += math.Hypot(l[i].X-l[i-1].X, l[i].Y-l[i-1].Y)
	}
	want := t * total
	for i := 1; i < len(l); i++ {
		d := math.Hypot(l[i].X-l[i-1].X, l[i].Y-l[i-1].Y)
		if want <= d && d > 0 || i == len(l)-1 {
			u := math.Min(1, want/math.Max(d, 1e-12))
			return Point{l[i-1].X + u*(l[i].X-l[i-1].X), l[i-1].Y + u*(l[i].Y-l[i-1].Y)},
				math.Atan2(l[i].Y-l[i-1].Y, l[i].X-l[i-1].X)
		}
		want -= d
	}
	return l[0], 0
}

// Outside returns the parts of a line that do not lie in a block.
func Outside(l []Point, closed bool, b Block) [][]Point {
	var out [][]Point
	var run []Point
	put := func(q Point) {
		if b.holds(q) {
			if len(run) > 1 {
				out = append(out, run)
			}
			run = nil
			return
		}
		run = append(run, q)
	}
	if closed {
		l = append(l[:len(l):len(l)], l[0])
	}
	put(l[0])
	for i := 1; i < len(l); i++ {
		p, q := l[i-1], l[i]
		n := 1
		if Around(p, q, 0.1).Overlaps(b) {
			n = 1 + int(math.Hypot(q.X-p.X, q.Y-p.Y)/0.5)
		}
		for j := 1; j <= n; j++ {
			u := float64(j) / float64(n)
			put(Point{p.X + u*(q.X-p.X), p.Y + u*(q.Y-p.Y)})
		}
	}
	if len(run) > 1 {
		out = append(out, run)
	}
	return out
}

// Straight tells whether a line keeps its direction over w points about share t.
func Straight(l []Point, t, w float64) bool {
	total := PolyLength(l)
	a, _ := Along(l, math.Max(0, t-0.5*w/total))
	b, _ := Along(l, math.Min(1, t+0.5*w/total))
	return math.Hypot(b.X-a.X, b.Y-a.Y) > 0.94*w
}

// PolyLength is the length of a polyline, points.
func PolyLength(l []Point) float64 {
	total := 0.0
	for i := 1; i < len(l); i++ {
		total += math.Hypot(l[i].X-l[i-1].X, l[i].Y-l[i-1].Y)
	}
	return total
}

// Curve is a run of places with gaps where a coordinate is NaN.
func Curve(n int, at func(i int) Point) [][]Point {
	var out [][]Point
	var run []Point
	for i := 0; i < n; i++ {
		q := at(i)
		if math.IsNaN(q.X + q.Y) {
			if len(run) > 1 {
				out = append(out, run)
			}
			run = nil
			continue
		}
		run = append(run, q)
	}
	if len(run) > 1 {
		out = append(out, run)
	}
	return out
}

// CloseUp joins two lines of the same direction to a loop.
func CloseUp(a, b []Point) []Point {
	out := append([]Point{}, a...)
	for i := len(b) - 1; i >= 0; i-- {
		out = append(out, b[i])
	}
	return out
}

// ClipLine returns the part of the straight piece a b inside r.
func ClipLine(a, b Point, r Rect) (p, q Point, ok bool) {
	lo, hi := 0.0, 1.0
	dx, dy := b.X-a.X, b.Y-a.Y
	for _, c := range [4][2]float64{{-dx, a.X - r.X0}, {dx, r.X1 - a.X}, {-dy, a.Y - r.Y0}, {dy, r.Y1 - a.Y}} {
		switch {
		case c[0] == 0 && c[1] < 0:
			return p, q, false
		case c[0] < 0:
			lo = math.Max(lo, c[1]/c[0])
		case c[0] > 0:
			hi = math.Min(hi, c[1]/c[0])
		}
	}
	return a.Add(lo*dx, lo*dy), a.Add(hi*dx, hi*dy), lo < hi
}
