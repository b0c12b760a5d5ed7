package element

// MassTo sets m to the 18 x 18 consistent mass of the triangle, row-major, global
// degrees of freedom node by node (tonne, tonne mm, tonne mm²); the density is in kg/m³
// (1 kg/m³ = 1e-12 tonne/mm³). Its kinetic energy is
//
//	½ rho ∫ h |u|² + h³/12 |theta x n|² dA,
//
// u being the movement of the mid-surface that RowsAt gives, which follows the bending
// that the rotations describe, and theta linear. The rotation about the facet's own normal
// carries no mass. A rigid motion has the exact energy of the flat triangle.
func (s *Shell) MassTo(m *[324]float64, density float64) {
	*m = [324]float64{}
	h := s.frame.h
	line := density * 1e-12 * h * s.frame.area
	turn := line * h * h / 12
	n := s.frame.axes[2]
	for _, p := range quartic {
		move := s.RowsAt(p.l, 0)
		for k := range move {
			addSquare(m, line*p.weight, &move[k])
		}
		for k := range 3 { // component k of theta x n
			var row [18]float64
			a, b := (k+1)%3, (k+2)%3
			for i, l := range p.l {
				row[6*i+3+a] += l * n[b]
				row[6*i+3+b] -= l * n[a]
			}
			addSquare(m, turn*p.weight, &row)
		}
	}
	for i := range 18 {
		for j := range i {
			m[18*i+j] = m[18*j+i]
		}
	}
}

// addSquare adds c rowᵀ row to the upper triangle of m.
func addSquare(m *[324]float64, c float64, row *[18]float64) {
	for i, a := range row {
		if a == 0 {
			continue
		}
		for j := i; j < 18; j++ {
			m[18*i+j] += c * a * row[j]
		}
	}
}

// quartic integrates polynomials of degree 4 over a triangle of area 1: six points, D. A.
// Dunavant, High degree efficient symmetrical Gaussian quadrature rules for the triangle,
// Int. J. Numer. Methods Eng. 21 (1985); from memory, tested against the exact integrals.
var quartic = func() (rule [6]struct {
	l      [3]float64
	weight float64
}) {
	for k, g := range [2]struct{ weight, l float64 }{
		{0.223381589678011, 0.445948490915965}, {0.109951743655322, 0.091576213509771}} {
		for i := range 3 {
			p := &rule[3*k+i]
			p.weight, p.l = g.weight, [3]float64{g.l, g.l, g.l}
			p.l[i] = 1 - 2*g.l
		}
	}
	return rule
}()
