package lesson

import (
	"math"

	"archload/cases"
	"archload/mesh"
)

// Landmark is a part of a case that a lesson can point at by its name.
type Landmark struct {
	Name string
	At   mesh.Point // mm, in plan
}

// Landmarks lists the parts of a case that have a name and a place: the
// blocks and sides, the bridge and its feet, braces, posts, sound holes, loads
// and gauges. The first of two parts of one name counts.
func Landmarks(c *cases.Case) []Landmark {
	out := edgeLandmarks(c)
	if b := c.Bridge; b != nil {
		out = append(out, Landmark{"bridge", b.At})
		out = append(out, footLandmarks(b)...)
	}
	for i := range c.Braces {
		out = append(out, Landmark{c.Braces[i].Name, partWay(c.Braces[i].Line, 0.5)})
	}
	for _, p := range c.Posts {
		out = append(out, Landmark{p.Name, p.At})
	}
	for _, h := range c.Plate.Holes {
		if at, ok := middle(&h); ok && h.Name != "" {
			out = append(out, Landmark{h.Name, at})
		}
	}
	for _, l := range c.Loads {
		out = append(out, Landmark{l.Name, l.At})
	}
	for _, g := range c.Gauges {
		out = append(out, Landmark{g.Name, g.At})
	}
	return out
}

// edgeLandmarks are the blocks, where the centre line meets the outline, and
// the places where the sides are farthest out.
func edgeLandmarks(c *cases.Case) []Landmark {
	pts := c.Plate.Outline.Points
	if len(pts) == 0 {
		return nil
	}
	neck, tail := mesh.Point{0, math.Inf(-1)}, mesh.Point{0, math.Inf(1)}
	bass, treble := pts[0], pts[0]
	for i, p := range pts {
		q := pts[(i+1)%len(pts)]
		if (p[0] <= 0) != (q[0] <= 0) {
			y := p[1] - p[0]*(q[1]-p[1])/(q[0]-p[0])
			neck[1], tail[1] = math.Max(neck[1], y), math.Min(tail[1], y)
		}
		if p[0] < bass[0] {
			bass = p
		}
		if p[0] > treble[0] {
			treble = p
		}
	}
	out := []Landmark{{"bass side", bass}, {"treble side", treble}}
	if tail[1] < neck[1] {
		out = append(out, Landmark{"neck block", neck}, Landmark{"tail block", tail})
	}
	return out
}

// footLandmarks are the two feet, or ends and middle of a continuous foot.
func footLandmarks(b *cases.Bridge) []Landmark {
	first, last := b.Feet[0], b.Feet[len(b.Feet)-1]
	at := func(x float64) mesh.Point { return mesh.Point{b.At[0] + x, b.At[1]} }
	if len(b.Feet) > 1 {
		return []Landmark{
			{"bass foot", at(float64(first.From+first.To) / 2)},
			{"treble foot", at(float64(last.From+last.To) / 2)},
		}
	}
	return []Landmark{
		{"bass end of the foot", at(float64(first.From))},
		{"middle of the foot", at(float64(first.From+first.To) / 2)},
		{"treble end of the foot", at(float64(first.To))},
	}
}

// middle is the mean of a hole's outline, or the centre of an oval.
func middle(h *cases.Hole) (mesh.Point, bool) {
	if h.At != nil {
		return *h.At, true
	}
	if h.Outline == nil || len(h.Outline.Points) == 0 {
		return mesh.Point{}, false
	}
	var m mesh.Point
	for _, p := range h.Outline.Points {
		m[0] += p[0] / float64(len(h.Outline.Points))
		m[1] += p[1] / float64(len(h.Outline.Points))
	}
	return m, true
}

// partWay returns the place at a fraction of a polyline's length.
func partWay(line []mesh.Point, fraction float64) mesh.Point {
	total := 0.0
	for i := 1; i < len(line); i++ {
		total += math.Hypot(line[i][0]-line[i-1][0], line[i][1]-line[i-1][1])
	}
	left := fraction * total
	for i := 1; i < len(line); i++ {
		a, b := line[i-1], line[i]
		d := math.Hypot(b[0]-a[0], b[1]-a[1])
		if left <= d && d > 0 {
			return mesh.Point{a[0] + left/d*(b[0]-a[0]), a[1] + left/d*(b[1]-a[1])}
		}
		left -= d
	}
	return line[len(line)-1]
}
