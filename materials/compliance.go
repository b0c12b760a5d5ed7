package materials

// Compliance gives strain from stress, 1/MPa, in the order LL RR TT RT LT LR
// (11 22 33 23 13 12) with engineering shear strain. It is symmetric.
type Compliance [6][6]float64

// Compliance returns S in the wood's own axes; see the package comment. The
// constants are taken as they are: call Check first.
func (o Orthotropic) Compliance() Compliance {
	var s Compliance
	s[0][0], s[1][1], s[2][2] = 1/o.EL, 1/o.ER, 1/o.ET
	s[3][3], s[4][4], s[5][5] = 1/o.GRT, 1/o.GLT, 1/o.GLR
	s[0][1] = -o.NuLR / o.EL
	s[0][2] = -o.NuLT / o.EL
	s[1][2] = -o.NuRT / o.ER
	s[1][0], s[2][0], s[2][1] = s[0][1], s[0][2], s[1][2]
	return s
}

// pair returns the two tensor indices of place n in the order 11 22 33 23 13
// 12.
func pair(n int) (int, int) {
	return [6]int{0, 1, 2, 1, 0, 0}[n], [6]int{0, 1, 2, 2, 2, 1}[n]
}

// strainBond returns T with strain' = T strain for engineering strain:
// strain'_ij = q_ik q_jl strain_kl written for 6-vectors.
func strainBond(q *Axes) (t [6][6]float64) {
	for m := range t {
		i, j := pair(m)
		a, b, r := &q[i], &q[j], &t[m]
		if i == j {
			*r = [6]float64{a[0] * a[0], a[1] * a[1], a[2] * a[2], a[1] * a[2], a[0] * a[2], a[0] * a[1]}
			continue
		}
		*r = [6]float64{2 * a[0] * b[0], 2 * a[1] * b[1], 2 * a[2] * b[2],
			a[1]*b[2] + a[2]*b[1], a[0]*b[2] + a[2]*b[0], a[0]*b[1] + a[1]*b[0]}
	}
	return t
}

// Turned returns the compliance in new axes: the rows of q are the new axes
// expressed in the old ones. S' = T S T' with the Bond matrix T of
// engineering strain; exactly symmetric.
func (s Compliance) Turned(q Axes) Compliance {
	t := strainBond(&q)
	ts := s.after(&t)
	var out Compliance
	for m := range out {
		a := &ts[m]
		for n := 0; n <= m; n++ {
			b := &t[n]
			sum := a[0]*b[0] + a[1]*b[1] + a[2]*b[2] + a[3]*b[3] + a[4]*b[4] + a[5]*b[5]
			out[m][n], out[n][m] = sum, sum
		}
	}
	return out
}

// after returns T S, without the products with what is zero in a wood's own axes.
func (s *Compliance) after(t *[6][6]float64) (ts [6][6]float64) {
	own := s.own()
	for m := range ts {
		a, r := &t[m], &ts[m]
		for n := range r {
			switch {
			case !own:
				r[n] = a[0]*s[0][n] + a[1]*s[1][n] + a[2]*s[2][n] + a[3]*s[3][n] + a[4]*s[4][n] + a[5]*s[5][n]
			case n < 3:
				r[n] = a[0]*s[0][n] + a[1]*s[1][n] + a[2]*s[2][n]
			default:
				r[n] = a[n] * s[n][n]
			}
		}
	}
	return ts
}

// own says whether shear stands by itself, as it does in a wood's own axes.
func (s *Compliance) own() bool {
	for m := 3; m < 6; m++ {
		for n := range m {
			if s[m][n] != 0 || s[n][m] != 0 {
				return false
			}
		}
	}
	return true
}

// Between returns the compliance in the axes to, when s holds in the axes
// from; both are given in global coordinates.
func (s Compliance) Between(from, to Axes) Compliance {
	return s.Turned(from.seen(to))
}

// TurnStress returns a stress 11 22 33 23 13 12, MPa, in the new axes whose
// rows, expressed in the old ones, are q: stress'_ij = q_ik q_jl stress_kl.
func TurnStress(q Axes, stress [6]float64) [6]float64 {
	var full [3][3]float64
	for n := range stress {
		k, l := pair(n)
		full[k][l], full[l][k] = stress[n], stress[n]
	}
	var out [6]float64
	for m := range out {
		i, j := pair(m)
		for k := range full {
			for l := range full {
				out[m] += q[i][k] * q[j][l] * full[k][l]
			}
		}
	}
	return out
}
