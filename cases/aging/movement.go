package aging

import (
	"math"

	"archload/cases/design"
	"archload/fem"
	"archload/fem/vec3"
	"archload/mesh"
)

// movement is how the plate moves from one solution to another.
type movement struct{ made, now *design.Solution }

// at is the movement of the outer surface at a place in plan, mm.
func (m *movement) at(q mesh.Point) [3]float64 {
	at, _ := m.now.Top.Built.OnOuter(q)
	return m.of(at, [3]float64{q[0], q[1], m.now.Top.Built.Plate.Outer.At(q).Z})
}

// atBack is the movement of the back's outer surface at a place in plan, mm.
func (m *movement) atBack(q mesh.Point) [3]float64 {
	b := m.now.Top.Built
	at, _ := b.Back.OnOuter(q)
	return m.of(at, [3]float64{q[0], q[1], -float64(b.Case.Rim.SideHeight) - b.Back.Plate.Outer.At(q).Z})
}

// of is the movement of a place on a shell that lies at x, mm.
func (m *movement) of(at fem.SurfacePoint, x [3]float64) [3]float64 {
	return vec3.Sub(m.now.Result.FaceMove(at, x), m.made.Result.FaceMove(at, x))
}

// rim is the mean movement upward of the outer surface along the outline, mm.
func (m *movement) rim() float64 {
	b := m.now.Top.Built
	corner := map[int32]fem.SurfacePoint{}
	for i, t := range b.Mesh.Tris {
		for k, n := range t {
			at := fem.SurfacePoint{Shell: int32(i), Zeta: 1}
			at.L[k] = 1
			corner[n] = at
		}
	}
	sum, length := 0.0, 0.0
	for k, n := range b.Mesh.Rim {
		before, after := b.Mesh.Points[b.Mesh.Rim[(k+len(b.Mesh.Rim)-1)%len(b.Mesh.Rim)]], b.Mesh.Points[b.Mesh.Rim[(k+1)%len(b.Mesh.Rim)]]
		p := b.Mesh.Points[n]
		w := (math.Hypot(p[0]-before[0], p[1]-before[1]) + math.Hypot(p[0]-after[0], p[1]-after[1])) / 2
		node := b.Model.Nodes[n]
		sum += w * m.of(corner[n], vec3.Add(node.P, vec3.Scale(node.N, node.H/2)))[2]
		length += w
	}
	return sum / length
}

// middle is the centre of the plate's area in plan.
func middle(b *design.Built) (c mesh.Point) {
	all := 0.0
	for i, t := range b.Mesh.Tris {
		p, q, s := b.Mesh.Points[t[0]], b.Mesh.Points[t[1]], b.Mesh.Points[t[2]]
		area := (q[0]-p[0])*(s[1]-p[1]) - (q[1]-p[1])*(s[0]-p[0])
		at := b.Centroid(i)
		c[0], c[1], all = c[0]+area*at[0], c[1]+area*at[1], all+area
	}
	return mesh.Point{c[0] / all, c[1] / all}
}

// crossStep is how far the places across the arch stand apart, mm.
const crossStep = 5

// cross is how the outer surface rises across the arch at y, where it is wood.
func (m *movement) cross(y float64) []CrossStation {
	b, out := m.now.Top.Built, []CrossStation{}
	lo, hi := 0.0, 0.0
	for _, p := range b.Mesh.Points {
		lo, hi = min(lo, p[0]), max(hi, p[0])
	}
	for x := crossStep * math.Ceil(lo/crossStep); x <= hi; x += crossStep {
		if _, inside := b.OnOuter(mesh.Point{x, y}); inside {
			out = append(out, CrossStation{X: x, Rise: m.at(mesh.Point{x, y})[2]})
		}
	}
	return out
}
