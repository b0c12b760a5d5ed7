package aging

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"

	"archload/cases/design"
	"archload/fem/vec3"
)

// settle takes off what of a free plate's movement is that of the whole, which depends on where it was held. With
// u = A x + b the straight movement nearest to those of its nodes, that is the shift b and the turn of the
// skew part of A, each node counting by its area: so that wood which swells alike everywhere moves by E x, E its free strain. In a flat plate
// the nodes do not tell how its fibres turn; they are taken to stay square to it.
func (m *movement) settle() {
	a, b, flat := m.nearest()
	w := [3]float64{a[2][1] - a[1][2], a[0][2] - a[2][0], a[1][0] - a[0][1]}
	turn := vec3.Scale(w, 0.5)
	if flat {
		turn[0], turn[1] = a[2][1], -a[2][0]
	}
	r := *m.now.Result
	r.U = slices.Clone(r.U)
	for i, n := range m.now.Top.Built.Model.Nodes {
		d := vec3.Add(b, vec3.Cross(turn, n.P))
		for k := range 3 {
			r.U[6*i+k] -= d[k]
			r.U[6*i+3+k] -= turn[k]
		}
	}
	m.now = &design.Solution{Top: m.now.Top, Result: &r}
}

// nearest is the straight movement nearest to those of the plate's nodes.
func (m *movement) nearest() (a [3][3]float64, b [3]float64, flat bool) {
	built := m.now.Top.Built
	var mid, move [3]float64
	share := shares(built)
	for i, w := range share {
		mid = vec3.Add(mid, vec3.Scale(built.Model.Nodes[i].P, w))
		move = vec3.Add(move, vec3.Scale(m.nodeMove(i), w))
	}
	xx, ux := mat.NewSymDense(3, nil), mat.NewDense(3, 3, nil)
	for i, w := range share {
		x, u := vec3.Sub(built.Model.Nodes[i].P, mid), vec3.Sub(m.nodeMove(i), move)
		for p := range 3 {
			for q := range 3 {
				if q >= p {
					xx.SetSym(p, q, xx.At(p, q)+w*x[p]*x[q])
				}
				ux.Set(p, q, ux.At(p, q)+w*x[p]*u[q])
			}
		}
	}
	if flat = math.Sqrt(xx.At(2, 2)) < 1e-6*math.Sqrt(xx.At(0, 0)); flat {
		xx.SetSym(2, 2, 1)
		xx.SetSym(0, 2, 0)
		xx.SetSym(1, 2, 0)
		for q := range 3 {
			ux.Set(2, q, 0)
		}
	}
	var t mat.Dense
	if t.Solve(xx, ux) != nil {
		return a, move, flat
	}
	for p := range 3 {
		for q := range 3 {
			a[p][q] = t.At(q, p)
		}
	}
	for p := range 3 {
		b[p] = move[p] - vec3.Dot(a[p], mid)
	}
	return a, b, flat
}

// nodeMove is the movement of a node of the plate.
func (m *movement) nodeMove(i int) (u [3]float64) {
	for k := range u {
		u[k] = m.now.Result.U[6*i+k] - m.made.Result.U[6*i+k]
	}
	return u
}

// shares are the shares of the plate's plan that belong to its nodes.
func shares(b *design.Built) []float64 {
	out, all := make([]float64, b.PlateN), 0.0
	for _, t := range b.Mesh.Tris {
		p, q, s := b.Mesh.Points[t[0]], b.Mesh.Points[t[1]], b.Mesh.Points[t[2]]
		area := (q[0]-p[0])*(s[1]-p[1]) - (q[1]-p[1])*(s[0]-p[0])
		for _, n := range t {
			out[n] += area / 3
		}
		all += area
	}
	for i := range out {
		out[i] /= all
	}
	return out
}
