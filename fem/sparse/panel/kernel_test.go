package panel

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// kernelCase is a problem for every kernel, with spare room after each operand
// that must stay as it is.
type kernelCase struct {
	nodes, depth, cols int // tiles; columns of the panel; columns of the vectors
	c, a, b, tri       []float64
	off                []int32
}

func newKernelCase(rng *rand.Rand, nodes, depth, cols int) kernelCase {
	k := kernelCase{nodes: nodes, depth: depth, cols: cols}
	width := max(depth, Block*nodes, cols)
	k.off = pairRows(nodes, width)
	k.c = randomVector(rng, TileLen*nodes+16)
	k.a = randomVector(rng, 10*Rows*width+16)
	k.b = randomVector(rng, (Block*nodes/Rows+2)*Rows*width+16)
	k.tri = randomVector(rng, BlockLen*nodes)
	for i := range nodes {
		for d := range Block {
			k.tri[BlockLen*i+7*d] = 0.5 // well conditioned
		}
	}
	return k
}

// run calls one kernel on copies and returns all it may have written.
func (k kernelCase) run(name string, kn Kernels) []float64 {
	c, a := slices.Clone(k.c), slices.Clone(k.a)
	switch name {
	case "gemm":
		kn.Gemm(c, a[:Rows*k.depth], k.b, k.off)
	case "gemm0":
		kn.Gemm0(c, a[:Rows*k.depth], k.b, k.off)
	case "solve":
		kn.Solve(a, k.b, k.off, k.tri)
	case "trsm":
		kn.Trsm(c, k.tri)
	case "trsmt":
		kn.TrsmT(c, k.tri)
	case "gemmt":
		kn.GemmT(c[:TileLen*k.nodes], a[:192], k.b, len(k.b)/3/8*8-TileLen*k.nodes/3)
	case "gemv":
		kn.Gemv(c, a, k.b[:k.cols])
	case "gemvt":
		kn.GemvT(c[:min(k.cols, len(c))], a, k.b)
	case "addPairs":
		kn.AddPairs(c, a, min(k.cols, Block*k.nodes))
	}
	if pairs, ok := panelPlaces[name]; ok {
		cols := min(k.cols, Block*k.nodes-1)
		dst := [4][]float64{c[pairs[0]:], c[pairs[1]:], c[pairs[2]:], a[pairs[3]:]}
		if pairs[3] > pairs[2] {
			dst[3] = c[pairs[3]:]
		}
		kn.AddPanel(&dst, Rows, k.b[:Rows*cols])
	}
	return slices.Concat(c, a)
}

// panelPlaces are where the four pairs of rows of a panel may go: side by side, two
// and two, two in the middle, or none; the last pair goes to another panel if its
// place is before that of the third.
var panelPlaces = map[string][4]int{
	"addPanel 8":    {0, 2, 4, 6},
	"addPanel 44":   {4, 6, 0, 2},
	"addPanel 242":  {6, 0, 2, 1},
	"addPanel 2222": {4, 0, 6, 2},
}

// TestKernels compares the kernels of this processor with the portable ones, which
// TestPortable checks. On a processor without AVX2 both are the same.
func TestKernels(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 3))
	for _, name := range []string{"gemm", "gemm0", "solve", "trsm", "trsmt", "gemmt", "gemv", "gemvt", "addPairs",
		"addPanel 8", "addPanel 44", "addPanel 242", "addPanel 2222"} {
		for nodes := 1; nodes <= 9; nodes++ {
			for _, depth := range []int{2, 6, 12, 48, 192} {
				cols := nodes + depth/6%3 // 1 .. 11
				k := newKernelCase(rng, nodes, depth, cols)
				got, want := k.run(name, Fast()), k.run(name, Kernels{})
				if d := apart(got, want); !(d <= 1e-13) {
					t.Fatalf("%s, %d nodes, depth %d, %d columns: %g off the portable kernel", name, nodes, depth, cols, d)
				}
			}
		}
	}
}

// TestPortable checks the portable kernels against their definitions.
func TestPortable(t *testing.T) {
	rng := rand.New(rand.NewPCG(12, 4))
	const nodes, depth, cols = 5, 18, 11
	k := newKernelCase(rng, nodes, depth, cols)
	check := func(name string, got, want []float64) {
		t.Helper()
		if d := apart(got, want); !(d <= 1e-13) {
			t.Errorf("%s is %g off its definition", name, d)
		}
	}
	got, want := k.run("gemm", Kernels{})[:len(k.c)], slices.Clone(k.c)
	for i := range nodes * TileLen {
		t, s, r := i/TileLen, i%TileLen/8, i%8
		for l := range depth {
			want[i] -= k.a[8*l+r] * k.b[int(k.off[3*t+s/2])+8*l+s%2]
		}
	}
	check("gemm", got, want)
	got = k.run("gemm0", Kernels{})[:len(k.c)]
	for i := range nodes * TileLen {
		want[i] -= k.c[i]
	}
	check("gemm0", got, want)
	got, want = k.run("addPanel 242", Kernels{})[:len(k.c)+len(k.a)], slices.Concat(k.c, k.a)
	for l := range cols {
		for i, at := range [8]int{6, 7, 0, 1, 2, 3, len(k.c) + 1, len(k.c) + 2} {
			want[at+8*(l+1)] += k.b[8*l+i]
		}
	}
	check("addPanel", got, want)

	stride := len(k.b)/3/8*8 - TileLen*nodes/3
	got, want = k.run("gemmt", Kernels{})[:len(k.c)], slices.Clone(k.c)
	for i := range nodes * TileLen {
		for l := range 24 {
			want[i] -= k.a[8*l+i%8] * k.b[l/8*stride+i/8*8+l%8]
		}
	}
	check("gemmt", got, want)

	got, want = k.run("gemv", Kernels{})[:8], slices.Clone(k.c[:8])
	gotT, wantT := k.run("gemvt", Kernels{})[:cols], slices.Clone(k.c[:cols])
	for l := range cols {
		for r := range 8 {
			want[r] -= k.a[8*l+r] * k.b[l]
			wantT[l] -= k.a[8*l+r] * k.b[r]
		}
	}
	check("gemv", got, want)
	check("gemvt", gotT, wantT)
	checkTriangular(k, check)
}

// checkTriangular multiplies the solutions back.
func checkTriangular(k kernelCase, check func(string, []float64, []float64)) {
	lower := func(node, i, j int) float64 { // entry of a node's 6 x 6 factor
		v := k.tri[BlockLen*node+Block*i+j]
		if i == j {
			return 1 / v
		}
		return v
	}
	x, xt := k.run("trsm", Kernels{}), k.run("trsmt", Kernels{})
	got, gotT := make([]float64, TileLen), make([]float64, TileLen)
	for r := range 8 {
		for i := range Block {
			for j := range i + 1 {
				got[8*i+r] += x[8*j+r] * lower(0, i, j)
				gotT[8*j+r] += xt[8*i+r] * lower(0, i, j)
			}
		}
	}
	check("trsm", got, k.c[:TileLen])
	check("trsmt", gotT, k.c[:TileLen])

	x = k.run("solve", Kernels{})[len(k.c):]
	got = make([]float64, TileLen*k.nodes)
	for i := range Block * k.nodes {
		node, s := i/Block, i%Block
		for r := range 8 {
			for l := range Block * node {
				got[8*i+r] += x[8*l+r] * k.b[int(k.off[3*node+s/2])+8*l+s%2]
			}
			for c := range s + 1 {
				got[8*i+r] += x[8*(Block*node+c)+r] * lower(node, s, c)
			}
		}
	}
	check("solve", got, k.a[:len(got)])
}

// pairRows is where the pairs of rows of some nodes begin in a rectangle of so many columns in panels.
func pairRows(nodes, cols int) (off []int32) {
	for i := range 3 * nodes {
		off = append(off, int32(2*i/Rows*Rows*cols+2*i%Rows))
	}
	return off
}

func randomVector(rng *rand.Rand, n int) []float64 {
	x := make([]float64, n)
	for i := range x {
		x[i] = rng.NormFloat64()
	}
	return x
}

// apart is the greatest difference of two vectors, over the greatest value of the second.
func apart(x, y []float64) float64 {
	off, most := 0.0, 0.0
	for i, v := range y {
		off, most = max(off, math.Abs(x[i]-v)), max(most, math.Abs(v))
	}
	if off == 0 {
		return 0
	}
	return off / most
}
