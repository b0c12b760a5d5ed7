//go:build cgo

package window

import (
	"image"
	"image/color"
	"math"
	"strings"
	"testing"

	"github.com/go-gl/gl/v3.3-core/gl"

	"archload/viz/desk"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/scene"
)

// sample is a scene with everything in it: a skin with a field, a hole in the
// values, a plain block in front, lines of every kind.
func sample() *scene.Scene {
	skin := sheet(60, arch, func(x, y float64) float64 {
		if math.Hypot(x-60, y-40) < 14 {
			return math.NaN()
		}
		return 0.42 * (1 - x*x/1e4) * (1 - y*y/6400)
	})
	block := sheet(8, func(x, y float64) float64 { return 34 }, nil)
	for i := range block.Points {
		block.Points[i][0], block.Points[i][1] = block.Points[i][0]/4, block.Points[i][1]/16
	}
	veil := sheet(2, func(x, y float64) float64 { return 45 }, nil)
	for i := range veil.Points {
		veil.Points[i][0] = veil.Points[i][0]/5 - 70
	}
	veil.Paint = color.NRGBA{90, 120, 200, 90}
	s := shown(0, 0.42, scale.Counting, skin, block, veil)
	along := func(y0, slope float64, l scene.Line) {
		for i := range 40 {
			x := -95 + 190*float64(i)/39
			l.Points = append(l.Points, [3]float64{x, y0 + slope*x, arch(x, y0+slope*x)})
		}
		s.Lines = append(s.Lines, &l)
	}
	along(20, 0.2, scene.Line{Width: 3, Paint: color.NRGBA{30, 60, 140, 255}, Halo: true, Beads: true})
	along(-30, -0.3, scene.Line{Width: 2, Paint: color.NRGBA{140, 60, 10, 255}, Dash: 5, Over: true})
	along(0, 0.4, scene.Line{Width: 1.5, Paint: color.NRGBA{20, 20, 20, 200}})
	return s
}

// differing returns the share of pixels that differ by more than so many
// levels, those beside an edge of the wanted picture left out.
func differing(got, want *image.NRGBA, levels, edge int) float64 {
	r := want.Rect
	n, bad := 0, 0
	for y := r.Min.Y + 1; y < r.Max.Y-1; y++ {
		for x := r.Min.X + 1; x < r.Max.X-1; x++ {
			at, sharp := want.NRGBAAt(x, y), false
			for _, d := range [][2]int{{1, 0}, {-1, 0}, {0, 1}, {0, -1}} {
				sharp = sharp || apart(at, want.NRGBAAt(x+d[0], y+d[1])) > edge
			}
			if sharp {
				continue
			}
			n++
			if apart(at, got.NRGBAAt(x, y)) > levels {
				bad++
			}
		}
	}
	return float64(bad) / float64(n)
}

func TestPaintersAgree(t *testing.T) {
	p := painterFor(t)
	s := sample()
	for i, view := range scene.Views() {
		for _, light := range []bool{false, true} {
			f := frameOf(s, 640, 480, view.Name)
			f.Density = 1 + float64(i%2)
			f.Views[0].Light, f.Views[0].Phase = light, 0.4
			got, want := drawn(t, p, f), desk.Software(f)
			if share := differing(got, want, 24, 24); share > 0.002 {
				t.Errorf("%s, light %v: %.2f %% of the pixels away from edges differ by more than 24 levels, want at most 0.2 %%", view.Name, light, 100*share)
			}
			if share := differing(got, want, 24, 255); share > 0.02 {
				t.Errorf("%s, light %v: %.2f %% of all pixels differ by more than 24 levels, want at most 2 %%", view.Name, light, 100*share)
			}
		}
	}
}

func TestColourOfAKnownPlace(t *testing.T) {
	p := painterFor(t)
	for _, value := range []float64{-0.3, -0.07, 0.02, 0.13, 0.29} {
		s := shown(-0.3, 0.3, scale.Signed, sheet(4, level, func(float64, float64) float64 { return value }))
		f := frameOf(s, 200, 160, "from outside")
		light := f.Views[0].Camera.Light()
		factor := scene.Shade(light[2]) // the sheet's normal is z
		want := s.Scale.Smooth(value)
		for _, c := range []*uint8{&want.R, &want.G, &want.B} {
			*c = uint8(math.Min(255, math.Round(float64(*c)*factor)))
		}
		if got := drawn(t, p, f).NRGBAAt(100, 80); apart(got, want) > 3 {
			t.Errorf("value %g: got %v, want the colour map's %v in light of %.3f", value, got, want, factor)
		}
	}
}

// darkLines counts the dark lines that a row of pixels crosses left of x1, and
// returns the width of each: its ink, in pixels of full darkness.
func darkLines(img *image.NRGBA, y, x1 int, ground func(x int) color.NRGBA) (inks []float64) {
	in := false
	for x := range x1 {
		d := float64(apart(img.NRGBAAt(x, y), ground(x)))
		switch {
		case d > 12 && !in:
			inks, in = append(inks, 0), true
		case d <= 12:
			in = false
		}
		if in {
			inks[len(inks)-1] += d
		}
	}
	return inks
}

// The side of zero that is hatched, and where its lines run, is the same with both painters, in every density.
func TestHatchesAgree(t *testing.T) {
	p := painterFor(t)
	for _, kind := range []scale.Kind{scale.Signed, scale.Sinking} {
		s := shown(-0.4, 0.4, kind, sheet(20, level, func(x, y float64) float64 { return 0.4 * x / 100 }))
		for _, density := range []float64{1, 1.25, 2} {
			f := frameOf(s, 400, 320, "from outside")
			f.Density, f.Views[0].Light = density, true
			got, want := drawn(t, p, f), desk.Software(f)
			if share := differing(got, want, 8, 255); share > 0.02 {
				t.Errorf("kind %d, density %g: %.2f %% of the pixels differ by more than 8 levels, want at most 2 %%", kind, density, 100*share)
			}
			f.Views[0].Contours = false
			if share := differing(want, desk.Software(f), 8, 255); share < 0.05 {
				t.Errorf("kind %d, density %g: hatch and lines change %.2f %% of the pixels, want more", kind, density, 100*share)
			}
		}
	}
}

func TestContourLinesCanBeCounted(t *testing.T) {
	p := painterFor(t)
	count := func(lo, hi float64, kind scale.Kind, y, x1 int) []float64 {
		s := shown(lo, hi, kind, sheet(20, level, func(x, y float64) float64 { return (lo+hi)/2 + (hi-lo)/2*x/100 }))
		f := frameOf(s, 800, 640, "from outside")
		with := drawn(t, p, f)
		f.Views[0].Contours = false
		without := drawn(t, p, f)
		return darkLines(with, y, x1, func(x int) color.NRGBA { return without.NRGBAAt(x, y) })
	}
	steps := scale.New(0, 0.8, scale.Counting)
	if inks, want := count(0, 0.8, scale.Counting, 301, 800), steps.Bands()-1; len(inks) != want || want < 7 {
		t.Fatalf("a row across the ramp crosses %d lines, want %d, one at each step between the ends", len(inks), want)
	}
	const bare = 402 // beyond the line at zero there are lines of the hatch, too
	inks := count(-0.4, 0.4, scale.Signed, 301, bare)
	if len(inks) != 8 {
		t.Fatalf("a row across the ramp crosses %d lines up to zero, want 8", len(inks))
	}
	if got := count(-0.4, 0.4, scale.Signed, 305, bare); len(got) != 1 {
		t.Errorf("a row through the gaps of the dashes crosses %d lines up to zero, want that at zero", len(got))
	}
	for i, ink := range inks[:7] {
		if !(inks[7] > 1.4*ink) {
			t.Errorf("the line at zero has %.0f of ink, line %d has %.0f; want zero to stand out", inks[7], i, ink)
		}
	}
}

func TestPanelsAgree(t *testing.T) {
	p := painterFor(t)
	l := panel.NewList(atlasOf(t))
	ink, rust := color.NRGBA{58, 42, 30, 255}, color.NRGBA{160, 74, 28, 200}
	l.Rect(panel.Rect{X: 10, Y: 10, W: 180, H: 90}, color.NRGBA{240, 236, 226, 255})
	l.Text(panel.Point{X: 20, Y: 30}, panel.Body, panel.Left, ink, "sink 0.42 mm, σ −3 MPa")
	l.Line(panel.Point{X: 15, Y: 95}, panel.Point{X: 180, Y: 50}, 1.5, rust)
	f := &desk.Frame{Width: 220, Height: 120, Density: 1, Paper: color.NRGBA{251, 248, 240, 255}, Panels: l}
	got, want := drawn(t, p, f), desk.Software(f)
	inked := 0
	for y := range 120 {
		for x := range 220 {
			if a, b := got.NRGBAAt(x, y), want.NRGBAAt(x, y); apart(a, b) > 2 {
				t.Fatalf("pixel %d, %d: got %v, want %v", x, y, a, b)
			}
			if apart(got.NRGBAAt(x, y), ink) < 60 {
				inked++
			}
		}
	}
	if inked < 100 {
		t.Errorf("only %d pixels are dark, want words", inked)
	}
}

func TestReadIsUpright(t *testing.T) {
	p := painterFor(t)
	red, paper := color.NRGBA{200, 0, 0, 255}, color.NRGBA{1, 2, 3, 255}
	l := panel.NewList(atlasOf(t))
	l.Rect(panel.Rect{X: 0, Y: 0, W: 10, H: 5}, red)
	f := &desk.Frame{Width: 40, Height: 30, Density: 1, Paper: paper, Panels: l}
	img := drawn(t, p, f)
	for at, want := range map[image.Point]color.NRGBA{{9, 4}: red, {10, 4}: paper, {9, 5}: paper, {0, 29}: paper, {39, 0}: paper} {
		if got := img.NRGBAAt(at.X, at.Y); got != want {
			t.Errorf("pixel %v: got %v, want %v", at, got, want)
		}
	}
}

func TestViewsStayInTheirRectangles(t *testing.T) {
	p := painterFor(t)
	s := shown(0, 1, scale.Counting, sheet(4, level, func(float64, float64) float64 { return 0.7 }))
	f := frameOf(s, 300, 200, "from outside")
	near := s.Seen("from outside", 100, 100)
	near.Distance /= 4 // fills its rectangle
	f.Views = []desk.View{
		{Where: image.Rect(10, 20, 110, 120), Scene: s, Camera: near},
		{Where: image.Rect(150, 40, 290, 190), Scene: s, Camera: near, Light: true},
	}
	img := drawn(t, p, f)
	for y := range 200 {
		for x := range 300 {
			at := image.Pt(x, y)
			inside := at.In(f.Views[0].Where) || at.In(f.Views[1].Where)
			if empty := img.NRGBAAt(x, y) == f.Paper; empty == inside {
				t.Fatalf("pixel %v: paper %v, inside of a view %v", at, empty, inside)
			}
		}
	}
}

// buffersInUse counts the buffers of the context.
func buffersInUse() int {
	n := 0
	for id := range uint32(4000) {
		if gl.IsBuffer(id) {
			n++
		}
	}
	return n
}

func TestPainterKeepsOnlyWhatShows(t *testing.T) {
	p := painterFor(t)
	most := 0
	for i := range 60 {
		s := sample()
		f := frameOf(s, 200+10*(i%5), 150+7*(i%3), "at an angle")
		f.Views[0].Phase = float64(i%2) * 0.5
		if err := p.Paint(f); err != nil {
			t.Fatalf("frame %d: %v", i, err)
		}
		most = max(most, buffersInUse())
	}
	const perScene, always = 3*2 + 2*2, 2 + 1 // solids and two layers of lines; beads and panels
	if want := (patience+1)*perScene + always; most > want {
		t.Errorf("60 scenes held up to %d buffers, want at most %d", most, want)
	}
	if got, want := drawn(t, p, frameOf(sample(), 320, 240, "from outside")).Rect, image.Rect(0, 0, 320, 240); got != want {
		t.Errorf("after all sizes the picture is %v, want %v", got, want)
	}
	p.Close()
	if n := buffersInUse(); n != 0 {
		t.Errorf("a closed painter holds %d buffers", n)
	}
}

func TestPanelsChangeOverAStillScene(t *testing.T) {
	p := painterFor(t)
	f := frameOf(sample(), 320, 240, "at an angle")
	bare := drawn(t, p, f)
	l := panel.NewList(atlasOf(t))
	l.Rect(panel.Rect{X: 100, Y: 80, W: 90, H: 60}, color.NRGBA{10, 20, 30, 255})
	f.Panels = l
	if got := drawn(t, p, f).NRGBAAt(140, 100); got != (color.NRGBA{10, 20, 30, 255}) {
		t.Errorf("the panel shows as %v", got)
	}
	f.Panels = nil
	if got := drawn(t, p, f); differing(got, bare, 0, 255) > 0 {
		t.Error("without the panel the scene is not what it was")
	}
}

func TestPaintRefusesAnEmptyPage(t *testing.T) {
	p := painterFor(t)
	if err := p.Paint(&desk.Frame{Width: 0, Height: 10}); err == nil || !strings.Contains(err.Error(), "0 x 10") {
		t.Errorf("got %v, want an error that names the size", err)
	}
}

// plate is a page as it is while a hand turns a design: a plate of 12 800
// triangles on either side, two bars, panels.
func plate(t testing.TB, light bool) *desk.Frame {
	value := func(x, y float64) float64 { return 0.42 * (1 - x*x/1e4) * (1 - y*y/6400) }
	inside := sheet(80, func(x, y float64) float64 { return arch(x, y) - 5 }, value)
	for i := range inside.Tris {
		k := &inside.Tris[i]
		k[1], k[2] = k[2], k[1]
	}
	bar := sheet(16, func(x, y float64) float64 { return arch(x, y) + 6 }, nil)
	for i := range bar.Points {
		bar.Points[i][0] = bar.Points[i][0]/20 - 30
	}
	s := shown(0, 0.42, scale.Counting, sheet(80, arch, value), inside, bar)
	a, err := panel.NewAtlas(1)
	if err != nil {
		t.Fatal(err)
	}
	l := panel.NewList(a)
	for y := 10.0; y < 780; y += 24 {
		l.Rect(panel.Rect{X: 980, Y: y, W: 290, H: 20}, color.NRGBA{240, 236, 226, 255})
		l.Text(panel.Point{X: 990, Y: y + 15}, panel.Body, panel.Left, color.NRGBA{58, 42, 30, 255}, "bridge sinks 0.449 mm")
	}
	where := image.Rect(0, 0, 970, 800)
	return &desk.Frame{
		Width: 1280, Height: 800, Density: 1, Paper: color.NRGBA{251, 248, 240, 255}, Panels: l,
		Views: []desk.View{{Where: where, Scene: s, Camera: s.Seen("at an angle", 970, 800), Contours: true, Light: light}},
	}
}

// turned paints the frame from a little further round and returns the
// processor time that it took, s.
func turned(t testing.TB, p *Painter, f *desk.Frame) float64 {
	f.Views[0].Camera = f.Views[0].Camera.Orbited(3, 0.2)
	began := processorTime()
	if err := p.Paint(f); err != nil {
		t.Fatal(err)
	}
	gl.Finish()
	return processorTime() - began
}

func TestTurningIsCheap(t *testing.T) {
	p := painterFor(t)
	f := plate(t, true)
	least := math.Inf(1)
	for range 15 {
		least = math.Min(least, turned(t, p, f))
	}
	if least > 0.050 {
		t.Errorf("a frame of 1280 x 800 took %.0f ms of the processor, want at most 50", 1000*least)
	}
}

func BenchmarkTurning(b *testing.B) {
	for _, light := range []bool{true, false} {
		b.Run(map[bool]string{true: "light", false: "careful"}[light], func(b *testing.B) {
			p := painterFor(b)
			f := plate(b, light)
			used := 0.0
			for range b.N {
				used += turned(b, p, f)
			}
			b.ReportMetric(1000*used/float64(b.N), "cpu-ms/frame")
		})
	}
}

func TestPicture(t *testing.T) {
	f := frameOf(sample(), 300, 220, "at an angle")
	img, how, err := Picture(f)
	if err != nil || how != "OpenGL off-screen (EGL)" {
		t.Fatalf("got a picture by %q and %v, want OpenGL off-screen", how, err)
	}
	if share := differing(img, desk.Software(f), 24, 24); share > 0.002 {
		t.Errorf("%.2f %% of the pixels differ from the software painter", 100*share)
	}
}

func TestNoEGL(t *testing.T) {
	_, err := offscreen("libEGL-of-nowhere.so.7")
	if err == nil || !strings.Contains(err.Error(), "libEGL-of-nowhere.so.7 is not there; install") {
		t.Errorf("got %v, want an error that names the library and what to install", err)
	}
	if _, err = offscreen("libm.so.6"); err == nil || !strings.Contains(err.Error(), "libm.so.6 is not EGL") {
		t.Errorf("got %v, want an error that says that this is another library", err)
	}
}

func TestHiddenWindowNeedsAScreen(t *testing.T) {
	t.Setenv("DISPLAY", "")
	if _, err := hidden(); err == nil || !strings.Contains(err.Error(), "DISPLAY is not set") {
		t.Errorf("got %v, want an error that says what is missing", err)
	}
}

// A picture that goes over into another lies between the two, as in the software's.
func TestPicturesPass(t *testing.T) {
	p := painterFor(t)
	was := shown(0, 0.3, scale.Counting, sheet(4, level, func(float64, float64) float64 { return 0.02 }))
	now := shown(0, 0.3, scale.Counting, sheet(4, level, func(float64, float64) float64 { return 0.29 }))
	a, b := frameOf(was, 200, 160, "from outside"), frameOf(now, 200, 160, "from outside")
	from, to := drawn(t, p, a).NRGBAAt(100, 80), drawn(t, p, b).NRGBAAt(100, 80)
	if apart(from, to) < 60 {
		t.Fatalf("%v and %v are too much alike to tell them apart", from, to)
	}
	b.Was, b.Share = a.Views, 0.25
	got, want := drawn(t, p, b), desk.Software(b)
	for _, c := range [][3]uint8{{got.NRGBAAt(100, 80).R, from.R, to.R}, {got.NRGBAAt(100, 80).B, from.B, to.B}} {
		if mid := 0.75*float64(c[1]) + 0.25*float64(c[2]); math.Abs(float64(c[0])-mid) > 2 {
			t.Errorf("a quarter of the way from %d to %d it has %d", c[1], c[2], c[0])
		}
	}
	if apart(got.NRGBAAt(100, 80), want.NRGBAAt(100, 80)) > 4 {
		t.Errorf("the driver paints %v, the software %v", got.NRGBAAt(100, 80), want.NRGBAAt(100, 80))
	}
	b.Share = 0.5 // of both the pictures are kept: nothing is painted again
	half := drawn(t, p, b).NRGBAAt(100, 80)
	if mid := 0.5 * (float64(from.R) + float64(to.R)); math.Abs(float64(half.R)-mid) > 2 || !p.looks(p.last, b.Views, b) || !p.looks(p.kept, b.Was, b) {
		t.Errorf("half of the way from %d to %d it has %d; both pictures are kept: %v, %v", from.R, to.R, half.R, p.looks(p.last, b.Views, b), p.looks(p.kept, b.Was, b))
	}
	if b.Was, b.Share = nil, 0; apart(drawn(t, p, b).NRGBAAt(100, 80), to) > 2 {
		t.Error("the old picture stays")
	}
}

// Wood has the same late wood, gloss and shade from both painters, and what is soft the same opacity.
func TestWoodAgrees(t *testing.T) {
	p := painterFor(t)
	wood := sheet(60, arch, nil)
	wood.Along = [3]float64{0, 1, 0}
	for _, q := range wood.Points {
		wood.Across = append(wood.Across, q[0])
	}
	soft := sheet(20, func(_, _ float64) float64 { return -30 }, nil)
	soft.Soft, soft.Paint = true, color.NRGBA{90, 60, 40, 150}
	for _, q := range soft.Points {
		soft.Dim = append(soft.Dim, 0.5+q[0]/200)
	}
	for _, view := range []string{"at an angle", "from outside"} {
		f := frameOf(&scene.Scene{Solids: []*scene.Solid{wood, soft}, Radius: 130}, 640, 480, view)
		got, want := drawn(t, p, f), desk.Software(f)
		if share := differing(got, want, 14, 60); share > 0.005 {
			t.Errorf("%s: %.2f %% of the pixels differ by more than 14 levels", view, 100*share)
		}
		dark, light := 255, 0
		for x := 120; x < 520; x++ {
			dark, light = min(dark, int(got.NRGBAAt(x, 240).B)), max(light, int(got.NRGBAAt(x, 240).B))
		}
		if light-dark < 25 {
			t.Errorf("%s: late wood shows by %d levels only", view, light-dark)
		}
	}
}
