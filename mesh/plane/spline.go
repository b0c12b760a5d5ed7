package plane

import (
	"math"
	"slices"
	"sort"

	"gonum.org/v1/gonum/mat"
)

// fitCurve returns the cubic of each interval of a closed curve. Between two
// corners the spline starts and ends with constant second derivative
// (parabolic run-out), so that a stretch of two points is straight and one of
// three a parabola; without corners it is periodic.
func fitCurve(pts []Point, corner []bool, knot []float64) []cubic {
	n := len(pts)
	second := make([][2]float64, n+1) // second derivative at the start of each interval
	ends := make([][2]float64, n+1)   // and at its end; they differ at corners
	first := -1
	for i := range n {
		if corner[i] && first < 0 {
			first = i
		}
	}
	if first < 0 {
		second = periodicSecond(pts, knot)
		ends = slices.Concat(second[1:n], second[:1])
	} else {
		for i := first; i < first+n; {
			j := i + 1
			for !corner[j%n] {
				j++
			}
			openSecond(pts, knot, i, j, second, ends)
			i = j
		}
	}
	out := make([]cubic, n)
	for i := range n {
		h := knot[i+1] - knot[i]
		for k := range 2 {
			p, q, a, b := pts[i][k], pts[(i+1)%n][k], second[i][k], ends[i][k]
			out[i][k] = [4]float64{p, (q-p)/h - h*(2*a+b)/6, a / 2, (b - a) / (6 * h)}
		}
	}
	return out
}

// openSecond solves for the second derivatives of the stretch from point i to
// point j (indices beyond n wrap round) and writes them to second and ends.
// Source of the equations: any text on cubic splines, for example C. de Boor,
// A Practical Guide to Splines, chapter IV (from memory).
func openSecond(pts []Point, knot []float64, i, j int, second, ends [][2]float64) {
	n, m := len(pts), j-i-1 // m inner points
	if m == 0 {
		return // straight
	}
	h := func(k int) float64 { k %= n; return knot[k+1] - knot[k] }
	e := newEquations(m, 2)
	for r := range m {
		k := i + 1 + r
		e.diag[r] = 2 * (h(k-1) + h(k))
		if r == 0 {
			e.diag[r] += h(k - 1)
		} else {
			e.beside[r-1] = h(k - 1)
		}
		if r == m-1 {
			e.diag[r] += h(k)
		}
		b := bendRight(pts, k, h(k-1), h(k))
		e.right.SetRow(r, b[:])
	}
	e.solve()
	at := func(r int) [2]float64 { return [2]float64(e.right.RawRowView(min(max(r, 0), m-1))) }
	for k := i; k < j; k++ {
		second[k%n], ends[k%n] = at(k-i-1), at(k-i)
	}
}

// equations is a symmetric tridiagonal system with some right-hand sides.
type equations struct {
	diag, beside []float64 // beside: one shorter
	right        *mat.Dense
}

func newEquations(n, sides int) *equations {
	return &equations{diag: make([]float64, n), beside: make([]float64, n-1), right: mat.NewDense(n, sides, nil)}
}

// solve puts the solutions in place of the right-hand sides. The diagonal of a
// spline's equations dominates, so they are never singular.
func (e *equations) solve() {
	t := mat.NewTridiag(len(e.diag), e.beside, e.diag, e.beside)
	if err := t.SolveTo(e.right, false, e.right); err != nil {
		panic("plane: equations of a spline: " + err.Error())
	}
}

// bendRight is the right-hand side of the spline equation at point k.
func bendRight(pts []Point, k int, hl, hr float64) (out [2]float64) {
	n := len(pts)
	p, q, r := pts[(k-1+n)%n], pts[k%n], pts[(k+1)%n]
	for c := range 2 {
		out[c] = 6 * ((r[c]-q[c])/hr - (q[c]-p[c])/hl)
	}
	return out
}

// periodicSecond solves the cyclic equations by elimination of the last
// unknown: the tridiagonal rest is solved for the right-hand sides and for the
// column of that unknown.
func periodicSecond(pts []Point, knot []float64) [][2]float64 {
	n := len(pts)
	m := n - 1
	h := func(k int) float64 { k = (k + n) % n; return knot[k+1] - knot[k] }
	e := newEquations(m, 3) // two right-hand sides, minus the last column
	for r := range m {
		b := bendRight(pts, r, h(r-1), h(r))
		last := 0.0
		if r == 0 {
			last -= h(-1)
		} else {
			e.beside[r-1] = h(r - 1)
		}
		if r == m-1 {
			last -= h(r)
		}
		e.right.SetRow(r, []float64{b[0], b[1], last})
		e.diag[r] = 2 * (h(r-1) + h(r))
	}
	e.solve()
	sol := e.right.RawRowView
	out := make([][2]float64, n)
	b := bendRight(pts, m, h(m-1), h(m))
	for c := range 2 {
		out[m][c] = (b[c] - h(m-1)*sol(m - 1)[c] - h(m)*sol(0)[c]) /
			(2*(h(m-1)+h(m)) + h(m-1)*sol(m - 1)[2] + h(m)*sol(0)[2])
		for r := range m {
			out[r][c] = sol(r)[c] + out[m][c]*sol(r)[2]
		}
	}
	return out
}

// Total returns the range of the parameter, mm of chord.
func (c *Curve) Total() float64 { return c.knot[len(c.knot)-1] }

// interval returns the interval that holds parameter u in [0, Total].
func (c *Curve) interval(u float64) int {
	i := sort.SearchFloat64s(c.knot, u)
	if i > 0 && (i == len(c.knot) || c.knot[i] > u) {
		i--
	}
	return min(i, len(c.cubic)-1)
}

// Wrap brings a parameter into [0, Total).
func (c *Curve) Wrap(u float64) float64 {
	t := c.Total()
	u = math.Mod(u, t)
	if u < 0 {
		u += t
	}
	if u >= t {
		u = 0
	}
	return u
}

// At returns the point at parameter u; u is cyclic.
func (c *Curve) At(u float64) Point {
	u = c.Wrap(u)
	i := c.interval(u)
	return c.cubic[i].at(u - c.knot[i])
}

func (q *cubic) at(t float64) Point {
	return Point{
		q[0][0] + t*(q[0][1]+t*(q[0][2]+t*q[0][3])),
		q[1][0] + t*(q[1][1]+t*(q[1][2]+t*q[1][3])),
	}
}

// slopes returns the first and second derivative.
func (q *cubic) slopes(t float64) (d, dd Point) {
	for k := range 2 {
		d[k] = q[k][1] + t*(2*q[k][2]+t*3*q[k][3])
		dd[k] = 2*q[k][2] + 6*t*q[k][3]
	}
	return d, dd
}

// flatten cuts each interval into equal steps of the parameter. The second
// derivative of a cubic is linear, so the chord error step²/8 max|x”| is
// known beforehand.
func (c *Curve) flatten(tol float64) (pts []Point, at []float64) {
	most := max(min(1000, 200000/len(c.cubic)), 1)
	for i := range c.cubic {
		h := c.knot[i+1] - c.knot[i]
		_, a := c.cubic[i].slopes(0)
		_, b := c.cubic[i].slopes(h)
		bend := max(math.Hypot(a[0], a[1]), math.Hypot(b[0], b[1]))
		steps := min(max(int(math.Ceil(h*math.Sqrt(bend/(8*tol)))), 1), most)
		for s := range steps {
			t := h * float64(s) / float64(steps)
			pts = append(pts, c.cubic[i].at(t))
			at = append(at, c.knot[i]+t)
		}
	}
	return pts, at
}
