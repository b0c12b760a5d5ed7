package panel

import (
	"image/color"
	"math"
)

// Line draws a straight line with soft edges; width in points.
func (l *List) Line(a, b Point, width float64, k color.NRGBA) {
	l.Polyline([]Point{a, b}, width, k)
}

// Dashed draws a broken line; width, dash and gap in points.
func (l *List) Dashed(a, b Point, width float64, dash [2]float64, k color.NRGBA) {
	long := math.Hypot(b.X-a.X, b.Y-a.Y)
	period := dash[0] + dash[1]
	if !(long > 0 && period > 0) || math.IsInf(long, 0) {
		return
	}
	period = max(period, long/2000)
	at := func(s float64) Point {
		t := min(1, s/long)
		return Point{a.X + (b.X-a.X)*t, a.Y + (b.Y-a.Y)*t}
	}
	for s := 0.0; s < long; s += period {
		l.Line(at(s), at(s+dash[0]), width, k)
	}
}

// Polyline draws a line through the places, mitred, with soft edges; width in
// points. A place that is not a number breaks it.
func (l *List) Polyline(places []Point, width float64, k color.NRGBA) {
	d := l.Atlas.Density
	var run []Point
	for _, p := range places {
		if bad(p) {
			l.run(run, width*d, k)
			run = run[:0]
			continue
		}
		q := Point{p.X * d, p.Y * d}
		if n := len(run); n > 0 && math.Hypot(q.X-run[n-1].X, q.Y-run[n-1].Y) < 1e-3 {
			continue
		}
		run = append(run, q)
	}
	l.run(run, width*d, k)
}

func bad(p Point) bool { return math.IsNaN(p.X+p.Y) || math.IsInf(p.X+p.Y, 0) }

// rib is a line's cross section at one place: four offsets along across, from
// clear over two full ones to clear again.
type rib struct{ at, across Point }

// run draws an unbroken line in pixels. At a turn too sharp for a mitre it
// begins afresh.
func (l *List) run(p []Point, width float64, k color.NRGBA) {
	if len(p) < 2 || !(width > 0) {
		return
	}
	if width < 1 { // a line thinner than a pixel is a paler one
		k, width = faded(k, width), 1
	}
	closed := len(p) > 3 && p[0] == p[len(p)-1]
	last := normal(p[0], p[1])
	if closed {
		last = normal(p[len(p)-2], p[0])
	}
	for i := 0; i+1 < len(p); i++ {
		n := normal(p[i], p[i+1])
		from := rib{p[i], n}
		if i > 0 || closed {
			from = mitre(p[i], last, n)
		}
		to := rib{p[i+1], n}
		switch {
		case i+2 < len(p):
			to = mitre(p[i+1], n, normal(p[i+1], p[i+2]))
		case closed:
			to = mitre(p[i+1], n, normal(p[0], p[1]))
		}
		l.ribbon(from, to, width, k)
		last = n
	}
}

// normal returns the unit vector square to ab.
func normal(a, b Point) Point {
	dx, dy := b.X-a.X, b.Y-a.Y
	h := math.Hypot(dx, dy)
	return Point{-dy / h, dx / h}
}

// mitre is the rib between two stretches with the normals m and n, at most
// twice as wide as the line.
func mitre(at, m, n Point) rib {
	s := Point{m.X + n.X, m.Y + n.Y}
	h := math.Hypot(s.X, s.Y)
	if h < 1e-6 {
		return rib{at, m}
	}
	s = Point{s.X / h, s.Y / h}
	long := 1 / max(0.5, s.X*m.X+s.Y*m.Y)
	return rib{at, Point{s.X * long, s.Y * long}}
}

// ribbon draws a stretch between two ribs: full in the middle, clear a pixel
// further out.
func (l *List) ribbon(a, b rib, width float64, k color.NRGBA) {
	none := faded(k, 0)
	offsets := [4]float64{-width/2 - 0.5, -width/2 + 0.5, width/2 - 0.5, width/2 + 0.5}
	paints := [4]color.NRGBA{none, k, k, none}
	place := func(r rib, i int) corner {
		return corner{r.at.X + r.across.X*offsets[i], r.at.Y + r.across.Y*offsets[i], paints[i]}
	}
	for i := range 3 {
		if offsets[i+1] <= offsets[i] {
			continue
		}
		l.quad(place(a, i), place(b, i), place(b, i+1), place(a, i+1))
	}
}

// Hatch draws slanting lines over a rectangle, so many points below each other.
func (l *List) Hatch(r Rect, step, width float64, k color.NRGBA) {
	l.Clip(r)
	for y := r.Y; y < r.Bottom()+r.W; y += step {
		l.Line(Point{r.X, y}, Point{r.Right(), y - r.W}, width, k)
	}
	l.Unclip()
}
