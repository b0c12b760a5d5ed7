package element

import "archload/fem/vec3"

// turnedPlace is a place of RowsAt at movements of any size. Its arm off the mid-surface turns with each corner,
// and so does the normal N along which the linked interpolation bows:
//
//	d = Σ lᵢ (uᵢ + zeta H/2 (Nᵢ - n)) + s Σ lᵢ Nᵢ,   s = ½ Σ over edges lᵢ lⱼ (xⱼ - xᵢ) · (Nⱼ - Nᵢ),
//
// with N = R n and x as they are: a rigid motion of any size carries the place along.
type turnedPlace struct {
	s       *Shell
	l       [3]float64
	arm     float64 // zeta H/2
	normals [3]Arm
	chords  [3][3]float64 // of the edges, moved
	bow     float64       // s, mm
	mean    [3]float64    // Σ lᵢ Nᵢ
}

func (s *Shell) turnedPlace(l [3]float64, zeta float64, u *[18]float64) *turnedPlace {
	p := &turnedPlace{s: s, l: l, arm: zeta * s.frame.h / 2}
	n := s.frame.axes[2]
	for i := range 3 {
		p.normals[i] = NewArm([3]float64(u[6*i+3:6*i+6]), n)
		p.mean = vec3.Add(p.mean, vec3.Scale(p.normals[i].is, l[i]))
	}
	for k := range s.frame.edges {
		i, j := s.frame.edges[k].i, s.frame.edges[k].j
		p.chords[k] = vec3.Add(vec3.Sub(s.frame.corn[j], s.frame.corn[i]), vec3.Sub([3]float64(u[6*j:6*j+3]), [3]float64(u[6*i:6*i+3])))
		p.bow += l[i] * l[j] / 2 * vec3.Dot(p.chords[k], p.against(k))
	}
	return p
}

// against is the turn of an edge's far normal against its near one, N_j - N_i.
func (p *turnedPlace) against(edge int) [3]float64 {
	e := &p.s.frame.edges[edge]
	return vec3.Sub(p.normals[e.j].Shift(), p.normals[e.i].Shift())
}

// TurnedAt returns the displacement of the place of RowsAt at movements u of any size, mm.
func (s *Shell) TurnedAt(l [3]float64, zeta float64, u *[18]float64) [3]float64 {
	p := s.turnedPlace(l, zeta, u)
	d := vec3.Scale(p.mean, p.bow)
	for i, li := range l {
		d = vec3.Add(d, vec3.Scale(vec3.Add([3]float64(u[6*i:6*i+3]), vec3.Scale(p.normals[i].Shift(), p.arm)), li))
	}
	return d
}

// TurnedRows are the derivatives of TurnedAt by the freedoms, a row for each component.
func (s *Shell) TurnedRows(l [3]float64, zeta float64, u *[18]float64) (rows [3][18]float64) {
	for k := range rows {
		var e [3]float64
		e[k] = 1
		rows[k] = s.TurnedForce(l, zeta, e, u)
	}
	return rows
}

// TurnedForce returns what a force at the place of TurnedAt, N, is to the freedoms: the derivative of its work.
func (s *Shell) TurnedForce(l [3]float64, zeta float64, force [3]float64, u *[18]float64) (f [18]float64) {
	p := s.turnedPlace(l, zeta, u)
	var onNormal [3][3]float64
	for i, li := range l {
		onNormal[i] = vec3.Scale(force, li*(p.arm+p.bow))
		for a, v := range force {
			f[6*i+a] = li * v
		}
	}
	out := vec3.Dot(force, p.mean)
	for k := range s.frame.edges {
		i, j := s.frame.edges[k].i, s.frame.edges[k].j
		c := l[i] * l[j] / 2 * out
		turn, chord := p.against(k), vec3.Scale(p.chords[k], c)
		for a := range 3 {
			f[6*j+a] += c * turn[a]
			f[6*i+a] -= c * turn[a]
		}
		onNormal[j], onNormal[i] = vec3.Add(onNormal[j], chord), vec3.Sub(onNormal[i], chord)
	}
	for i := range onNormal {
		m := p.normals[i].Moment(onNormal[i])
		copy(f[6*i+3:], m[:])
	}
	return f
}

// addMoveWithNormal adds f times the rows of a node's normal to a second derivative, where the movement of node a
// meets the turn of node b.
func addMoveWithNormal(k *[324]float64, a, b int, f float64, rows *[3][3]float64) {
	for c := range 3 {
		for d := range 3 {
			v := f * rows[c][d]
			k[18*(6*a+c)+6*b+3+d] += v
			k[18*(6*b+3+d)+6*a+c] += v
		}
	}
}

// TurnedBend returns the second derivative of a force's work at the place of TurnedAt, row-major, symmetric.
func (s *Shell) TurnedBend(l [3]float64, zeta float64, force [3]float64, u *[18]float64) (k [324]float64) {
	p := s.turnedPlace(l, zeta, u)
	out := vec3.Dot(force, p.mean)
	var onNormal [3][3]float64
	var bows, outs [18]float64 // derivatives of s and of force · mean
	for i, li := range l {
		onNormal[i] = vec3.Scale(force, li*(p.arm+p.bow))
		m := p.normals[i].Moment(vec3.Scale(force, li))
		copy(outs[6*i+3:], m[:])
	}
	for e := range s.frame.edges {
		ends := [2]int{s.frame.edges[e].i, s.frame.edges[e].j}
		w := l[ends[0]] * l[ends[1]] / 2
		turn := vec3.Scale(p.against(e), w)
		for a, sa := range [2]float64{-1, 1} {
			chord := vec3.Scale(p.chords[e], sa*w)
			onNormal[ends[a]] = vec3.Add(onNormal[ends[a]], vec3.Scale(chord, out))
			m := p.normals[ends[a]].Moment(chord)
			for c := range 3 {
				bows[6*ends[a]+c] += sa * turn[c]
				bows[6*ends[a]+3+c] += m[c]
			}
			for b, sb := range [2]float64{-1, 1} {
				rows := p.normals[ends[b]].Rows()
				addMoveWithNormal(&k, ends[a], ends[b], sa*sb*w*out, &rows)
			}
		}
	}
	for i := range 18 {
		for j := range 18 {
			k[18*i+j] += bows[i]*outs[j] + outs[i]*bows[j]
		}
	}
	for i := range onNormal {
		for a, row := range p.normals[i].Bend(onNormal[i]) {
			for b, v := range row {
				k[18*(6*i+3+a)+6*i+3+b] += v
			}
		}
	}
	return k
}
