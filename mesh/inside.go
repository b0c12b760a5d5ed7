package mesh

import (
	"fmt"

	"archload/mesh/plane"
)

// checkInside refuses lines that leave the plate or enter a hole. Pieces that
// end on an edge are shortened there by a little more than the polylines that
// stand for the curves are out.
func (n *lineNet) checkInside(d *Domain) error {
	var walls [][2]Point
	for _, c := range d.curves() {
		walls = append(walls, plane.Sides(c.Polyline(0))...)
	}
	grid := plane.NewGrid(walls)
	lo, hi := d.Outline.Bounds()
	zone := 100 * plane.Flatness * plane.Dist(lo, hi)
	for k, line := range n.lines {
		for i := range len(line) - 1 {
			if n.leaves(d, grid, line[i], line[i+1], zone) {
				return n.excursion(d, k)
			}
		}
	}
	return nil
}

func (n *lineNet) leaves(d *Domain, walls *plane.Grid, i, j int32, zone float64) bool {
	a, b := n.pts[i], n.pts[j]
	l := plane.Dist(a, b)
	cut := min(zone/l, 0.49)
	p, q := a, b
	if n.rim[i].curve >= 0 {
		p = plane.Lerp(a, b, cut)
	}
	if n.rim[j].curve >= 0 {
		q = plane.Lerp(b, a, cut)
	}
	if !d.inWood(plane.Lerp(p, q, 0.5)) {
		return true
	}
	hit := false
	lo, hi := plane.Bounds([]Point{p, q})
	walls.Near(lo, hi, func(k int32) {
		hit = hit || plane.Meet(p, q, walls.Segs[k][0], walls.Segs[k][1])
	})
	return hit
}

// excursion says where line k is farthest out of the wood.
func (n *lineNet) excursion(d *Domain, k int) error {
	var pts []Point
	line, whole := n.lines[k], 0.0
	for i := range len(line) - 1 {
		whole += plane.Dist(n.pts[line[i]], n.pts[line[i+1]])
	}
	for i := range len(line) - 1 {
		a, b := n.pts[line[i]], n.pts[line[i+1]]
		steps := int(plane.Dist(a, b)/max(0.2, whole/20000)) + 8
		for s := range steps + 1 {
			pts = append(pts, plane.Lerp(a, b, float64(s)/float64(steps)))
		}
	}
	at, out := outermost(pts, func(p Point) (float64, bool) {
		return d.Outline.Distance(p), !d.Outline.Contains(p)
	})
	msg := fmt.Sprintf("leaves the plate by %.2f mm", out)
	for j, h := range d.Holes {
		p, in := outermost(pts, func(p Point) (float64, bool) { return h.Distance(p), h.Contains(p) })
		if in > out {
			at, out, msg = p, in, fmt.Sprintf("enters hole %d by %.2f mm", j+1, in)
		}
	}
	if out < touching {
		msg = "touches the edge of the plate or of a hole between its ends"
	}
	return &PlaceError{Part: "line", Index: k, At: at, Msg: msg}
}
