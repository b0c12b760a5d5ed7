package mesh

import (
	"math"
	"slices"
	"testing"

	"archload/mesh/plane"
)

// The shapes used by the tests of plan geometry are invented.

// guitarOutline is a smooth outline about 410 x 510 mm with a waist; the widths
// at stations are invented.
func guitarOutline(tb testing.TB) *plane.Curve {
	tb.Helper()
	half := []Point{{0, 255}, {72, 248}, {129, 218}, {157, 164}, {152, 105}, {140, 62}, {138, 20}, {154, -30}, {184, -85}, {205, -145}, {199, -200}, {155, -240}, {80, -254}, {0, -255}}
	pts := slices.Clone(half)
	for i := len(half) - 2; i > 0; i-- {
		pts = append(pts, Point{-half[i][0], half[i][1]})
	}
	return mustCurve(tb, pts, nil)
}

// fHole is a slot along an S-shaped middle line with round eyes at both ends:
// eyes of radius 6 and 4.75 mm, slot about 6 mm wide.
func fHole(tb testing.TB) *plane.Curve {
	tb.Helper()
	var right, left []Point
	for i := range 9 {
		t := float64(i) / 8
		y := -45 + 90*t
		x := 80 - 12*math.Sin(math.Pi*(t-0.5))
		right, left = append(right, Point{x + 3, y}), append(left, Point{x - 3, y})
	}
	eye := func(cx, cy, r, from, to float64) (out []Point) {
		for i := range 9 {
			a := from + (to-from)*float64(i)/8
			out = append(out, Point{cx + r*math.Cos(a), cy + r*math.Sin(a)})
		}
		return out
	}
	pts := append([]Point{}, right...)
	pts = append(pts, eye(68, 52, 4.75, -0.7, math.Pi+0.7)...)
	for i := len(left) - 1; i >= 0; i-- {
		pts = append(pts, left[i])
	}
	pts = append(pts, eye(92, -52, 6, math.Pi-0.9, 2*math.Pi+0.9)...)
	return mustCurve(tb, pts, nil)
}

func mustCurve(tb testing.TB, pts []Point, corner []bool) *plane.Curve {
	tb.Helper()
	c, err := plane.NewCurve(pts, corner)
	if err != nil {
		tb.Fatal(err)
	}
	return c
}

func polygonCurve(tb testing.TB, pts ...Point) *plane.Curve {
	tb.Helper()
	corner := make([]bool, len(pts))
	for i := range corner {
		corner[i] = true
	}
	return mustCurve(tb, pts, corner)
}

func circleCurve(tb testing.TB, at Point, r float64) *plane.Curve {
	tb.Helper()
	var pts []Point
	for i := range 24 {
		a := 2 * math.Pi * float64(i) / 24
		pts = append(pts, Point{at[0] + r*math.Cos(a), at[1] + r*math.Sin(a)})
	}
	return mustCurve(tb, pts, nil)
}

var bridgeZone = Fine{Along: []Point{{-70, 0}, {70, 0}}, Radius: 10, Size: 3}

// planCase is one domain with the number of nodes to expect.
type planCase struct {
	name   string
	domain func(tb testing.TB) Domain
	nodes  [2]int
}

func plainDomain(tb testing.TB) Domain {
	return Domain{Outline: guitarOutline(tb), Fine: []Fine{bridgeZone}}
}

func holedDomain(tb testing.TB) Domain {
	d := plainDomain(tb)
	h := fHole(tb)
	d.Holes = []*plane.Curve{h, h.Mirrored()}
	return d
}

// courseDomain has two f-holes, two bars, a bridge zone and the curvature of a
// recurve about 18 mm inside the outline (0.022/mm there, 0.002/mm elsewhere).
func courseDomain(tb testing.TB) Domain {
	d := holedDomain(tb)
	d.Lines = [][]Point{{{-36, 170}, {-44, -180}}, {{36, 170}, {44, -180}}}
	d.Curvature = func(p Point) float64 {
		x := (d.Outline.Distance(p) - 18) / 14
		return 0.002 + 0.02*math.Exp(-x*x)
	}
	return d
}

func planCases() []planCase {
	scaled := func(s float64) func(tb testing.TB) Domain {
		return func(tb testing.TB) Domain {
			d := courseDomain(tb)
			d.Scale = s
			return d
		}
	}
	return []planCase{
		{"outline only", plainDomain, [2]int{5500, 7000}},
		{"two f-holes", holedDomain, [2]int{6000, 7500}},
		{"course guitar", courseDomain, [2]int{6500, 8000}},
		{"course guitar, scale 2", scaled(2), [2]int{1500, 2200}},
		{"course guitar, scale 0.5", scaled(0.5), [2]int{25000, 32000}},
		{"X braces", func(tb testing.TB) Domain {
			d := plainDomain(tb)
			d.Lines = [][]Point{{{-100, 150}, {140, -180}}, {{100, 150}, {-140, -180}}}
			return d
		}, [2]int{5500, 7000}},
		{"round hole and ladder", func(tb testing.TB) Domain {
			d := plainDomain(tb)
			d.Holes = []*plane.Curve{circleCurve(tb, Point{0, 100}, 45)}
			d.Lines = [][]Point{{{-110, -90}, {110, -90}}, {{-140, -160}, {140, -160}}, {{-100, 190}, {100, 190}}}
			return d
		}, [2]int{5500, 7000}},
		{"rectangle with a bar", func(tb testing.TB) Domain {
			return Domain{Outline: rectangleCurve(tb), Lines: [][]Point{{{-20, 180}, {-30, -180}}}}
		}, [2]int{3700, 4500}},
	}
}

// rectangleCurve is 300 x 400 mm about the origin.
func rectangleCurve(tb testing.TB) *plane.Curve {
	return polygonCurve(tb, Point{-150, -200}, Point{150, -200}, Point{150, 200}, Point{-150, 200})
}
