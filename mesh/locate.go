package mesh

import (
	"math"

	"archload/mesh/plane"
)

// Locator finds the triangle at a place. It may be used from many goroutines.
type Locator struct {
	plan   *Plan
	lo     Point
	cell   float64 // mm
	nx, ny int
	start  []int32 // of each cell in items; one more than cells
	items  []int32 // triangles whose bounding box meets the cell
}

// NewLocator sorts the triangles into a grid of about one cell for each.
func NewLocator(p *Plan) *Locator {
	lo, hi := plane.Bounds(p.Points)
	w, h := hi[0]-lo[0], hi[1]-lo[1]
	n := float64(len(p.Tris)) + 1
	l := &Locator{plan: p, lo: lo, cell: max(math.Sqrt(w*h/n), (w+h)/n, 1e-9)}
	l.nx, l.ny = int(w/l.cell)+1, int(h/l.cell)+1
	l.start = make([]int32, l.nx*l.ny+1)
	for t := range p.Tris {
		l.cells(t, func(c int) { l.start[c+1]++ })
	}
	for c := range l.nx * l.ny {
		l.start[c+1] += l.start[c]
	}
	l.items = make([]int32, l.start[l.nx*l.ny])
	fill := append([]int32(nil), l.start...)
	for t := range p.Tris {
		l.cells(t, func(c int) { l.items[fill[c]] = int32(t); fill[c]++ })
	}
	return l
}

func (l *Locator) column(x float64) int { return clamp((x-l.lo[0])/l.cell, l.nx-1) }
func (l *Locator) row(y float64) int    { return clamp((y-l.lo[1])/l.cell, l.ny-1) }

func clamp(x float64, most int) int { return int(min(max(x, 0), float64(most))) }

func (l *Locator) cells(t int, f func(c int)) {
	a, b, c := l.corners(int32(t))
	lo, hi := plane.Bounds([]Point{a, b, c})
	for r := l.row(lo[1]); r <= l.row(hi[1]); r++ {
		for k := l.column(lo[0]); k <= l.column(hi[0]); k++ {
			f(r*l.nx + k)
		}
	}
}

func (l *Locator) corners(t int32) (a, b, c Point) {
	v := &l.plan.Tris[t]
	return l.plan.Points[v[0]], l.plan.Points[v[1]], l.plan.Points[v[2]]
}

// Find returns the triangle that holds p and the barycentric coordinates of p
// in it. If none does, inside is false, and triangle and coordinates are those
// of the point of the plan nearest to p. An empty plan gives tri = -1.
func (l *Locator) Find(p Point) (tri int32, bary [3]float64, inside bool) {
	if tri, bary, inside = l.Within(p); !inside {
		tri, bary = l.nearest(p)
	}
	return tri, bary, inside
}

// Within is Find of a place that may well lie outside, which is then not looked for
// any further: triangle and coordinates mean nothing.
func (l *Locator) Within(p Point) (tri int32, bary [3]float64, inside bool) {
	if p[0] != p[0] || p[1] != p[1] { // NaN
		return -1, bary, false
	}
	k := l.row(p[1])*l.nx + l.column(p[0])
	for _, t := range l.items[l.start[k]:l.start[k+1]] {
		a, b, c := l.corners(t)
		if bary, ok := baryIn(a, b, c, p); ok {
			return t, bary, true
		}
	}
	return -1, bary, false
}

// baryIn returns the barycentric coordinates of p and whether p lies in the
// triangle, with a tolerance of rounding so that no point on an edge falls
// between two triangles. Coordinates are never negative then.
func baryIn(a, b, c, p Point) (l [3]float64, ok bool) {
	area := plane.Cross(a, b, c)
	l = [3]float64{plane.Cross(p, b, c) / area, plane.Cross(p, c, a) / area, plane.Cross(p, a, b) / area}
	if !(min(l[0], l[1], l[2]) >= -1e-10) {
		return l, false
	}
	sum := 0.0
	for i := range l {
		l[i] = max(l[i], 0)
		sum += l[i]
	}
	for i := range l {
		l[i] /= sum
	}
	return l, true
}

// nearest looks at rings of cells round p until no nearer triangle is
// possible.
func (l *Locator) nearest(p Point) (tri int32, bary [3]float64) {
	tri = -1
	best := math.Inf(1)
	i, j := l.column(p[0]), l.row(p[1])
	centre := Point{min(max(p[0], l.lo[0]), l.lo[0]+float64(l.nx)*l.cell), min(max(p[1], l.lo[1]), l.lo[1]+float64(l.ny)*l.cell)}
	away := plane.Dist(p, centre)
	for ring := range max(l.nx, l.ny) + 1 {
		// Cells of this ring are at least (ring-1) cells from centre, which
		// is the point of the grid nearest to p.
		if reach := float64(ring-1) * l.cell; ring > 0 && reach > 0 && reach*reach+away*away > best {
			break
		}
		l.ringCells(i, j, ring, func(c int) {
			for _, t := range l.items[l.start[c]:l.start[c+1]] {
				if b, d2 := l.closest(t, p); d2 < best {
					tri, bary, best = t, b, d2
				}
			}
		})
	}
	return tri, bary
}

// ringCells calls f for the cells of the grid at Chebyshev distance ring from
// cell (i, j).
func (l *Locator) ringCells(i, j, ring int, f func(c int)) {
	for r := max(j-ring, 0); r <= min(j+ring, l.ny-1); r++ {
		step := 1
		if r != j-ring && r != j+ring && ring > 0 {
			step = 2 * ring
		}
		for k := i - ring; k <= i+ring; k += step {
			if k >= 0 && k < l.nx {
				f(r*l.nx + k)
			}
		}
	}
}

// closest returns the coordinates of the point of triangle t nearest to p, on
// its edges, and the squared distance, mm².
func (l *Locator) closest(t int32, p Point) (bary [3]float64, best float64) {
	var x [3]Point
	x[0], x[1], x[2] = l.corners(t)
	best = math.Inf(1)
	for i := range 3 {
		j := (i + 1) % 3
		if s, d2 := plane.OnChord(x[i], x[j], p); d2 < best {
			best, bary = d2, [3]float64{}
			bary[i], bary[j] = 1-s, s
		}
	}
	return bary, best
}
