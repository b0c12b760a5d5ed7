package element

import (
	"errors"
	"math"
	"testing"

	"archload/fem/vec3"
	"archload/materials"

	"gonum.org/v1/gonum/mat"
)

// shellMesh is a small shell model for the tests of the element alone.
type shellMesh struct {
	x, n    [][3]float64 // nodes, mm; normals, zero for the facet's
	tris    [][3]int
	h       float64
	wood    materials.Orthotropic
	axes    materials.Axes
	pressed bool
	kink    map[int]bool // nodes on a rib
	sh      []Shell
}

var xyzAxes = materials.Axes{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}

// tw1 is the test wood of the verification problems, MPa.
func tw1() materials.Orthotropic {
	return materials.Orthotropic{
		EL: 10000, ER: 780, ET: 500, GLR: 640, GLT: 610, GRT: 30,
		NuLR: 0.37, NuLT: 0.4, NuRT: 0.4, Density: 400,
	}
}

func isotropic(e, nu float64) materials.Orthotropic {
	g := e / (2 * (1 + nu))
	return materials.Orthotropic{EL: e, ER: e, ET: e, GLR: g, GLT: g, GRT: g, NuLR: nu, NuLT: nu, NuRT: nu}
}

// dice is a small linear congruential generator, so that tests repeat.
type dice uint64

// next returns a number in [-1, 1).
func (d *dice) next() float64 {
	*d = *d*6364136223846793005 + 1442695040888963407
	return float64(int64(*d>>11))/(1<<52) - 1
}

// rotation returns a proper rotation matrix from three angles, rad.
func rotation(a, b, c float64) materials.Axes {
	ca, sa, cb, sb, cc, sc := math.Cos(a), math.Sin(a), math.Cos(b), math.Sin(b), math.Cos(c), math.Sin(c)
	return materials.Axes{
		{ca * cb, ca*sb*sc - sa*cc, ca*sb*cc + sa*sc},
		{sa * cb, sa*sb*sc + ca*cc, sa*sb*cc - ca*sc},
		{-sb, cb * sc, cb * cc},
	}
}

func turn(q materials.Axes, v [3]float64) [3]float64 {
	return [3]float64{vec3.Dot(q[0], v), vec3.Dot(q[1], v), vec3.Dot(q[2], v)}
}

// grid returns n x m halved squares on the unit square; shake moves the inner
// nodes by up to that share of the spacing and picks the diagonals at random.
func grid(n, m int, shake float64, seed dice) (uv [][2]float64, tris [][3]int) {
	for j := 0; j <= m; j++ {
		for i := 0; i <= n; i++ {
			u, v := float64(i), float64(j)
			if i > 0 && i < n && j > 0 && j < m {
				u += shake * seed.next()
				v += shake * seed.next()
			}
			uv = append(uv, [2]float64{u / float64(n), v / float64(m)})
		}
	}
	for j := range m {
		for i := range n {
			a := j*(n+1) + i
			b, c, d := a+1, a+n+2, a+n+1
			if shake > 0 && seed.next() > 0 {
				tris = append(tris, [3]int{a, b, d}, [3]int{b, c, d})
			} else {
				tris = append(tris, [3]int{a, b, c}, [3]int{a, c, d})
			}
		}
	}
	return uv, tris
}

// surfaceMesh maps the unit square by at, which returns place and unit normal
// (zero: facet's own).
func surfaceMesh(n, m int, shake float64, at func(u, v float64) (x, nrm [3]float64)) *shellMesh {
	uv, tris := grid(n, m, shake, 7)
	s := &shellMesh{tris: tris, axes: xyzAxes}
	for _, p := range uv {
		x, nrm := at(p[0], p[1])
		s.x, s.n = append(s.x, x), append(s.n, nrm)
	}
	return s
}

// build makes the elements.
func (s *shellMesh) build(t testing.TB) {
	t.Helper()
	comp := s.wood.Compliance()
	s.sh = s.sh[:0]
	for _, tr := range s.tris {
		in := ShellInput{H: s.h, Wood: comp, Axes: s.axes, Pressed: s.pressed}
		for k, a := range tr {
			in.X[k], in.N[k], in.Kink[k] = s.x[a], s.n[a], s.kink[a]
		}
		sh, err := NewShell(in)
		if err != nil {
			t.Fatal(err)
		}
		s.sh = append(s.sh, sh)
	}
}

func (s *shellMesh) dofs() int { return 6 * len(s.x) }

// local picks the displacements of one triangle out of all.
func (s *shellMesh) local(e int, u []float64) (v [18]float64) {
	for k, a := range s.tris[e] {
		copy(v[6*k:6*k+6], u[6*a:6*a+6])
	}
	return v
}

// band returns the half band width of the stiffness in degrees of freedom.
func (s *shellMesh) band() int {
	w := 0
	for _, t := range s.tris {
		w = max(w, t[0]-t[1], t[1]-t[0], t[1]-t[2], t[2]-t[1], t[0]-t[2], t[2]-t[0])
	}
	return 6*w + 5
}

// dense returns the assembled stiffness as a dense matrix.
func (s *shellMesh) dense() *mat.SymDense {
	k := mat.NewSymDense(s.dofs(), nil)
	s.each(func(i, j int, v float64) { k.SetSym(i, j, k.At(i, j)+v) })
	return k
}

// each hands every upper-triangle entry of every element matrix to put.
func (s *shellMesh) each(put func(i, j int, v float64)) {
	var k [324]float64
	for e := range s.sh {
		s.sh[e].StiffnessTo(&k)
		scatter(k[:], s.tris[e][:], put)
	}
}

// scatter hands the entries with i <= j of an element matrix to put.
func scatter(k []float64, nodes []int, put func(i, j int, v float64)) {
	n := 6 * len(nodes)
	for a := range n {
		i := 6*nodes[a/6] + a%6
		for b := range n {
			if j := 6*nodes[b/6] + b%6; i <= j {
				put(i, j, k[n*a+b])
			}
		}
	}
}

// solve returns the displacements under the forces f with the given prescribed
// values (dof -> value). extra, if not nil, adds further element matrices.
func (s *shellMesh) solve(t testing.TB, f []float64, held map[int]float64, extra func(put func(i, j int, v float64))) []float64 {
	t.Helper()
	n, w := s.dofs(), s.band()
	k := mat.NewSymBandDense(n, w, nil)
	put := func(i, j int, v float64) { k.SetSymBand(i, j, k.At(i, j)+v) }
	s.each(put)
	if extra != nil {
		extra(put)
	}
	b := append([]float64(nil), f...)
	for i, v := range held {
		for j := max(0, i-w); j <= min(n-1, i+w); j++ {
			if _, ok := held[j]; !ok {
				b[j] -= k.At(i, j) * v
			}
		}
	}
	for i, v := range held {
		for j := max(0, i-w); j <= min(n-1, i+w); j++ {
			k.SetSymBand(i, j, 0)
		}
		k.SetSymBand(i, i, 1)
		b[i] = v
	}
	var c mat.BandCholesky
	if !c.Factorize(k) {
		t.Fatal("stiffness of the test model is not positive definite")
	}
	x := mat.NewVecDense(n, nil)
	if err := c.SolveVecTo(x, mat.NewVecDense(n, b)); err != nil {
		if !errors.As(err, new(mat.Condition)) { // a large condition number alone is no fault
			t.Fatal(err)
		}
	}
	return x.RawVector().Data
}

// spread adds the equivalent forces of a load per area (N/mm² of the mid-surface)
// by the three-point rule at the edge midpoints and linked interpolation.
func (s *shellMesh) spread(f []float64, load func(x [3]float64) [3]float64) {
	for e, tr := range s.tris {
		for k := range 3 {
			l := [3]float64{0.5, 0.5, 0.5}
			l[k] = 0
			var x [3]float64
			for i, a := range tr {
				x = vec3.Add(x, vec3.Scale(s.x[a], l[i]))
			}
			p := vec3.Scale(load(x), s.sh[e].Area()/3)
			rows := s.sh[e].RowsAt(l, 0)
			for d, r := range rows {
				for i, v := range r {
					f[6*tr[i/6]+i%6] += v * p[d]
				}
			}
		}
	}
}

const degree = math.Pi / 180

func at(axis int, value float64) func(x [3]float64) bool {
	return func(x [3]float64) bool { return math.Abs(x[axis]-value) < 1e-9*(1+math.Abs(value)) }
}

func everywhere([3]float64) bool { return true }

// hold fixes the degrees of freedom named in dofs ("xyzXYZ", capitals rotate) at
// the nodes that pick selects.
func (s *shellMesh) hold(held map[int]float64, dofs string, pick func(x [3]float64) bool) {
	for i, x := range s.x {
		if !pick(x) {
			continue
		}
		for _, c := range dofs {
			for d, r := range "xyzXYZ" {
				if r == c {
					held[6*i+d] = 0
				}
			}
		}
	}
}

// energy returns the strain energy of all elements, N mm.
func (s *shellMesh) energy(u []float64) (sum float64) {
	for e := range s.sh {
		v := s.local(e, u)
		m, b, q := s.sh[e].Energy(&v)
		sum += m + b + q
	}
	return sum
}

func within(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s: got %.10g, want %.10g within %g (error %.3g %%)", what, got, want, tol, 100*(got/want-1))
	}
}
