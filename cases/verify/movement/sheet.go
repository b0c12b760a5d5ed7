package movement

import (
	"context"
	"math"

	"archload/cases/verify/problem"
	"archload/fem"
	"archload/fem/vec3"
	"archload/materials"
	"archload/mesh"
)

// surface says where a point of the unit square lies in space, with the unit normal there; a zero
// normal stands for the facets' own.
type surface func(u, v float64) (x, normal [3]float64)

// flat maps the unit square on the rectangle a x b.
func flat(a, b float64) surface {
	return func(u, v float64) (x, n [3]float64) { return [3]float64{a * u, b * v, 0}, n }
}

// cylinder maps the unit square on a cylinder about y: an angle from the crown along u, length
// along v.
func cylinder(r, from, to, long float64) surface {
	return func(u, v float64) (x, n [3]float64) {
		s, c := math.Sincos(from + (to-from)*u)
		return [3]float64{r * s, long * v, r * c}, [3]float64{s, 0, c}
	}
}

// makeup is what a sheet is made of.
type makeup struct {
	h    float64
	wood materials.Orthotropic // L, R, T along x, y, z
}

// sheet is a mesh of n x m halved squares.
type sheet struct {
	fem.Model
	sys *fem.System
}

// newSheet meshes a surface.
func newSheet(n, m int, at surface, of makeup) *sheet {
	s := &sheet{}
	for j := range m + 1 {
		for i := range n + 1 {
			x, normal := at(float64(i)/float64(n), float64(j)/float64(m))
			s.Nodes = append(s.Nodes, mesh.Node{P: x, N: normal, H: of.h})
		}
	}
	s.Sections = []fem.Section{{Wood: of.wood.Compliance(), Axes: materials.GlobalAxes()}}
	for j := range m {
		for i := range n {
			a := int32(j*(n+1) + i)
			b, c, d := a+1, a+int32(n)+2, a+int32(n)+1
			if (i+j)%2 == 0 { // no diagonal is preferred
				s.add([3]int32{a, b, c}, [3]int32{a, c, d})
			} else {
				s.add([3]int32{a, b, d}, [3]int32{b, c, d})
			}
		}
	}
	return s
}

func (s *sheet) add(tris ...[3]int32) {
	for _, t := range tris {
		s.Shells = append(s.Shells, fem.ShellElem{Nodes: t})
	}
}

// hold fixes the freedoms named in what, x y z X Y Z, at the nodes that are picked.
func (s *sheet) hold(what string, pick func(x [3]float64) bool) { problem.Hold(&s.Model, what, pick) }

// near is the node nearest to a point.
func (s *sheet) near(p [3]float64) int {
	best := 0
	for i := range s.Nodes {
		if vec3.Norm(vec3.Sub(s.Nodes[i].P, p)) < vec3.Norm(vec3.Sub(s.Nodes[best].P, p)) {
			best = i
		}
	}
	return best
}

// build makes the elements.
func (s *sheet) build() (err error) {
	s.sys, err = fem.Assemble(&s.Model, 1)
	return err
}

// meshed is a problem that is solved on n divisions.
func meshed(steps []int, solve func(n int) (problem.Readings, error)) problem.Problem {
	return problem.Problem{Meshed: true, Steps: steps, Solve: func(_ context.Context, at problem.Density) (problem.Readings, error) {
		return solve(at.N)
	}}
}
