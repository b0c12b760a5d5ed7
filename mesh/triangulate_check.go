package mesh

import (
	"fmt"
)

// touching is the clearance between two curves that counts as none, mm.
const touching = 0.01

// checkHoles refuses holes that leave the plate or meet each other.
func checkHoles(d *Domain) error {
	for i, h := range d.Holes {
		if p, out := outermost(h.flat, func(p Point) (float64, bool) {
			return d.Outline.Distance(p), !d.Outline.Contains(p)
		}); out > -touching {
			return holeFault(i, p, out, "crosses the outline, by %.2f mm", "touches the outline")
		}
		// The outline may still dip into the hole between its points.
		if p, out := outermost(d.Outline.flat, func(p Point) (float64, bool) {
			if !h.boxNear(p, touching) {
				return 1, false
			}
			return h.Distance(p), h.Contains(p)
		}); out > -touching {
			return holeFault(i, p, out, "crosses the outline, by %.2f mm", "touches the outline")
		}
		for j, g := range d.Holes[:i] {
			if err := checkTwoHoles(i, h, j, g); err != nil {
				return err
			}
		}
	}
	return nil
}

func checkTwoHoles(i int, h *Curve, j int, g *Curve) error {
	for _, pair := range [2][2]*Curve{{h, g}, {g, h}} {
		p, in := outermost(pair[0].flat, func(p Point) (float64, bool) {
			if !pair[1].boxNear(p, touching) {
				return 1, false
			}
			return pair[1].Distance(p), pair[1].Contains(p)
		})
		if in > -touching {
			return holeFault(i, p, in, fmt.Sprintf("overlaps hole %d, by %%.2f mm", j+1), fmt.Sprintf("touches hole %d", j+1))
		}
	}
	return nil
}

// outermost returns the point that lies deepest on the wrong side, and how
// deep, mm; negative if all are on the right side.
func outermost(pts []Point, depth func(Point) (float64, bool)) (at Point, worst float64) {
	for i, p := range pts {
		d, wrong := depth(p)
		if !wrong {
			d = -d
		}
		if i == 0 || d > worst {
			at, worst = p, d
		}
	}
	return at, worst
}

func holeFault(i int, at Point, depth float64, cross, touch string) error {
	msg := touch
	if depth > touching {
		msg = fmt.Sprintf(cross, depth)
	}
	return &PlaceError{Part: "hole", Index: i, At: at, Msg: msg}
}

// boxNear tells whether p lies in the curve's bounding box widened by d.
func (c *Curve) boxNear(p Point, d float64) bool {
	return p[0] > c.lo[0]-d && p[0] < c.hi[0]+d && p[1] > c.lo[1]-d && p[1] < c.hi[1]+d
}

// curves lists the outline and the holes.
func (d *Domain) curves() []*Curve {
	return append([]*Curve{d.Outline}, d.Holes...)
}

// inWood tells whether p lies in the plate and in no hole.
func (d *Domain) inWood(p Point) bool {
	if !d.Outline.Contains(p) {
		return false
	}
	for _, h := range d.Holes {
		if h.Contains(p) {
			return false
		}
	}
	return true
}

// checkInside refuses lines that leave the plate or enter a hole. Pieces that
// end on an edge are shortened there by a little more than the polylines that
// stand for the curves are out.
func (n *lineNet) checkInside(d *Domain) error {
	var walls [][2]Point
	for _, c := range d.curves() {
		walls = append(walls, ringChords(c.flat)...)
	}
	grid := newChordGrid(walls)
	lo, hi := d.Outline.Bounds()
	zone := 100 * curveFlatness * pointDist(lo, hi)
	for k, line := range n.lines {
		for i := range len(line) - 1 {
			if n.leaves(d, grid, line[i], line[i+1], zone) {
				return n.excursion(d, k)
			}
		}
	}
	return nil
}

func (n *lineNet) leaves(d *Domain, walls *chordGrid, i, j int32, zone float64) bool {
	a, b := n.pts[i], n.pts[j]
	l := pointDist(a, b)
	cut := min(zone/l, 0.49)
	p, q := a, b
	if n.rim[i].curve >= 0 {
		p = pointLerp(a, b, cut)
	}
	if n.rim[j].curve >= 0 {
		q = pointLerp(b, a, cut)
	}
	if !d.inWood(pointLerp(p, q, 0.5)) {
		return true
	}
	hit := false
	lo, hi := pointBounds([]Point{p, q})
	walls.near(lo, hi, func(k int32) {
		hit = hit || chordsMeet(p, q, walls.segs[k][0], walls.segs[k][1])
	})
	return hit
}

// excursion says where line k is farthest out of the wood.
func (n *lineNet) excursion(d *Domain, k int) error {
	var pts []Point
	line, whole := n.lines[k], 0.0
	for i := range len(line) - 1 {
		whole += pointDist(n.pts[line[i]], n.pts[line[i+1]])
	}
	for i := range len(line) - 1 {
		a, b := n.pts[line[i]], n.pts[line[i+1]]
		steps := int(pointDist(a, b)/max(0.2, whole/20000)) + 8
		for s := range steps + 1 {
			pts = append(pts, pointLerp(a, b, float64(s)/float64(steps)))
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
