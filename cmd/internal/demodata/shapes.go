package main

import (
	"fmt"
	"math"

	"archload/mesh"
	"archload/mesh/surface"
)

// The body of the course guitar: 16 inches (406 mm) over the lower bout and
// 510 mm long, with the bridge at the origin, 200 mm from the tail.
const (
	bodyTail   = -200.0 // mm
	bodyNeck   = 310.0  // mm
	bodyPoints = 60
)

// The treble half is drawn with five arcs that run into each other without a
// kink, in the manner of a mould drawn with a compass. Chosen are the widest
// places of the bouts with their radii and the narrowest place of the waist;
// the other radii follow from the tangency.
const (
	lowerHalf, lowerY, lowerRadius = 203.0, -55.0, 130.0 // mm
	waistHalf, waistY              = 122.0, 128.0        // mm
	upperHalf, upperRadius         = 147.5, 75.0         // mm
)

// arc is a piece of a circle from one point to another, the shorter way.
type arc struct {
	centre   mesh.Point
	from, to float64 // angle, radians
	radius   float64 // mm
}

// length returns the arc's length, mm.
func (a arc) length() float64 { return a.radius * math.Abs(a.to-a.from) }

// at returns the point a length s along the arc.
func (a arc) at(s float64) mesh.Point {
	t := a.from + (a.to-a.from)*s/a.length()
	return mesh.Point{a.centre[0] + a.radius*math.Cos(t), a.centre[1] + a.radius*math.Sin(t)}
}

// arcBetween returns the arc of a circle from p to q.
func arcBetween(centre, p, q mesh.Point) arc {
	from := math.Atan2(p[1]-centre[1], p[0]-centre[0])
	to := math.Atan2(q[1]-centre[1], q[0]-centre[0])
	return arc{centre, from, from + math.Remainder(to-from, 2*math.Pi), distance(centre, p)}
}

func distance(p, q mesh.Point) float64 { return math.Hypot(p[0]-q[0], p[1]-q[1]) }

// toward returns the point at a distance from p on the way to q.
func toward(p, q mesh.Point, d float64) mesh.Point {
	u := d / distance(p, q)
	return mesh.Point{p[0] + u*(q[0]-p[0]), p[1] + u*(q[1]-p[1])}
}

// endRadius returns the radius of the arc through (0, end) with its centre on
// the centre line that touches a bout's circle from outside: with r the
// bout's radius, x its centre's place aside and y its depth below the end,
// (R−y)² + x² = (R−r)².
func endRadius(x, y, r float64) float64 { return (x*x + y*y - r*r) / (2 * (y - r)) }

// trebleHalf returns the arcs from the tail to the neck.
func trebleHalf() []arc {
	lower := mesh.Point{lowerHalf - lowerRadius, lowerY}
	// The waist's circle touches the lower bout's: (w − xl + r)² + Δy² = (rl + r)².
	dx, dy := waistHalf-lower[0], waistY-lowerY
	waistRadius := (dx*dx + dy*dy - lowerRadius*lowerRadius) / (2 * (lowerRadius - dx))
	waist := mesh.Point{waistHalf + waistRadius, waistY}
	reach := waistRadius + upperRadius
	aside := waist[0] - (upperHalf - upperRadius)
	upper := mesh.Point{upperHalf - upperRadius, waistY + math.Sqrt(reach*reach-aside*aside)}
	tailRadius := endRadius(lower[0], lower[1]-bodyTail, lowerRadius)
	neckRadius := endRadius(upper[0], bodyNeck-upper[1], upperRadius)
	tail, neck := mesh.Point{0, bodyTail + tailRadius}, mesh.Point{0, bodyNeck - neckRadius}
	joints := []mesh.Point{
		{0, bodyTail}, toward(tail, lower, tailRadius), toward(lower, waist, lowerRadius),
		toward(upper, waist, upperRadius), toward(neck, upper, neckRadius), {0, bodyNeck},
	}
	var out []arc
	for k, c := range []mesh.Point{tail, lower, waist, upper, neck} {
		out = append(out, arcBetween(c, joints[k], joints[k+1]))
	}
	return out
}

// bodyOutline returns the outline's points, anticlockwise from the tail,
// evenly spaced and exactly symmetric about the centre line.
func bodyOutline() []mesh.Point {
	arcs := trebleHalf()
	total := 0.0
	for _, a := range arcs {
		total += a.length()
	}
	var right []mesh.Point
	k, before := 0, 0.0
	for i := range bodyPoints/2 + 1 {
		s := total * float64(i) / (bodyPoints / 2)
		for k < len(arcs)-1 && s > before+arcs[k].length() {
			before += arcs[k].length()
			k++
		}
		p := arcs[k].at(s - before)
		right = append(right, mesh.Point{rounded(p[0], 10), rounded(p[1], 10)})
	}
	pts := append([]mesh.Point(nil), right...)
	for k := len(right) - 2; k > 0; k-- {
		pts = append(pts, mesh.Point{-right[k][0], right[k][1]})
	}
	return pts
}

// rounded returns v to 1/per.
func rounded(v, per float64) float64 { return math.Round(v*per)/per + 0 }

// The treble f-hole: a stem, leaning outward toward the tail, with a hook at
// each end that turns into a round eye. It is point-symmetric about its
// middle.
const (
	holeX, holeY = 90.0, 0.0 // middle of the stem, mm
	holeLean     = 8.0       // degrees
	holeStem     = 52.0      // half the straight part, mm
	hookRadius   = 10.0      // of the centre line, mm
	hookTurn     = 170.0     // degrees
	slotHalf     = 3.0       // half the slot's width, mm
	eyeRadius    = 4.75      // mm
	eyeBlend     = 9.0       // length over which the eye narrows to the slot, mm
)

// disc is a round tool on its way along the hole's centre line.
type disc struct {
	at     mesh.Point
	radius float64
}

// holeDiscs returns the tool's stations from the upper eye to the lower one.
func holeDiscs() []disc {
	const step = 0.15 // mm
	hook := hookRadius * hookTurn * math.Pi / 180
	half := holeStem + hook
	lean := holeLean * math.Pi / 180
	up, left := mesh.Point{-math.Sin(lean), math.Cos(lean)}, mesh.Point{-math.Cos(lean), -math.Sin(lean)}
	n := int(half / step)
	out := make([]disc, 2*n+1)
	for k := 0; k <= n; k++ {
		s := half * float64(k) / float64(n) // from the middle
		along, aside := min(s, holeStem), 0.0
		if turn := (s - holeStem) / hookRadius; turn > 0 {
			along += hookRadius * math.Sin(turn)
			aside = hookRadius * (1 - math.Cos(turn))
		}
		x, y := along*up[0]+aside*left[0], along*up[1]+aside*left[1]
		u := min(max((s-(half-eyeBlend))/eyeBlend, 0), 1)
		r := slotHalf + (eyeRadius-slotHalf)*u*u*(3-2*u)
		out[n-k] = disc{mesh.Point{holeX + x, holeY + y}, r}
		out[n+k] = disc{mesh.Point{holeX - x, holeY - y}, r}
	}
	return out
}

// depth is the height field whose zero line is the hole's edge: how far a
// point lies inside the swept discs, mm; cut off far outside.
type depth []disc

// At implements surface.Surface with the value alone.
func (d depth) At(p mesh.Point) surface.Jet {
	best := -10.0
	for i := range d {
		best = max(best, d[i].radius-math.Hypot(p[0]-d[i].at[0], p[1]-d[i].at[1]))
	}
	return surface.Jet{Z: best}
}

// box is a rectangle as a plane.Region.
type box struct{ lo, hi mesh.Point }

// Polyline returns the corners.
func (b box) Polyline(float64) []mesh.Point {
	return []mesh.Point{b.lo, {b.hi[0], b.lo[1]}, b.hi, {b.lo[0], b.hi[1]}}
}

// fHole returns the edge of the treble f-hole as points about 2.5 mm apart.
func fHole() ([]mesh.Point, error) {
	around := box{mesh.Point{40, -90}, mesh.Point{140, 90}}
	lines, err := surface.Contours(depth(holeDiscs()), around, []float64{0}, surface.ContourOptions{Grid: 0.5, Spacing: 2.5})
	if err != nil {
		return nil, err
	}
	if len(lines) != 1 {
		return nil, fmt.Errorf("f-hole: want one closed edge, found %d", len(lines))
	}
	pts := lines[0].Points
	for i, p := range pts {
		pts[i] = mesh.Point{rounded(p[0], 100), rounded(p[1], 100)}
	}
	return pts, nil
}
