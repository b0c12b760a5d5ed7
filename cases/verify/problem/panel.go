package problem

import (
	"math"

	"archload/fem"
	"archload/fem/vec3"
	"archload/materials"
	"archload/mesh"
)

// sheet is a stretch of surface to be meshed: where the unit square lies in
// space, with the surface's unit normal. A zero normal stands for the facets'
// own.
type sheet func(u, v float64) (x, normal [3]float64)

// panel is a shell model on an n x m mesh of halved squares.
type panel struct {
	fem.Model
	sys  *fem.System
	load []float64 // generalised force on every freedom
}

// makeup is what a panel is made of.
type makeup struct {
	h       float64 // thickness
	wood    materials.Orthotropic
	axes    materials.Axes // zero: L, R, T along x, y, z
	pressed bool           // the axes follow the surface
	density float64        // kg/m³, or what makes the unit of mass
}

// newPanel meshes the sheet with n divisions along u and m along v.
func newPanel(d Density, n, m int, at sheet, of makeup) *panel {
	p := &panel{}
	uv, tris := halvedSquares(n, m, d.Shake)
	for _, q := range uv {
		x, normal := at(q[0], q[1])
		p.Nodes = append(p.Nodes, mesh.Node{P: x, N: normal, H: of.h})
	}
	p.make(tris, of)
	return p
}

// make gives the panel its triangles and its wood.
func (p *panel) make(tris [][3]int32, of makeup) {
	if of.axes == (materials.Axes{}) {
		of.axes = materials.GlobalAxes()
	}
	p.Sections = []fem.Section{{Wood: of.wood.Compliance(), Axes: of.axes, Pressed: of.pressed, Density: of.density}}
	for _, t := range tris {
		p.Shells = append(p.Shells, fem.ShellElem{Nodes: t})
	}
}

// halvedSquares meshes the unit square.
func halvedSquares(n, m int, shake float64) (uv [][2]float64, tris [][3]int32) {
	chance := dice(7)
	for j := 0; j <= m; j++ {
		for i := 0; i <= n; i++ {
			u, v := float64(i), float64(j)
			if i > 0 && i < n && j > 0 && j < m {
				u += shake * chance.next()
				v += shake * chance.next()
			}
			uv = append(uv, [2]float64{u / float64(n), v / float64(m)})
		}
	}
	for j := range m {
		for i := range n {
			a := int32(j*(n+1) + i)
			b, c, d := a+1, a+int32(n)+2, a+int32(n)+1
			if shake > 0 && chance.next() > 0 {
				tris = append(tris, [3]int32{a, b, d}, [3]int32{b, c, d})
			} else {
				tris = append(tris, [3]int32{a, b, c}, [3]int32{a, c, d})
			}
		}
	}
	return uv, tris
}

// place picks nodes by where they stand.
type place func(x [3]float64) bool

// everywhere picks all nodes.
func everywhere([3]float64) bool { return true }

// On picks the nodes whose coordinate (0 to 2) has the value, mm, to 1e-9 of it.
func On(axis int, value float64) func(x [3]float64) bool {
	return func(x [3]float64) bool { return math.Abs(x[axis]-value) < 1e-9*(1+math.Abs(value)) }
}

// hold fixes the freedoms named in what at the nodes picked, as Hold does.
func (p *panel) hold(what string, pick place) { Hold(&p.Model, what, pick) }

// Hold fixes the freedoms named in what at the nodes of a model that are picked: x, y and z
// move along an axis, X, Y and Z turn about it.
func Hold(m *fem.Model, what string, pick func(x [3]float64) bool) {
	for i := range m.Nodes {
		if !pick(m.Nodes[i].P) {
			continue
		}
		for _, c := range what {
			for d, name := range "xyzXYZ" {
				if name == c {
					m.Fixed = append(m.Fixed, fem.Fix{Node: int32(i), Dof: d})
				}
			}
		}
	}
}

// near returns the node nearest to a point.
func (p *panel) near(at ...float64) int {
	q, best := [3]float64(at), 0
	for i := range p.Nodes {
		if vec3.Norm(vec3.Sub(p.Nodes[i].P, q)) < vec3.Norm(vec3.Sub(p.Nodes[best].P, q)) {
			best = i
		}
	}
	return best
}

// build makes the elements; loads come after it.
func (p *panel) build() error {
	var err error
	p.load = make([]float64, 6*len(p.Nodes))
	p.sys, err = fem.Assemble(&p.Model, 1)
	return err
}

// force adds a generalised force on a freedom of a node.
func (p *panel) force(node, dof int, f float64) { p.load[6*node+dof] += f }

// press adds a force on a place of a shell.
func (p *panel) press(at fem.SurfacePoint, f [3]float64) {
	rows := p.sys.Shells[at.Shell].RowsAt(at.L, at.Zeta)
	nodes := p.Shells[at.Shell].Nodes
	for j := range 18 {
		p.load[6*int(nodes[j/6])+j%6] += rows[0][j]*f[0] + rows[1][j]*f[1] + rows[2][j]*f[2]
	}
}

// midpoints are the places of the three-point rule, exact for quadratics.
var midpoints = [3][3]float64{{0, 0.5, 0.5}, {0.5, 0, 0.5}, {0.5, 0.5, 0}}

// spread adds a load per area of the mid-surface.
func (p *panel) spread(load func(x [3]float64) [3]float64) {
	for e := range p.Shells {
		for _, l := range midpoints {
			at := fem.SurfacePoint{Shell: int32(e), L: l}
			p.press(at, vec3.Scale(load(p.sys.Model.Place(at)), p.sys.Shells[e].Area()/3))
		}
	}
}

// uniform is a load per area that is the same everywhere.
func uniform(f ...float64) func([3]float64) [3]float64 {
	return func([3]float64) [3]float64 { return [3]float64(f) }
}

// inPlan returns the place of the mid-surface above a point of the plan.
func (p *panel) inPlan(x, y float64) (fem.SurfacePoint, bool) {
	for e := range p.Shells {
		n := p.Shells[e].Nodes
		a, b, c := p.Nodes[n[0]].P, p.Nodes[n[1]].P, p.Nodes[n[2]].P
		det := (b[0]-a[0])*(c[1]-a[1]) - (c[0]-a[0])*(b[1]-a[1])
		l1 := ((x-a[0])*(c[1]-a[1]) - (c[0]-a[0])*(y-a[1])) / det
		l2 := ((b[0]-a[0])*(y-a[1]) - (x-a[0])*(b[1]-a[1])) / det
		if min(l1, l2, 1-l1-l2) >= -1e-12 {
			return fem.SurfacePoint{Shell: int32(e), L: [3]float64{1 - l1 - l2, l1, l2}}, true
		}
	}
	return fem.SurfacePoint{}, false
}

// block presses a force evenly on a rectangle in plan, through nx x ny points.
func (p *panel) block(lo, hi [2]float64, nx, ny int, f [3]float64) {
	for i := range nx {
		for j := range ny {
			x := lo[0] + (hi[0]-lo[0])*(float64(i)+0.5)/float64(nx)
			y := lo[1] + (hi[1]-lo[1])*(float64(j)+0.5)/float64(ny)
			if at, ok := p.inPlan(x, y); ok {
				p.press(at, vec3.Scale(f, 1/float64(nx*ny)))
			}
		}
	}
}

// edgeBow is the share of an edge's bow that the membrane's mean strain sees:
// alpha_b of the element, 3/2 (C. A. Felippa, Comput. Methods Appl. Mech. Eng.
// 192 (2003) 2125).
const edgeBow = 1.5

// pull adds a traction per area on an edge of the panel: a flat panel on the
// xy plane. The drilling moments at the edge's ends belong to it, because the
// element's edges bow as drilling rotations differ.
func (p *panel) pull(pick place, traction func(x [3]float64, out [3]float64) [3]float64) {
	p.edges(pick, func(i, j int32, h float64) {
		a, b := p.Nodes[i].P, p.Nodes[j].P
		along := vec3.Sub(b, a)
		l := vec3.Norm(along)
		out := unit([3]float64{along[1], -along[0], 0})
		for _, g := range [2]float64{0.5 - math.Sqrt(3)/6, 0.5 + math.Sqrt(3)/6} {
			t := vec3.Scale(traction(vec3.Add(a, vec3.Scale(along, g)), out), h*l/2)
			for d := range 3 {
				p.force(int(i), d, (1-g)*t[d])
				p.force(int(j), d, g*t[d])
			}
			m := edgeBow * vec3.Dot(t, out) * l / 12
			p.force(int(j), 5, m)
			p.force(int(i), 5, -m)
		}
	})
}

// edges calls f for every triangle's edge with both ends picked that belongs
// to one triangle only; i to j runs anticlockwise.
func (p *panel) edges(pick place, f func(i, j int32, h float64)) {
	count := map[[2]int32]int{}
	for _, e := range p.Shells {
		for k := range 3 {
			i, j := e.Nodes[k], e.Nodes[(k+1)%3]
			count[[2]int32{min(i, j), max(i, j)}]++
		}
	}
	for _, e := range p.Shells {
		for k := range 3 {
			i, j := e.Nodes[k], e.Nodes[(k+1)%3]
			if count[[2]int32{min(i, j), max(i, j)}] == 1 && pick(p.Nodes[i].P) && pick(p.Nodes[j].P) {
				f(i, j, p.Nodes[i].H)
			}
		}
	}
}

// solved is a solved panel.
type solved struct {
	*panel
	u []float64
}

// solve factorises and solves.
func (p *panel) solve() (*solved, error) {
	top, err := p.sys.Prepare(1)
	if err != nil {
		return nil, err
	}
	u := append([]float64(nil), p.load...)
	for _, f := range p.Fixed {
		u[6*int(f.Node)+f.Dof] = 0
	}
	top.Factor.Solve(u)
	return &solved{panel: p, u: u}, nil
}

// move returns one freedom of a node.
func (a *solved) move(node, dof int) float64 { return a.u[6*node+dof] }

// moveAt returns the displacement of a place of a shell.
func (a *solved) moveAt(at fem.SurfacePoint) (d [3]float64) {
	rows := a.sys.Shells[at.Shell].RowsAt(at.L, at.Zeta)
	v := a.of(int(at.Shell))
	for k := range d {
		for j := range v {
			d[k] += rows[k][j] * v[j]
		}
	}
	return d
}

// of gathers the displacements of a triangle.
func (a *solved) of(e int) (v [18]float64) {
	for k, n := range a.Shells[e].Nodes {
		copy(v[6*k:6*k+6], a.u[6*int(n):])
	}
	return v
}

// energy returns the strain energy of all shells.
func (a *solved) energy() (sum float64) {
	for e := range a.Shells {
		v := a.of(e)
		m, b, q := a.sys.Shells[e].Energy(&v)
		sum += m + b + q
	}
	return sum
}

// node is a node of a flat panel.
func node(x, y, h float64) mesh.Node { return mesh.Node{P: [3]float64{x, y, 0}, H: h} }
