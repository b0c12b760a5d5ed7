package fem

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
)

// TestGrown: after rows have come and gone in any order the factor solves the
// equations of those that are left.
func TestGrown(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 71))
	p := randomContact(rng, 90)
	n := len(p.b)
	g := newGrown(p.a, p.r, p.b)
	active := map[int32]bool{}
	for step := range 60 {
		out, in := map[int32]bool{}, []int32{}
		for i := range int32(n) {
			switch {
			case active[i] && rng.Float64() < []float64{0.01, 0.3}[step%2]:
				out[i] = true
			case !active[i] && rng.Float64() < 0.4:
				in = append(in, i)
			}
		}
		if err := g.drop(out); err != nil {
			t.Fatal(err)
		}
		if err := g.pushMany(in); err != nil {
			t.Fatal(err)
		}
		for i := range out {
			delete(active, i)
		}
		for _, i := range in {
			active[i] = true
		}
		g.compare(t, p, step, len(active))
	}
}

// compare solves by dense elimination too.
func (g *grown) compare(t *testing.T, p *problem, step, active int) {
	t.Helper()
	k := len(g.rows)
	if k != active {
		t.Fatalf("step %d: %d rows, want %d", step, k, active)
	}
	m, rhs := mat.NewDense(k+6, k+6, nil), mat.NewVecDense(k+6, nil)
	var f [6]float64
	for c := range f {
		f[c] = float64(c) - 2
		rhs.SetVec(k+c, f[c])
	}
	for x, i := range g.rows {
		rhs.SetVec(x, -0.7*p.b[i])
		for y, j := range g.rows {
			m.Set(x, y, p.at(i, j))
		}
		for c := range 6 {
			m.Set(x, k+c, p.r[i][c])
			m.Set(k+c, x, p.r[i][c])
		}
	}
	want := mat.NewVecDense(k+6, nil)
	if err := want.SolveVec(m, rhs); err != nil {
		t.Fatal(err)
	}
	along, _, err := g.along(0.7, f)
	if err != nil {
		t.Fatal(err)
	}
	lambda, rho, err := g.solve(rhs.RawVector().Data[:k], f)
	if err != nil {
		t.Fatal(err)
	}
	scale := mat.Norm(want, math.Inf(1))
	for x := range k {
		if w := want.AtVec(x); math.Abs(lambda[x]-w) > 1e-8*scale || math.Abs(along[x]-w) > 1e-8*scale {
			t.Errorf("step %d: row %d carries %.12g and %.12g N, want %.12g", step, g.rows[x], lambda[x], along[x], w)
		}
	}
	for c := range f {
		if w := want.AtVec(k + c); math.Abs(rho[c]-w) > 1e-8*math.Max(scale, 1) {
			t.Errorf("step %d: motion %d is %.12g, want %.12g", step, c, rho[c], w)
		}
	}
}
