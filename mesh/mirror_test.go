package mesh

import (
	"math"
	"slices"
	"testing"

	"archload/mesh/plane"
)

// TestMirroredDomainGivesTheMirroredPlan writes the mirror image of each domain as
// its maker would: every point with x negated, in the same order, so that curves
// run the other way and the holes' starts lie elsewhere. The plans must be mirror
// images to the last bit, node by node; a domain that is its own mirror image gives
// one plan.
func TestMirroredDomainGivesTheMirroredPlan(t *testing.T) {
	for _, c := range planCases() {
		t.Run(c.name, func(t *testing.T) {
			d := c.domain(t)
			want := mustPlan(t, d)
			here, there := d.normal(), d.mirrored()
			if compareDomains(&here, &there) != 0 { // else it is its own mirror image
				want = want.mirrored()
			}
			samePlan(t, mustPlan(t, mirrorOf(t, d, 3)), want)
		})
	}
}

// TestConvertedCoordinatesGiveTheSamePlan writes every coordinate in feet and
// converts it again, which moves some by a rounding, as it does the curvature of a
// surface fitted to them.
func TestConvertedCoordinatesGiveTheSamePlan(t *testing.T) {
	const foot = 304.8 // mm
	moved := 0
	point := func(p Point) Point {
		q := Point{p[0] / foot * foot, p[1] / foot * foot}
		if q != p {
			moved++
		}
		return q
	}
	for _, c := range planCases() {
		d := c.domain(t)
		e := d.with(func(c *plane.Curve) *plane.Curve {
			pts, corner := c.Points()
			for i := range pts {
				pts[i] = point(pts[i])
			}
			return mustCurve(t, pts, corner)
		}, point)
		if bend := d.Curvature; bend != nil {
			e.Curvature = func(p Point) float64 { return bend(p) * (1 + 1e-13*math.Sin(1e4*p[0]+p[1])) }
		}
		samePlan(t, mustPlan(t, e), mustPlan(t, d))
	}
	if moved == 0 {
		t.Error("no coordinate changed on its way: the test shows nothing")
	}
	t.Logf("%d coordinates changed", moved)
}

// TestSymmetricDomainGivesASymmetricPlan wants every node and triangle to have its
// mirror image in the same plan, also where triangles are to be finer on one side
// only.
func TestSymmetricDomainGivesASymmetricPlan(t *testing.T) {
	hole := fHole(t)
	eye := circleCurve(t, Point{0, 60}, 25)
	for _, c := range []struct {
		name string
		d    Domain
	}{
		{"outline", Domain{Outline: guitarOutline(t)}},
		{"one side finer", Domain{Outline: guitarOutline(t), Fine: []Fine{{Along: []Point{{60, -40}}, Radius: 10, Size: 2}}}},
		{"two holes", Domain{Outline: guitarOutline(t), Holes: []*plane.Curve{hole, hole.Mirrored()}}},
		{"a hole on the axis", Domain{Outline: guitarOutline(t), Holes: []*plane.Curve{eye}}},
		{"braces", Domain{Outline: guitarOutline(t), Holes: []*plane.Curve{eye}, Lines: [][]Point{
			{{-120, -60}, {120, -60}}, {{-30, -200}, {-90, -80}}, {{30, -200}, {90, -80}}, {{0, -230}, {0, -100}},
			{{-100, -120}, {80, 10}}, {{100, -120}, {-80, 10}},
		}}},
		{"corners", Domain{Outline: rectangleCurve(t)}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := mustPlan(t, c.d)
			checkPlanValid(t, &c.d, p)
			at := map[Point]int32{}
			for i, q := range p.Points {
				at[Point{0 + q[0], q[1]}] = int32(i)
			}
			tris := map[[3]int32]bool{}
			for _, v := range p.Tris {
				tris[turnedToLeast(v)] = true
			}
			for _, v := range p.Tris {
				var m [3]int32
				for k, n := range v {
					j, ok := at[p.Points[n].Mirrored()]
					if !ok {
						t.Fatalf("node at %v has no mirror image", p.Points[n])
					}
					m[2-k] = j
				}
				if !tris[turnedToLeast(m)] {
					t.Fatalf("triangle %v has no mirror image", v)
				}
			}
		})
	}
}

// turnedToLeast begins a triangle with its least corner.
func turnedToLeast(v [3]int32) [3]int32 {
	for v[0] > v[1] || v[0] > v[2] {
		v = [3]int32{v[1], v[2], v[0]}
	}
	return v
}

// mirrorOf reflects a domain point by point; its curves begin so many points later.
func mirrorOf(t *testing.T, d Domain, later int) Domain {
	m := d.with(func(c *plane.Curve) *plane.Curve {
		pts, corner := c.Points()
		n := len(pts)
		at, turn := make([]Point, n), make([]bool, n)
		for i := range pts {
			j := (i + later) % n
			at[i], turn[i] = Point{-pts[j][0], pts[j][1]}, corner[j]
		}
		return mustCurve(t, at, turn)
	}, func(p Point) Point { return Point{-p[0], p[1]} })
	if bend := d.Curvature; bend != nil {
		m.Curvature = func(p Point) float64 { return bend(Point{-p[0], p[1]}) }
	}
	return m
}

func samePlan(t *testing.T, got, want *Plan) {
	t.Helper()
	if !slices.Equal(got.Points, want.Points) || !slices.Equal(got.Tris, want.Tris) {
		t.Fatalf("%d nodes and %d triangles differ from %d and %d", len(got.Points), len(got.Tris), len(want.Points), len(want.Tris))
	}
	same := func(a, b [][]int32) bool { return slices.EqualFunc(a, b, slices.Equal[[]int32]) }
	if !slices.Equal(got.Rim, want.Rim) || !same(got.Holes, want.Holes) || !same(got.Lines, want.Lines) {
		t.Error("the loops or the lines differ")
	}
}
