package panel

import (
	"image"
	"image/color"
	"math"
	"testing"
)

func white(w, h int) *image.NRGBA {
	m := image.NewNRGBA(image.Rect(0, 0, w, h))
	for i := range m.Pix {
		m.Pix[i] = 255
	}
	return m
}

func isWhite(k color.NRGBA) bool { return k == color.NRGBA{255, 255, 255, 255} }

// TestPaintRect wants exactly the pixels within the rectangle, at each density.
func TestPaintRect(t *testing.T) {
	for _, density := range []float64{1, 1.5, 2} {
		l := NewList(newAtlas(t, density))
		l.Rect(Rect{10, 20, 30, 8}, Rust())
		m := white(100, 100)
		l.Paint(m)
		d := func(v float64) int { return int(math.Round(v * density)) }
		in := image.Rect(d(10), d(20), d(40), d(28))
		for y := range 100 {
			for x := range 100 {
				want := color.NRGBA{255, 255, 255, 255}
				if (image.Point{x, y}).In(in) {
					want = Rust()
				}
				if got := m.NRGBAAt(x, y); got != want {
					t.Fatalf("density %g: pixel %d, %d is %v, want %v", density, x, y, got, want)
				}
			}
		}
	}
}

// TestPaintBlends lays a fifth of 60 over white, over clear ground and over a
// half-clear 200.
func TestPaintBlends(t *testing.T) {
	l := NewList(newAtlas(t, 1))
	l.Rect(Rect{0, 0, 4, 4}, color.NRGBA{60, 60, 60, 51})
	m := white(4, 4)
	l.Paint(m)
	if got, want := m.NRGBAAt(1, 1), (color.NRGBA{216, 216, 216, 255}); got != want {
		t.Errorf("a fifth of 60 over white is %v, want %v: 0.2*60 + 0.8*255", got, want)
	}
	m = image.NewNRGBA(image.Rect(0, 0, 4, 4))
	l.Paint(m)
	if got, want := m.NRGBAAt(1, 1), (color.NRGBA{60, 60, 60, 51}); got != want {
		t.Errorf("over clear ground %v, want %v", got, want)
	}
	m.SetNRGBA(1, 1, color.NRGBA{200, 200, 200, 128})
	l.Paint(m)
	// opacity 0.2 + 0.8*128/255 = 0.60157; colour (0.2*60 + 0.40157*200)/0.60157 = 153.45
	if got, want := m.NRGBAAt(1, 1), (color.NRGBA{153, 153, 153, 153}); got != want {
		t.Errorf("over half-clear ground %v, want %v", got, want)
	}
}

// TestPaintNoSeams lays a see-through polygon of many triangles, at places off
// the pixels: every pixel inside must be painted exactly once.
func TestPaintNoSeams(t *testing.T) {
	l := NewList(newAtlas(t, 1))
	var star []Point
	for i := range 26 {
		r := 40.0
		if i%2 == 1 {
			r = 28.3
		}
		s, c := math.Sincos(float64(i) * math.Pi / 13)
		star = append(star, Point{50.37 + r*c, 50.71 + r*s})
	}
	l.Polygon(star, color.NRGBA{0, 0, 0, 100})
	m := white(100, 100)
	l.Paint(m)
	once := color.NRGBA{155, 155, 155, 255}
	for y := range 100 {
		for x := range 100 {
			r := math.Hypot(float64(x)+0.5-50.37, float64(y)+0.5-50.71)
			got := m.NRGBAAt(x, y)
			if r < 27 && got != once || r > 42 && !isWhite(got) || got.R < once.R {
				t.Fatalf("pixel %d, %d, %.1f from the middle, is %v", x, y, r, got)
			}
		}
	}
}

// TestPaintPolygonArea compares the painted area of hollow and convex shapes,
// in either sense, with the shoelace formula and the soft edge, a ramp of 0.75
// pixels outside: half of it counts.
func TestPaintPolygonArea(t *testing.T) {
	shapes := map[string][]Point{
		"square": {{10, 10}, {60, 10}, {60, 60}, {10, 60}},
		"hook":   {{10, 10}, {80, 10}, {80, 30}, {40, 30}, {40, 60}, {80, 60}, {80, 90}, {10, 90}},
		"turned": {{10, 90}, {80, 90}, {80, 60}, {40, 60}, {40, 30}, {80, 30}, {80, 10}, {10, 10}},
	}
	for name, shape := range shapes {
		l := NewList(newAtlas(t, 1))
		l.Polygon(shape, color.NRGBA{0, 0, 0, 255})
		m := white(100, 100)
		l.Paint(m)
		got, around := 0.0, 0.0
		for i := 0; i < len(m.Pix); i += 4 {
			got += float64(255-m.Pix[i]) / 255
		}
		for i, p := range shape {
			q := shape[(i+1)%len(shape)]
			around += math.Hypot(q.X-p.X, q.Y-p.Y)
		}
		inside := math.Abs(twiceArea(shape)) / 2
		if got < inside || got > inside+0.75*around {
			t.Errorf("%s: painted area %.0f pixels, want %.0f to %.0f", name, got, inside, inside+0.75*around)
		}
	}
}

// TestPaintLineWidth: the paint across a slanted line sums to its width.
func TestPaintLineWidth(t *testing.T) {
	for _, width := range []float64{0.5, 1, 1.5, 2, 4} {
		l := NewList(newAtlas(t, 1))
		l.Line(Point{-20, 12.3}, Point{220, 83.9}, width, color.NRGBA{0, 0, 0, 255})
		m := white(200, 100)
		l.Paint(m)
		sum := 0.0
		for x := 20; x < 180; x++ {
			for y := range 100 {
				sum += float64(255-m.NRGBAAt(x, y).R) / 255
			}
		}
		slant := math.Hypot(240, 71.6) / 240
		if got := sum / 160 / slant; math.Abs(got-width) > 0.06 {
			t.Errorf("a line of %g pixels paints %.3f across", width, got)
		}
	}
}

func TestPaintText(t *testing.T) {
	for _, density := range []float64{1, 1.5, 2} {
		a := newAtlas(t, density)
		l := NewList(a)
		l.Text(Point{10, 30}, Body, Left, Ink(), "Hog")
		m := white(200, 100)
		l.Paint(m)
		// The painted letters are the atlas's, where the pens stand.
		x, dark := int(math.Round(10*density)), 0
		y := int(math.Round(30 * density))
		for _, r := range "Hog" {
			g := a.glyph(Body, r)
			for j := range g.from.Dy() {
				for i := range g.from.Dx() {
					c := a.Image.AlphaAt(g.from.Min.X+i, g.from.Min.Y+j).A
					got := m.NRGBAAt(x+g.offset.X+i, y+g.offset.Y+j)
					want := white(1, 1)
					k := Ink()
					k.A = c
					blend(want.Pix, k)
					if got != want.NRGBAAt(0, 0) {
						t.Fatalf("density %g: %c differs from the atlas at %d, %d: %v, want %v", density, r, i, j, got, want.NRGBAAt(0, 0))
					}
					if c > 200 {
						dark++
					}
				}
			}
			x += g.advance
		}
		if dark < 30 {
			t.Errorf("density %g: only %d dark pixels", density, dark)
		}
	}
}

// TestClip draws everything beyond the edges of a window: nothing may show
// outside, and inside everything looks as without it.
func TestClip(t *testing.T) {
	draw := func(l *List) {
		l.Rect(Rect{5, 5, 60, 20}, faded(Rust(), 0.5))
		l.Disc(Point{60, 60}, 25, Blue())
		l.Polyline([]Point{{0, 90}, {50, 40}, {100, 95}}, 3, Ink())
		l.Text(Point{10, 40}, Large, Left, Ink(), "Across the edges")
		l.Strip(Rect{10, 70, 80, 10}, []color.NRGBA{{255, 0, 0, 255}, {0, 0, 255, 255}}, false)
	}
	a := newAtlas(t, 1)
	free, held := NewList(a), NewList(a)
	draw(free)
	held.Clip(Rect{20, 15, 55, 62})
	held.Clip(Rect{0, 10, 70, 80})
	draw(held)
	held.Unclip()
	held.Unclip()
	want, got := white(100, 100), white(100, 100)
	free.Paint(want)
	held.Paint(got)
	in := image.Rect(20, 15, 70, 77)
	for y := range 100 {
		for x := range 100 {
			g, w := got.NRGBAAt(x, y), want.NRGBAAt(x, y)
			if !(image.Point{x, y}).In(in) {
				if !isWhite(g) {
					t.Fatalf("pixel %d, %d outside the window is %v", x, y, g)
				}
				continue
			}
			if far(g, w) > 3 {
				t.Fatalf("pixel %d, %d is %v, without the window %v", x, y, g, w)
			}
		}
	}
}

// far is the greatest difference of two paints in one channel.
func far(a, b color.NRGBA) float64 {
	d := func(p, q uint8) float64 { return math.Abs(float64(p) - float64(q)) }
	return max(d(a.R, b.R), d(a.G, b.G), d(a.B, b.B), d(a.A, b.A))
}

func TestBadPlacesDrawNothing(t *testing.T) {
	l := NewList(newAtlas(t, 1))
	nan, inf := math.NaN(), math.Inf(1)
	l.Rect(Rect{nan, 0, 10, 10}, Ink())
	l.Line(Point{0, nan}, Point{10, 10}, 1, Ink())
	l.Polygon([]Point{{0, 0}, {inf, 0}, {0, 1}}, Ink())
	l.Text(Point{nan, 3}, Body, Left, Ink(), "a")
	l.Dashed(Point{0, 0}, Point{inf, 0}, 1, [2]float64{3, 3}, Ink())
	l.Upright(nan, 0, 10, 1, Ink())
	l.Disc(Point{nan, 1}, 4, Ink())
	if len(l.Vertices) != 0 {
		t.Errorf("%d vertices, want none", len(l.Vertices))
	}
	l.Line(Point{-1e9, 0}, Point{1e9, 10}, 1, Ink()) // beyond what the painter takes
	l.Paint(white(10, 10))
}

// TestPage paints the page with every control: the sheets, and ink on them.
func TestPage(t *testing.T) {
	for _, density := range []float64{1, 1.5, 2} {
		s := newPage(t, density)
		m := s.painted()
		if got := m.NRGBAAt(int(16*density), int(16*density)); got != Paper() {
			t.Errorf("density %g: the sheet is %v, want %v", density, got, Paper())
		}
		if !isWhite(m.NRGBAAt(int(318*density), int(300*density))) {
			t.Errorf("density %g: ink between the sheets", density)
		}
		dark := 0
		for i := 0; i < len(m.Pix); i += 4 {
			if m.Pix[i] < 100 {
				dark++
			}
		}
		if share := float64(dark) / float64(len(m.Pix)/4); share < 0.005 || share > 0.1 {
			t.Errorf("density %g: %.3f of the page is ink", density, share)
		}
	}
}
