package element

// StiffnessTo sets k to the 18x18 stiffness, row-major, global degrees of
// freedom node by node (N/mm, N, N mm). It is symmetric to the last bit.
//
// With b the rows and D the laws, over all rows, k = Σ b_pᵀ (Σ A D_pq b_q): the sums in
// brackets come first, freedom by freedom, and then one product of two short rows for
// every pair of freedoms.
func (s *Shell) StiffnessTo(k *[324]float64) {
	var b, t [18][numRows]float64
	s.transposeTo(&b)
	s.forcesTo(&t)
	for i := range b {
		p := &b[i]
		for j := i; j < 18; j++ {
			q := &t[j]
			v := p[0]*q[0] + p[1]*q[1] + p[2]*q[2] + p[3]*q[3] + p[4]*q[4] + p[5]*q[5] +
				p[6]*q[6] + p[7]*q[7] + p[8]*q[8] + p[9]*q[9] + p[10]*q[10] + p[11]*q[11]
			k[18*i+j], k[18*j+i] = v, v
		}
	}
}

// sumOrder is the order in which the rows are summed.
var sumOrder = [numRows]int{rowStretch, rowStretch + 1, rowStretch + 2, rowStretch + 3, rowStretch + 4,
	rowBend, rowDrill, rowBend + 1, rowDrill + 1, rowBend + 2, rowDrill + 2, rowTwist}

// transposeTo writes the rows freedom by freedom.
func (s *Shell) transposeTo(b *[18][numRows]float64) {
	for p, r := range sumOrder {
		row := &s.rows[r]
		for i := range b {
			b[i][p] = row[i]
		}
	}
}

// forcesTo writes A times the laws times the rows, freedom by freedom.
func (s *Shell) forcesTo(t *[18][numRows]float64) {
	a := s.frame.area
	var m [5][5]float64
	for p := range m {
		for q := range m {
			m[p][q] = s.stretch[p][q] * a
		}
	}
	var d, e [3][3]float64
	for p := range d {
		for q := range d {
			d[p][q], e[p][q] = s.bend[p][q]*a, s.drill[p][q]*a
		}
	}
	twist, r := s.twist*a, &s.rows
	for j := range t {
		q := &t[j]
		for p := range m {
			c := &m[p]
			q[p] = c[0]*r[0][j] + c[1]*r[1][j] + c[2]*r[2][j] + c[3]*r[3][j] + c[4]*r[4][j]
		}
		for p := range d {
			q[5+2*p] = d[p][0]*r[rowBend][j] + d[p][1]*r[rowBend+1][j] + d[p][2]*r[rowBend+2][j]
			q[6+2*p] = e[p][0]*r[rowDrill][j] + e[p][1]*r[rowDrill+1][j] + e[p][2]*r[rowDrill+2][j]
		}
		q[11] = twist * r[rowTwist][j]
	}
}
