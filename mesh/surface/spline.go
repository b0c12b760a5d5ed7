package surface

import (
	"math"

	"archload/mesh/plane"
)

// Spline is a smooth surface of tensor-product cubic B-splines on square
// cells (de Boor, A Practical Guide to Splines, chapters IX and XVII). Value,
// gradient and second derivatives are continuous. Beyond its box it goes on
// along its tangent planes.
type Spline struct {
	grid
	coef   []float64        // mm, indexed by grid.index
	ground *ground          // nil: not known
	lift   func() []float64 // what the rim's rise by 1 mm does to coef; nil: not known
	fitted *Spline          // as it was fitted, before its rim rose; nil: this one
}

// grid places the B-splines: nx by ny cells of edge size from the corner x0,
// y0. Along x there are nx+3 splines; the splines i to i+3 live on cell i.
type grid struct {
	x0, y0, size float64 // mm
	nx, ny       int     // cells
}

// boxMargin is the number of cells beyond the outline's box.
const boxMargin = 2

// gridOver returns the grid that covers the box lo to hi with boxMargin more
// cells on each side, centred on it.
func gridOver(lo, hi plane.Point, size float64) grid {
	nx := int(math.Ceil((hi[0]-lo[0])/size)) + 2*boxMargin
	ny := int(math.Ceil((hi[1]-lo[1])/size)) + 2*boxMargin
	return grid{
		x0: (lo[0]+hi[0])/2 - float64(nx)*size/2, y0: (lo[1]+hi[1])/2 - float64(ny)*size/2,
		size: size, nx: nx, ny: ny,
	}
}

// count returns the number of coefficients.
func (g grid) count() int { return (g.nx + 3) * (g.ny + 3) }

// index returns the place of coefficient (i, j).
func (g grid) index(i, j int) int { return j*(g.nx+3) + i }

// cell returns the cell that holds p and the place in it, 0 to 1; a point
// outside the box gives the nearest cell and a place outside 0 to 1.
func (g grid) cell(p plane.Point) (i, j int, u, v float64) {
	u, v = (p[0]-g.x0)/g.size, (p[1]-g.y0)/g.size
	i = min(max(int(math.Floor(u)), 0), g.nx-1)
	j = min(max(int(math.Floor(v)), 0), g.ny-1)
	return i, j, u - float64(i), v - float64(j)
}

// basis returns the four cubic B-splines of a cell at u and their first three
// derivatives by u: row k is the k-th derivative.
func basis(u float64) [4][4]float64 {
	w := 1 - u
	return [4][4]float64{
		{w * w * w / 6, (u*u*(3*u-6) + 4) / 6, (w*w*(3*w-6) + 4) / 6, u * u * u / 6},
		{-w * w / 2, u * (3*u - 4) / 2, -w * (3*w - 4) / 2, u * u / 2},
		{w, 3*u - 2, 3*w - 2, u},
		{-1, 3, -3, 1},
	}
}

// At returns the jet of the surface at p.
func (s *Spline) At(p plane.Point) Jet {
	i, j, u, v := s.cell(p)
	cu, cv := min(max(u, 0), 1), min(max(v, 0), 1)
	bx, by := basis(cu), basis(cv)
	var d [3][3]float64 // d[a][b]: a-th derivative by u, b-th by v
	for n := range 4 {
		var row [3]float64
		at := s.index(i, j+n)
		for m := range 4 {
			c := s.coef[at+m]
			for a := range 3 {
				row[a] += bx[a][m] * c
			}
		}
		for a := range 3 {
			for b := 0; a+b < 3; b++ {
				d[a][b] += row[a] * by[b][n]
			}
		}
	}
	h := s.size
	jet := Jet{d[0][0], d[1][0] / h, d[0][1] / h, d[2][0] / (h * h), d[1][1] / (h * h), d[0][2] / (h * h)}
	if cu != u || cv != v {
		jet.Z += (jet.Zx*(u-cu) + jet.Zy*(v-cv)) * h
		jet.Zxx, jet.Zxy, jet.Zyy = 0, 0, 0
	}
	return jet
}

// stencil is a linear functional of the spline: 16 coefficients from first
// on, weighted.
type stencil struct {
	first int // index of the cell's spline (0, 0)
	w     [16]float64
}

// valueAt returns the stencil of the surface's height at p, which must lie
// in the box.
func (g grid) valueAt(p plane.Point) stencil {
	i, j, u, v := g.cell(p)
	bx, by := basis(u), basis(v)
	s := stencil{first: g.index(i, j)}
	for n := range 4 {
		for m := range 4 {
			s.w[4*n+m] = bx[0][m] * by[0][n]
		}
	}
	return s
}

// laplaceAt returns the stencil of ∂²/∂x² + ∂²/∂y² at p, 1/mm².
func (g grid) laplaceAt(p plane.Point) stencil {
	i, j, u, v := g.cell(p)
	bx, by := basis(u), basis(v)
	s := stencil{first: g.index(i, j)}
	for n := range 4 {
		for m := range 4 {
			s.w[4*n+m] = (bx[2][m]*by[0][n] + bx[0][m]*by[2][n]) / (g.size * g.size)
		}
	}
	return s
}

// offset returns the index of stencil entry k relative to its first.
func (g grid) offset(k int) int { return k/4*(g.nx+3) + k%4 }

// apply returns the value of the functional for the coefficients c.
func (g grid) apply(s *stencil, c []float64) float64 {
	v := 0.0
	for k, w := range s.w {
		v += w * c[s.first+g.offset(k)]
	}
	return v
}
