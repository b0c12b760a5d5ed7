package design

import (
	"math"
	"slices"

	"archload/cases"
)

// padStep is the contact step along the foot, mm, and padRows the rows across
// a full face: finer than the 3 mm triangles under the foot, so that shares and
// closing loads follow the wood and not the grid.
const (
	padStep = 2.0
	padRows = 4
)

// Cell is one rectangle of the contact grid; x and y are its middle from the
// bridge's middle, mm.
type Cell struct {
	X, Y   float64
	Dx, Dy float64
	Foot   int
}

// Area is the cell's, mm².
func (c Cell) Area() float64 { return c.Dx * c.Dy }

// Cells lays the contact grid over the bearing area, foot by foot from the
// bass, column by column. A perimeter bearing, or a base hollowed through its
// face, bears on its walls alone: the same grid with a mask.
func Cells(b *cases.Bridge) []Cell {
	var out []Cell
	for i := range b.Feet {
		xs, ys := bearingEdges(b, i)
		for k := 1; k < len(xs); k++ {
			for j := 1; j < len(ys); j++ {
				c := Cell{X: (xs[k-1] + xs[k]) / 2, Y: (ys[j-1] + ys[j]) / 2,
					Dx: xs[k] - xs[k-1], Dy: ys[j] - ys[j-1], Foot: i}
				if !hollowAt(b, i, c.X, c.Y) {
					out = append(out, c)
				}
			}
		}
	}
	return out
}

// hollowAt says whether a place of foot i's face is cut away.
func hollowAt(b *cases.Bridge, i int, x, y float64) bool {
	w := b.Wall(i)
	f := b.Feet[i]
	return w > 0 && x > float64(f.From)+w && x < float64(f.To)-w && math.Abs(y) < float64(b.Width)/2-w
}

// bearingEdges are the grid's lines along and across foot i, mm.
func bearingEdges(b *cases.Bridge, i int) (xs, ys []float64) {
	f, w := b.Feet[i], b.Wall(i)
	half := float64(b.Width) / 2
	if w == 0 {
		return cases.Divide(padStep, float64(f.From), float64(f.To)), cases.Divide(2*half/padRows, -half, half)
	}
	xs = cases.Divide(padStep, float64(f.From), float64(f.From)+w, float64(f.To)-w, float64(f.To))
	ys = cases.Divide(2*half/padRows, -half, -half+w, half-w, half)
	return xs, ys
}

// columns are the middles along the bridge of a set of cells, rising.
func columns(cells []Cell) []float64 {
	var xs []float64
	for _, c := range cells {
		xs = append(xs, c.X)
	}
	slices.Sort(xs)
	return slices.Compact(xs)
}
