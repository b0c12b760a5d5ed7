package friction

import (
	"math"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/gonum"
	lapack "gonum.org/v1/gonum/lapack/gonum"
)

// unknown is one force of the linear system: by how much each of a pad's three rows is
// loaded under a unit of it, and which combination of rows it holds.
type unknown struct {
	row   int        // first row of its pad, or the guide's row
	wide  int        // 3, or 1 for a guide
	force [3]float64 // rows loaded
	held  [3]float64 // rows held
	soft  float64    // added to the diagonal, mm/N
	want  float64    // where the held combination shall be, mm, the load's own movement taken off
}

// unknowns lists the forces of an increment under the present states.
func (s *increment) unknowns() []unknown {
	p := s.p
	var list []unknown
	for i, st := range s.states {
		j := 3 * i
		side := [2]float64{s.anchor[i][0] - p.B[j+1]*s.load, s.anchor[i][1] - p.B[j+2]*s.load}
		gap := -p.Gap[i] - p.B[j]*s.load
		switch st.kind {
		case Sticks:
			list = append(list,
				unknown{row: j, wide: 3, force: [3]float64{1}, held: [3]float64{1}, want: gap},
				unknown{row: j, wide: 3, force: [3]float64{0, 1}, held: [3]float64{0, 1}, want: side[0]},
				unknown{row: j, wide: 3, force: [3]float64{0, 0, 1}, held: [3]float64{0, 0, 1}, want: side[1]})
		case Slides:
			mu := s.mu
			list = append(list, unknown{row: j, wide: 3, force: [3]float64{1, mu * st.n[0], mu * st.n[1]}, held: [3]float64{1}, want: gap})
			if st.soft >= 0 {
				e := [3]float64{0, -st.n[1], st.n[0]}
				list = append(list, unknown{row: j, wide: 3, force: e, held: e, soft: st.soft, want: e[1]*side[0] + e[2]*side[1]})
			}
		}
	}
	for g := range p.guides() {
		j := 3*p.pads() + g
		u := unknown{row: j, wide: 1, force: [3]float64{1}, held: [3]float64{1}, want: s.hold[g] - p.B[j]*s.load}
		if !s.guided {
			u.soft = s.lazy
		}
		list = append(list, u)
	}
	return list
}

// solve finds all forces and the rigid motion under the present states; false if the
// system is singular.
func (s *increment) solve() bool {
	p, list := s.p, s.unknowns()
	n := len(list) + 6
	m, rhs := make([]float64, n*n), make([]float64, n)
	s.fill(m, n, list)
	// The rigid motion is scaled to the compliance, so that pivots compare.
	scale := s.motionScale()
	for k, u := range list {
		rhs[k] = u.want
		for c := range 6 {
			held, force := 0.0, 0.0
			for a := range u.wide {
				held += u.held[a] * p.R[u.row+a][c]
				force += u.force[a] * p.R[u.row+a][c]
			}
			m[k*n+n-6+c] = held * scale[c]
			m[(n-6+c)*n+k] = force * scale[c]
		}
	}
	for c := range 6 {
		rhs[n-6+c] = -p.F[c] * s.load * scale[c]
	}
	var la lapack.Implementation
	piv := make([]int, n)
	s.solves++
	if !la.Dgetrf(n, n, m, n, piv) {
		return false
	}
	la.Dgetrs(blas.NoTrans, n, 1, m, n, piv, rhs, 1)
	clear(s.force)
	for k, u := range list {
		if math.IsNaN(rhs[k]) || math.IsInf(rhs[k], 0) {
			return false
		}
		for a := range u.wide {
			s.force[u.row+a] += u.force[a] * rhs[k]
		}
	}
	for c := range 6 {
		s.rho[c] = rhs[n-6+c] * scale[c]
	}
	s.move()
	return true
}

// fill sets up the compliance between the unknowns.
func (s *increment) fill(m []float64, n int, list []unknown) {
	p := s.p
	rows := len(p.B)
	line := make([]float64, rows)
	var bl gonum.Implementation
	for k, u := range list {
		first := p.A[u.row*rows : (u.row+1)*rows]
		row := first
		if u.held != ([3]float64{1}) {
			clear(line)
			for a := range u.wide {
				if u.held[a] != 0 {
					bl.Daxpy(rows, u.held[a], p.A[(u.row+a)*rows:(u.row+a+1)*rows], 1, line, 1)
				}
			}
			row = line
		}
		out := m[k*n : k*n+len(list)]
		for q, v := range list {
			if v.wide == 1 {
				out[q] = row[v.row]
				continue
			}
			x := row[v.row : v.row+3]
			out[q] = v.force[0]*x[0] + v.force[1]*x[1] + v.force[2]*x[2]
		}
		out[k] += u.soft
	}
}

// motionScale makes the rigid motions as large as the compliances.
func (s *increment) motionScale() (scale [6]float64) {
	for c := range scale {
		most := 0.0
		for _, r := range s.p.R {
			most = max(most, math.Abs(r[c]))
		}
		scale[c] = s.mean / max(most, 1e-300)
	}
	return scale
}

// move finds the movement of every row under the present forces.
func (s *increment) move() {
	var bl gonum.Implementation
	p := s.p
	n := len(p.B)
	for i := range s.at {
		s.at[i] = p.B[i] * s.load
		for c := range 6 {
			s.at[i] += p.R[i][c] * s.rho[c]
		}
	}
	for i, f := range s.force { // A is symmetric
		if f != 0 {
			bl.Daxpy(n, f, p.A[i*n:], 1, s.at, 1)
		}
	}
}
