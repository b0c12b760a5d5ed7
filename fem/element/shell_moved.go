package element

import "archload/fem/vec3"

// Measures of a triangle at movements of any size, from which its strains follow. Each is a sum
// of products of vectors that go with the corners, so that a rigid motion of any size leaves all
// of them at zero, and to first order they are the linear forms of the strain rows.
const (
	byStretch   = 0  // 3: Green's strain xx, yy, 2 xy of the corners' plane
	byTurn      = 3  // 9: of each edge, the turn of its far corner against its near one in the facet's axes
	byGap       = 12 // 3: shear gaps of edges 1-2, 1-3, 2-3, mm
	byDrill     = 15 // 1: mean drilling rotation against the facet
	numMeasures = 16
)

// gapEdges are the corners of the shear gaps.
var gapEdges = [3][2]int{{0, 1}, {0, 2}, {1, 2}}

// movedShell is a triangle at movements u.
type movedShell struct {
	s     *Shell
	turns [3]attitude
	axes  [3][3][3]float64 // of each corner: the facet's axes, turned with it
	shift [3][3][3]float64 // their change
	grad  [2][3]float64    // u,1 and u,2 in global axes
	along [2][3]float64    // x,1 and x,2
	m     [numMeasures]float64
	e     [numRows]float64              // strains beyond those of ease
	c     [numRows][numMeasures]float64 // their derivatives by the measures
	bow   [3][3]float64                 // of edge, then strain xx, yy, xy: second derivative by the edge's change of slope
}

// at moves the triangle.
func (s *Shell) at(u *[18]float64) *movedShell {
	f := &s.frame
	w := &movedShell{s: s}
	for i := range 3 {
		w.turns[i] = newAttitude([3]float64(u[6*i+3 : 6*i+6]))
		w.shift[i] = w.turns[i].shifts(f.axes)
		for k := range 3 {
			w.axes[i][k] = vec3.Add(f.axes[k], w.shift[i][k])
		}
		for a := range 2 {
			w.grad[a] = vec3.Add(w.grad[a], vec3.Scale([3]float64(u[6*i:6*i+3]), f.grad[i][a]))
		}
	}
	for a := range 2 {
		w.along[a] = vec3.Add(f.axes[a], w.grad[a])
	}
	w.measure(u)
	w.bow = f.bowShares()
	f.byMeasures(&w.c, &w.bow)
	w.strain()
	for r, v := range s.eased {
		w.e[r] -= v
	}
	return w
}

// measure fills the measures, free of the cancellation of what does not change.
func (w *movedShell) measure(u *[18]float64) {
	e, h := &w.s.frame.axes, &w.grad
	w.m[0] = vec3.Dot(h[0], e[0]) + vec3.Dot(h[0], h[0])/2
	w.m[1] = vec3.Dot(h[1], e[1]) + vec3.Dot(h[1], h[1])/2
	w.m[2] = vec3.Dot(h[0], e[1]) + vec3.Dot(h[1], e[0]) + vec3.Dot(h[0], h[1])
	for k := range w.s.frame.edges {
		ed := &w.s.frame.edges[k]
		di, dj := &w.shift[ed.i], &w.shift[ed.j]
		for a := range 3 {
			p, q := (a+1)%3, (a+2)%3
			w.m[byTurn+3*k+a] = (vec3.Dot(e[q], vec3.Sub(dj[p], di[p])) - vec3.Dot(e[p], vec3.Sub(dj[q], di[q])) +
				vec3.Dot(di[q], dj[p]) - vec3.Dot(di[p], dj[q])) / 2
		}
	}
	for k, g := range gapEdges {
		i, j := g[0], g[1]
		du := vec3.Sub([3]float64(u[6*j:6*j+3]), [3]float64(u[6*i:6*i+3]))
		d := vec3.Add(w.chord(i, j), du)
		w.m[byGap+k] = vec3.Dot(du, e[2]) + vec3.Dot(d, vec3.Add(w.shift[i][2], w.shift[j][2]))/2
	}
	w.m[byDrill] = (vec3.Dot(e[0], h[1]) - vec3.Dot(e[1], h[0])) / 2
	for i := range w.shift {
		w.m[byDrill] += (vec3.Dot(w.shift[i][0], w.along[1]) - vec3.Dot(w.shift[i][1], w.along[0])) / 6
	}
}

// chord is x_j - x_i before movement.
func (w *movedShell) chord(i, j int) [3]float64 {
	return vec3.Sub(w.s.frame.corn[j], w.s.frame.corn[i])
}

// strain fills strains and their derivatives. To the strain that the true surface's bow gives,
// linear in the change s of the slope along an edge, comes its square: along the edge the mean
// of half the slope's square against the chord grows by ((bow + s)² - bow²)/24.
func (w *movedShell) strain() {
	for r := range w.e {
		sum := 0.0
		for k, c := range &w.c[r] {
			sum += c * w.m[k]
		}
		w.e[r] = sum
	}
	for e := range w.bow {
		at, slope := byTurn+3*e, w.s.frame.edges[e].slope()
		s := vec3.Dot(slope, [3]float64(w.m[at:at+3]))
		for k, v := range w.bow[e] {
			w.e[rowStretch+k] += v * s * s / 2
			for a := range 3 {
				w.c[rowStretch+k][at+a] += v * s * slope[a]
			}
		}
	}
}

// forces are the stresses conjugate to the strains, per area.
func (s *Shell) forces(e *[numRows]float64) (f [numRows]float64) {
	for i := range s.stretch {
		for j, c := range s.stretch[i] {
			f[rowStretch+i] += c * e[rowStretch+j]
		}
	}
	for i := range s.bend {
		for j := range s.bend {
			f[rowBend+i] += s.bend[i][j] * e[rowBend+j]
			f[rowDrill+i] += s.drill[i][j] * e[rowDrill+j]
		}
	}
	f[rowTwist] = s.twist * e[rowTwist]
	return f
}

// byMeasure are the forces conjugate to the measures, times the area.
func (w *movedShell) byMeasure(f *[numRows]float64) (t [numMeasures]float64) {
	for r, v := range f {
		v *= w.s.frame.area
		for k, c := range &w.c[r] {
			t[k] += v * c
		}
	}
	return t
}

// vary adds t times the measures to a variation.
func (w *movedShell) vary(v *variation, t *[numMeasures]float64) {
	g := &w.s.frame.grad
	wide := [2][]float64{{g[0][0], g[1][0], g[2][0]}, {g[0][1], g[1][1], g[2][1]}}
	for a := range 2 {
		if t[a] != 0 {
			v.xx(t[a]/2, wide[a], wide[a], w.along[a], w.along[a])
		}
	}
	if t[2] != 0 {
		v.xx(t[2], wide[0], wide[1], w.along[0], w.along[1])
	}
	for k := range w.s.frame.edges {
		ed := &w.s.frame.edges[k]
		if tau := [3]float64(t[byTurn+3*k : byTurn+3*k+3]); tau != ([3]float64{}) {
			v.relative(tau, ed.i, &w.axes[ed.i], ed.j, &w.axes[ed.j])
		}
	}
	for k, ends := range gapEdges {
		if c := t[byGap+k] / 2; c != 0 {
			var sign [3]float64
			sign[ends[0]], sign[ends[1]] = -1, 1
			d := w.gapChord(ends)
			v.xv(c, sign[:], d, ends[0], w.axes[ends[0]][2])
			v.xv(c, sign[:], d, ends[1], w.axes[ends[1]][2])
		}
	}
	if c := t[byDrill] / 6; c != 0 {
		for i := range 3 {
			v.xv(c, wide[1], w.along[1], i, w.axes[i][0])
			v.xv(-c, wide[0], w.along[0], i, w.axes[i][1])
		}
	}
}

// gapChord is x_j - x_i after movement: exact, as x,1 and x,2 span the moved corners' plane.
func (w *movedShell) gapChord(ends [2]int) (d [3]float64) {
	p, q := w.s.frame.xy[ends[0]], w.s.frame.xy[ends[1]]
	for a := range 2 {
		d = vec3.Add(d, vec3.Scale(w.along[a], q[a]-p[a]))
	}
	return d
}

// TangentTo sets k to the second derivative of the strain energy at u, row-major, as PullTo
// has it: the stiffness against further movements, with that of the strains and that of the
// stresses. It is symmetric to the last bit.
func (s *Shell) TangentTo(k *[324]float64, u *[18]float64) {
	w := s.at(u)
	force := s.forces(&w.e)
	v := variation{width: 18, second: true}
	w.stress(&v, &force)
	rows := w.rows()
	for r := range rows {
		var t [18]float64
		for q := range rows {
			if c := s.law(r, q); c != 0 {
				axpy(&t, s.frame.area*c, &rows[q])
			}
		}
		for i, b := range rows[r] {
			if b != 0 {
				for j := range t {
					v.k[18*i+j] += b * t[j]
				}
			}
		}
	}
	v.byVectors(w.turns[:])
	v.stiffnessTo(k[:])
}

// law is the stress of row r per strain of row q.
func (s *Shell) law(r, q int) float64 {
	switch {
	case r < rowBend && q < rowBend:
		return s.stretch[r][q]
	case r < rowBend || q < rowBend:
		return 0
	case r < rowDrill && q < rowDrill:
		return s.bend[r-rowBend][q-rowBend]
	case r < rowDrill || q < rowDrill:
		return 0
	case r < rowTwist && q < rowTwist:
		return s.drill[r-rowDrill][q-rowDrill]
	case r == rowTwist && q == rowTwist:
		return s.twist
	}
	return 0
}

// stress adds forces times the second derivatives of their strains, and their work.
func (w *movedShell) stress(v *variation, force *[numRows]float64) {
	t := w.byMeasure(force)
	w.vary(v, &t)
	for e := range w.bow {
		c := w.s.frame.area * vec3.Dot(w.bow[e], [3]float64(force[rowStretch:rowStretch+3]))
		row := w.row(byTurn+3*e, w.s.frame.edges[e].slope())
		v.addRow(c, &row)
	}
}

// row is the derivative by movements and spins of c · three measures.
func (w *movedShell) row(at int, c [3]float64) [18]float64 {
	var t [numMeasures]float64
	copy(t[at:], c[:])
	v := variation{width: 18}
	w.vary(&v, &t)
	return v.g
}

// rows are the derivatives of the strains by movements and spins.
func (w *movedShell) rows() (rows [numRows][18]float64) {
	for k := range numMeasures {
		var t [numMeasures]float64
		t[k] = 1
		v := variation{width: 18}
		w.vary(&v, &t)
		for r := range rows {
			if c := w.c[r][k]; c != 0 {
				axpy(&rows[r], c, &v.g)
			}
		}
	}
	return rows
}

// StressedTo sets k to what the stresses of small movements u lend to the stiffness of the
// unmoved triangle, row-major: the part of the first change of TangentTo that buckling theory
// keeps.
func (s *Shell) StressedTo(k *[324]float64, u *[18]float64) {
	var strain [numRows]float64
	for r := range strain {
		strain[r] = form(&s.rows[r], u) - s.eased[r]
	}
	force := s.forces(&strain)
	v := variation{width: 18, second: true}
	s.at(new([18]float64)).stress(&v, &force)
	v.stiffnessTo(k[:])
}

// MovedResultants returns the stress resultants under movements u of any size, in the facet's
// frame, which goes with the triangle.
func (s *Shell) MovedResultants(u *[18]float64) Resultants {
	w := s.at(u)
	f := s.forces(&w.e)
	return Resultants{N: [3]float64(f[rowStretch:]), Q: [2]float64(f[rowStretch+3:]), M: [3]float64(f[rowBend:])}
}

// MovedFrame returns where the facet's axes e1 and e2 go, stretched as they are, and the unit
// normal of the moved facet, in global x, y, z (rows).
func (s *Shell) MovedFrame(u *[18]float64) [3][3]float64 {
	w := s.at(u)
	n := vec3.Cross(w.along[0], w.along[1])
	return [3][3]float64{w.along[0], w.along[1], vec3.Scale(n, 1/vec3.Norm(n))}
}

// MovedEnergy is Energy under movements u of any size.
func (s *Shell) MovedEnergy(u *[18]float64) (membrane, bending, shear float64) {
	w := s.at(u)
	f := s.forces(&w.e)
	for r, e := range w.e {
		half := s.frame.area / 2 * e * f[r]
		switch {
		case r < rowStretch+3 || r >= rowDrill && r < rowTwist:
			membrane += half
		case r < rowBend:
			shear += half
		default:
			bending += half
		}
	}
	q := f[rowStretch+3 : rowBend]
	for i := range q {
		bubble := s.frame.area / 2 * q[i] * (s.bubble[i][0]*q[0] + s.bubble[i][1]*q[1])
		bending, shear = bending+bubble, shear-bubble
	}
	return membrane, bending, shear
}
