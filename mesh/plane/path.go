package plane

import "math"

// PathLength is the length of a polyline, mm.
func PathLength(line []Point) float64 {
	sum := 0.0
	for i := 1; i < len(line); i++ {
		sum += math.Hypot(line[i][0]-line[i-1][0], line[i][1]-line[i-1][1])
	}
	return sum
}

// Evenly returns points about step mm apart along a closed polyline.
func Evenly(ring []Point, step float64) []Point {
	closed := append(append([]Point(nil), ring...), ring[0])
	n := max(3, int(PathLength(closed)/step))
	gap := PathLength(closed) / float64(n)
	out := []Point{closed[0]}
	run := 0.0
	for i := 1; i < len(closed) && len(out) < n; i++ {
		a, b := closed[i-1], closed[i]
		l := math.Hypot(b[0]-a[0], b[1]-a[1])
		for next := float64(len(out)) * gap; next <= run+l && len(out) < n; next = float64(len(out)) * gap {
			u := (next - run) / l
			out = append(out, Point{a[0] + u*(b[0]-a[0]), a[1] + u*(b[1]-a[1])})
		}
		run += l
	}
	return out
}
