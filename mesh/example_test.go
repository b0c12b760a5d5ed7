package mesh_test

import (
	"fmt"

	"archload/mesh"
	"archload/mesh/plane"
	"archload/mesh/surface"
)

// From four corner points to triangles: a board of 300 x 200 mm, 4 mm thick,
// with small triangles where a foot will stand and a brace as a chain of edges.
func Example() {
	corners := []mesh.Point{{-150, -100}, {150, -100}, {150, 100}, {-150, 100}} // mm
	outline, err := plane.NewCurve(corners, []bool{true, true, true, true})
	if err != nil {
		fmt.Println(err)
		return
	}
	plan, err := mesh.Triangulate(mesh.Domain{
		Outline: outline,
		Lines:   [][]mesh.Point{{{-100, 50}, {100, 50}}},
		Fine:    []mesh.Fine{{Along: []mesh.Point{{0, 0}}, Radius: 15, Size: 5}},
		Size:    20,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	board := mesh.Lift(plan, mesh.Plate{Outer: surface.Flat(4), Thickness: surface.Flat(4)})

	fmt.Printf("outline %.0f mm² within %.0f mm\n", outline.Area(), outline.Length())
	q := plan.Quality()
	fmt.Printf("triangles of %.0f mm² together, no angle below 20 degrees: %t\n", q.Area, q.MinAngle > 20)
	fmt.Printf("brace from %v to %v\n", plan.Points[plan.Lines[0][0]], plan.Points[plan.Lines[0][len(plan.Lines[0])-1]])
	fmt.Printf("mid-surface at z = %g mm, %.1f g of a wood of 420 kg/m³\n", board.Nodes[0].P[2], board.Mass(420))
	// Output:
	// outline 60000 mm² within 1000 mm
	// triangles of 60000 mm² together, no angle below 20 degrees: true
	// brace from [-100 50] to [100 50]
	// mid-surface at z = 2 mm, 100.8 g of a wood of 420 kg/m³
}

// Which triangle holds a place, and how the place divides it.
func ExampleLocator() {
	corners := []mesh.Point{{0, 0}, {60, 0}, {60, 60}, {0, 60}} // mm
	outline, err := plane.NewCurve(corners, []bool{true, true, true, true})
	if err != nil {
		fmt.Println(err)
		return
	}
	plan, err := mesh.Triangulate(mesh.Domain{Outline: outline, Size: 30})
	if err != nil {
		fmt.Println(err)
		return
	}
	tri, share, inside := mesh.NewLocator(plan).Find(mesh.Point{20, 25})
	var back mesh.Point
	for k, v := range plan.Tris[tri] {
		back[0] += share[k] * plan.Points[v][0]
		back[1] += share[k] * plan.Points[v][1]
	}
	fmt.Printf("inside: %t, the corners weighed give (%.3f, %.3f)\n", inside, back[0], back[1])
	// Output: inside: true, the corners weighed give (20.000, 25.000)
}
