package element

import "archload/fem/vec3"

// MassTo sets m to the 12 x 12 consistent mass of the beam, row-major, global degrees of
// freedom node by node; mass is that of the whole length, tonne. Its kinetic energy is that
// of rigid sections along the axis, at the end of the nodes' arms:
//
//	½ mass/L ∫ |u|² + (ry² + rz²) theta_x² + ry² theta_y² + rz² theta_z² dx,
//
// with the squares of the radii of gyration ry² = EIy/EA and rz² = EIz/EA, which are those of
// a section of one wood. Extension and twist are linear along the beam; deflection and
// rotation are those of Timoshenko's beam without load between its ends, cubic and
// quadratic (Z. Friedman, J. B. Kosmatka, An improved two-node Timoshenko beam finite
// element, Computers and Structures 47, 1993; from memory, tested against closed forms).
func (b *Beam) MassTo(m *[144]float64, mass float64) {
	*m = [144]float64{}
	ry, rz := b.gyration()
	for _, g := range gauss4 {
		u, theta := b.rowsAt(g.x)
		for k := range 3 {
			addSquare12(m, mass*g.weight, &u[k])
		}
		addSquare12(m, mass*g.weight*(ry+rz), &theta[0])
		addSquare12(m, mass*g.weight*ry, &theta[1])
		addSquare12(m, mass*g.weight*rz, &theta[2])
	}
	for i := range 12 {
		for j := range i {
			m[12*i+j] = m[12*j+i]
		}
	}
}

// gyration returns the squares of the section's radii of gyration about y and z, mm².
func (b *Beam) gyration() (ry, rz float64) {
	if b.law[beamAxial] == 0 {
		return 0, 0
	}
	return b.law[beamCurvY] / b.law[beamAxial], b.law[beamCurvZ] / b.law[beamAxial]
}

// rowsAt returns the movement of the axis and the rotation at the share x of the length, in
// the beam's own axes, as linear forms in the freedoms of the nodes.
func (b *Beam) rowsAt(x float64) (u, theta [3][12]float64) {
	for e, share := range [2]float64{1 - x, x} {
		b.addEnd(&u[0], e, 0, share)
		b.addTurn(&theta[0], e, 0, share)
	}
	// w,x = -theta_y + gamma_xz in the plane xz, v,x = theta_z + gamma_xy in xy
	b.addBending(&u[2], &theta[1], bending{2, 1, -1, b.softness(beamShearZ, beamCurvY)}, x)
	b.addBending(&u[1], &theta[2], bending{1, 2, 1, b.softness(beamShearY, beamCurvZ)}, x)
	return u, theta
}

// bending names a plane of bending: the axis of the deflection, that of the rotation, the
// sign of the rotation in the slope, and phi = 12 EI/(GA L²).
type bending struct {
	along, about int
	sign, phi    float64
}

// softness returns phi from the laws of a plane: that of shear holds 1/GA + L²/(12 EI).
func (b *Beam) softness(shear, curv int) float64 {
	if b.law[shear] == 0 {
		return 0
	}
	return max(0, 12*b.law[curv]/(b.length*b.length*b.law[shear])-1)
}

// addBending adds deflection and rotation at the share x of the length.
func (b *Beam) addBending(u, theta *[12]float64, p bending, x float64) {
	l, c := b.length, 1/(1+p.phi)
	move := [2]float64{c * (2*x*x*x - 3*x*x - p.phi*x + 1 + p.phi), -c * (2*x*x*x - 3*x*x - p.phi*x)}
	moveTurn := [2]float64{c * l * (x*x*x - (2+p.phi/2)*x*x + (1+p.phi/2)*x), c * l * (x*x*x - (1-p.phi/2)*x*x - p.phi/2*x)}
	turn := [2]float64{c * 6 / l * (x*x - x), -c * 6 / l * (x*x - x)}
	turnTurn := [2]float64{c * (3*x*x - (4+p.phi)*x + 1 + p.phi), c * (3*x*x - (2-p.phi)*x)}
	for e := range 2 {
		b.addEnd(u, e, p.along, move[e])
		b.addTurn(u, e, p.about, p.sign*moveTurn[e])
		b.addEnd(theta, e, p.along, p.sign*turn[e])
		b.addTurn(theta, e, p.about, turnTurn[e])
	}
}

// addEnd adds c times the movement along axis k of the end of the arm of node e.
func (b *Beam) addEnd(row *[12]float64, e, k int, c float64) {
	moment := vec3.Cross(b.arms[e], b.axes[k])
	for d := range 3 {
		row[6*e+d] += c * b.axes[k][d]
		row[6*e+3+d] += c * moment[d]
	}
}

// addTurn adds c times the rotation about axis k of node e.
func (b *Beam) addTurn(row *[12]float64, e, k int, c float64) {
	for d := range 3 {
		row[6*e+3+d] += c * b.axes[k][d]
	}
}

// addSquare12 adds c rowᵀ row to the upper triangle of m.
func addSquare12(m *[144]float64, c float64, row *[12]float64) {
	for i, a := range row {
		for j := i; j < 12; j++ {
			m[12*i+j] += c * a * row[j]
		}
	}
}

// gauss4 is Gauss's rule of four points on 0..1, exact to degree 7 (M. Abramowitz, I. A.
// Stegun, Handbook of Mathematical Functions, table 25.4).
var gauss4 = [4]struct{ x, weight float64 }{
	{0.5 - 0.430568155797026, 0.173927422568727}, {0.5 - 0.169990521792428, 0.326072577431273},
	{0.5 + 0.169990521792428, 0.326072577431273}, {0.5 + 0.430568155797026, 0.173927422568727},
}
