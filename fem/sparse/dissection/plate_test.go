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
		{"star", star, nil, []int32{5}},
		{"no edges", graphOf(70, nil), nil, nil},
		{"no nodes", graphOf(0, nil), nil, nil},
	} {
		got := c.g.Order(c.xy, c.last)
		if again := c.g.Order(c.xy, c.last); !slices.Equal(got, again) {
			t.Errorf("%s: two calls give two orders", c.name)
		}
		if end := got[len(got)-len(c.last):]; !slices.Equal(end, c.last) {
			t.Errorf("%s: the order ends with %v, want %v", c.name, end, c.last)
		}
		for i, v := range slices.Sorted(slices.Values(got)) {
			if int(v) != i {
				t.Fatalf("%s: place %d of the sorted order holds node %d, want each once", c.name, i, v)
			}
		}
	}
}
