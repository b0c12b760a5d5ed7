package mesh

import (
	"math"

	"archload/mesh/plane"
)

// sizeField is the wanted edge length over the plate: values at scale 1 on a
// square grid, mm, times the scale.
type sizeField struct {
	lo     Point
	cell   float64 // mm
	nx, ny int
	h      []float64 // row by row
	slope  float64   // greatest slope of h, 1
	scale  float64
}

// grading is the greatest slope of the wanted edge length at scale 1. The
// slope follows the scale, so that half the scale means half the edges
// everywhere, but not above steepest.
const (
	grading  = 0.22
	steepest = 0.33
)

// maxCells bounds the size grid.
const maxCells = 4 << 20

// emptyField lays the grid over the outline and sets the coarsest size.
func emptyField(d *Domain) *sizeField {
	lo, hi := d.Outline.Bounds()
	w, h := hi[0]-lo[0], hi[1]-lo[1]
	cell := min(d.Size, defaultSize) / 6
	cell = max(cell, math.Sqrt(w*h/(maxCells/2)), (w+h)/(maxCells/8))
	cell = min(cell, max(w, h)/16)
	f := &sizeField{lo: Point{lo[0] - cell, lo[1] - cell}, cell: cell, nx: int(w/cell) + 4, ny: int(h/cell) + 4}
	f.slope, f.scale = min(grading, steepest/d.Scale), d.Scale
	f.h = make([]float64, f.nx*f.ny)
	for i := range f.h {
		f.h[i] = d.Size
	}
	return f
}

// trianglesPerArea is the number of equilateral triangles of edge 1 on unit
// area, 4/sqrt(3).
const trianglesPerArea = 2.3094

// expected estimates the number of triangles from a coarse sample of the grid.
func (f *sizeField) expected(d *Domain) float64 {
	step := max(1, int(math.Sqrt(float64(len(f.h))/20000)))
	sum := 0.0
	for j := 0; j < f.ny; j += step {
		for i := 0; i < f.nx; i += step {
			if h := f.scale * f.h[j*f.nx+i]; d.inWood(f.place(i, j)) {
				sum += 1 / (h * h)
			}
		}
	}
	a := f.cell * float64(step)
	return trianglesPerArea * a * a * sum
}

func (f *sizeField) place(i, j int) Point {
	return Point{f.lo[0] + float64(i)*f.cell, f.lo[1] + float64(j)*f.cell}
}

// locate returns the grid cell of p, clamped to the grid, and the fractions
// within it.
func (f *sizeField) locate(p Point) (i, j int, u, v float64) {
	i, u = f.column(p[0])
	j, v = f.row(p[1])
	return i, j, u, v
}

func (f *sizeField) column(x float64) (i int, u float64) {
	x = min(max((x-f.lo[0])/f.cell, 0), float64(f.nx-1)-1e-9)
	return int(x), x - float64(int(x))
}

func (f *sizeField) row(y float64) (j int, v float64) {
	y = min(max((y-f.lo[1])/f.cell, 0), float64(f.ny-1)-1e-9)
	return int(y), y - float64(int(y))
}

// at returns the wanted edge length at p, mm.
func (f *sizeField) at(p Point) float64 { return f.scale * f.unscaled(p) }

// bothSides returns the lesser of at(p) and at its mirror image.
func (f *sizeField) bothSides(p Point) float64 {
	j, v := f.row(p[1])
	i, u := f.column(p[0])
	k, w := f.column(-p[0])
	return min(f.scale*f.between(i, j, u, v), f.scale*f.between(k, j, w, v))
}

func (f *sizeField) unscaled(p Point) float64 { return f.between(f.locate(p)) }

// between interpolates within a cell bilinearly.
func (f *sizeField) between(i, j int, u, v float64) float64 {
	k := j*f.nx + i
	near, far := f.h[k:k+2], f.h[k+f.nx:k+f.nx+2]
	low := near[0] + u*(near[1]-near[0])
	return low + v*(far[0]+u*(far[1]-far[0])-low)
}

// put makes the field at p about h or smaller.
func (f *sizeField) put(p Point, h float64) {
	i, j, _, _ := f.locate(p)
	for _, c := range [4][2]int{{i, j}, {i + 1, j}, {i, j + 1}, {i + 1, j + 1}} {
		k := c[1]*f.nx + c[0]
		f.h[k] = min(f.h[k], h+f.slope*plane.Dist(p, f.place(c[0], c[1])))
	}
}

// sweep spreads the sources: one pass forward and one back over the grid, each
// looking at the eight neighbours that came before.
func (f *sizeField) sweep() {
	side, diag := f.slope*f.cell, f.slope*f.cell*math.Sqrt2
	pass := func(i, j, di int) {
		k := j*f.nx + i
		h := f.h[k]
		if i-di >= 0 && i-di < f.nx {
			h = min(h, f.h[k-di]+side)
		}
		if jj := j - di; jj >= 0 && jj < f.ny {
			row := jj * f.nx
			h = min(h, f.h[row+i]+side)
			if i > 0 {
				h = min(h, f.h[row+i-1]+diag)
			}
			if i+1 < f.nx {
				h = min(h, f.h[row+i+1]+diag)
			}
		}
		f.h[k] = h
	}
	for j := range f.ny {
		for i := range f.nx {
			pass(i, j, 1)
		}
	}
	for j := f.ny - 1; j >= 0; j-- {
		for i := f.nx - 1; i >= 0; i-- {
			pass(i, j, -1)
		}
	}
}
