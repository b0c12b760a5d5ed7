package sparse

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// TestActiveCholesky takes rows of a dense matrix in a random order, gives some back on the
// way, and checks forces, sides and what is left of them by multiplying back.
func TestActiveCholesky(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 29))
	c := &ActiveCholesky{} // one for all: what is left in its memory must not matter
	for _, n := range []int{300, 1, 7, 8, 50, 131, 300} {
		a := randomDense(rng, n)
		order := make([]int32, n)
		for i, v := range rng.Perm(n) {
			order[i] = int32(v)
		}
		follow := n / (1 + n%3)
		rhs := randomVector(rng, n)
		c.Reset(a, ActiveOrder{Rows: order, Follow: follow, Likely: n - n/8}, 1+n%2)
		side := c.AddSide(rhs)
		var rows []int32
		for _, r := range rng.Perm(n)[:(2*n+2)/3] {
			if err := c.Take(int32(r)); err != nil {
				t.Fatal(err)
			}
			rows = append(rows, int32(r))
			if back := len(rows) - 1 - rng.IntN(3); rng.IntN(5) == 0 && c.InBatch(max(back, 0)) {
				c.Cut(max(back, 0))
				rows = rows[:max(back, 0)]
			}
		}
		late := c.AddSide(rhs)
		for _, s := range []*Side{side, late} {
			checkActive(t, c, s, a, rhs, rows, follow)
		}
	}
}

// randomDense is a symmetric positive definite matrix, row-major.
func randomDense(rng *rand.Rand, n int) []float64 {
	x := randomVector(rng, n*n)
	a := make([]float64, n*n)
	for i := range n {
		for j := range i + 1 {
			for k := range n {
				a[i*n+j] += x[i*n+k] * x[j*n+k]
			}
			if i == j {
				a[i*n+i] += float64(n)
			}
			a[j*n+i] = a[i*n+j]
		}
	}
	return a
}

// checkActive solves with the rows taken and wants A x = b in them, and b − A x left
// in the others.
func checkActive(t *testing.T, c *ActiveCholesky, s *Side, a, b []float64, rows []int32, follow int) {
	t.Helper()
	n := len(b)
	x, rest := make([]float64, len(rows)), make([]float64, c.Places())
	c.Back([][]float64{x}, rows, [][]float64{s.Y})
	c.Rest(rest, []*Side{s}, []float64{1})
	for i := range n {
		want := b[i]
		for k, r := range rows {
			want -= a[i*n+int(r)] * x[k]
		}
		got := rest[c.Place(int32(i))]
		if c.Place(int32(i)) >= follow {
			continue
		}
		if slices.Contains(rows, int32(i)) {
			got = 0
		}
		if math.Abs(got-want) > 1e-11*float64(n) {
			t.Fatalf("%d rows, %d taken: row %d is left with %.14g, want %.14g", n, len(rows), i, got, want)
		}
	}
}

// TestActiveCholeskyWorkers: the bits do not depend on the number of workers.
func TestActiveCholeskyWorkers(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 30))
	const n = 200
	a, rhs, order := randomDense(rng, n), randomVector(rng, n), make([]int32, n)
	for i := range order {
		order[i] = int32(i)
	}
	var want []float64
	for workers := 1; workers <= 3; workers++ {
		c := &ActiveCholesky{}
		c.Reset(a, ActiveOrder{Rows: order, Follow: n / 2, Likely: n - n/8}, workers)
		s := c.AddSide(rhs)
		for _, r := range rand.New(rand.NewPCG(1, 2)).Perm(n)[:150] {
			if err := c.Take(int32(r)); err != nil {
				t.Fatal(err)
			}
		}
		xs, ts := make([][]float64, 11), make([][]float64, 11)
		for i := range xs {
			xs[i], ts[i] = make([]float64, n), s.Y[:13*(i+1)]
		}
		c.Back(xs, order, ts)
		got := slices.Concat(xs...)
		if want == nil {
			want = got
		}
		if !slices.Equal(got, want) {
			t.Errorf("%d workers give other bits than one", workers)
		}
	}
}

// TestActiveCholeskyRefuses: a row that adds nothing is refused, and the factor stays.
func TestActiveCholeskyRefuses(t *testing.T) {
	c := &ActiveCholesky{}
	c.Reset([]float64{4, 2, 2, 1}, ActiveOrder{Rows: []int32{0, 1}, Follow: 2}, 1)
	if err := c.Take(0); err != nil {
		t.Fatal(err)
	}
	if c.Take(1) == nil {
		t.Error("a singular matrix is taken for positive definite")
	}
	if c.Len() != 1 || c.Taken(1) {
		t.Errorf("%d rows taken, want the first alone", c.Len())
	}
}
