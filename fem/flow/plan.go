package flow

import (
	"fmt"
	"math"

	"archload/fem"
	"archload/mesh"
)

// plan is the plate's triangles in plan, with nodes numbered afresh.
type plan struct {
	shell  []int32         // model shell of each triangle
	tris   [][3]int32      // anticlockwise
	node   []int32         // model node of each node
	local  []int32         // node of each model node; -1 off the plate
	pts    [][2]float64    // mm
	area   []float64       // mm²
	grad   [][3][2]float64 // of the corners' hat functions, 1/mm
	beyond [][3]int32      // triangle beyond edge k (corner k to k+1); -1 none
	fan    [][]corner      // triangles about each node, anticlockwise
}

// corner is one corner of a triangle.
type corner struct {
	tri int32
	k   int
}

func newPlan(m *fem.Model) (*plan, error) {
	p := &plan{local: make([]int32, len(m.Nodes))}
	for i := range p.local {
		p.local[i] = -1
	}
	for i := range m.Shells {
		e := &m.Shells[i]
		if m.Sections[e.Section].Part != 0 {
			continue
		}
		var t [3]int32
		for k, n := range e.Nodes {
			if p.local[n] < 0 {
				p.local[n] = int32(len(p.node))
				p.node = append(p.node, n)
				x := m.Nodes[n].P
				p.pts = append(p.pts, [2]float64{x[0], x[1]})
			}
			t[k] = p.local[n]
		}
		p.shell, p.tris = append(p.shell, int32(i)), append(p.tris, t)
	}
	if err := p.measure(); err != nil {
		return nil, err
	}
	p.join()
	p.sortFans()
	return p, p.checkFans()
}

// measure fills areas and gradients.
func (p *plan) measure() error {
	p.area, p.grad = make([]float64, len(p.tris)), make([][3][2]float64, len(p.tris))
	for t := range p.tris {
		var x [3][2]float64
		for k, n := range p.tris[t] {
			x[k] = p.pts[n]
		}
		twice := cross2(sub2(x[1], x[0]), sub2(x[2], x[0]))
		if !(twice > 0) {
			return fmt.Errorf("load flow: triangle at (%.1f, %.1f): want anticlockwise in plan, found twice the area %g mm²", x[0][0], x[0][1], twice)
		}
		p.area[t] = twice / 2
		for k := range x {
			a, b := x[(k+1)%3], x[(k+2)%3]
			p.grad[t][k] = [2]float64{(a[1] - b[1]) / twice, (b[0] - a[0]) / twice}
		}
	}
	return nil
}

// join finds the neighbours of every triangle.
func (p *plan) join() {
	owner := make(map[[2]int32]int32, 3*len(p.tris))
	for t, v := range p.tris {
		for k := range 3 {
			owner[[2]int32{v[k], v[(k+1)%3]}] = int32(t)
		}
	}
	p.beyond = make([][3]int32, len(p.tris))
	for t, v := range p.tris {
		for k := range 3 {
			o, ok := owner[[2]int32{v[(k+1)%3], v[k]}]
			if !ok {
				o = -1
			}
			p.beyond[t][k] = o
		}
	}
}

// sortFans orders the triangles about each node anticlockwise; at the edge of
// the plate the fan begins at the edge.
func (p *plan) sortFans() {
	p.fan = make([][]corner, len(p.node))
	for t, v := range p.tris {
		for k, n := range v {
			if p.beyond[t][k] < 0 { // nothing clockwise of it
				p.fan[n] = p.walkFan(corner{int32(t), k})
			}
		}
	}
	for t, v := range p.tris {
		for k, n := range v {
			if p.fan[n] == nil {
				p.fan[n] = p.walkFan(corner{int32(t), k})
			}
		}
	}
}

// checkFans refuses a plate that hangs together by a single node somewhere:
// lines of force cannot pass there.
func (p *plan) checkFans() error {
	have := make([]int, len(p.node))
	for _, v := range p.tris {
		for _, n := range v {
			have[n]++
		}
	}
	for n, c := range have {
		if c != len(p.fan[n]) {
			return fmt.Errorf("load flow: the plate at (%.1f, %.1f) hangs together by a point, want an edge", p.pts[n][0], p.pts[n][1])
		}
	}
	return nil
}

// walkFan lists the triangles about a corner's node from that corner on.
func (p *plan) walkFan(first corner) []corner {
	out := []corner{first}
	for c := first; ; {
		t := p.beyond[c.tri][(c.k+2)%3]
		if t < 0 || t == first.tri {
			return out
		}
		c = corner{t, p.cornerOf(t, p.tris[c.tri][c.k])}
		out = append(out, c)
	}
}

// around lists the triangles about a node.
func (p *plan) around(n int32) []int32 {
	out := make([]int32, len(p.fan[n]))
	for i, c := range p.fan[n] {
		out[i] = c.tri
	}
	return out
}

// cornerOf tells which corner of triangle t is node n.
func (p *plan) cornerOf(t, n int32) int {
	for k, m := range p.tris[t] {
		if m == n {
			return k
		}
	}
	panic("fem: a fan's triangle without its node") // neighbours share their nodes
}

// open tells whether a node lies on an edge of the plate.
func (p *plan) open(n int32) bool {
	c := p.fan[n][0]
	return p.beyond[c.tri][c.k] < 0
}

// middle is the middle of edge k of triangle t, mm.
func (p *plan) middle(t int32, k int) [2]float64 {
	a, b := p.pts[p.tris[t][k]], p.pts[p.tris[t][(k+1)%3]]
	return [2]float64{(a[0] + b[0]) / 2, (a[1] + b[1]) / 2}
}

// length is the length of edge k of triangle t, mm.
func (p *plan) length(t int32, k int) float64 {
	d := sub2(p.pts[p.tris[t][(k+1)%3]], p.pts[p.tris[t][k]])
	return math.Hypot(d[0], d[1])
}

// outflow returns -∫ t·grad v for each node's hat function v, N: what flows
// out of the node.
func (p *plan) outflow(t [][2]float64) []float64 {
	out := make([]float64, len(p.node))
	for i, v := range p.tris {
		for k, n := range v {
			g := p.grad[i][k]
			out[n] -= p.area[i] * (t[i][0]*g[0] + t[i][1]*g[1])
		}
	}
	return out
}

// gradient of nodal values in triangle t.
func (p *plan) gradient(t int, v []float64) (g [2]float64) {
	for k, n := range p.tris[t] {
		g[0] += v[n] * p.grad[t][k][0]
		g[1] += v[n] * p.grad[t][k][1]
	}
	return g
}

// nodalMeans returns the means of the triangles about each node, weighted by
// area.
func (p *plan) nodalMeans(t [][2]float64) [][2]float64 {
	out := make([][2]float64, len(p.node))
	sum := make([]float64, len(p.node))
	for i, v := range p.tris {
		for _, n := range v {
			sum[n] += p.area[i]
			out[n][0] += p.area[i] * t[i][0]
			out[n][1] += p.area[i] * t[i][1]
		}
	}
	for n := range out {
		out[n][0] /= sum[n]
		out[n][1] /= sum[n]
	}
	return out
}

func (p *plan) asPlan() *mesh.Plan {
	pts := make([]mesh.Point, len(p.pts))
	for i, q := range p.pts {
		pts[i] = q
	}
	return &mesh.Plan{Points: pts, Tris: p.tris}
}

func sub2(a, b [2]float64) [2]float64 { return [2]float64{a[0] - b[0], a[1] - b[1]} }

func cross2(a, b [2]float64) float64 { return a[0]*b[1] - a[1]*b[0] }
