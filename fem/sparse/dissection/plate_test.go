package dissection

import (
	"math/rand/v2"
	"slices"
	"testing"
)

// plateGraph returns the graph of a jittered triangular grid of nx by ny nodes,
// 11 mm apart about the origin, and so many rows of nodes attached below its rim,
// which share the rim's plan coordinates.
func plateGraph(nx, ny, wall int, rng *rand.Rand) (g *Graph, xy [][2]float64) {
	const h = 11.0
	at := func(i, j int) int32 { return int32(j*nx + i) }
	var edges [][2]int32
	for j := range ny {
		for i := range nx {
			xy = append(xy, [2]float64{
				h * (float64(i) - float64(nx-1)/2 + 0.4*(rng.Float64()-0.5)),
				h * (float64(j) - float64(ny-1)/2 + 0.4*(rng.Float64()-0.5)),
			})
			if i > 0 {
				edges = append(edges, [2]int32{at(i, j), at(i-1, j)})
			}
			if j > 0 {
				edges = append(edges, [2]int32{at(i, j), at(i, j-1)})
			}
			if i > 0 && j > 0 {
				edges = append(edges, [2]int32{at(i, j), at(i-1, j-1)})
			}
		}
	}
	loop := rimLoop(nx, ny)
	for range wall {
		first := int32(len(xy))
		n := int32(len(loop))
		for k, up := range loop {
			next := loop[(k+1)%len(loop)]
			down, beside := first+int32(k), first+(int32(k)+1)%n
			edges = append(edges, [2]int32{down, up}, [2]int32{down, next}, [2]int32{down, beside})
		}
		below := make([]int32, n)
		for k, up := range loop {
			below[k] = first + int32(k)
			xy = append(xy, xy[up])
		}
		loop = below
	}
	return graphOf(len(xy), edges), xy
}

// rimLoop lists the nodes on the edge of a grid, anticlockwise.
func rimLoop(nx, ny int) (loop []int32) {
	for i := range nx - 1 {
		loop = append(loop, int32(i))
	}
	for j := range ny - 1 {
		loop = append(loop, int32(j*nx+nx-1))
	}
	for i := range nx - 1 {
		loop = append(loop, int32(ny*nx-1-i))
	}
	for j := range ny - 1 {
		loop = append(loop, int32((ny-1-j)*nx))
	}
	return loop
}

// graphOf returns the graph of n nodes with these edges.
func graphOf(n int, edges [][2]int32) *Graph {
	rows := make([][]int32, n)
	for _, e := range edges {
		rows[max(e[0], e[1])] = append(rows[max(e[0], e[1])], min(e[0], e[1]))
	}
	ptr, col := make([]int32, n+1), []int32(nil)
	for i, row := range rows {
		slices.Sort(row)
		col = append(append(col, slices.Compact(row)...), int32(i))
		ptr[i+1] = int32(len(col))
	}
	return NewGraph(n, ptr, col)
}

// TestOrder expects every node once, those asked for at the end, and the same
// order from two calls, also where trees hang on the plate or nothing does.
func TestOrder(t *testing.T) {
	g, xy := plateGraph(40, 30, 2, rand.New(rand.NewPCG(2, 4)))
	star := graphOf(80, func() (e [][2]int32) {
		for i := range int32(79) {
			e = append(e, [2]int32{0, i + 1})
		}
		return e
	}())
	for _, c := range []struct {
		name string
		g    *Graph
		xy   [][2]float64
		last []int32
	}{
		{"plate", g, xy, []int32{17, 400, 3}},
		{"plate without coordinates", g, nil, nil},
		{"plate with a foot", g, xy, footNodes(xy, 70)},
		{"plate with a foot without coordinates", g, nil, footNodes(xy, 70)},
		{"star", star, nil, []int32{5}},
		{"all last", star, nil, []int32{3, 0, 1, 2}},
		{"no edges", graphOf(70, nil), nil, nil},
		{"no nodes", graphOf(0, nil), nil, nil},
	} {
		got, rim := c.g.Order(c.xy, c.last)
		if again, _ := c.g.Order(c.xy, c.last); !slices.Equal(got, again) {
			t.Errorf("%s: two calls give two orders", c.name)
		}
		checkLast(t, c.name, c.g, got[len(got)-len(c.last):], c.last, rim)
		for i, v := range slices.Sorted(slices.Values(got)) {
			if int(v) != i {
				t.Fatalf("%s: place %d of the sorted order holds node %d, want each once", c.name, i, v)
			}
		}
	}
}

// footNodes are the nodes within a square about the middle of the plate, of half a side.
func footNodes(xy [][2]float64, half float64) (out []int32) {
	var mid [2]float64
	for _, p := range xy {
		mid[0], mid[1] = mid[0]+p[0]/float64(len(xy)), mid[1]+p[1]/float64(len(xy))
	}
	for i, p := range xy {
		if max(p[0]-mid[0], mid[0]-p[0], p[1]-mid[1], mid[1]-p[1]) < half {
			out = append(out, int32(i))
		}
	}
	return out
}

// checkLast expects the nodes asked for at the end: first those that only they touch,
// then the rim in the order asked for.
func checkLast(t *testing.T, name string, g *Graph, end, last []int32, rim int) {
	t.Helper()
	if !slices.Equal(slices.Sorted(slices.Values(end)), slices.Sorted(slices.Values(last))) {
		t.Errorf("%s: the order ends with %v, want %v", name, end, last)
	}
	inner, outer := end[:len(end)-rim], end[len(end)-rim:]
	for _, v := range inner {
		for _, w := range g.Neighbours(v) {
			if !slices.Contains(last, w) {
				t.Errorf("%s: node %d comes before the rim and touches %d, which is not one of the last", name, v, w)
			}
		}
	}
	at := -1
	for _, v := range outer {
		next := slices.Index(last, v)
		if next <= at {
			t.Errorf("%s: the rim %v is not in the order of %v", name, outer, last)
		}
		at = next
	}
	if name == "plate with a foot" && (len(inner) < len(last)/2 || len(inner) == len(last)) {
		t.Errorf("%s: %d of %d nodes come before the rim", name, len(inner), len(last))
	}
}
