package element

import (
	"archload/fem/vec3"
	"archload/materials"
)

// FreeStrain is how wood would stretch by itself in its axes L, R and T, 1: as it
// swells with moisture, say. It may vary linearly through the thickness.
type FreeStrain struct {
	Mean [3]float64 // in the middle
	Half [3]float64 // at the outer face less that in the middle
}

// Free is a triangle that nothing holds and whose wood stretches by itself: the
// movement in which it bears no force.
//
// What the strains of a shell do not have, the movement has: the corners move as
// their places in the wood do, by E (x - x1), E being the free strain as a tensor, and
// the fibres along the corners' normals n turn as wood along them does, by n x E n.
// So the three parts of a free strain come at once, each as the flat triangle with
// its corners' normals has it: stretching; shear, as the fibre of a carved slope
// leans while it swells; and curvature. Of the last one part is the thickness: where
// the surface bends with radius R, a face that moves off the middle changes the
// angle between neighbouring fibres by -e_n/R. If all neighbours have the same E,
// these movements agree, and a body that is free moves without any stress.
type Free struct {
	Moves [18]float64 // of the corners, mm and rad, in which the triangle bears no force

	affine [18]float64   // by E alone
	e      [3][3]float64 // E in global axes
	odd    [3]float64    // strains xz, yz, zz of the half difference
}

// Free returns how the triangle moves by itself.
//
// The half difference through the thickness is a free curvature 2 E/h of its in-plane
// part; its shear is odd through the thickness and no force holds it (equation 3 of the
// package). Wood that was pressed to its shape follows the surface, so that it does not lean as it
// swells: of its movement the mean shear is taken off.
func (s *Shell) Free(f FreeStrain) Free {
	var out Free
	mean, half := s.tensor(f.Mean), s.tensor(f.Half)
	out.odd = [3]float64{2 * half[0][2], 2 * half[1][2], half[2][2]}
	out.e = s.frame.tensorToGlobal(mean)
	for i := range 3 {
		x := [3]float64{s.frame.xy[i][0], s.frame.xy[i][1], 0}
		n := s.frame.norm[i]
		move, turn := times(mean, x), vec3.Cross(n, times(mean, n))
		copy(out.affine[6*i:], move[:])
		copy(out.affine[6*i+3:], turn[:])
	}
	s.frame.toGlobal(&out.affine)
	out.Moves = out.affine
	var off [numRows]float64 // of the free strains from those of the movement by E
	h := s.frame.h
	off[rowBend], off[rowBend+1], off[rowBend+2] = 2*half[0][0]/h, 2*half[1][1]/h, 4*half[0][1]/h
	if s.pressed {
		for k := range 2 {
			off[rowStretch+3+k] = -form(&s.rows[rowStretch+3+k], &out.affine)
		}
	}
	if off != ([numRows]float64{}) {
		extra := s.movesOf(off)
		axpy(&out.Moves, 1, &extra)
	}
	return out
}

// Times is a share of it.
func (f Free) Times(share float64) Free {
	for i := range f.Moves {
		f.Moves[i] *= share
		f.affine[i] *= share
	}
	for i := range f.e {
		f.e[i] = vec3.Scale(f.e[i], share)
	}
	f.odd = vec3.Scale(f.odd, share)
	return f
}

// Eased returns the triangle whose wood has stretched by itself: at movements of any size (PullTo, TangentTo and
// what is Moved) its strains count from those that it has at its free movements. What is linear stays as it was.
func (s *Shell) Eased(f *Free) Shell {
	q := *s
	q.eased = s.at(&f.Moves).e
	return q
}

// tensor is a strain given in the wood's axes, in the facet frame.
func (s *Shell) tensor(along [3]float64) (e [3][3]float64) {
	for k, v := range along {
		for i := range e {
			for j := range e {
				e[i][j] += v * s.wood[k][i] * s.wood[k][j]
			}
		}
	}
	return e
}

// tensorToGlobal turns a tensor of the facet frame into global axes.
func (f *facet) tensorToGlobal(e [3][3]float64) (g [3][3]float64) {
	for i := range g {
		for j := range g {
			for a := range 3 {
				for b := range 3 {
					g[i][j] += f.axes[a][i] * e[a][b] * f.axes[b][j]
				}
			}
		}
	}
	return g
}

// times is the product of a matrix and a vector.
func times(m [3][3]float64, v [3]float64) [3]float64 {
	return [3]float64{vec3.Dot(m[0], v), vec3.Dot(m[1], v), vec3.Dot(m[2], v)}
}

// movesOf returns the least movement of the corners that has the given strains: with
// B the rows, Bᵀ (B Bᵀ)⁻¹ e. There is one, since twelve strains and six rigid
// motions are all that eighteen freedoms have.
func (s *Shell) movesOf(e [numRows]float64) (u [18]float64) {
	var g [numRows * numRows]float64
	for i := range numRows {
		for j := range numRows {
			g[numRows*i+j] = form(&s.rows[i], &s.rows[j])
		}
	}
	if !invertSPD(g[:], numRows) {
		panic("element: a triangle with a motion that strains nothing") // NewShell has refused it
	}
	for i := range numRows {
		c := 0.0
		for j, v := range e {
			c += g[numRows*i+j] * v
		}
		axpy(&u, c, &s.rows[i])
	}
	return u
}

// Beyond returns by how much a place of the freely stretched wood moves more than
// RowsAt tells of the corners' movement, mm: x is the place in space, l and zeta as in
// RowsAt. A shell's own movements leave the thickness as it is; and between corners
// they know the surface by its chords.
func (s *Shell) Beyond(f *Free, x [3]float64, l [3]float64, zeta float64) [3]float64 {
	rows := s.RowsAt(l, zeta)
	d := vec3.Add(times(f.e, vec3.Sub(x, s.frame.corn[0])), s.warped(f.odd, zeta))
	for k := range d {
		d[k] -= form(&rows[k], &f.affine)
	}
	return d
}

// warped is how a place zeta h/2 off the middle moves by strains xz, yz and zz that are
// odd through the thickness, given at its outer face, in global axes, mm: with e z 2/h integrated from
// the middle e (zeta² − 1/3) h/4, as the corners' movements are those of the thickness in the mean.
func (s *Shell) warped(odd [3]float64, zeta float64) (d [3]float64) {
	by := (zeta*zeta - 1.0/3) * s.frame.h / 4
	for k := range d {
		for a := range 3 {
			d[k] += by * odd[a] * s.frame.axes[a][k]
		}
	}
	return d
}

// Squash returns how much a place zeta h/2 off the middle moves because stress in the
// plane makes the wood thicker or thinner and, where its axes slope, lean, mm in global axes: what a
// shell's own movements leave out. The even part of the shear strain is in them.
func (s *Shell) Squash(r *Resultants, zeta float64) [3]float64 {
	h := s.frame.h
	var odd [3]float64 // at the outer face
	even := 0.0
	for k := range 3 {
		for a := range odd {
			odd[a] += s.thick[a][k] * 6 * r.M[k] / (h * h)
		}
		even += s.thick[2][k] * r.N[k] / h
	}
	return vec3.Add(s.warped(odd, zeta), vec3.Scale(s.frame.axes[2], even*zeta*h/2))
}

// setThick keeps the strains through the thickness under stress in the plane.
func (s *Shell) setThick(c materials.Compliance) {
	for a, row := range [3]int{4, 3, 2} { // xz, yz, zz
		for k, col := range [3]int{0, 1, 5} {
			s.thick[a][k] = c[row][col]
		}
	}
}
