package element

import (
	"fmt"

	"archload/materials"
)

const (
	// shearFactor is k: the shear strain energy is that of the mean stress
	// divided by k.
	shearFactor = materials.ShearFactor
	// bubbleFactor multiplies the bubble's compliance. 1 is the published
	// MITC3+ triangle; 2.5 was chosen by comparison on plates and shells and is
	// near the usual constants of stabilised triangles.
	bubbleFactor = 2.5
	// bubbleArea: the bubble f = 27 l1 l2 l3 has the integral of f,x² over the
	// area A equal to 81/20 A s_xx, s_xx the sum of the squares of l1,x l2,x l3,x.
	bubbleArea = 4.05
	// twistFactor scales the stiffness of the twist row, which a linear rotation
	// field would otherwise leave without any; it vanishes for constant curvature.
	// With 0.1 the seventh eigenvalue of a halved square or equilateral triangle
	// of wood stays above a tenth of the smallest bending one at any grain angle
	// (0.05 reaches 0.07 there); it stiffens plates by some 0.05 % at 16 divisions.
	twistFactor = 0.1
)

// setLaws computes the element's stress-strain laws from the compliance in the
// facet frame, 1/MPa, split as materials.Reduced does.
func (s *Shell) setLaws(c materials.Reduced) error {
	plane, ok := planeStress(c.MM)
	if !ok {
		return fmt.Errorf("shell: compliance: in-plane part is not positive definite: %v", c.MM)
	}
	h := s.frame.h
	for i := range plane {
		for j := range plane {
			s.bend[i][j] = h * h * h / 12 * plane[i][j]
		}
	}
	s.twist = twistFactor * min(s.bend[0][0], s.bend[1][1])
	s.setBubble()
	s.setDrill(&plane, &c.MM)
	return s.setStretch(c)
}

// planeStress returns the inverse of the in-plane compliance, MPa.
func planeStress(mm [3][3]float64) (e [3][3]float64, ok bool) {
	var a [9]float64
	for i := range 3 {
		copy(a[3*i:], mm[i][:])
	}
	ok = invertSPD(a[:], 3)
	for i := range 3 {
		copy(e[i][:], a[3*i:])
	}
	return e, ok
}

// setBubble sets the shear compliance (mean shear strain per shear force, mm/N)
// that comes from bending of the rotations' bubble 27 l1 l2 l3. A shear force Q
// does the work A Q.a/2 on the bubble's amplitude a, because the bubble is 1/2 at
// the tying points of the MITC3+ triangle; its bending stiffness is K_b =
// 4.05 A [k11 k12; k12 k22]. Condensed, the mean shear strain grows by
// (A/4) K_b^-1 Q, here times bubbleFactor.
func (s *Shell) setBubble() {
	var xx, yy, xy float64
	for _, g := range s.frame.grad {
		xx += g[0] * g[0]
		yy += g[1] * g[1]
		xy += g[0] * g[1]
	}
	d := &s.bend
	k := [4]float64{xx*d[0][0] + 2*xy*d[0][2] + yy*d[2][2], 0, 0, yy*d[1][1] + 2*xy*d[1][2] + xx*d[2][2]}
	k[1] = xy*(d[0][1]+d[2][2]) + xx*d[0][2] + yy*d[1][2]
	k[2] = k[1]
	invertSPD(k[:], 2)
	c := bubbleFactor / (4 * bubbleArea)
	s.bubble = [2][2]float64{{c * k[0], c * k[1]}, {c * k[2], c * k[3]}}
}

// setStretch sets the joint law of mean membrane strain and mean shear strain:
// the inverse of the compliance per thickness, with the shear block divided by
// k and the bubble's compliance added.
func (s *Shell) setStretch(c materials.Reduced) error {
	h := s.frame.h
	var a [25]float64
	for i := range 3 {
		for j := range 3 {
			a[5*i+j] = c.MM[i][j] / h
		}
		for j := range 2 {
			a[5*i+3+j] = c.MS[i][j] / h
			a[5*(3+j)+i] = c.MS[i][j] / h
		}
	}
	for i := range 2 {
		for j := range 2 {
			a[5*(3+i)+3+j] = c.SS[i][j]/(shearFactor*h) + s.bubble[i][j]
		}
	}
	if !invertSPD(a[:], 5) {
		return fmt.Errorf("shell: compliance: membrane and shear part is not positive definite: %v", c)
	}
	for i := range 5 {
		copy(s.stretch[i][:], a[5*i:])
	}
	return nil
}

// setDrill sets the higher-order stiffness of the deviatoric drilling rotations,
// per area: (3/4) beta0 h sum of Q^T E_nat Q over the three midpoints (Q4, Q5,
// Q6 of Felippa 2003). E_nat is the in-plane stiffness in natural strains along
// the edges; beta0 = (1 - 4 nu12 nu21)/2, not below 0.01, makes the in-plane
// bending of a rectangle of two triangles exact.
func (s *Shell) setDrill(plane, mm *[3][3]float64) {
	f := &s.frame
	var m [3][3]float64
	for e := range m {
		ed := &f.edges[e]
		m[e] = [3]float64{ed.c * ed.c, ed.s * ed.s, ed.c * ed.s}
	}
	te := invert3(m) // Cartesian strain from the strains along edges 12, 23, 31
	var nat [3][3]float64
	congruence(&nat, &te, plane, 1)
	nunu := mm[0][1] * mm[0][1] / (mm[0][0] * mm[1][1])
	beta0 := max(0.01, (1-4*nunu)/2)
	if f.kink {
		beta0 *= kinkShare
	}
	mid := f.drillStrains()
	for k := range mid {
		congruence(&s.drill, &mid[k], &nat, 0.75*beta0*f.h)
	}
}

// drillCorners are Q1, Q2, Q3 of the optimal template (beta1..9 = 1, 2, 1, 0, 1, -1, -1, -1, -2),
// without their factor 2 A/(3 L²): natural strains at the corners.
var drillCorners = [3][3][3]float64{
	{{1, 2, 1}, {0, 1, -1}, {-1, -1, -2}},
	{{-2, -1, -1}, {1, 1, 2}, {-1, 0, 1}},
	{{1, -1, 0}, {-1, -2, -1}, {2, 1, 1}},
}

// drillStrains returns Q4, Q5, Q6 of the optimal template: natural strains at the edge midpoints
// per deviatoric drilling rotation of the corners.
func (f *facet) drillStrains() (mid [3][3][3]float64) {
	for e := range f.edges {
		ed := &f.edges[e]
		w := 2 * f.area / (3 * ed.length * ed.length)
		for k := range mid {
			a, b, to := &drillCorners[k][e], &drillCorners[(k+1)%3][e], &mid[k][e]
			for i := range to {
				to[i] = w * (a[i] + b[i]) / 2
			}
		}
	}
	return mid
}

// congruence adds c·q^T e q to dst, symmetric to the last bit if e is.
func congruence(dst, q, e *[3][3]float64, c float64) {
	for i := range 3 {
		a, b, d := q[0][i], q[1][i], q[2][i]
		p := [9]float64{a * e[0][0], a * e[0][1], a * e[0][2], b * e[1][0], b * e[1][1], b * e[1][2], d * e[2][0], d * e[2][1], d * e[2][2]}
		for j := i; j < 3; j++ {
			x, y, z := q[0][j], q[1][j], q[2][j]
			v := c * (p[0]*x + p[1]*y + p[2]*z + p[3]*x + p[4]*y + p[5]*z + p[6]*x + p[7]*y + p[8]*z)
			dst[i][j] += v
			if i != j {
				dst[j][i] += v
			}
		}
	}
}
