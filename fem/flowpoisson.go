package fem

import (
	"fmt"
	"math"
)

// laplacian is the stiffness of linear triangles for Poisson's problem, by
// rows: the diagonal apart from the rest.
type laplacian struct {
	diag  []float64
	start []int32 // of each row in cols; one more than rows
	cols  []int32
	vals  []float64
}

// newLaplacian sums ∫ grad v_i·grad v_j over the plan.
func newLaplacian(p *flowPlan) *laplacian {
	n := len(p.node)
	l := &laplacian{diag: make([]float64, n), start: make([]int32, n+1)}
	row := make(map[int32]float64, 12)
	var order []int32
	for i := range n {
		clear(row)
		order = order[:0]
		for _, c := range p.fan[i] {
			for k, m := range p.tris[c.tri] {
				g, h := p.grad[c.tri][c.k], p.grad[c.tri][k]
				v := p.area[c.tri] * (g[0]*h[0] + g[1]*h[1])
				if int(m) == i {
					l.diag[i] += v
					continue
				}
				if _, seen := row[m]; !seen {
					order = append(order, m)
				}
				row[m] += v
			}
		}
		for _, m := range order {
			l.cols, l.vals = append(l.cols, m), append(l.vals, row[m])
		}
		l.start[i+1] = int32(len(l.cols))
	}
	return l
}

func (l *laplacian) mulTo(y, x []float64) {
	for i, d := range l.diag {
		v := d * x[i]
		for k := l.start[i]; k < l.start[i+1]; k++ {
			v += l.vals[k] * x[l.cols[k]]
		}
		y[i] = v
	}
}

// poisson returns psi with -∫ grad(psi)·grad v = b for the hat function v of
// every node, until no node is off by more than tol (N). b sums to zero but
// for rounding, which is taken off; psi is free by a constant. Conjugate
// gradients with the diagonal as preconditioner (M. R. Hestenes, E. Stiefel,
// Journal of Research of the NBS 49, 1952, 409-436): some hundred steps on a
// plate, each a pass over its edges.
func (p *flowPlan) poisson(b []float64, tol float64) ([]float64, error) {
	l := newLaplacian(p)
	n := len(b)
	r, d, q, x := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	mean := 0.0
	for _, v := range b {
		mean += v / float64(n)
	}
	for i := range r {
		r[i] = mean - b[i]
	}
	old := math.Inf(1)
	most := 200 + 20*int(math.Sqrt(float64(n)))
	for range most {
		rz, worst := l.measure(r)
		if worst <= tol {
			return x, nil
		}
		l.follow(d, r, rz/old)
		l.mulTo(q, d)
		dq := 0.0
		for i, v := range d {
			dq += v * q[i]
		}
		a := rz / dq
		for i, v := range d {
			x[i] += a * v
			r[i] -= a * q[i]
		}
		old = rz
	}
	return nil, fmt.Errorf("load flow: the balance of %d nodes does not settle in %d steps", n, most)
}

// measure returns r·(r/diag) and the greatest entry of r.
func (l *laplacian) measure(r []float64) (rz, worst float64) {
	for i, v := range r {
		rz += v * v / l.diag[i]
		if v > worst {
			worst = v
		} else if -v > worst {
			worst = -v
		}
	}
	return rz, worst
}

// follow sets the next direction, r/diag + beta d.
func (l *laplacian) follow(d, r []float64, beta float64) {
	for i, v := range r {
		d[i] = v/l.diag[i] + beta*d[i]
	}
}
