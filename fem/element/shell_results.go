package element

import (
	"archload/fem/vec3"
	"archload/materials"
)

// ShellStrains are the mean strains of a triangle in its facet frame.
type ShellStrains struct {
	Membrane  [3]float64 // xx, yy, xy (engineering shear strain), 1
	Shear     [2]float64 // xz, yz, 1; includes the bubble's share
	Curvature [3]float64 // b_x,x, b_y,y, b_x,y + b_y,x, 1/mm
}

// Resultants are the stress resultants of a triangle in its facet frame,
// constant over the triangle. Positive moments put the outer side in tension.
type Resultants struct {
	N [3]float64 // membrane forces xx, yy, xy, N/mm
	M [3]float64 // moments xx, yy, xy, N (that is, N mm/mm)
	Q [2]float64 // transverse shear forces xz, yz, N/mm
}

// Strains returns the mean strains under the global displacements u (mm, rad).
func (s *Shell) Strains(u *[18]float64) ShellStrains {
	var e ShellStrains
	for i := range e.Membrane {
		e.Membrane[i] = form(&s.rows[rowStretch+i], u)
		e.Curvature[i] = form(&s.rows[rowBend+i], u)
	}
	for i := range e.Shear {
		e.Shear[i] = form(&s.rows[rowStretch+3+i], u)
	}
	return e
}

// Resultants returns the stress resultants under the global displacements u.
func (s *Shell) Resultants(u *[18]float64) Resultants {
	e := s.Strains(u)
	joint := [5]float64{e.Membrane[0], e.Membrane[1], e.Membrane[2], e.Shear[0], e.Shear[1]}
	var r Resultants
	for i := range r.N {
		for j, v := range joint {
			r.N[i] += s.stretch[i][j] * v
		}
		for j, v := range e.Curvature {
			r.M[i] += s.bend[i][j] * v
		}
	}
	for i := range r.Q {
		for j, v := range joint {
			r.Q[i] += s.stretch[3+i][j] * v
		}
	}
	return r
}

// Stress returns the stress in wood axes, LL RR TT RT LT LR, MPa, at the height
// zeta between -1 (inner face) and +1 (outer face) over the triangle's centre.
//
// In the facet frame: membrane and bending parts N/h + zeta 6 M/h², transverse
// shear 1.5 (1 - zeta²) Q/h (parabolic: none at the faces), no normal stress.
// The tensor is then turned into the wood's own axes. Where a carved plate's
// surface slopes across the grain or the rings, the in-plane stress alone has
// components along LT, LR and RT there, so a face stress contains the rolling
// shear that the slope brings, though the face itself carries no shear.
func (s *Shell) Stress(u *[18]float64, zeta float64) [6]float64 {
	r := s.Resultants(u)
	return s.StressOf(&r, zeta)
}

// StressOf is Stress from the resultants.
func (s *Shell) StressOf(r *Resultants, zeta float64) [6]float64 {
	h := s.frame.h
	m, q := 6*zeta/(h*h), 1.5*(1-zeta*zeta)/h
	return s.toWood([6]float64{
		r.N[0]/h + m*r.M[0], r.N[1]/h + m*r.M[1], 0,
		q * r.Q[1], q * r.Q[0], r.N[2]/h + m*r.M[2],
	})
}

// toWood turns a stress xx yy zz yz xz xy of the facet frame into wood axes.
func (s *Shell) toWood(t [6]float64) [6]float64 {
	return materials.TurnStress(materials.Axes(s.wood), t)
}

// Energy returns the strain energy under u, N mm, by kind; the three sum to
// 1/2 u^T K u. Half the work of membrane forces on membrane strains counts as
// membrane, with it the higher-order part of the drilling rotations. Half the
// work of shear forces on shear strains counts as shear, less the share that is
// bending of the rotations' bubble. Bending holds the moments' work, that share
// and the stabilising twist term.
func (s *Shell) Energy(u *[18]float64) (membrane, bending, shear float64) {
	e, r := s.Strains(u), s.Resultants(u)
	var bubble float64
	for i, q := range r.Q {
		shear += q * e.Shear[i]
		bubble += q * (s.bubble[i][0]*r.Q[0] + s.bubble[i][1]*r.Q[1])
	}
	var t [3]float64
	for i := range t {
		t[i] = form(&s.rows[rowDrill+i], u)
	}
	for i := range t {
		membrane += r.N[i]*e.Membrane[i] + t[i]*vec3.Dot(s.drill[i], t)
		bending += r.M[i] * e.Curvature[i]
	}
	w := form(&s.rows[rowTwist], u)
	bending += bubble + s.twist*w*w
	shear -= bubble
	half := s.frame.area / 2
	return half * membrane, half * bending, half * shear
}
