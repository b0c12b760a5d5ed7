package main

import (
	"fmt"
	"math"

	"archload/mesh"
)

// The body of the course guitar: 16 inches (406 mm) over the lower bout and
// 510 mm long, with the bridge at the origin, 200 mm from the tail.
const (
	bodyTail   = -200.0 // mm
	bodyNeck   = 310.0  // mm
	bodyPoints = 60
)

// halfWidth gives the outline as x = sin θ · P(c), y = centre + half · c with
// c = cos θ, P being the quartic through these values, mm.
var halfWidth = [5][2]float64{{-1, 213}, {-0.42, 213.7}, {0.22, 125}, {0.62, 176}, {1, 203}}

// bodyOutline returns the outline's points, anticlockwise from the tail, exactly
// symmetric about the centre line.
func bodyOutline() []mesh.Point {
	half, centre := (bodyNeck-bodyTail)/2, (bodyNeck+bodyTail)/2
	right := make([]mesh.Point, bodyPoints/2+1) // from tail to neck, treble side
	for k := range right {
		c := -math.Cos(math.Pi * float64(k) / float64(bodyPoints/2))
		x := math.Sqrt(max(1-c*c, 0)) * lagrange(c)
		right[k] = mesh.Point{rounded(x, 10), rounded(centre+half*c, 10)}
	}
	pts := append([]mesh.Point(nil), right...)
	for k := len(right) - 2; k > 0; k-- {
		pts = append(pts, mesh.Point{-right[k][0], right[k][1]})
	}
	return pts
}

// lagrange evaluates the quartic through halfWidth.
func lagrange(c float64) float64 {
	sum := 0.0
	for i, p := range halfWidth {
		l := p[1]
		for j, q := range halfWidth {
			if i != j {
				l *= (c - q[0]) / (p[0] - q[0])
			}
		}
		sum += l
	}
	return sum
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

// At implements mesh.Surface with the value alone.
func (d depth) At(p mesh.Point) mesh.Jet {
	best := -10.0
	for i := range d {
		best = max(best, d[i].radius-math.Hypot(p[0]-d[i].at[0], p[1]-d[i].at[1]))
	}
	return mesh.Jet{Z: best}
}

// box is a rectangle as a mesh.Region.
type box struct{ lo, hi mesh.Point }

// Polyline returns the corners.
func (b box) Polyline(float64) []mesh.Point {
	return []mesh.Point{b.lo, {b.hi[0], b.lo[1]}, b.hi, {b.lo[0], b.hi[1]}}
}

// fHole returns the edge of the treble f-hole as points about 2.5 mm apart.
func fHole() ([]mesh.Point, error) {
	around := box{mesh.Point{40, -90}, mesh.Point{140, 90}}
	lines, err := mesh.Contours(depth(holeDiscs()), around, []float64{0}, mesh.ContourOptions{Grid: 0.5, Spacing: 2.5})
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
