package element

import (
	"math"
	"testing"

	"archload/fem/vec3"
	"archload/materials"
)

// patchField is a displacement field on a plane: u, v, w and theta_x, theta_y,
// theta_z at (x, y), in the plane's own frame.
type patchField func(x, y float64) [6]float64

// flatPatch returns a patch of 24 x 12 mm, distorted by shake, on a plane in the
// attitude q, with the wood's axes given in the plane's frame and kinks at some
// nodes.
func flatPatch(t *testing.T, wood materials.Orthotropic, axes, q materials.Axes, shake float64, kinks map[int]bool) *shellMesh {
	t.Helper()
	s := surfaceMesh(4, 3, shake, func(u, v float64) (x, n [3]float64) {
		return turn(q, [3]float64{24 * u, 12*v + 3*u, 0}), n
	})
	s.h, s.wood = 1.5, wood
	s.kink = kinks
	for i := range axes {
		s.axes[i] = turn(q, axes[i])
	}
	s.build(t)
	return s
}

// transposed returns the inverse of a rotation.
func transposed(q materials.Axes) (r materials.Axes) {
	for i := range q {
		for j := range q {
			r[i][j] = q[j][i]
		}
	}
	return r
}

// fieldAt returns the field's global displacements at all nodes.
func fieldAt(s *shellMesh, q materials.Axes, f patchField) (want []float64) {
	back := transposed(q)
	for _, x := range s.x {
		p := turn(back, x)
		v := f(p[0], p[1])
		tr, ro := turn(q, [3]float64{v[0], v[1], v[2]}), turn(q, [3]float64{v[3], v[4], v[5]})
		want = append(want, tr[0], tr[1], tr[2], ro[0], ro[1], ro[2])
	}
	return want
}

// solveField holds the wanted values at the patch's boundary (and the rotations
// inside too, if held) and returns the solution under the forces f.
func solveField(t *testing.T, s *shellMesh, want, f []float64, heldInside bool) []float64 {
	t.Helper()
	held := map[int]float64{}
	for i := range s.x {
		inside := i%5 > 0 && i%5 < 4 && i/5 > 0 && i/5 < 3
		for d := range 6 {
			if !inside || (heldInside && d >= 3) {
				held[6*i+d] = want[6*i+d]
			}
		}
	}
	return s.solve(t, f, held, nil)
}

// worst returns the largest difference over the largest value, translations and
// rotations apart.
func worst(got, want []float64) float64 {
	var diff, size [2]float64
	for i := range got {
		k := i % 6 / 3
		diff[k] = max(diff[k], math.Abs(got[i]-want[i]))
		size[k] = max(size[k], math.Abs(want[i]))
	}
	return max(diff[0]/size[0], diff[1]/max(size[1], 1e-6))
}

// patchCase is one material and inclination, tried in several attitudes.
type patchCase struct {
	name string
	wood materials.Orthotropic
	axes materials.Axes
}

// eachPatch runs f for isotropic material, wood in the plane and carved wood on
// an inclined plane, each in three attitudes.
func eachPatch(f func(c patchCase, q materials.Axes)) {
	for _, c := range []patchCase{
		{"isotropic", isotropic(10000, 0.3), xyzAxes},
		{"wood in the plane", tw1(), rotation(0.5, 0, 0)},
		{"carved, inclined", tw1(), rotation(0.5, 0.25, 0.2)},
	} {
		for seed := range 3 {
			d := dice(seed)
			f(c, rotation(3*d.next(), 1.5*d.next(), 3*d.next()))
		}
	}
}

// TestShellPatchMembrane: a constant membrane force on a distorted patch in any
// attitude is met to 1e-8. In carved wood it carries the shear strain S_sm N/h,
// which leaves no shear force; here it is split between slope and rotation. Corners
// marked as kinks do not disturb it.
func TestShellPatchMembrane(t *testing.T) {
	for _, kinks := range []map[int]bool{nil, {5: true, 6: true, 7: true, 13: true}} {
		eachPatch(func(c patchCase, q materials.Axes) { membranePatch(t, c, q, kinks) })
	}
}

func membranePatch(t *testing.T, c patchCase, q materials.Axes, kinks map[int]bool) {
	t.Helper()
	s := flatPatch(t, c.wood, c.axes, q, 0.3, kinks)
	red := c.wood.Compliance().Between(c.axes, xyzAxes).Reduce()
	n := [3]float64{2, -1, 0.7} // N/mm
	var eps [3]float64
	var gam [2]float64
	for i := range 3 {
		for j := range 3 {
			eps[i] += red.MM[i][j] * n[j] / s.h
		}
		for j := range 2 {
			gam[j] += red.MS[i][j] * n[i] / s.h
		}
	}
	want := fieldAt(s, q, func(x, y float64) [6]float64 {
		return [6]float64{eps[0]*x + 0.8*eps[2]*y, eps[1]*y + 0.2*eps[2]*x, 0.3 * gam[0] * x,
			-gam[1], 0.7 * gam[0], -0.3 * eps[2]}
	})
	got := solveField(t, s, want, make([]float64, s.dofs()), false)
	checkPatch(t, c.name, s, got, want, func(r Resultants) bool {
		return math.Abs(r.Q[0])+math.Abs(r.Q[1]) < 1e-8
	})
}

// TestShellPatchBending: a constant curvature, w = -(kx x² + ky y² + kxy x y)/2,
// is met to 1e-8 without shear force.
func TestShellPatchBending(t *testing.T) {
	k := [3]float64{1e-3, -2e-3, 1.5e-3} // 1/mm
	eachPatch(func(c patchCase, q materials.Axes) {
		s := flatPatch(t, c.wood, c.axes, q, 0.3, nil)
		want := fieldAt(s, q, func(x, y float64) [6]float64 {
			bx, by := k[0]*x+k[2]*y/2, k[1]*y+k[2]*x/2
			return [6]float64{0, 0, -(k[0]*x*x + k[1]*y*y + k[2]*x*y) / 2, -by, bx, 0}
		})
		got := solveField(t, s, want, make([]float64, s.dofs()), false)
		checkPatch(t, c.name, s, got, want, func(r Resultants) bool {
			return math.Abs(r.Q[0])+math.Abs(r.Q[1]) < 1e-8*math.Abs(r.M[0])
		})
	})
}

// TestShellPatchShear: w linear without rotation. A shear force alone is not in
// equilibrium: it needs a couple per area, Q, which also loads the rotations'
// bubble. With both, a distorted patch meets the state to 1e-8; with rotations
// held instead, a patch of equal parallelogram halves does.
func TestShellPatchShear(t *testing.T) {
	eachPatch(func(c patchCase, q materials.Axes) {
		field := func(x, y float64) [6]float64 { return [6]float64{0, 0, 1e-3*x - 2e-3*y} }
		noMoment := func(r Resultants) bool {
			return math.Abs(r.M[0])+math.Abs(r.M[1])+math.Abs(r.M[2]) < 1e-8
		}
		s := flatPatch(t, c.wood, c.axes, q, 0, nil)
		want := fieldAt(s, q, field)
		got := solveField(t, s, want, make([]float64, s.dofs()), true)
		checkPatch(t, c.name+", held", s, got, want, noMoment)

		s = flatPatch(t, c.wood, c.axes, q, 0.3, nil)
		want = fieldAt(s, q, field)
		f, bare := s.couples(want)
		got = solveField(t, s, want, f, false)
		if e := worst(got, want); e > 1e-8 {
			t.Errorf("%s, couples: displacement off by %.3g of the largest, want within 1e-8", c.name, e)
		}
		for e := range s.sh { // the true shear force is the same everywhere
			if d := math.Hypot(bare[e][0]-bare[0][0], bare[e][1]-bare[0][1]); d > 1e-8*math.Hypot(bare[0][0], bare[0][1]) {
				t.Errorf("%s, couples: element %d: Q %v, want %v", c.name, e, bare[e], bare[0])
			}
		}
	})
}

// couples returns the forces that hold the uniform shear state u in equilibrium:
// the couple Q per area at the corners and, condensed, at the bubble. The true
// Q, free of the bubble's compliance, is returned for each element (in e1, e2 of
// element 0's frame, which all elements of a flat patch share).
func (s *shellMesh) couples(u []float64) (f []float64, bare [][2]float64) {
	f = make([]float64, s.dofs())
	for e := range s.sh {
		sh := s.sh[e]
		v := s.local(e, u)
		stiff := sh
		stiff.bubble = [2][2]float64{}
		red := s.wood.Compliance().Between(s.axes, sh.frame.axes).Reduce()
		if stiff.setStretch(red) != nil {
			panic("compliance is not positive definite")
		}
		r := stiff.Resultants(&v)
		bare = append(bare, r.Q)
		lag := [2]float64{} // shear strain that the couple on the bubble gives
		for i := range lag {
			lag[i] = sh.bubble[i][0]*r.Q[0] + sh.bubble[i][1]*r.Q[1]
		}
		var local [18]float64
		for k := range 3 { // b_x = theta_y, b_y = -theta_x
			local[6*k+4], local[6*k+3] = r.Q[0]*sh.Area()/3, -r.Q[1]*sh.Area()/3
		}
		sh.frame.toGlobal(&local)
		for p := range 5 {
			force := sh.stretch[p][3]*lag[0] + sh.stretch[p][4]*lag[1]
			axpy(&local, -sh.Area()*force, &sh.rows[rowStretch+p])
		}
		for i, x := range local {
			f[6*s.tris[e][i/6]+i%6] += x
		}
	}
	return f, bare
}

// checkPatch compares displacements and asks fine of every element's forces,
// which must be the same in all of them.
func checkPatch(t *testing.T, name string, s *shellMesh, got, want []float64, fine func(Resultants) bool) {
	t.Helper()
	if e := worst(got, want); e > 1e-8 {
		t.Errorf("%s: displacement off by %.3g of the largest, want within 1e-8", name, e)
	}
	u := s.local(0, got)
	first, size := s.sh[0].Resultants(&u), 0.0
	for _, v := range append(append(first.N[:], first.M[:]...), first.Q[:]...) {
		size = max(size, math.Abs(v))
	}
	for e := range s.sh {
		u := s.local(e, got)
		r := s.sh[e].Resultants(&u)
		for i := range 3 {
			if max(math.Abs(r.N[i]-first.N[i]), math.Abs(r.M[i]-first.M[i])) > 1e-8*size {
				t.Errorf("%s: element %d: N %v M %v, want those of element 0: %v %v", name, e, r.N, r.M, first.N, first.M)
				break
			}
		}
		if !fine(r) {
			t.Errorf("%s: element %d: N %v M %v Q %v are not those of the state", name, e, r.N, r.M, r.Q)
		}
	}
}

// TestShellTurned: a turned model gives the turned answer to 1e-9.
func TestShellTurned(t *testing.T) {
	run := func(q materials.Axes) []float64 {
		s := surfaceMesh(6, 6, 0.2, func(u, v float64) (x, n [3]float64) {
			x = [3]float64{60 * u, 50 * v, 8 * math.Sin(2*u) * math.Cos(v)}
			n = [3]float64{-8 * 2 / 60. * math.Cos(2*u) * math.Cos(v), 8 / 50. * math.Sin(2*u) * math.Sin(v), 1}
			return turn(q, x), turn(q, vec3.Scale(n, 1/vec3.Norm(n)))
		})
		s.h, s.wood = 3, tw1()
		for i := range s.axes {
			s.axes[i] = turn(q, rotation(0.3, 0.1, 0)[i])
		}
		s.build(t)
		f, held := make([]float64, s.dofs()), map[int]float64{}
		s.spread(f, func([3]float64) [3]float64 { return turn(q, [3]float64{0.01, 0.02, -0.1}) })
		for i := range 42 {
			held[i] = 0
		}
		return s.solve(t, f, held, nil)
	}
	plain := run(xyzAxes)
	q := rotation(1.1, -0.7, 2.3)
	turned := run(q)
	var diff, size float64
	for i := 0; i < len(plain); i += 3 {
		want := turn(q, [3]float64{plain[i], plain[i+1], plain[i+2]})
		diff = max(diff, vec3.Norm(vec3.Sub(want, [3]float64{turned[i], turned[i+1], turned[i+2]})))
		size = max(size, vec3.Norm(want))
	}
	if diff > 1e-9*size {
		t.Errorf("turned answer off by %.3g, want within 1e-9", diff/size)
	}
}
