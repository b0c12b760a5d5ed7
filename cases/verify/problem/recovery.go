package problem

import (
	"math"
	"slices"

	"archload/fem/vec3"

	"gonum.org/v1/gonum/mat"
)

// The triangles' stresses are constant, and the two halves of a square lie off
// to opposite sides of the truth. At a node they are read by recovery over a
// patch: the mean of each square's two triangles, in the square's middle, and
// a quadratic fitted to the nearest squares by least squares (O. C. Zienkiewicz,
// J. Z. Zhu, IJNME 33 (1992) 1331; from memory).

// nearest is the number of squares of a patch.
const nearest = 12

// terms are the functions of the fit, in the tangent plane.
type terms func(x, y float64) []float64

// quadratic is the fit of a place inside the panel.
func quadratic(x, y float64) []float64 { return []float64{1, x, y, x * x, x * y, y * y} }

// read recovers values at a node from those of the squares around it.
func (a *solved) read(node int, terms terms, values func(e int, v *[18]float64) []float64) []float64 {
	at := a.Nodes[node].P
	order := make([]int, len(a.Shells)/2)
	far := make([]float64, len(order))
	for q := range order {
		order[q], far[q] = q, vec3.Norm(vec3.Sub(a.middle(q), at))
	}
	slices.SortStableFunc(order, func(i, j int) int {
		switch {
		case far[i] < far[j]*(1-1e-9):
			return -1
		case far[j] < far[i]*(1-1e-9):
			return 1
		}
		return 0
	})
	// Squares as far off as the last one belong to it: a regular patch is even.
	count := min(nearest, len(order))
	for count < len(order) && far[order[count]] < far[order[count-1]]*(1+1e-6) {
		count++
	}
	return a.fit(at, order[:count], terms, values)
}

// middle is the centre of a square's two triangles.
func (a *solved) middle(square int) (x [3]float64) {
	for _, e := range a.Shells[2*square : 2*square+2] {
		for _, n := range e.Nodes {
			x = vec3.Add(x, vec3.Scale(a.Nodes[n].P, 1.0/6))
		}
	}
	return x
}

// fit fits the terms and returns their value at the place; coordinates lie in
// the tangent plane of the first square.
func (a *solved) fit(at [3]float64, squares []int, terms terms, values func(e int, v *[18]float64) []float64) []float64 {
	frame := a.sys.Shells[2*squares[0]].Frame()
	size := vec3.Norm(vec3.Sub(a.middle(squares[len(squares)-1]), at))
	var rows, rhs *mat.Dense
	for i, q := range squares {
		u, v := a.of(2*q), a.of(2*q+1)
		got := values(2*q, &u)
		for k, w := range values(2*q+1, &v) {
			got[k] = (got[k] + w) / 2
		}
		d := vec3.Scale(vec3.Sub(a.middle(q), at), 1/size)
		row := terms(vec3.Dot(d, frame[0]), vec3.Dot(d, frame[1]))
		if rows == nil {
			rows, rhs = mat.NewDense(len(squares), len(row), nil), mat.NewDense(len(squares), len(got), nil)
		}
		rows.SetRow(i, row)
		rhs.SetRow(i, got)
	}
	var c mat.Dense
	if err := c.Solve(rows, rhs); err != nil {
		return slices.Repeat([]float64{math.NaN()}, rhs.RawMatrix().Cols)
	}
	return c.RawRowView(0)
}

// stress returns the stress in wood axes at a node and the height zeta.
func (a *solved) stress(node int, zeta float64) [6]float64 {
	return [6]float64(a.read(node, quadratic, func(e int, v *[18]float64) []float64 {
		s := a.sys.Shells[e].Stress(v, zeta)
		return s[:]
	}))
}

// moments returns Mx, My and Mxy at a node of a plate whose grain lies along x;
// positive moments put the upper face in tension.
func (a *solved) moments(node int) [3]float64 {
	return [3]float64(a.read(node, quadratic, func(e int, v *[18]float64) []float64 {
		r := a.sys.Shells[e].Resultants(v)
		return r.M[:]
	}))
}
