package element

import "archload/fem/avx"

// fast says whether the kernels in assembly are there.
var fast = avx.Has()

// StiffnessTo sets k to the 18x18 stiffness, row-major, global degrees of
// freedom node by node (N/mm, N, N mm). It is symmetric to the last bit.
//
// With b the rows and D the laws, over all rows, k = Σ b_pᵀ (Σ A D_pq b_q): the sums in
// brackets, the forces, come first, and then a product with the rows for every freedom.
func (s *Shell) StiffnessTo(k *[324]float64) {
	c := s.overArea()
	var t [numRows][18]float64
	if fast {
		forcesAVX2(&t, &s.rows, &c)
		productAVX2(k, &s.rows, &t)
	} else {
		forcesGo(&t, &s.rows, &c)
		productGo(k, &s.rows, &t)
	}
	for i := 1; i < 18; i++ {
		for j := range i {
			k[18*i+j] = k[18*j+i]
		}
	}
}

// laws are the laws of the rows times the area: 25 of stretch, 9 of bending, 9 of drilling,
// row-major, and that of the twist.
type laws [44]float64

func (s *Shell) overArea() (c laws) {
	a := s.frame.area
	for p := range s.stretch {
		for q, v := range s.stretch[p] {
			c[5*p+q] = v * a
		}
	}
	for p := range s.bend {
		for q := range s.bend {
			c[25+3*p+q], c[34+3*p+q] = s.bend[p][q]*a, s.drill[p][q]*a
		}
	}
	c[43] = s.twist * a
	return c
}

// forcesGo sets t to the laws times the rows.
func forcesGo(t, rows *[numRows][18]float64, c *laws) {
	for j := range 18 {
		for p := range 5 {
			d := c[5*p:][:5]
			t[rowStretch+p][j] = d[0]*rows[0][j] + d[1]*rows[1][j] + d[2]*rows[2][j] + d[3]*rows[3][j] + d[4]*rows[4][j]
		}
		for p := range 3 {
			d, e := c[25+3*p:][:3], c[34+3*p:][:3]
			t[rowBend+p][j] = d[0]*rows[rowBend][j] + d[1]*rows[rowBend+1][j] + d[2]*rows[rowBend+2][j]
			t[rowDrill+p][j] = e[0]*rows[rowDrill][j] + e[1]*rows[rowDrill+1][j] + e[2]*rows[rowDrill+2][j]
		}
		t[rowTwist][j] = c[43] * rows[rowTwist][j]
	}
}

// sumOrder is the order in which the rows are summed.
var sumOrder = [numRows]int{rowStretch, rowStretch + 1, rowStretch + 2, rowStretch + 3, rowStretch + 4,
	rowBend, rowDrill, rowBend + 1, rowDrill + 1, rowBend + 2, rowDrill + 2, rowTwist}

// productGo sets the blocks of k on and above the diagonal to rowsᵀ t.
func productGo(k *[324]float64, rows, t *[numRows][18]float64) {
	for i := range 18 {
		first := i / 6 * 6
		out := k[18*i+first : 18*i+18]
		clear(out)
		for _, p := range sumOrder {
			r := rows[p][i]
			for j, f := range t[p][first:] {
				out[j] += r * f
			}
		}
	}
}
