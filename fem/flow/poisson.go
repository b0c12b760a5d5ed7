package flow

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

// newLaplacian sums ∫ grad v_i·grad v_j over the plan. The neighbours of a row
// stand in the order of the triangles about its node.
func newLaplacian(p *plan) *laplacian {
	n := len(p.node)
	l := &laplacian{diag: make([]float64, n), start: make([]int32, n+1)}
	for i := range n {
		for _, c := range p.fan[i] {
			own := p.grad[c.tri][c.k]
			l.diag[i] += p.area[c.tri] * (own[0]*own[0] + own[1]*own[1])
			for _, k := range [2]int{(c.k + 1) % 3, (c.k + 2) % 3} {
				g := p.grad[c.tri][k]
				l.add(l.start[i], p.tris[c.tri][k], p.area[c.tri]*(own[0]*g[0]+own[1]*g[1]))
			}
		}
		l.start[i+1] = int32(len(l.cols))
	}
	return l
}

// add adds v to column c of the row that begins at start and ends the list.
func (l *laplacian) add(start, c int32, v float64) {
	for k := start; int(k) < len(l.cols); k++ {
		if l.cols[k] == c {
			l.vals[k] += v
			return
		}
	}
	l.cols, l.vals = append(l.cols, c), append(l.vals, v)
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
func (p *plan) poisson(b []float64, tol float64) ([]float64, error) {
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
