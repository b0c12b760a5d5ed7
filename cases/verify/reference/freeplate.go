package reference

import (
	"errors"
	"math"
	"slices"

	"archload/materials"

	"gonum.org/v1/gonum/mat"
)

// FreePlate is a rectangle of wood that nothing holds, or that lies on points: the grain along x, the rings across
// y, from its middle. Its thickness goes straight from one long edge to the other.
type FreePlate struct {
	Wood  materials.Orthotropic
	Long  float64    // mm, along x
	Wide  float64    // mm, along y
	Thick [2]float64 // mm, at y = -Wide/2 and Wide/2
	Shear bool       // it strains in shear through the thickness and its sections have inertia; else Kirchhoff's thin plate
}

// freeTrials is the number of Legendre polynomials of a field along each axis.
const freeTrials = 12

// derivative is a field of the plate (0 the deflection, 1 and 2 the rotations in its place's slopes along x and y),
// so many times derived by x and y.
type derivative struct{ field, x, y int }

// squared is an energy: half a coefficient times the square of a sum of derivatives, times a power of the thickness,
// all integrated over the plate.
type squared struct {
	coefficient float64
	power       int
	sum         []derivative
}

// energies lists the strain energy and the kinetic energy by omega², per thickness. Sources: Timoshenko and
// Woinowsky-Krieger, 2nd ed., ch. 11; R. D. Mindlin, J. Appl. Mech. 18 (1951) 31 (both from memory).
func (p *FreePlate) energies() (strain, kinetic []squared) {
	l := PlateLaw(p.Wood, 1)
	rho := p.Wood.Density * 1e-12
	kinetic = []squared{{rho, 1, []derivative{{0, 0, 0}}}}
	cx, cy, cxy := []derivative{{0, 2, 0}}, []derivative{{0, 0, 2}}, []derivative{{0, 1, 1}, {0, 1, 1}}
	if p.Shear {
		cx, cy, cxy = []derivative{{1, 1, 0}}, []derivative{{2, 0, 1}}, []derivative{{1, 0, 1}, {2, 1, 0}}
		strain = append(strain, squared{l.s13, 1, []derivative{{0, 1, 0}, {1, 0, 0}}}, squared{l.s23, 1, []derivative{{0, 0, 1}, {2, 0, 0}}})
		kinetic = append(kinetic, squared{rho / 12, 3, []derivative{{1, 0, 0}}}, squared{rho / 12, 3, []derivative{{2, 0, 0}}})
	}
	both := append(append([]derivative(nil), cx...), cy...)
	return append(strain, squared{l.d11 - l.d12, 3, cx}, squared{l.d22 - l.d12, 3, cy}, squared{l.d12, 3, both}, squared{l.d66, 3, cxy}), kinetic
}

// fields is how many fields the plate has.
func (p *FreePlate) fields() int {
	if p.Shear {
		return 3
	}
	return 1
}

// integrals hold, along one axis, the integrals of two polynomials derived so and so often, times a power of the
// thickness.
type integrals map[[3]int]*mat.Dense

// along integrates over a length; thick is the thickness at a share of it.
func along(length float64, thick func(t float64) float64) func(a, b, power int) *mat.Dense {
	known := integrals{}
	t, w := gauss(40)
	return func(a, b, power int) *mat.Dense {
		if m := known[[3]int{a, b, power}]; m != nil {
			return m
		}
		m := mat.NewDense(freeTrials, freeTrials, nil)
		for i := range t {
			p := legendre(t[i], freeTrials)
			f := w[i] * length * math.Pow(thick(t[i]), float64(power)) / math.Pow(length, float64(a+b))
			for r := range freeTrials {
				for c := range freeTrials {
					m.Set(r, c, m.At(r, c)+f*p[r][a]*p[c][b])
				}
			}
		}
		known[[3]int{a, b, power}] = m
		return m
	}
}

// sum adds energies up: the matrix of twice their sum over the coefficients of all fields.
func (p *FreePlate) sum(list []squared) *mat.SymDense {
	const n = freeTrials
	out := mat.NewSymDense(p.fields()*n*n, nil)
	ix := along(p.Long, func(float64) float64 { return 1 })
	iy := along(p.Wide, func(t float64) float64 { return p.Thick[0] + t*(p.Thick[1]-p.Thick[0]) })
	for _, e := range list {
		for _, a := range e.sum {
			for _, b := range e.sum {
				addProduct(out, a.field, b.field, e.coefficient, ix(a.x, b.x, 0), iy(a.y, b.y, e.power))
			}
		}
	}
	return out
}

// addProduct adds a coefficient times the Kronecker product of x and y to the block of two fields,
// as far as it lies on or above the diagonal.
func addProduct(out *mat.SymDense, field, other int, coefficient float64, x, y *mat.Dense) {
	const n = freeTrials
	for r := range n * n {
		for c := range n * n {
			if i, j := field*n*n+r, other*n*n+c; i <= j {
				out.SetSym(i, j, out.At(i, j)+coefficient*x.At(r/n, c/n)*y.At(r%n, c%n))
			}
		}
	}
}

// Tones are the lowest tones, Hz, by Ritz's method with Legendre polynomials; rigid motions are left out.
func (p *FreePlate) Tones(count int) ([]float64, error) {
	strain, kinetic := p.energies()
	k, m := p.sum(strain), p.sum(kinetic)
	var all []float64
	for _, part := range coupled(k, m) {
		own, err := lowest(among(k, part), among(m, part))
		if err != nil {
			return nil, err
		}
		all = append(all, own...)
	}
	slices.Sort(all)
	const rigid = 3
	var out []float64
	for _, v := range all[rigid : rigid+count] {
		out = append(out, math.Sqrt(v)/(2*math.Pi))
	}
	return out, nil
}

// coupled sorts coefficients into those that move together: a plate that is its own mirror image has shapes that are even and
// odd, which know nothing of each other.
func coupled(k, m *mat.SymDense) [][]int {
	const nothing = 1e-11 // of what two coefficients have by themselves
	n := k.SymmetricDim()
	joined := func(i, j int) bool {
		return math.Abs(k.At(i, j)) > nothing*math.Sqrt(k.At(i, i)*k.At(j, j)) || math.Abs(m.At(i, j)) > nothing*math.Sqrt(m.At(i, i)*m.At(j, j))
	}
	seen := make([]bool, n)
	var parts [][]int
	for first := range n {
		if seen[first] {
			continue
		}
		seen[first] = true
		part := []int{first}
		for at := 0; at < len(part); at++ {
			for j := range n {
				if !seen[j] && joined(part[at], j) {
					seen[j] = true
					part = append(part, j)
				}
			}
		}
		slices.Sort(part)
		parts = append(parts, part)
	}
	return parts
}

// among are the rows and columns of some coefficients.
func among(a *mat.SymDense, part []int) *mat.SymDense {
	out := mat.NewSymDense(len(part), nil)
	for i, p := range part {
		for j, q := range part[:i+1] {
			out.SetSym(i, j, a.At(p, q))
		}
	}
	return out
}

// lowest are the eigenvalues of k x = v m x.
func lowest(k, m *mat.SymDense) ([]float64, error) {
	var ch mat.Cholesky
	if !ch.Factorize(m) {
		return nil, errors.New("ritz: the mass is not positive definite")
	}
	var l mat.TriDense
	ch.LTo(&l)
	var half, whole mat.Dense
	if err := half.Solve(&l, k); err != nil {
		return nil, err
	}
	if err := whole.Solve(&l, half.T()); err != nil {
		return nil, err
	}
	n := k.SymmetricDim()
	s := mat.NewSymDense(n, nil)
	for i := range n {
		for j := i; j < n; j++ {
			s.SetSym(i, j, (whole.At(i, j)+whole.At(j, i))/2)
		}
	}
	var e mat.EigenSym
	if !e.Factorize(s, false) {
		return nil, errors.New("ritz: eigenvalues do not converge")
	}
	return e.Values(nil), nil
}

// Pressed is how far places sink, mm, under a force spread on a rectangle (along x, along y, mm) about a place, on points
// that do not yield.
func (p *FreePlate) Pressed(force float64, at, size [2]float64, supports, gauges [][2]float64) ([]float64, error) {
	strain, _ := p.energies()
	k := p.sum(strain)
	const ground = 1e6 // N/mm
	for _, s := range supports {
		row := p.deflection(s)
		for i, a := range row {
			for j := i; j < len(row); j++ {
				k.SetSym(i, j, k.At(i, j)+ground*a*row[j])
			}
		}
	}
	n := k.SymmetricDim()
	load := mat.NewVecDense(n, nil)
	t, w := gauss(8)
	for i := range t {
		for j := range t {
			for c, v := range p.deflection([2]float64{at[0] + size[0]*(t[i]-0.5), at[1] + size[1]*(t[j]-0.5)}) {
				load.SetVec(c, load.AtVec(c)+force*w[i]*w[j]*v)
			}
		}
	}
	var ch mat.Cholesky
	if !ch.Factorize(k) {
		return nil, errors.New("ritz: the plate is not held")
	}
	c := mat.NewVecDense(n, nil)
	if err := ch.SolveVecTo(c, load); err != nil {
		var bad mat.Condition
		if !errors.As(err, &bad) {
			return nil, err
		}
	}
	var out []float64
	for _, g := range gauges {
		out = append(out, mat.Dot(mat.NewVecDense(n, p.deflection(g)), c))
	}
	return out, nil
}

// deflection is the deflection at a place for each coefficient.
func (p *FreePlate) deflection(at [2]float64) []float64 {
	row := make([]float64, p.fields()*freeTrials*freeTrials)
	x, y := legendre(at[0]/p.Long+0.5, freeTrials), legendre(at[1]/p.Wide+0.5, freeTrials)
	for i := range freeTrials {
		for j := range freeTrials {
			row[freeTrials*i+j] = x[i][0] * y[j][0]
		}
	}
	return row
}
