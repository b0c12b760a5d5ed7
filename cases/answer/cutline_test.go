package answer

import (
	"math"
	"slices"
	"testing"

	"archload/mesh"
	"archload/mesh/plane"
)

// TestCutAlongAgrees cuts the course guitar across, along and obliquely, and
// wants heights of the carved surface, sinks of the gauges' own reading, and
// no station beyond the outline.
func TestCutAlongAgrees(t *testing.T) {
	s := solved(t, "course-guitar", 0.5)
	for _, c := range []struct {
		name     string
		from, to mesh.Point
	}{{"across", mesh.Point{-300, 20}, mesh.Point{300, 20}}, {"along", mesh.Point{0, -300}, mesh.Point{0, 300}}, {"oblique", mesh.Point{-120, -150}, mesh.Point{90, 170}}} {
		l := s.CutAlong(c.from, c.to)
		length := math.Hypot(c.to[0]-c.from[0], c.to[1]-c.from[1])
		dir := [2]float64{(c.to[0] - c.from[0]) / length, (c.to[1] - c.from[1]) / length}
		if len(l.Along) < 200 || len(l.Outer) != len(l.Along) || len(l.Inner) != len(l.Along) || len(l.Sink) != len(l.Along) || len(l.Drift) != len(l.Along) {
			t.Fatalf("%s: %d stations", c.name, len(l.Along))
		}
		for i, a := range l.Along {
			q := l.At[i]
			if d := math.Hypot(q[0]-c.from[0]-a*dir[0], q[1]-c.from[1]-a*dir[1]); d > 1e-9 {
				t.Fatalf("%s: station %d lies %g mm off the line", c.name, i, d)
			}
			r, inside := ReadingAt(s, q)
			if !inside {
				continue
			}
			if l.Outer[i] != s.Top.Built.Plate.Outer.At(q).Z || l.Sink[i] != r.Sink {
				t.Fatalf("%s at %v: height %g, sink %g, want %g, %g", c.name, q, l.Outer[i], l.Sink[i], s.Top.Built.Plate.Outer.At(q).Z, r.Sink)
			}
			if got, want := l.Drift[i], r.Displacement[0]*dir[0]+r.Displacement[1]*dir[1]; math.Abs(got-want) > 1e-12 {
				t.Fatalf("%s at %v: drift %g, want %g", c.name, q, got, want)
			}
		}
	}
	if l := s.CutAlong(mesh.Point{3, 4}, mesh.Point{3, 4}); len(l.Along) != 0 {
		t.Errorf("a line without length has %d stations", len(l.Along))
	}
}

// TestCutAcrossIsACutAlong wants the cross cut to be the same cut, its holes
// open.
func TestCutAcrossIsACutAlong(t *testing.T) {
	s := solved(t, "course-guitar", 0.5)
	c := s.CutAcross(-10)
	open := 0
	for i, q := range c.At {
		x := q[0]
		if i > 0 && !(x > c.At[i-1][0]) {
			t.Fatalf("station %d at %g follows %g", i, x, c.At[i-1][0])
		}
		if math.IsNaN(c.Outer[i]) {
			open++
			if !slices.ContainsFunc(s.Top.Built.Geometry.Holes, func(h *plane.Curve) bool { return h.Contains(mesh.Point{x, -10}) }) {
				t.Errorf("no wood at x = %g, where no hole is", x)
			}
		}
	}
	if len(c.At) < 300 || open < 8 || len(c.Drift) != len(c.At) {
		t.Errorf("%d stations, %d over the f-holes", len(c.At), open)
	}
}

// TestCutBraces wants the two tone bars where they are drawn, as wide and as
// high as they are there.
func TestCutBraces(t *testing.T) {
	s := solved(t, "course-guitar", 0.5)
	// The bars run from x = ±36 at y = 120 to ±44 at y = -135, 7 mm wide and 13
	// high between 15 and 85 % of their length.
	const y = 20
	x := 36 + (120.0-y)/255*8
	l := s.CutAlong(mesh.Point{-200, y}, mesh.Point{200, y})
	if len(l.Braces) != 2 {
		t.Fatalf("%d braces cut, want 2", len(l.Braces))
	}
	for i, want := range []struct {
		name string
		at   float64
	}{{"bass bar", 200 - x}, {"treble bar", 200 + x}} {
		b := l.Braces[i]
		if b.Name != want.name || math.Abs((b.From+b.To)/2-want.at) > 0.01 {
			t.Errorf("%s at %g mm, want %s at %g", b.Name, (b.From+b.To)/2, want.name, want.at)
		}
		if w := b.To - b.From; math.Abs(w-7*math.Hypot(8, 255)/255) > 1e-6 {
			t.Errorf("%s: %g mm wide, want 7 and a little for the slant", b.Name, w)
		}
		if h := b.Top - b.Bottom; math.Abs(h-13) > 1e-9 {
			t.Errorf("%s: %g mm high, want 13", b.Name, h)
		}
		in := l.Inner[int(math.Round(want.at))-int(math.Round(l.Along[0]))]
		if math.Abs(b.Top-in) > 0.15 {
			t.Errorf("%s: glued at %g mm, the inner face lies at %g", b.Name, b.Top, in)
		}
		if b.Sink < 0.05 {
			t.Errorf("%s: sinks %g mm", b.Name, b.Sink)
		}
	}
	// Along the centre line no bar is met.
	if l := s.CutAlong(mesh.Point{0, -200}, mesh.Point{0, 200}); len(l.Braces) != 0 {
		t.Errorf("%d braces on the centre line, want none", len(l.Braces))
	}
}
