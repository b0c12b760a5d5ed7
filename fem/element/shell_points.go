package element

import "archload/fem/vec3"

// RowsAt returns the global displacement, mm, of the point at area coordinates
// l and height zeta·H/2 along the facet's normal (zeta +1: outer face) as three
// linear forms (x, y, z) in the 18 degrees of freedom. Applied to a force they
// give its equivalent nodal forces and moments.
//
// Along the facet the displacement is linear. Square to it the interpolation is
// linked: w = sum l_i w_i + 1/2 sum over edges l_i l_j (theta_j - theta_i).
// (n x (x_j - x_i)), which follows the curve that the rotations describe. A
// point off the mid-surface moves by theta x (zeta H/2 n) more.
func (s *Shell) RowsAt(l [3]float64, zeta float64) [3][18]float64 {
	var rows [3][18]float64
	n := s.frame.axes[2]
	arm := zeta * s.frame.h / 2
	for i, li := range l {
		for k := range rows {
			rows[k][6*i+k] += li
			// component k of theta x n
			a, b := (k+1)%3, (k+2)%3
			rows[k][6*i+3+a] += li * arm * n[b]
			rows[k][6*i+3+b] -= li * arm * n[a]
		}
	}
	for _, ed := range s.frame.edges {
		across := vec3.Cross(n, vec3.Sub(s.frame.corn[ed.j], s.frame.corn[ed.i]))
		w := l[ed.i] * l[ed.j] / 2
		for k := range rows {
			for m := range across {
				rows[k][6*ed.j+3+m] += w * n[k] * across[m]
				rows[k][6*ed.i+3+m] -= w * n[k] * across[m]
			}
		}
	}
	return rows
}
