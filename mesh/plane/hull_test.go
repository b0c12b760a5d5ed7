package plane

import (
	"math"
	"math/rand/v2"
	"testing"
)

// TestHull holds the hull of points drawn at random to what a hull is: each corner is
// one of them, and none lies outside of any side.
func TestHull(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 50 {
		pts := make([]Point, 3+r.IntN(40))
		for i := range pts {
			pts[i] = Point{math.Round(10 * r.Float64()), math.Round(8 * r.Float64())} // many on one line
		}
		hull := Hull(pts)
		for i, a := range hull {
			b := hull[(i+1)%len(hull)]
			for _, p := range pts {
				if Cross(a, b, p) < 0 {
					t.Fatalf("%v lies outside of the side %v, %v of the hull of %v", p, a, b, pts)
				}
			}
		}
	}
	for _, c := range []struct {
		pts  []Point
		want int
	}{{nil, 0}, {[]Point{{1, 2}, {1, 2}}, 1}, {[]Point{{0, 0}, {2, 2}, {1, 1}}, 2}, {[]Point{{0, 0}, {2, 0}, {2, 2}, {0, 2}, {1, 1}, {1, 0}}, 4}} {
		if got := Hull(c.pts); len(got) != c.want {
			t.Errorf("hull of %v: %v, want %d corners", c.pts, got, c.want)
		}
	}
}

func TestNearestOnHull(t *testing.T) {
	square := []Point{{0, 0}, {4, 0}, {4, 4}, {0, 4}}
	for _, c := range []struct{ p, q, along Point }{
		{Point{1, 3}, Point{1, 3}, Point{}},
		{Point{1, -3}, Point{1, 0}, Point{1, 0}},
		{Point{7, 3}, Point{4, 3}, Point{0, 1}},
		{Point{7, 8}, Point{4, 4}, Point{}},
	} {
		if q, along := NearestOnHull(square, c.p); q != c.q || along != c.along {
			t.Errorf("nearest to %v: %v along %v, want %v along %v", c.p, q, along, c.q, c.along)
		}
	}
}
