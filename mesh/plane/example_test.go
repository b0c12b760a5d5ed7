package plane_test

import (
	"fmt"

	"archload/mesh/plane"
)

// A circle of radius 50 mm through eight points, and what is said of a curve of
// two.
func ExampleNewCurve() {
	const r, d = 50, 35.35533905932738 // d = r/√2, mm
	round, err := plane.NewCurve([]plane.Point{{r, 0}, {d, d}, {0, r}, {-d, d}, {-r, 0}, {-d, -d}, {0, -r}, {d, -d}}, nil)
	if err != nil {
		fmt.Println(err)
		return
	}
	u, at, dist := round.Nearest(plane.Point{80, 0})
	fmt.Printf("area %.0f mm² (of the circle 7854)\n", round.Area())
	fmt.Printf("nearest to (80, 0): %v, %.0f mm off, parameter %.0f\n", at, dist, u)

	_, err = plane.NewCurve([]plane.Point{{0, 0}, {10, 10}}, nil)
	fmt.Println(err)
	// Output:
	// area 7844 mm² (of the circle 7854)
	// nearest to (80, 0): [50 0], 30 mm off, parameter 0
	// curve: want at least 3 different points, found 2
}
