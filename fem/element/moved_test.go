package element

import (
	"math"
	"testing"

	"archload/fem/vec3"
)

// someMoves are movements with rotations of about half a radian and strains of a few percent.
func someMoves(n int, about [3]float64, at func(i int) [3]float64) []float64 {
	u := make([]float64, 6*n)
	r := newAttitude(about)
	x := uint64(12345)
	for i := range n {
		p := r.shift(at(i))
		for k := range 3 {
			x = x*6364136223846793005 + 1442695040888963407
			u[6*i+k] = p[k] + 0.1*(float64(int64(x>>11))/(1<<52)-1)
			x = x*6364136223846793005 + 1442695040888963407
			u[6*i+3+k] = about[k] + 0.05*(float64(int64(x>>11))/(1<<52)-1)
		}
	}
	return u
}

// movable is an element at finite movements, of n freedoms.
type movable struct {
	name    string
	n       int
	place   func(i int) [3]float64
	pull    func(f, u []float64) float64
	tangent func(k, u []float64)
	linear  func(k []float64)
	lent    func(k, u []float64)
}

func movables(t *testing.T) []movable {
	s, b := oneShell(t, tw1(), 6, 4, true), bentBeam(t)
	return []movable{
		{"shell", 18, func(i int) [3]float64 { return s.frame.corn[i] },
			func(f, u []float64) float64 { return s.PullTo((*[18]float64)(f), (*[18]float64)(u)) },
			func(k, u []float64) { s.TangentTo((*[324]float64)(k), (*[18]float64)(u)) },
			func(k []float64) { s.StiffnessTo((*[324]float64)(k)) },
			func(k, u []float64) { s.StressedTo((*[324]float64)(k), (*[18]float64)(u)) }},
		{"beam", 12, func(i int) [3]float64 { return [2][3]float64{{1, 2, 3}, {9, 4, 2.5}}[i] },
			func(f, u []float64) float64 { return b.PullTo((*[12]float64)(f), (*[12]float64)(u)) },
			func(k, u []float64) { b.TangentTo((*[144]float64)(k), (*[12]float64)(u)) },
			func(k []float64) { b.StiffnessTo((*[144]float64)(k)) },
			func(k, u []float64) { b.StressedTo((*[144]float64)(k), (*[12]float64)(u)) }},
	}
}

func bentBeam(t *testing.T) Beam {
	t.Helper()
	b, err := NewBeam(BeamInput{X: [2][3]float64{{1, 2, 3}, {9, 4, 2.5}}, Offset: [2][3]float64{{0.2, 0, -4}, {0, 0.1, -5}},
		Up: [3]float64{0, 0, 1}, Section: Rectangle{Width: 7, Height: 11, E: 12000, Gxy: 700, Gxz: 500}})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestMovedDerivatives compares force and stiffness with central differences of energy and force,
// and the stiffness without movement with the linear one.
func TestMovedDerivatives(t *testing.T) {
	for _, m := range movables(t) {
		n := m.n
		k, f := make([]float64, n*n), make([]float64, n)
		want := make([]float64, n*n)
		m.tangent(k, make([]float64, n))
		m.linear(want)
		if d := farthest(k, want); d > 1e-12 {
			t.Errorf("%s: stiffness without movement: off by %.2g", m.name, d)
		}
		for _, about := range [][3]float64{{}, {0.4, -0.3, 0.5}, {1.5, 1.2, -1}} {
			u := someMoves(n/6, about, m.place)
			m.pull(f, u)
			m.tangent(k, u)
			diff, rows := make([]float64, n), make([]float64, n*n)
			up, down := make([]float64, n), make([]float64, n)
			for j := range n {
				const step = 1e-5
				v := append([]float64(nil), u...)
				v[j] += step
				ep := m.pull(up, v)
				v[j] -= 2 * step
				em := m.pull(down, v)
				diff[j] = (ep - em) / (2 * step)
				for i := range n {
					rows[n*i+j] = (up[i] - down[i]) / (2 * step)
				}
			}
			if d := farthest(f, diff); d > 1e-7 {
				t.Errorf("%s turned by %v: force off the energy's derivative by %.2g", m.name, about, d)
			}
			if d := farthest(k, rows); d > 1e-7 {
				t.Errorf("%s turned by %v: stiffness off the force's derivative by %.2g", m.name, about, d)
			}
		}
	}
}

// TestStressed holds what stresses lend to the third derivative of the energy where nothing has moved: with strains e
// whose stresses of small movements are s, it is s(u)·e”(v, w) + s(v)·e”(w, u) + s(w)·e”(u, v), each term one of
// StressedTo; the left side is a central difference of TangentTo.
func TestStressed(t *testing.T) {
	for _, m := range movables(t) {
		n := m.n
		u, v, w := make([]float64, n), make([]float64, n), make([]float64, n)
		for i := range n {
			u[i], v[i], w[i] = math.Sin(float64(3*i+1)), math.Cos(float64(i*i)), math.Sin(float64(7*i*i+2))
		}
		form := func(of func(k []float64), a, b []float64) (sum float64) {
			k := make([]float64, n*n)
			of(k)
			for i := range n {
				for j := range n {
					sum += a[i] * k[n*i+j] * b[j]
				}
			}
			return sum
		}
		lent := func(of, a, b []float64) float64 { return form(func(k []float64) { m.lent(k, of) }, a, b) }
		at := func(step float64) float64 {
			x := make([]float64, n)
			for i := range x {
				x[i] = step * u[i]
			}
			return form(func(k []float64) { m.tangent(k, x) }, v, w)
		}
		const step = 1e-4
		want := (at(step) - at(-step)) / (2 * step)
		if got := lent(u, v, w) + lent(v, w, u) + lent(w, u, v); math.Abs(got/want-1) > 1e-6 {
			t.Errorf("%s: stresses lend %.9g, the energy's third derivative is %.9g", m.name, got, want)
		}
	}
}

// TestMovedRigid turns and carries an element without strain: no energy, no force.
func TestMovedRigid(t *testing.T) {
	for _, m := range movables(t) {
		for _, about := range [][3]float64{{0.01, 0, 0.02}, {1, -0.7, 0.4}, {2, 1, -2}} {
			u, f := make([]float64, m.n), make([]float64, m.n)
			r := newAttitude(about)
			for i := range m.n / 6 {
				p := vec3.Add(r.shift(m.place(i)), [3]float64{3, -2, 5})
				copy(u[6*i:], p[:])
				copy(u[6*i+3:], about[:])
			}
			k := make([]float64, m.n*m.n)
			m.linear(k)
			scale := 0.0
			for _, v := range k {
				scale = max(scale, math.Abs(v))
			}
			e := m.pull(f, u)
			for _, v := range f {
				e = max(e, math.Abs(v))
			}
			if e > 1e-12*scale {
				t.Errorf("%s turned by %v: force or energy %.3g, stiffness %.3g", m.name, about, e, scale)
			}
		}
	}
}

// farthest is the largest difference over the largest entry.
func farthest(got, want []float64) float64 {
	d, scale := 0.0, 0.0
	for i, v := range want {
		d, scale = max(d, math.Abs(got[i]-v)), max(scale, math.Abs(v))
	}
	return d / scale
}

// BenchmarkPull is a triangle's force at finite movements.
func BenchmarkPull(b *testing.B) {
	s := oneShell(b, tw1(), 6, 4, true)
	u := [18]float64(someMoves(3, [3]float64{0.02, -0.03, 0.01}, func(i int) [3]float64 { return s.frame.corn[i] }))
	var f [18]float64
	for b.Loop() {
		s.PullTo(&f, &u)
	}
}
