package eigen

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"archload/fem/sparse"
)

// net is nodes joined by springs, the same in all six freedoms of a node times a weight
// each, with unit masses.
type net struct {
	nodes   int
	springs [][2]int32
	ground  []int32 // nodes with a spring to the ground, one for each
	weight  [6]float64
}

func (n net) problem(t *testing.T) *Problem {
	t.Helper()
	elems := make([][]int32, len(n.springs))
	for i := range elems {
		elems[i] = n.springs[i][:]
	}
	p := &Problem{K: sparse.NewMatrix(n.nodes, elems)}
	p.M = p.K.Like()
	k, one := make([]float64, 144), make([]float64, 36)
	for d, w := range n.weight {
		k[13*d], k[13*(d+6)], k[12*d+d+6], k[12*(d+6)+d] = w, w, -w, -w
	}
	for _, e := range n.springs {
		p.K.Add(e[:], k)
	}
	for d, w := range n.weight {
		one[7*d] = w
	}
	for _, v := range n.ground {
		p.K.Add([]int32{v}, one)
	}
	for d := range 6 {
		one[7*d] = 1
	}
	for v := range int32(n.nodes) {
		p.M.Add([]int32{v}, one)
	}
	var err error
	if p.Plan, err = sparse.Analyse(p.K, nil, nil); err != nil {
		t.Fatal(err)
	}
	return p
}

// chain is n nodes in a row, held at both ends by a spring, or free.
func chain(n int, free bool) net {
	c := net{nodes: n}
	for i := range int32(n - 1) {
		c.springs = append(c.springs, [2]int32{i, i + 1})
	}
	if !free {
		c.ground = []int32{0, int32(n - 1)}
	}
	return c
}

// grid is n x m nodes, held all round, or free.
func grid(n, m int, free bool) net {
	g := net{nodes: n * m}
	for i := range n {
		for j := range m {
			at := int32(m*i + j)
			if i+1 < n {
				g.springs = append(g.springs, [2]int32{at, at + int32(m)})
			}
			if j+1 < m {
				g.springs = append(g.springs, [2]int32{at, at + 1})
			}
			if free {
				continue
			}
			for _, edge := range []bool{i == 0, i == n-1, j == 0, j == m-1} {
				if edge {
					g.ground = append(g.ground, at)
				}
			}
		}
	}
	return g
}

// values are those of a chain of n: 4 sin²(k pi / 2(n+1)), k from 1; free: 4 sin²(k pi / 2n)
// from 0.
func values(n int, free bool) []float64 {
	v := make([]float64, n)
	for k := range v {
		s := math.Sin(float64(k+1) * math.Pi / float64(2*(n+1)))
		if free {
			s = math.Sin(float64(k) * math.Pi / float64(2*n))
		}
		v[k] = 4 * s * s
	}
	return v
}

// weighted returns all values of a net of equal springs, sorted.
func weighted(v []float64, weight [6]float64) []float64 {
	var all []float64
	for _, w := range weight {
		for _, x := range v {
			all = append(all, w*x)
		}
	}
	slices.Sort(all)
	return all
}

func sums(a, b []float64) []float64 {
	var all []float64
	for _, x := range a {
		for _, y := range b {
			all = append(all, x+y)
		}
	}
	return all
}

var (
	equal    = [6]float64{1, 1, 1, 1, 1, 1}
	distinct = [6]float64{1, 1.3, 1.7, 2.1, 2.9, 3.7}
)

// Chains and grids have closed solutions (sines and cosines). With equal weights each value
// occurs six times, on a square grid most twelve times: more often than a block is wide.
func TestLowestClosedForm(t *testing.T) {
	for _, c := range []struct {
		name   string
		net    net
		want   []float64
		weight [6]float64
		free   int
		count  int
	}{
		{"chain", chain(300, false), values(300, false), distinct, 0, 20},
		{"chain, each six times", chain(300, false), values(300, false), equal, 0, 30},
		{"free chain", chain(200, true), values(200, true), distinct, 6, 25},
		{"grid", grid(40, 23, false), sums(values(40, false), values(23, false)), distinct, 0, 40},
		{"square grid, up to twelve times", grid(25, 25, false), sums(values(25, false), values(25, false)), equal, 0, 50},
		{"free grid", grid(31, 20, true), sums(values(31, true), values(20, true)), distinct, 6, 30},
		{"a few nodes, all", chain(5, false), values(5, false), distinct, 0, 30},
		{"a few nodes, more than all", chain(4, false), values(4, false), equal, 0, 40},
		{"one node", net{nodes: 1, ground: []int32{0}}, []float64{1}, distinct, 0, 3},
	} {
		c.net.weight = c.weight
		o := Options{Count: c.count, Free: c.free}
		m, err := Lowest(c.net.problem(t), o)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		checkValues(t, c.name, m, weighted(c.want, c.weight), c.count+c.free)
	}
}

func checkValues(t *testing.T, name string, m *Modes, want []float64, count int) {
	t.Helper()
	if len(m.Values) < min(count, len(want)) {
		t.Errorf("%s: %d values, want %d", name, len(m.Values), min(count, len(want)))
	}
	for i, v := range m.Values {
		if i >= len(want) {
			t.Errorf("%s: %d values of %d", name, len(m.Values), len(want))
			return
		}
		if math.Abs(v-want[i]) > 1e-10*(want[i]+m.Shift) {
			t.Errorf("%s: value %d is %.15g, want %.15g", name, i, v, want[i])
			return
		}
		if m.Residuals[i] > 1e-8 {
			t.Errorf("%s: residual %d is %.2g", name, i, m.Residuals[i])
		}
	}
	if m.Proof.Count != len(m.Values) || m.Proof.Noise > 0.1 {
		t.Errorf("%s: %+v for %d values", name, m.Proof, len(m.Values))
	}
	t.Logf("%s: %d values, %d blocks, %d restarts, shift %.3g, %+v", name, len(m.Values), m.Blocks, m.Restarts, m.Shift, m.Proof)
}

// Vectors are M-orthonormal and every run has the same bits.
func TestLowestSameBits(t *testing.T) {
	g := grid(30, 17, false)
	g.weight = equal
	p := g.problem(t)
	var first *Modes
	for workers := 1; workers <= 3; workers++ {
		m, err := Lowest(p, Options{Count: 20, Workers: workers})
		if err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = m
			continue
		}
		same := slices.Equal(m.Values, first.Values) && slices.Equal(m.Residuals, first.Residuals)
		for i := range m.Vectors {
			same = same && slices.Equal(m.Vectors[i], first.Vectors[i])
		}
		if !same {
			t.Errorf("%d workers give other bits than one", workers)
		}
	}
	y := make([]float64, len(first.Vectors[0]))
	for i, x := range first.Vectors {
		p.M.MulTo(y, x)
		for j, o := range first.Vectors {
			want, got := 0.0, 0.0
			if i == j {
				want = 1
			}
			for d, v := range y {
				got += v * o[d]
			}
			if math.Abs(got-want) > 1e-10 {
				t.Errorf("vectors %d and %d: product %.3g, want %g", i, j, got, want)
			}
		}
	}
}

// A basis with little room restarts, and the answer is the same.
func TestRestart(t *testing.T) {
	g := grid(40, 23, false)
	g.weight = distinct
	p := g.problem(t)
	want := weighted(sums(values(40, false), values(23, false)), distinct)
	for _, most := range []int{6, 8} {
		m, err := lowest(p, Options{Count: 20}, most)
		if err != nil {
			t.Fatal(err)
		}
		checkValues(t, fmt.Sprintf("%d octets", most), m, want, 20)
		if m.Restarts == 0 {
			t.Errorf("no restart with room for %d octets", most)
		}
	}
}

// A wrong guess at the scale of a free body is mended.
func TestFreeScale(t *testing.T) {
	g := grid(31, 20, true)
	g.weight = distinct
	p := g.problem(t)
	want := weighted(sums(values(31, true), values(20, true)), distinct)
	for _, scale := range []float64{1e-8, 1e-3, 1, 1e6} {
		m, err := Lowest(p, Options{Count: 10, Free: 6, Scale: scale})
		if err != nil {
			t.Errorf("scale %g: %v", scale, err)
			continue
		}
		checkValues(t, fmt.Sprintf("scale %g", scale), m, want, 16)
	}
}
