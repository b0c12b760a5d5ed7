package main

import (
	"context"
	"fmt"
	"io/fs"
	"math"
	"math/rand/v2"

	"archload/cases"
	"archload/cases/design"
	"archload/fem"
	"archload/fem/sparse"
	"archload/materials"
	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// Half axes of the model plate, mm: the ellipse 400 x 300.
const halfLength, halfWidth = 200.0, 150.0

// edgeFor is the length of the edges with which a plate has about n nodes, mm:
// each node of a grid of equilateral triangles holds h² sqrt(3)/2 of the area.
func edgeFor(n int) float64 {
	return math.Sqrt(math.Pi * halfLength * halfWidth / float64(n) * 2 / math.Sqrt(3))
}

// ellipse is the outline of the model plate.
func ellipse() (*plane.Curve, error) {
	pts := make([]mesh.Point, 72)
	for i := range pts {
		s, c := math.Sincos(2 * math.Pi * float64(i) / float64(len(pts)))
		pts[i] = mesh.Point{halfLength * c, halfWidth * s}
	}
	return plane.NewCurve(pts, nil)
}

// meshed triangulates the model plate with about n nodes.
func meshed(n int) (*mesh.Plan, error) {
	outline, err := ellipse()
	if err != nil {
		return nil, err
	}
	return mesh.Triangulate(mesh.Domain{Outline: outline, Size: edgeFor(n)})
}

// dome is the outer surface of the model plate: a paraboloid 18 mm high, which
// runs out to nothing at the outline.
type dome struct{}

// At returns height, mm, and derivatives.
func (dome) At(p mesh.Point) surface.Jet {
	const high = 18.0
	a, b := high/(halfLength*halfLength), high/(halfWidth*halfWidth)
	return surface.Jet{
		Z:  high - a*p[0]*p[0] - b*p[1]*p[1],
		Zx: -2 * a * p[0], Zy: -2 * b * p[1], Zxx: -2 * a, Zyy: -2 * b,
	}
}

// carved is the model plate of about n nodes: a dome of spruce 5 mm thick, its
// edge hinged.
func carved(n int) (*fem.Model, error) {
	plan, err := meshed(n)
	if err != nil {
		return nil, err
	}
	return carvedOn(plan)
}

func carvedOn(plan *mesh.Plan) (*fem.Model, error) {
	card, err := materials.Find("sitka-spruce")
	if err != nil {
		return nil, err
	}
	m := &fem.Model{
		Nodes:    mesh.Lift(plan, mesh.Plate{Outer: dome{}, Thickness: surface.Flat(5)}).Nodes,
		Sections: []fem.Section{{Wood: card.Wood.Compliance(), Axes: materials.PlateAxes(materials.Cut{})}},
	}
	for _, t := range plan.Tris {
		m.Shells = append(m.Shells, fem.ShellElem{Nodes: t})
	}
	for _, v := range plan.Rim {
		for d := range 3 {
			m.Fixed = append(m.Fixed, fem.Fix{Node: v, Dof: d})
		}
	}
	return m, nil
}

// random is a matrix on the mesh of the model plate with element matrices BᵀB, B
// filled from a seeded normal distribution, and 1e-6 on the diagonal.
func random(n int) (*problem, error) {
	plan, err := meshed(n)
	if err != nil {
		return nil, err
	}
	elems := make([][]int32, len(plan.Tris))
	for i := range elems {
		elems[i] = plan.Tris[i][:]
	}
	p := &problem{k: sparse.NewMatrix(len(plan.Points), elems)}
	rng := rand.New(rand.NewPCG(1, uint64(n)))
	var b, k [18 * 18]float64
	for _, e := range elems {
		clear(k[:])
		for i := range b {
			b[i] = rng.NormFloat64()
		}
		for l := range 18 {
			for i, v := range b[18*l:][:18] {
				for j, w := range b[18*l:][:18] {
					k[18*i+j] += v * w
				}
			}
		}
		p.k.Add(e, k[:])
	}
	var eye [block * block]float64
	for d := range block {
		eye[d*(block+1)] = 1e-6
	}
	for v, q := range plan.Points {
		p.k.Add([]int32{int32(v)}, eye[:])
		p.xy = append(p.xy, q)
	}
	return p, nil
}

// shell is the stiffness of the carved model plate, and its mass.
func shell(n int) (*problem, error) {
	m, err := carved(n)
	if err != nil {
		return nil, err
	}
	sys, err := fem.Assemble(m, 1)
	if err != nil {
		return nil, err
	}
	p := problemOf(sys)
	p.mass = massOf(sys, 400)
	return p, nil
}

// problemOf takes the matrix of a system, with the nodes of its contact zone last.
func problemOf(s *fem.System) *problem {
	p := &problem{k: s.K, last: s.Model.Zone}
	for i := range s.Model.Nodes {
		at := s.Model.Nodes[i].P
		p.xy = append(p.xy, [2]float64{at[0], at[1]})
	}
	return p
}

// instrument is the stiffness of a case, bundled or a file, with every triangle
// so many times smaller.
func instrument(files fs.FS, name string, refine float64) (*problem, error) {
	c, err := cases.Open(files, name)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	p, err := design.Prepare(context.Background(), c, design.Options{Refine: refine})
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return problemOf(p.Factored.System), nil
}
