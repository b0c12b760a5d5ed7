package mesh

import (
	"math"

	"archload/mesh/plane"
)

// Quality describes the shapes of the triangles of a plan.
type Quality struct {
	Nodes, Triangles int
	MinAngle         float64 // least angle of all triangles, degrees
	WorstAt          Point   // middle of that triangle, mm
	Below15, Below25 int     // triangles whose least angle is below 15, 25 degrees
	ShareBelow25     float64 // of all triangles, 1
	ShortestEdge     float64 // mm
	LongestEdge      float64 // mm
	Area             float64 // mm²
}

// Quality measures all triangles.
func (p *Plan) Quality() Quality {
	q := Quality{Nodes: len(p.Points), Triangles: len(p.Tris), MinAngle: 180, ShortestEdge: math.Inf(1)}
	for _, t := range p.Tris {
		a, b, c := p.Points[t[0]], p.Points[t[1]], p.Points[t[2]]
		q.Area += plane.Cross(a, b, c) / 2
		for _, l := range [3]float64{plane.Dist(a, b), plane.Dist(b, c), plane.Dist(c, a)} {
			q.ShortestEdge, q.LongestEdge = min(q.ShortestEdge, l), max(q.LongestEdge, l)
		}
		angle := leastAngle(a, b, c)
		if angle < q.MinAngle {
			q.MinAngle, q.WorstAt = angle, Point{(a[0] + b[0] + c[0]) / 3, (a[1] + b[1] + c[1]) / 3}
		}
		if angle < 25 {
			q.Below25++
		}
		if angle < 15 {
			q.Below15++
		}
	}
	if q.Triangles > 0 {
		q.ShareBelow25 = float64(q.Below25) / float64(q.Triangles)
	}
	return q
}

// leastAngle returns the least angle of triangle abc, degrees; 0 if it is not
// anticlockwise.
func leastAngle(a, b, c Point) float64 {
	area := plane.Cross(a, b, c)
	if area <= 0 {
		return 0
	}
	least := math.Pi
	for range 3 {
		dot := (b[0]-a[0])*(c[0]-a[0]) + (b[1]-a[1])*(c[1]-a[1])
		least = min(least, math.Atan2(area, dot))
		a, b, c = b, c, a
	}
	return least * 180 / math.Pi
}
