package verify

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// The triangles' stresses are constant; at a node they are read by recovery
// over a patch: a quadratic of two coordinates, fitted by least squares to the
// values at the middles of the nearest triangles (O. C. Zienkiewicz,
// J. Z. Zhu, IJNME 33 (1992) 1331; from memory).

// nearest is the number of triangles of a patch.
const nearest = 24

// read recovers values at a node from those of the triangles around it.
func (a *answer) read(node int, values func(e int, v *[18]float64) []float64) []float64 {
	at := a.Nodes[node].P
	order := make([]int, len(a.Shells))
	far := make([]float64, len(a.Shells))
	for e := range order {
		order[e], far[e] = e, length(sub(a.middle(e), at))
	}
	slices.SortStableFunc(order, func(i, j int) int {
		switch {
		case far[i] < far[j]-1e-9*far[j]:
			return -1
		case far[j] < far[i]-1e-9*far[i]:
			return 1
		}
		return 0
	})
	// One more shell of equally distant triangles keeps a regular patch even.
	count := min(nearest, len(order))
	for count < len(order) && far[order[count]] < far[order[count-1]]*(1+1e-6) {
		count++
	}
	return a.fit(at, order[:count], values)
}

// middle is the centre of a triangle.
func (a *answer) middle(e int) (x [3]float64) {
	for _, n := range a.Shells[e].Nodes {
		x = add(x, times(a.Nodes[n].P, 1.0/3))
	}
	return x
}

// fit fits the quadratic and returns its value at the place; coordinates lie in
// the tangent plane of the first triangle.
func (a *answer) fit(at [3]float64, elems []int, values func(e int, v *[18]float64) []float64) []float64 {
	frame := a.sys.Shells[elems[0]].Frame()
	size := length(sub(a.middle(elems[len(elems)-1]), at))
	var rows, rhs *mat.Dense
	for i, e := range elems {
		v := a.of(e)
		got := values(e, &v)
		if rows == nil {
			rows, rhs = mat.NewDense(len(elems), 6, nil), mat.NewDense(len(elems), len(got), nil)
		}
		d := times(sub(a.middle(e), at), 1/size)
		x, y := dot(d, frame[0]), dot(d, frame[1])
		rows.SetRow(i, []float64{1, x, y, x * x, x * y, y * y})
		rhs.SetRow(i, got)
	}
	var c mat.Dense
	if err := c.Solve(rows, rhs); err != nil {
		return []float64{math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.NaN(), math.NaN()}
	}
	return c.RawRowView(0)
}

// stress returns the stress in wood axes at a node and the height zeta.
func (a *answer) stress(node int, zeta float64) [6]float64 {
	return [6]float64(a.read(node, func(e int, v *[18]float64) []float64 {
		s := a.sys.Shells[e].Stress(v, zeta)
		return s[:]
	}))
}

// moments returns Mx, My and Mxy at a node of a plate whose grain lies along x;
// positive moments put the upper face in tension.
func (a *answer) moments(node int) [3]float64 {
	return [3]float64(a.read(node, func(e int, v *[18]float64) []float64 {
		r := a.sys.Shells[e].Resultants(v)
		return r.M[:]
	}))
}
