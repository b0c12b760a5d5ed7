package friction

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/gonum"
	lapack "gonum.org/v1/gonum/lapack/gonum"

	"archload/fem/sparse"
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

// does says what each pad does, as far as the unknowns depend on it.
func (s *increment) does() []uint8 {
	out := make([]uint8, len(s.states))
	for i, st := range s.states {
		out[i] = uint8(st.kind)
		if st.kind == Slides && st.soft < 0 {
			out[i] = 1 << 7
		}
	}
	return out
}

// solve replaces the right side by the solution. One side is solved for by rows.
func (f *factor) solve(rhs []float64) {
	if f.rows == nil {
		f.lu.Solve(rhs)
		return
	}
	var la lapack.Implementation
	var bl gonum.Implementation
	la.Dlaswp(1, rhs, 1, 0, f.n-1, f.piv, 1)
	bl.Dtrsv(blas.Lower, blas.NoTrans, blas.Unit, f.n, f.rows, f.n, rhs, 1)
	bl.Dtrsv(blas.Upper, blas.NoTrans, blas.NonUnit, f.n, f.rows, f.n, rhs, 1)
}

// serves says whether a factor is that of the present guess but for directions.
func (f *factor) serves(s *increment) bool {
	return f != nil && f.first == &s.p.A[0] && f.mu == s.mu && f.guided == s.guided && slices.Equal(f.does, s.does())
}

// solve finds all forces and the rigid motion under the present states; with an old factor nearly, as a change of the
// present ones. It is false if the system is singular.
func (s *increment) solve(old bool) bool {
	list := s.unknowns()
	if !old { // forgets forces out of all measure, which a guess that hardly holds the body may have left
		if !s.factorize(list) {
			return false
		}
		clear(s.force)
		s.rho = [6]float64{}
	}
	f := s.p.factor
	s.obey()
	s.move()
	rhs := s.rest(list)
	f.solve(rhs)
	for k, u := range list {
		if math.IsNaN(rhs[k]) || math.IsInf(rhs[k], 0) {
			return false
		}
		for a := range u.wide {
			s.force[u.row+a] += u.force[a] * rhs[k]
		}
	}
	for c, scale := range s.motionScale() {
		s.rho[c] += rhs[len(list)+c] * scale
	}
	s.move()
	return true
}

// obey brings the forces to where the unknowns can change them: none on open pads, the drag of those that slide
// along its direction.
func (s *increment) obey() {
	for i, st := range s.states {
		f := s.force[3*i : 3*i+3]
		switch st.kind {
		case Open:
			clear(f)
		case Slides:
			across := 0.0
			if st.soft >= 0 {
				across = st.n[0]*f[2] - st.n[1]*f[1]
			}
			f[1], f[2] = s.mu*f[0]*st.n[0]-across*st.n[1], s.mu*f[0]*st.n[1]+across*st.n[0]
		}
	}
}

// rest is what the present forces and movements leave of the equations, the six of balance last.
func (s *increment) rest(list []unknown) []float64 {
	p := s.p
	rhs := make([]float64, len(list)+6)
	for k, u := range list {
		rhs[k] = u.want
		for a := range u.wide {
			j := u.row + a
			rhs[k] += u.held[a] * (p.B[j]*s.load - s.at[j] - u.soft*s.force[j])
		}
	}
	for c, scale := range s.motionScale() {
		sum := p.F[c] * s.load
		for j, f := range s.force {
			sum += f * p.R[j][c]
		}
		rhs[len(list)+c] = -sum * scale
	}
	return rhs
}

// factorize sets up and factorises the system; false if it is singular. Pivots are taken as they come: the compliance
// of pads that bear holds together by their bedding. Where it does not, rows are exchanged.
func (s *increment) factorize(list []unknown) bool {
	p, n := s.p, len(list)+6
	f := &factor{first: &p.A[0], mu: s.mu, guided: s.guided, does: s.does(), n: n, lu: &sparse.Square{}}
	s.solves++
	f.lu.Reset(n)
	s.eachRow(list, f.lu.SetRow)
	if !f.lu.Factorize() && !f.exchange(s, list) {
		return false
	}
	p.factor = f
	return true
}

// exchange factorises the system with rows exchanged; false if it is singular.
func (f *factor) exchange(s *increment, list []unknown) bool {
	f.rows, f.piv = make([]float64, f.n*f.n), make([]int, f.n)
	s.eachRow(list, func(k int, row []float64) { copy(f.rows[k*f.n:], row) })
	var la lapack.Implementation
	return la.Dgetrf(f.n, f.n, f.rows, f.n, f.piv)
}

// eachRow gives the rows of the system in turn: the unknowns' and those of the six balances. The rigid motion is scaled to
// the compliance, so that pivots compare.
func (s *increment) eachRow(list []unknown, give func(k int, row []float64)) {
	p := s.p
	scale := s.motionScale()
	line, row := make([]float64, len(p.B)), make([]float64, len(list)+6)
	for k, u := range list {
		for c, v := range s.heldRow(&u, line) {
			row[len(list)+c] = v * scale[c]
		}
		for q := range list {
			row[q] = list[q].under(line)
		}
		row[k] += u.soft
		give(k, row)
	}
	clear(row[len(list):])
	for c := range 6 {
		for q, v := range list {
			row[q] = 0
			for a := range v.wide {
				row[q] += v.force[a] * p.R[v.row+a][c] * scale[c]
			}
		}
		give(len(list)+c, row)
	}
}

// heldRow sets line to the compliance between what an unknown holds and every row, and returns how the six rigid motions move it.
func (s *increment) heldRow(u *unknown, line []float64) (motion [6]float64) {
	p, rows := s.p, len(line)
	var bl gonum.Implementation
	clear(line)
	for a := range u.wide {
		if u.held[a] == 0 {
			continue
		}
		j := u.row + a
		bl.Daxpy(rows, u.held[a], p.A[j*rows:(j+1)*rows], 1, line, 1)
		for c, r := range p.R[j] {
			motion[c] += u.held[a] * r
		}
	}
	return motion
}

// under is what a line of compliances gives under a unit of an unknown.
func (u *unknown) under(line []float64) float64 {
	if u.wide == 1 {
		return line[u.row]
	}
	x := line[u.row : u.row+3]
	return u.force[0]*x[0] + u.force[1]*x[1] + u.force[2]*x[2]
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
