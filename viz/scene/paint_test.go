package scene

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"math"
	"testing"

	"archload/cases/answer"
	"archload/fem/vec3"
	"archload/mesh"
	"archload/viz/scale"
)

func paper(w, h int) *image.NRGBA {
	img := image.NewNRGBA(image.Rect(0, 0, w, h))
	draw.Draw(img, img.Rect, image.NewUniform(color.NRGBA{251, 248, 240, 255}), image.Point{}, draw.Src)
	return img
}

// away is how far two colours differ in their worst component, 0 to 255.
func away(a, b color.NRGBA) int {
	d := 0
	for _, k := range [3][2]uint8{{a.R, b.R}, {a.G, b.G}, {a.B, b.B}} {
		d = max(d, max(int(k[0])-int(k[1]), int(k[1])-int(k[0])))
	}
	return d
}

// TestColourAtNodes paints without light and wants the legend's colour at the
// nodes; and with light, that colour times Shade of the normal there.
func TestColourAtNodes(t *testing.T) {
	s := solved(t, "course-guitar", 0.5)
	for _, f := range []Field{Sink, StressAlong} {
		sc := NewSkeleton(s).Build(Show{Solution: s, Field: f})
		c := sc.Seen("from outside", 1200, 1500)
		out := named(sc, "plate outside")
		plain := &Scene{Solids: []*Solid{out}, Scale: sc.Scale}
		flat, shaded := paper(1200, 1500), paper(1200, 1500)
		Paint(flat, flat.Rect, plain, c, PaintOptions{Unlit: true})
		Paint(shaded, shaded.Rect, plain, c, PaintOptions{})
		edge := map[int32]bool{}
		for _, n := range append(append([]int32(nil), s.Top.Built.Mesh.Rim...), append(s.Top.Built.Mesh.Holes[0], s.Top.Built.Mesh.Holes[1]...)...) {
			edge[n] = true
		}
		steep := steepness(s.Top.Built.Mesh.Tris, out)
		checked := 0
		for i, p := range out.Points {
			x, y, _, _ := c.Project(p, 1200, 1500)
			if edge[int32(i)] || steep[i] > 0.02*(sc.Scale.Hi-sc.Scale.Lo)*pixelsPerMM(c) {
				continue // half the pixel is another triangle's, or the colour changes within it
			}
			want := sc.Scale.Smooth(out.Values[i])
			if got := flat.NRGBAAt(int(x), int(y)); away(got, want) > 6 {
				t.Fatalf("%s, node %d: colour %v, want %v of %g", f.Name(), i, got, want, out.Values[i])
			}
			k := out.Dim[i] * Shade(vec3.Dot(out.Normals[i], c.Light()))
			lit := func(v uint8) uint8 { return uint8(min(255, k*float64(v))) }
			want = color.NRGBA{lit(want.R), lit(want.G), lit(want.B), 255}
			if got := shaded.NRGBAAt(int(x), int(y)); away(got, want) > 8 {
				t.Fatalf("%s, node %d: lit colour %v, want %v", f.Name(), i, got, want)
			}
			checked++
		}
		if checked < 500 {
			t.Errorf("%s: only %d nodes could be checked", f.Name(), checked)
		}
	}
}

// pixelsPerMM is the scale in the plane of the target in a view 1500 high.
func pixelsPerMM(c Camera) float64 { return c.focal(1500) / c.Distance }

// steepness is the greatest slope of the values in the triangles about each
// node, in their unit for each mm.
func steepness(tris [][3]int32, o *Solid) []float64 {
	out := make([]float64, len(o.Points))
	for _, t := range tris {
		for k := range 3 {
			i, j := t[k], t[(k+1)%3]
			g := math.Abs(o.Values[i]-o.Values[j]) / vec3.Norm(vec3.Sub(o.Points[i], o.Points[j]))
			out[i], out[j] = math.Max(out[i], g), math.Max(out[j], g)
		}
	}
	return out
}

// TestContours wants ink where the field crosses a step of the legend, and
// none half way between two steps.
func TestContours(t *testing.T) {
	s := solved(t, "course-guitar", 0.5)
	sc := NewSkeleton(s).Build(Show{Solution: s, Field: Sink})
	c := sc.Seen("from outside", 1200, 1500)
	out := named(sc, "plate outside")
	plain := &Scene{Solids: []*Solid{out}, Scale: sc.Scale}
	with, without := paper(1200, 1500), paper(1200, 1500)
	Paint(with, with.Rect, plain, c, PaintOptions{Contours: true})
	Paint(without, without.Rect, plain, c, PaintOptions{})
	var on, off, inked, clean int
	for _, tri := range out.Tris {
		for k := range 3 {
			i, j := tri[k], tri[(k+1)%3]
			a, b := (out.Values[i]-sc.Scale.Lo)/sc.Scale.Step, (out.Values[j]-sc.Scale.Lo)/sc.Scale.Step
			p, q := out.Points[i], out.Points[j]
			if math.Abs(b-a) < 0.15 || math.Abs(b-a) > 0.6 {
				continue // too flat to have a sharp place
			}
			for _, level := range []float64{math.Ceil(math.Min(a, b)), math.Floor(math.Min(a, b)) + 0.5} {
				u := (level - a) / (b - a)
				if u < 0.1 || u > 0.9 || level < 0.9 || level > float64(sc.Scale.Bands())-0.9 {
					continue
				}
				x, y, _, _ := c.Project(plus(p, u, vec3.Sub(q, p)), 1200, 1500)
				d := away(with.NRGBAAt(int(x), int(y)), without.NRGBAAt(int(x), int(y)))
				if level == math.Floor(level) {
					on, inked = on+1, inked+b2i(d > 12)
				} else {
					off, clean = off+1, clean+b2i(d == 0)
				}
			}
		}
	}
	if on < 300 || off < 300 {
		t.Fatalf("%d places on a line, %d between, want 300 of each", on, off)
	}
	if inked < on*97/100 || clean < off {
		t.Errorf("ink at %d of %d crossings, clean at %d of %d places between", inked, on, clean, off)
	}
}

// TestPickAtCrown reads height and value at the crown from outside, and at the
// same place from below.
func TestPickAtCrown(t *testing.T) {
	s := solved(t, "course-guitar", 1)
	sc := NewSkeleton(s).Build(Show{Solution: s, Field: Sink, Enlarge: 1})
	q := mesh.Point{0, -25} // beside the bridge, near the crown
	want := s.Top.Built.Plate.Outer.At(q).Z
	reading, _ := answer.ReadingAt(s, q)
	for _, v := range Views() {
		c := sc.Seen(v.Name, 1280, 800)
		at := vec{q[0], q[1], want - reading.Sink}
		if v.Pitch < 0 { // from below
			at[2] -= s.Top.Built.Plate.Thickness.At(q).Z
		}
		x, y, _, _ := c.Project(at, 1280, 800)
		hit, ok := sc.Pick(c, x, y, 1280, 800)
		if v.Pitch < 10 && v.Pitch > 0 {
			continue // the bridge or the arch stands before it
		}
		if !ok {
			t.Fatalf("%s: nothing under %g, %g", v.Name, x, y)
		}
		if d := vec3.Norm(vec3.Sub(hit.At, at)); d > 0.5 {
			t.Errorf("%s: met at %v, want %v", v.Name, hit.At, at)
		}
		if math.Abs(hit.Value-reading.Sink) > 0.01*reading.Sink {
			t.Errorf("%s: reads %g mm, want %g", v.Name, hit.Value, reading.Sink)
		}
	}
	if _, ok := sc.Pick(sc.Seen("from outside", 1280, 800), 2, 2, 1280, 800); ok {
		t.Error("something is met beside the plate")
	}
}

// TestPickBehind wants the bridge to hide what lies under it, and a plate to
// be read through a faint skin.
func TestPickBehind(t *testing.T) {
	tri := func(z float64, paint color.NRGBA, picks bool) *Solid {
		return &Solid{Points: []vec{{-10, -10, z}, {10, -10, z}, {0, 20, z}}, Tris: [][3]int32{{0, 1, 2}}, Paint: paint, Picks: picks,
			Values: []float64{1, 1, 1}}
	}
	c := Camera{Pitch: 90, Distance: 100, Lens: 30}
	for _, k := range []struct {
		name  string
		front color.NRGBA
		want  bool
	}{{"opaque", ebonyColor(), false}, {"faint", sideColor(), true}} {
		s := &Scene{Solids: []*Solid{tri(0, spruceColor(), true), tri(5, k.front, false)}}
		if hit, ok := s.Pick(c, 50, 50, 100, 100); ok != k.want || ok && hit.Value != 1 {
			t.Errorf("%s: read %v, %g", k.name, ok, hit.Value)
		}
	}
}

// TestHides: what stands between the eye and some places, looked for at once, is what stands before each
// by itself, whatever triangle it is.
func TestHides(t *testing.T) {
	s := solved(t, "flat-plate", 1)
	sc := NewSkeleton(s).Build(Show{Solution: s, Field: Sink})
	for _, v := range Views()[:2] {
		c := sc.Seen(v.Name, 1280, 800)
		var places []vec
		for _, l := range sc.Labels {
			places = append(places, vec3.Add(l.At, vec{0, 0, -30}), vec3.Add(l.At, vec{3, 1, 12}))
		}
		near, _ := c.Clip()
		hidden := 0
		for i, got := range sc.Hides(c, places) {
			way := vec3.Sub(places[i], c.Eye())
			want := false
			for _, o := range sc.Solids {
				for _, k := range o.Tris {
					d, _, _ := meet(c.Eye(), unit(way), o.Points[k[0]], o.Points[k[1]], o.Points[k[2]])
					want = want || o.Paint.A == 255 && d > near && d < vec3.Norm(way)-6
				}
			}
			if got != want {
				t.Errorf("%s: place %v hidden %v, want %v", v.Name, places[i], got, want)
			}
			if got {
				hidden++
			}
		}
		if hidden == 0 || hidden == len(places) {
			t.Errorf("%s: %d of %d places are hidden: the test tells nothing", v.Name, hidden, len(places))
		}
	}
}

// TestPaintTwice wants the same picture twice, and nothing outside its place.
func TestPaintTwice(t *testing.T) {
	s := solved(t, "course-guitar-elastic", 0.5)
	flow, err := answer.FlowLines(s)
	if err != nil {
		t.Fatal(err)
	}
	sc := NewSkeleton(s).Build(Show{Solution: s, Field: Sink, Strings: true, Flow: flow})
	where := image.Rect(30, 20, 430, 300)
	c := sc.Seen("at an angle", where.Dx(), where.Dy())
	o := PaintOptions{Contours: true, Phase: 0.3}
	a, b := paper(460, 330), paper(460, 330)
	Paint(a, where, sc, c, o)
	Paint(b, where, sc, c, o)
	if !bytes.Equal(a.Pix, b.Pix) {
		t.Error("two pictures of one scene differ")
	}
	ground := paper(1, 1).NRGBAAt(0, 0)
	changed := 0
	for y := range 330 {
		for x := range 460 {
			inside := (image.Point{x, y}).In(where)
			if a.NRGBAAt(x, y) != ground {
				changed++
				if !inside {
					t.Fatalf("pixel %d, %d outside the view is painted", x, y)
				}
			}
		}
	}
	if changed < 20000 {
		t.Errorf("%d pixels painted, want a plate", changed)
	}
}

// TestSeamless wants no crack between triangles: a skin seen from outside
// covers every sample once.
func TestSeamless(t *testing.T) {
	s := solved(t, "course-guitar", 0.5)
	sc := NewSkeleton(s).Build(Show{Solution: s})
	c := sc.Seen("at an angle", 600, 400)
	out := *named(sc, "plate outside")
	out.Across = nil                        // in one colour
	out.Paint = color.NRGBA{255, 0, 0, 128} // twice on a sample would show
	img := paper(600, 400)
	Paint(img, img.Rect, &Scene{Solids: []*Solid{&out}}, c, PaintOptions{Unlit: true, Quick: true})
	ground := img.NRGBAAt(0, 0)
	once := color.NRGBA{}
	for y := range 400 {
		inside := false
		for x := range 600 {
			switch p := img.NRGBAAt(x, y); {
			case p == ground:
				inside = false
			case !inside && once == (color.NRGBA{}):
				once, inside = p, true
			case p != once:
				t.Fatalf("pixel %d, %d is %v, want %v", x, y, p, once)
			}
		}
	}
}

// TestNearPlane cuts what comes too near: from within the scene a face still
// fills the part of the page that it fills.
func TestNearPlane(t *testing.T) {
	c := Camera{Pitch: 0, Distance: 100, Target: vec{0, 0, 10}, Lens: 60}
	floor := &Solid{Points: []vec{{-500, -500, 0}, {500, -500, 0}, {500, 500, 0}, {-500, 500, 0}}, Tris: [][3]int32{{0, 1, 2}, {0, 2, 3}},
		Normals: []vec{{0, 0, 1}, {0, 0, 1}, {0, 0, 1}, {0, 0, 1}}, Paint: color.NRGBA{10, 20, 30, 255}}
	img := paper(200, 200)
	line := &Line{Points: []vec{{0, -400, 12}, {0, 400, 12}}, Width: 6, Paint: color.NRGBA{200, 0, 0, 255}}
	Paint(img, img.Rect, &Scene{Solids: []*Solid{floor}, Lines: []*Line{line}}, c, PaintOptions{Unlit: true})
	for _, k := range []struct {
		x, y int
		want color.NRGBA
	}{{100, 198, floor.Paint}, {5, 198, floor.Paint}, {195, 198, floor.Paint}, {100, 5, line.Paint}, {20, 20, paper(1, 1).NRGBAAt(0, 0)}} {
		if got := img.NRGBAAt(k.x, k.y); away(got, k.want) > 1 {
			t.Errorf("pixel %d, %d is %v, want %v", k.x, k.y, got, k.want)
		}
	}
}

// TestLines wants a line of its width and colour, hidden behind a solid unless
// it lies over everything, broken by its dashes.
func TestLines(t *testing.T) {
	wall := &Solid{Points: []vec{{-20, -20, 5}, {20, -20, 5}, {20, 20, 5}, {-20, 20, 5}}, Tris: [][3]int32{{0, 1, 2}, {0, 2, 3}},
		Normals: []vec{{0, 0, 1}, {0, 0, 1}, {0, 0, 1}, {0, 0, 1}}, Paint: color.NRGBA{90, 90, 90, 255}}
	c := Camera{Pitch: 90, Distance: 200, Lens: 53.13010235415598} // 200 mm on 200 pixels
	line := func(y float64, edit func(*Line)) *Line {
		l := &Line{Points: []vec{{-90, y, 0}, {90, y, 0}}, Width: 4, Paint: color.NRGBA{0, 0, 200, 255}}
		edit(l)
		return l
	}
	img := paper(200, 200)
	Paint(img, img.Rect, &Scene{Solids: []*Solid{wall}, Lines: []*Line{
		line(0, func(*Line) {}), line(10, func(l *Line) { l.Over = true }), line(40, func(l *Line) { l.Dash = 10 }), line(-40, func(l *Line) { l.Halo = true }),
	}}, c, PaintOptions{Unlit: true})
	ground, blue := paper(1, 1).NRGBAAt(0, 0), color.NRGBA{0, 0, 200, 255}
	for _, k := range []struct {
		name string
		x, y int
		want color.NRGBA
	}{
		{"before the wall", 40, 100, blue}, {"hidden by it", 100, 100, wall.Paint}, {"over it", 100, 90, blue},
		{"in a dash", 15, 60, blue}, {"in a gap", 25, 60, ground}, {"within the width", 40, 101, blue}, {"beside it", 40, 103, ground},
		{"in the halo's line", 40, 140, blue},
	} {
		if got := img.NRGBAAt(k.x, k.y); away(got, k.want) > 2 {
			t.Errorf("%s: %v, want %v", k.name, got, k.want)
		}
	}
	if got := img.NRGBAAt(40, 142); got == ground || away(got, blue) < 100 {
		t.Errorf("halo %v, want a light edge", got)
	}
}

// TestFittedFills wants every named view to hold the scene and to fill it.
func TestFittedFills(t *testing.T) {
	s := solved(t, "course-guitar-elastic", 0.5)
	sc := NewSkeleton(s).Build(Show{Solution: s})
	for _, v := range Views() {
		for _, size := range [][2]int{{1280, 800}, {400, 900}} {
			w, h := size[0], size[1]
			c := sc.Seen(v.Name, w, h)
			lo, hi := vec{1e9, 1e9}, vec{-1e9, -1e9}
			sc.eachOutermost(nil, func(p vec) {
				x, y, _, _ := c.Project(p, w, h)
				lo = vec{math.Min(lo[0], x/float64(w)), math.Min(lo[1], y/float64(h))}
				hi = vec{math.Max(hi[0], x/float64(w)), math.Max(hi[1], y/float64(h))}
			})
			most := math.Max(hi[0]-lo[0], hi[1]-lo[1])
			if lo[0] < margin-1e-6 || lo[1] < margin-1e-6 || hi[0] > 1-margin+1e-6 || hi[1] > 1-margin+1e-6 || most < 1-2*margin-0.02 {
				t.Errorf("%s in %d by %d: from %v to %v of the view", v.Name, w, h, lo, hi)
			}
		}
	}
}

func TestRanges(t *testing.T) {
	for _, c := range []struct {
		f      Field
		r      [2]float64
		lo, hi float64
		kind   scale.Kind
	}{
		{Sink, [2]float64{-0.01, 0.44}, -0.05, 0.45, scale.Sinking},
		{Sink, [2]float64{-0.1, 0.4}, -0.1, 0.4, scale.Sinking},
		{StressAcross, [2]float64{-1, 2}, -1, 2, scale.Signed},
		{StrengthUsed, [2]float64{3, 9.5}, 3, 9.5, scale.Counting},
	} {
		s := c.f.scaleOf(c.r)
		if s.Kind != c.kind || math.Abs(s.Lo-c.lo) > 1e-9 || math.Abs(s.Hi-c.hi) > 1e-9 {
			t.Errorf("%s over %v: %g to %g, kind %v; want %g to %g, %v", c.f.Name(), c.r, s.Lo, s.Hi, s.Kind, c.lo, c.hi, c.kind)
		}
	}
	var none scale.Scale
	if f := newFieldPaint(nil, PaintOptions{}, 2); f.shown || none.Step != 0 {
		t.Error("no scale, yet a field")
	}
}
