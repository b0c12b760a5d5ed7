package sparse

import (
	"math"
	"math/rand/v2"
)

// plate is a test mesh: plan coordinates, triangles and some inner nodes.
type plate struct {
	xy   [][2]float64
	tris [][]int32
	last []int32
}

// hexPlate returns a jittered hexagonal grid of about n nodes in an ellipse of
// 400 x 300 mm, without the triangles whose centroid lies in a hole.
func hexPlate(n int, rng *rand.Rand, hole func(x, y float64) bool) plate {
	const a, b = 200.0, 150.0
	h := math.Sqrt(math.Pi * a * b / float64(n) * 2 / math.Sqrt(3))
	nx, ny := int(2*a/h)+2, int(2*b/(h*math.Sqrt(3)/2))+2
	id := make([]int32, nx*ny)
	var p plate
	for j := range ny {
		for i := range nx {
			x, y := -a+(float64(i)+0.5*float64(j%2))*h, -b+float64(j)*h*math.Sqrt(3)/2
			id[j*nx+i] = -1
			if x*x/a/a+y*y/b/b <= 1 {
				id[j*nx+i] = int32(len(p.xy))
				p.xy = append(p.xy, [2]float64{x + (rng.Float64()-0.5)*0.4*h, y + (rng.Float64()-0.5)*0.4*h})
			}
		}
	}
	add := func(t ...int32) {
		x, y := 0.0, 0.0
		for _, v := range t {
			if v < 0 {
				return
			}
			x, y = x+p.xy[v][0]/3, y+p.xy[v][1]/3
		}
		if hole == nil || !hole(x, y) {
			p.tris = append(p.tris, t)
		}
	}
	for j := range ny - 1 {
		for i := range nx - 1 {
			q, r, s, u := id[j*nx+i], id[j*nx+i+1], id[j*nx+nx+i], id[j*nx+nx+i+1]
			if j%2 == 0 {
				add(q, r, s)
				add(r, u, s)
			} else {
				add(q, r, u)
				add(q, u, s)
			}
		}
	}
	return p.used()
}

// used drops the nodes without a triangle.
func (p plate) used() plate {
	at := make([]int32, len(p.xy))
	for _, t := range p.tris {
		for _, v := range t {
			at[v] = 1
		}
	}
	var xy [][2]float64
	for v, k := range at {
		if k == 1 {
			at[v] = int32(len(xy))
			xy = append(xy, p.xy[v])
		}
	}
	for _, t := range p.tris {
		for i := range t {
			t[i] = at[t[i]]
		}
	}
	return plate{xy: xy, tris: p.tris}
}

// withWall attaches rows of nodes below the rim, with the rim's plan coordinates.
func (p plate) withWall(rows int) plate {
	count := map[[2]int32]int{}
	for _, t := range p.tris {
		for i := range t {
			u, v := t[i], t[(i+1)%3]
			count[[2]int32{min(u, v), max(u, v)}]++
		}
	}
	below := map[int32]int32{}
	for _, t := range p.tris { // in the order of the triangles, not of the map
		for i := range t {
			u, v := t[i], t[(i+1)%3]
			if count[[2]int32{min(u, v), max(u, v)}] != 1 {
				continue
			}
			for _, w := range []int32{u, v} {
				if _, seen := below[w]; !seen {
					below[w] = int32(len(p.xy))
					for range rows {
						p.xy = append(p.xy, p.xy[w])
					}
				}
			}
			p.wallStrip(u, v, below, rows)
		}
	}
	return p
}

func (p *plate) wallStrip(u, v int32, below map[int32]int32, rows int) {
	firstU, firstV := below[u], below[v]
	for r := range int32(rows) {
		a, b := firstU+r, firstV+r
		p.tris = append(p.tris, []int32{u, v, a}, []int32{v, b, a})
		u, v = a, b
	}
}

// bridge puts the nodes nearest to the middle into last.
func (p plate) bridge(n int) plate {
	d := make([]int32, 0, n)
	for r := 0.0; len(d) < n; r += 0.5 {
		d = d[:0]
		for v, q := range p.xy {
			if math.Abs(q[0]) < 2*r && math.Abs(q[1]) < r {
				d = append(d, int32(v))
			}
		}
	}
	p.last = d[:n]
	return p
}

// matrix assembles random 18 x 18 element matrices BᵀB, and 1e-6 on the diagonal.
func (p plate) matrix(rng *rand.Rand) *Matrix {
	m := NewMatrix(len(p.xy), p.tris)
	p.fill(m, rng)
	return m
}

func (p plate) fill(m *Matrix, rng *rand.Rand) {
	for _, t := range p.tris {
		m.Add(t, randomElement(rng, len(t)))
	}
	eye := make([]float64, blockLen)
	for d := range Block {
		eye[7*d] = 1e-6
	}
	for v := range p.xy {
		m.Add([]int32{int32(v)}, eye)
	}
}
