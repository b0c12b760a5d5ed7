package sparse

import (
	"slices"

	"archload/fem/sparse/panel"
)

const (
	panelRows = panel.Rows
	tileLen   = panel.TileLen
	blockLen  = panel.BlockLen
)

// kernels are the inner loops.
type kernels = panel.Kernels

func fastKernels() kernels { return panel.Fast() }

// panels returns the number of panels that hold the given rows.
func panels(rows int) int { return (rows + panelRows - 1) / panelRows }

// triWidth returns the number of columns kept of panel p of a lower triangle:
// whole nodes up to the diagonal.
func triWidth(p int) int { return Block * ((panelRows*(p+1) + Block - 1) / Block) }

// triOff returns where panel p of a lower triangle begins: 8 times the sum of
// the widths before it, which grow by 24 every three panels from 12, 18, 24.
func triOff(p int) int {
	a, b := p/3, p%3
	return panelRows * (18*a + 36*a*a + 24*a*b + [3]int{0, 12, 30}[b])
}

// triLen returns the number of values of a lower triangle of the given order,
// a multiple of 6.
func triLen(order int) int {
	if order == 0 {
		return 0
	}
	p := panels(order) - 1
	return triOff(p) + panelRows*min(triWidth(p), order)
}

// rectLen returns the number of values of rows x cols in panels.
func rectLen(rows, cols int) int { return panels(rows) * panelRows * cols }

// triRows returns, for the first nodes of a lower triangle, where the three
// pairs of rows of each node begin. A node's six rows lie in at most two panels
// and a pair of rows (6j+2t, 6j+2t+1) always in one.
func triRows(nodes int) []int32 {
	off := make([]int32, 3*nodes)
	for i := range off {
		off[i] = int32(triOff(2*i/panelRows) + 2*i%panelRows)
	}
	return off
}

// rectRows does for a rectangle of cols columns what triRows does for a triangle,
// in the memory of off.
func rectRows(off []int32, nodes, cols int) []int32 {
	off = slices.Grow(off[:0], 3*nodes)
	for i := range 3 * nodes {
		off = append(off, int32(2*i/panelRows*panelRows*cols+2*i%panelRows))
	}
	return off
}
