package delaunay

import (
	"runtime"
	"slices"
	"testing"
)

// TestSweepOrder: whatever the number of goroutines, each vertex is taken once, after its lower
// neighbours and before its higher ones.
func TestSweepOrder(t *testing.T) {
	tr := refined(t, 60)
	free := tr.freeVertices()
	if len(free) < 16*fewest {
		t.Fatalf("want enough free vertices for parts, found %d", len(free))
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	for _, procs := range []int{1, 2, 7} {
		runtime.GOMAXPROCS(procs)
		value := make([]uint64, len(tr.P)) // by which vertices tell what they saw
		want := slices.Clone(value)
		see := func(value []uint64, v int32, near []int32) {
			h := uint64(v)
			for _, u := range near {
				h = h*0x9e3779b97f4a7c15 + value[u]
			}
			value[v] = h
		}
		near := func(v int32) (list []int32) {
			tr.star(v, func(t int32, k int) bool {
				list = append(list, tr.T[t].V[(k+1)%3])
				return true
			})
			return list
		}
		s := newSweeper(tr, free)
		for range 3 {
			for _, v := range free {
				see(want, v, near(v))
			}
			s.sweep(func(_ *walker, v int32) bool {
				see(value, v, near(v))
				return true
			})
		}
		if !slices.Equal(value, want) {
			t.Errorf("%d processors: not what taking vertices by their numbers gives", procs)
		}
	}
}

// refined is a square in triangles of so many pieces along a side.
func refined(t *testing.T, along float64) *Triangulation {
	tr := New(Point{0, 0}, Point{1, 1})
	at := []Point{{0, 0}, {1, 0}, {1, 1}, {0, 1}}
	var corner []int32
	for _, p := range at {
		corner = append(corner, tr.AddPoint(p))
	}
	for i := range corner {
		if err := tr.AddSegment(Segment{A: corner[i], B: corner[(i+1)%4], Curve: int32(i), TB: 1, Boundary: true}); err != nil {
			t.Fatal(err)
		}
	}
	tr.Legalize()
	tr.MarkRegions()
	split := func(s Segment, u float64) Point {
		a, b := at[s.Curve], at[(s.Curve+1)%4]
		return Point{a[0] + u*(b[0]-a[0]), a[1] + u*(b[1]-a[1])}
	}
	if !tr.Refine(Rules{Size: func(p Point) float64 { return (1 + p[0]) / along }, Split: split, MaxPoints: 1e5}) {
		t.Fatal("not refined")
	}
	return tr
}
