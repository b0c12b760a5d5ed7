package delaunay

import "math"

// Smoothing. Only vertices of the domain that lie on no segment move.
const (
	smoothSweeps = 12
	searchSweeps = 8
	keepAngle    = 30 * math.Pi / 180 // a move may lower a star's least angle down to this, not below
	flattest     = 1e6                // cotangent beyond which rounding may turn a triangle over
	searchSteps  = 60
	searchAngle  = 32 * math.Pi / 180 // stars below this are searched for a better place
)

// Smooth evens out the triangles: it moves free vertices to the weighted mean
// of the centroids and circumcentres of their triangles (weight area over
// size squared), flips what is no longer Delaunay, and then searches better
// places for the vertices of stars that still have a small angle.
func (tr *Triangulation) Smooth(size func(Point) float64) {
	s := newSweeper(tr, tr.freeVertices())
	for range smoothSweeps {
		s.sweep(func(w *walker, v int32) bool { return w.relax(v, size) })
		tr.Legalize()
	}
	for range searchSweeps {
		if !s.sweep(func(w *walker, v int32) bool { return w.search(v, size) }) {
			return
		}
		tr.Legalize()
	}
}

// freeVertices lists the vertices inside the domain and on no segment.
func (tr *Triangulation) freeVertices() []int32 {
	fixed := make([]bool, len(tr.P))
	for _, s := range tr.Segs {
		fixed[s.A], fixed[s.B] = true, true
	}
	var free []int32
	for v := int32(supers); v < int32(len(tr.P)); v++ {
		if !fixed[v] && tr.T[tr.at[v]].In {
			free = append(free, v)
		}
	}
	return free
}

// worst returns the greatest cotangent of an angle in the star of p, or +Inf
// if a triangle is turned over.
func (w *walker) worst(p Point) float64 {
	most := math.Inf(-1)
	for i, a := range w.ring {
		b := w.ring[0]
		if i+1 < len(w.ring) {
			b = w.ring[i+1]
		}
		most = max(most, greatestCot(p, a, b))
	}
	return most
}

// greatestCot returns the cotangent of the least angle of triangle abc, +Inf
// if it is flat or clockwise.
func greatestCot(a, b, c Point) float64 {
	ux, uy, vx, vy := b[0]-a[0], b[1]-a[1], c[0]-a[0], c[1]-a[1]
	area := ux*vy - uy*vx
	if area <= 0 {
		return math.Inf(1)
	}
	uu, vv, uv := ux*ux+uy*uy, vx*vx+vy*vy, ux*vx+uy*vy
	return max(uv, uu-uv, vv-uv) / area
}

// relax moves v to the mean of its triangles' centroids and circumcentres.
func (w *walker) relax(v int32, size func(Point) float64) bool {
	old := w.P[v]
	var sx, sy, sw float64
	for i, a := range w.ring {
		b := w.ring[(i+1)%len(w.ring)]
		g := Point{(old[0] + a[0] + b[0]) / 3, (old[1] + a[1] + b[1]) / 3}
		x, y, ok := toCentre(old, a, b)
		if !ok {
			return false
		}
		h := size(g)
		share := ((a[0]-old[0])*(b[1]-old[1]) - (a[1]-old[1])*(b[0]-old[0])) / (h * h)
		sx += share * (g[0] + (old[0] + x)) / 2
		sy += share * (g[1] + (old[1] + y)) / 2
		sw += share
	}
	p := Point{sx / sw, sy / sw}
	if w.worst(p) <= max(min(w.worst(old), flattest), 1/math.Tan(keepAngle)) {
		w.P[v] = p
		return true
	}
	return false
}

// search tries the eight compass directions with shrinking steps, if the star
// of v has a small angle, and tells whether it found a better place.
func (w *walker) search(v int32, size func(Point) float64) bool {
	best := w.worst(w.P[v])
	if best <= 1/math.Tan(searchAngle) {
		return false
	}
	moved := false
	h := size(w.P[v])
	step := 0.2 * h
	for n := 0; step > 0.01*h && n < searchSteps; n++ {
		p, c := w.bestNeighbour(w.P[v], step)
		if c >= best-1e-9 || c > flattest {
			step /= 2
			continue
		}
		w.P[v], best, moved = p, c, true
	}
	return moved
}

func (w *walker) bestNeighbour(p Point, step float64) (Point, float64) {
	at, best := p, math.Inf(1)
	for _, d := range [8]Point{{1, 0}, {0.7, 0.7}, {0, 1}, {-0.7, 0.7}, {-1, 0}, {-0.7, -0.7}, {0, -1}, {0.7, -0.7}} {
		q := Point{p[0] + step*d[0], p[1] + step*d[1]}
		if c := w.worst(q); c < best {
			at, best = q, c
		}
	}
	return at, best
}
