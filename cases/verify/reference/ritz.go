package reference

import (
	"errors"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mat"
)

// trial is a family of functions of t on [0, 1], as value, first and second
// derivative: t = 0 is the middle of the plate, a line of symmetry, t = 1 its
// edge.
type trial func(t float64) [][3]float64

// legendre returns P0 ... Pn-1 of 2 t - 1 with two derivatives by t.
func legendre(t float64, n int) [][3]float64 {
	s := 2*t - 1
	p := make([][3]float64, n)
	p[0] = [3]float64{1, 0, 0}
	if n > 1 {
		p[1] = [3]float64{s, 2, 0}
	}
	for k := 2; k < n; k++ {
		f := float64(k)
		a, b := p[k-1], p[k-2]
		p[k] = [3]float64{
			((2*f-1)*s*a[0] - (f-1)*b[0]) / f,
			((2*f-1)*(2*a[0]+s*a[1]) - (f-1)*b[1]) / f,
			((2*f-1)*(4*a[1]+s*a[2]) - (f-1)*b[2]) / f,
		}
	}
	return p
}

// product multiplies two functions with their derivatives.
func product(a, b [3]float64) [3]float64 {
	return [3]float64{a[0] * b[0], a[1]*b[0] + a[0]*b[1], a[2]*b[0] + 2*a[1]*b[1] + a[0]*b[2]}
}

// trials is the number of functions a field has along each axis.
const trials = 10

// weighted is the family f(t) times Legendre polynomials, after some functions
// of its own.
func weighted(f func(t float64) [3]float64, own ...func(t float64) [3]float64) trial {
	return func(t float64) [][3]float64 {
		var out [][3]float64
		for _, g := range own {
			out = append(out, g(t))
		}
		for _, p := range legendre(t, trials-len(own)) {
			out = append(out, product(f(t), p))
		}
		return out
	}
}

// deflection is even about the middle and held at the edge: clamped, or
// supported.
func deflection(clamped bool) trial {
	square := func(t float64) [3]float64 { return [3]float64{t * t, 2 * t, 2} }
	zero := func(t float64) [3]float64 { return [3]float64{1 - t, -1, 0} }
	if clamped {
		both := func(t float64) [3]float64 { return product(square(t), product(zero(t), zero(t))) }
		return weighted(both, func(t float64) [3]float64 {
			return product(product(zero(t), zero(t)), [3]float64{1 + 2*t, 2, 0})
		})
	}
	return weighted(func(t float64) [3]float64 { return product(square(t), zero(t)) },
		func(t float64) [3]float64 { return [3]float64{1 - t*t, -2 * t, -2} })
}

// held is zero at the edge and anything in the middle, with a kink there too.
func held() trial {
	return weighted(func(t float64) [3]float64 { return [3]float64{1 - t, -1, 0} })
}

// odd is zero in the middle and at the edge.
func odd() trial {
	return weighted(func(t float64) [3]float64 { return [3]float64{t * (1 - t), 1 - 2*t, -2} })
}

// field is one unknown function of a quarter plate: the product of a family
// along x and one along y.
type field struct{ x, y trial }

// ritz is a quarter of a plate a x b, x along a, on which the total energy is
// made least (W. Ritz, J. reine angew. Math. 135 (1909) 1).
type ritz struct {
	a, b   float64
	fields []field
	law    *mat.SymDense // of the strain measures
	// strain gives the strain measures of a unit of field f whose value and
	// derivatives at a place are v[i][j]: i times by x, j times by y.
	strain func(f int, v *[3][3]float64) []float64
	load   float64 // per area, on the first field
	rib    *rib
}

// rib is a bar along y = 0 of the whole plate's length, d above the mid-plane.
type rib struct{ ea, ei, d float64 }

// solution is a Ritz solution.
type solution struct {
	*ritz
	c []float64
}

// at returns the values of field f, with derivatives, for each of its
// functions.
func (r *ritz) at(f int, tx, ty float64) [][3][3]float64 {
	var out [][3][3]float64
	hx, hy := 2/r.a, 2/r.b
	sx, sy := [3]float64{1, hx, hx * hx}, [3]float64{1, hy, hy * hy}
	for _, x := range r.fields[f].x(tx) {
		for _, y := range r.fields[f].y(ty) {
			var v [3][3]float64
			for i := range 3 {
				for j := range 3 {
					v[i][j] = x[i] * sx[i] * y[j] * sy[j]
				}
			}
			out = append(out, v)
		}
	}
	return out
}

// rows returns the strain measures of every function at a place.
func (r *ritz) rows(tx, ty float64) *mat.Dense {
	var b [][]float64
	for f := range r.fields {
		for _, v := range r.at(f, tx, ty) {
			b = append(b, r.strain(f, &v))
		}
	}
	m := mat.NewDense(len(b[0]), len(b), nil)
	for j, col := range b {
		m.SetCol(j, col)
	}
	return m
}

// gauss returns the points and weights of Gauss's rule on [0, 1].
func gauss(n int) (t, w []float64) {
	t, w = make([]float64, n), make([]float64, n)
	quad.Legendre{}.FixedLocations(t, w, 0, 1)
	return t, w
}

// solve makes the energy least.
func (r *ritz) solve() (*solution, error) {
	n := 0
	for f := range r.fields {
		n += len(r.at(f, 0.5, 0.5))
	}
	k, load := mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
	t, w := gauss(24)
	var db, bdb mat.Dense
	for i := range t {
		for j := range t {
			area := w[i] * w[j] * r.a * r.b / 4
			b := r.rows(t[i], t[j])
			db.Mul(r.law, b)
			bdb.Mul(b.T(), &db)
			addSym(k, &bdb, area)
			for m, v := range r.at(0, t[i], t[j]) {
				load.SetVec(m, load.AtVec(m)+area*r.load*v[0][0])
			}
		}
		r.addRib(k, t[i], w[i]*r.a/2)
	}
	var ch mat.Cholesky
	if !ch.Factorize(k) {
		return nil, errors.New("ritz: the energy is not positive definite")
	}
	c := mat.NewVecDense(n, nil)
	if err := ch.SolveVecTo(c, load); err != nil {
		var bad mat.Condition
		if !errors.As(err, &bad) {
			return nil, err
		}
	}
	return &solution{ritz: r, c: c.RawVector().Data}, nil
}

func addSym(k *mat.SymDense, m *mat.Dense, f float64) {
	n := k.SymmetricDim()
	for i := range n {
		for j := i; j < n; j++ {
			k.SetSym(i, j, k.At(i, j)+f*m.At(i, j))
		}
	}
}

// addRib adds half the rib: the other half belongs to the other side of y = 0.
func (r *ritz) addRib(k *mat.SymDense, tx, weight float64) {
	if r.rib == nil {
		return
	}
	axial, bend := r.ribRows(tx)
	for i := range axial {
		for j := i; j < len(axial); j++ {
			k.SetSym(i, j, k.At(i, j)+weight/2*(r.rib.ea*axial[i]*axial[j]+r.rib.ei*bend[i]*bend[j]))
		}
	}
}

// ribRows returns the rib's strain u,x - d w,xx and its curvature w,xx for
// every function; fields are w, u, v.
func (r *ritz) ribRows(tx float64) (axial, bend []float64) {
	for f := range r.fields {
		for _, v := range r.at(f, tx, 0) {
			var e, c float64
			switch f {
			case 0:
				e, c = -r.rib.d*v[2][0], v[2][0]
			case 1:
				e = v[1][0]
			}
			axial, bend = append(axial, e), append(bend, c)
		}
	}
	return axial, bend
}

// first returns the first field at a place.
func (s *solution) first(tx, ty float64) (sum float64) {
	for i, v := range s.at(0, tx, ty) {
		sum += s.c[i] * v[0][0]
	}
	return sum
}

// force returns the law times the strain measures at a place.
func (s *solution) force(tx, ty float64) []float64 {
	var e, f mat.VecDense
	e.MulVec(s.rows(tx, ty), mat.NewVecDense(len(s.c), s.c))
	f.MulVec(s.law, &e)
	return f.RawVector().Data
}
