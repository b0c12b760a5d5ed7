package mesh

import (
	"fmt"
	"math"

	"archload/mesh/plane"
)

// touching is the clearance between two curves that counts as none, mm.
const touching = 0.01

// checkHoles refuses holes that leave the plate or meet each other.
func checkHoles(d *Domain) error {
	for i, h := range d.Holes {
		if p, out := outermost(h.Polyline(0), func(p Point) (float64, bool) {
			return d.Outline.Distance(p), !d.Outline.Contains(p)
		}); out > -touching {
			return holeFault(i, p, out, "crosses the outline, by %.2f mm", "touches the outline")
		}
		// The outline may still dip into the hole between its points.
		if p, out := outermost(d.Outline.Polyline(0), func(p Point) (float64, bool) {
			if !h.BoxNear(p, touching) {
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

func checkTwoHoles(i int, h *plane.Curve, j int, g *plane.Curve) error {
	for _, pair := range [2][2]*plane.Curve{{h, g}, {g, h}} {
		p, in := outermost(pair[0].Polyline(0), func(p Point) (float64, bool) {
			if !pair[1].BoxNear(p, touching) {
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

// checkDomain refuses impossible numbers and curves that touch each other. It
// limits the size to a quarter of the plate's diagonal.
func checkDomain(d *Domain) error {
	if d.Outline == nil {
		return &PlaceError{Part: "outline", Msg: "missing"}
	}
	for i, h := range d.Holes {
		if h == nil {
			return &PlaceError{Part: "hole", Index: i, Msg: "missing"}
		}
	}
	if err := checkSizes(d); err != nil {
		return err
	}
	lo, hi := d.Outline.Bounds()
	most := plane.Dist(lo, hi) / 4
	d.Size = min(d.Size, most)
	d.Scale = min(d.Scale, most/d.Size)
	if len(d.Holes) > maxHoles {
		return &PlaceError{Part: "hole", Index: maxHoles, Msg: fmt.Sprintf("want at most %d holes, found %d", maxHoles, len(d.Holes))}
	}
	return checkHoles(d)
}

func checkSizes(d *Domain) error {
	bad := func(x float64) bool { return !(x > 0) || math.IsInf(x, 0) }
	if bad(d.Size) || bad(d.Scale) || bad(d.Size*d.Scale) {
		return &PlaceError{Part: "size", Msg: fmt.Sprintf("want an edge length and a scale above 0, found %g mm and %g", d.Size, d.Scale)}
	}
	for _, f := range d.Fine {
		if bad(f.Size) || !(f.Radius >= 0) || math.IsInf(f.Radius, 0) || len(f.Along) == 0 || len(f.Along) > maxFinePts {
			return &PlaceError{Part: "size", Msg: fmt.Sprintf("want a fine zone with 1 to %d points, a radius of at least 0 and an edge length above 0, found %d points, %g mm and %g mm", maxFinePts, len(f.Along), f.Radius, f.Size)}
		}
		for _, p := range f.Along {
			if !p.InReach() {
				return &PlaceError{Part: "size", At: p, Msg: fmt.Sprintf("a fine zone has a point at (%g, %g) mm", p[0], p[1])}
			}
		}
	}
	return nil
}
