package plane

import (
	"math"
)

// Grid finds which of many straight pieces lie near each other: each is
// listed in the square cells that its bounding box meets, row by row.
type Grid struct {
	Segs   [][2]Point
	lo     Point
	cell   float64 // mm
	nx, ny int
	start  []int32 // of each cell in items; one more than cells
	items  []int32
}

// NewGrid sorts segs into cells of about their mean length, but not many
// more cells than pieces.
func NewGrid(segs [][2]Point) *Grid {
	g := &Grid{Segs: segs}
	var hi Point
	sum := 0.0
	for i, s := range segs {
		l, h := Bounds(s[:])
		sum += Dist(s[0], s[1])
		for k := range 2 {
			if i == 0 {
				g.lo[k], hi[k] = l[k], h[k]
			}
			g.lo[k], hi[k] = min(g.lo[k], l[k]), max(hi[k], h[k])
		}
	}
	n := float64(len(segs))
	w, h := hi[0]-g.lo[0], hi[1]-g.lo[1]
	g.cell = max(sum/(n+1), math.Sqrt(w*h/(2*n+16)), (w+h)/(2*n+16), 1e-9)
	g.nx, g.ny = int(w/g.cell)+1, int(h/g.cell)+1
	g.start = make([]int32, g.nx*g.ny+1)
	for i := range segs {
		g.cells(int32(i), func(c int) { g.start[c+1]++ })
	}
	for c := range g.nx * g.ny {
		g.start[c+1] += g.start[c]
	}
	g.items = make([]int32, g.start[g.nx*g.ny])
	fill := append([]int32(nil), g.start...)
	for i := range segs {
		g.cells(int32(i), func(c int) { g.items[fill[c]] = int32(i); fill[c]++ })
	}
	return g
}

func (g *Grid) column(x float64) int { return clampInt((x-g.lo[0])/g.cell, g.nx-1) }
func (g *Grid) row(y float64) int    { return clampInt((y-g.lo[1])/g.cell, g.ny-1) }

func clampInt(x float64, most int) int { return int(min(max(x, 0), float64(most))) }

// cells calls f for every cell that piece i runs through: in each row, the
// columns between its ends within that row (widened by rounding).
func (g *Grid) cells(i int32, f func(c int)) {
	a, b := g.Segs[i][0], g.Segs[i][1]
	if a[1] > b[1] {
		a, b = b, a
	}
	level := math.Abs(b[1]-a[1]) < 1e-6*g.cell
	cross := func(r int) float64 { // x where the piece enters row r
		f := (g.lo[1] + float64(r)*g.cell - a[1]) / (b[1] - a[1])
		return a[0] + min(max(f, 0), 1)*(b[0]-a[0])
	}
	r0, r1 := g.row(a[1]), g.row(b[1])
	for r := r0; r <= r1; r++ {
		xa, xb := a[0], b[0]
		if r > r0 && !level {
			xa = cross(r)
		}
		if r < r1 && !level {
			xb = cross(r + 1)
		}
		slack := 1e-6 * g.cell
		for c := g.column(min(xa, xb) - slack); c <= g.column(max(xa, xb)+slack); c++ {
			f(r*g.nx + c)
		}
	}
}

// Near calls f for the pieces in the cells that the rectangle meets, some more
// than once.
func (g *Grid) Near(lo, hi Point, f func(i int32)) {
	for r := g.row(lo[1]); r <= g.row(hi[1]); r++ {
		for c := g.column(lo[0]); c <= g.column(hi[0]); c++ {
			k := r*g.nx + c
			for _, i := range g.items[g.start[k]:g.start[k+1]] {
				f(i)
			}
		}
	}
}

// Pairs calls f for every two pieces i < j that share a cell, some more than
// once, until f returns false.
func (g *Grid) Pairs(f func(i, j int32) bool) {
	for k := range g.nx * g.ny {
		list := g.items[g.start[k]:g.start[k+1]]
		for x, i := range list {
			for _, j := range list[x+1:] {
				if !f(i, j) {
					return
				}
			}
		}
	}
}

// Sides returns the closed polygon's sides.
func Sides(ring []Point) [][2]Point {
	segs := make([][2]Point, len(ring))
	for i, p := range ring {
		segs[i] = [2]Point{p, ring[(i+1)%len(ring)]}
	}
	return segs
}

// ringCrossing returns a side of the closed polygon that crosses, touches or
// runs back over another.
func ringCrossing(ring []Point) (at int, crosses bool) {
	n := int32(len(ring))
	segs := Sides(ring)
	NewGrid(segs).Pairs(func(i, j int32) bool {
		s, t := segs[i], segs[j]
		switch {
		case j == i+1:
			crosses = Fold(s[0], s[1], t[1])
		case i == 0 && j == n-1:
			crosses = Fold(t[0], t[1], s[1])
		default:
			crosses = Meet(s[0], s[1], t[0], t[1])
		}
		at = int(i)
		return !crosses
	})
	return at, crosses
}
