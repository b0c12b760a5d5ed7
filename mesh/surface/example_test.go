package surface_test

import (
	"fmt"
	"math"

	"archload/mesh/plane"
	"archload/mesh/surface"
)

// The arch that a maker's three numbers make over an oblong, and the same arch
// fitted again to heights read off it.
func Example() {
	outline, err := plane.NewCurve([]plane.Point{{-100, -150}, {100, -150}, {100, 150}, {-100, 150}}, []bool{true, true, true, true})
	if err != nil {
		fmt.Println(err)
		return
	}
	arch, err := surface.NewFormula(surface.FormulaSpec{Outline: outline, Height: 18, Rim: 4})
	if err != nil {
		fmt.Println(err)
		return
	}
	lines, err := surface.Contours(arch, outline, []float64{6, 9, 12, 15, 17}, surface.ContourOptions{Round: 0.1})
	if err != nil {
		fmt.Println(err)
		return
	}
	rim := 4.0
	fitted, report, err := surface.Fit(surface.Data{Outline: outline, Lines: lines, Rim: &rim})
	if err != nil {
		fmt.Println(err)
		return
	}
	p := plane.Point{30, 60}
	fmt.Printf("apex %.2f mm, rim %.2f mm\n", arch.At(plane.Point{}).Z, arch.At(plane.Point{0, 150}).Z)
	off := math.Abs(fitted.At(p).Z - arch.At(p).Z)
	fmt.Printf("%d contour lines; at %v the fit is within 0.1 mm: %t\n", len(lines), p, off < 0.1)
	fmt.Printf("contours are met to within their own errors: %t\n", report.Classes[0].Ratio <= 1)
	// Output:
	// apex 18.00 mm, rim 4.00 mm
	// 5 contour lines; at [30 60] the fit is within 0.1 mm: true
	// contours are met to within their own errors: true
}
