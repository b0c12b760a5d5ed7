//go:build cgo

package window

import (
	"image"
	"image/color"
	"math"
	"testing"

	"archload/viz/desk"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/scene"
)

// sheet is a skin of n by n squares over 200 x 160 mm about the origin.
func sheet(n int, height, value func(x, y float64) float64) *scene.Solid {
	s := &scene.Solid{Name: "sheet", Paint: color.NRGBA{200, 180, 150, 255}}
	const h = 0.01 // mm, of the central difference
	for j := range n + 1 {
		for i := range n + 1 {
			x, y := 200*(float64(i)/float64(n)-0.5), 160*(float64(j)/float64(n)-0.5)
			dx := (height(x+h, y) - height(x-h, y)) / (2 * h)
			dy := (height(x, y+h) - height(x, y-h)) / (2 * h)
			l := math.Sqrt(1 + dx*dx + dy*dy)
			s.Points = append(s.Points, [3]float64{x, y, height(x, y)})
			s.Normals = append(s.Normals, [3]float64{-dx / l, -dy / l, 1 / l})
			if value != nil {
				s.Values = append(s.Values, value(x, y))
			}
		}
	}
	at := func(i, j int) int32 { return int32(j*(n+1) + i) }
	for j := range n {
		for i := range n {
			s.Tris = append(s.Tris, [3]int32{at(i, j), at(i+1, j), at(i+1, j+1)}, [3]int32{at(i, j), at(i+1, j+1), at(i, j+1)})
		}
	}
	return s
}

// arch is a height of 18 mm in the middle that falls to nothing at the ends.
func arch(x, y float64) float64 {
	return 18 * (1 - x*x/1e4) * (1 - y*y/6400)
}

func level(float64, float64) float64 { return 0 }

// shown is a scene of solids with a scale from lo to hi.
func shown(lo, hi float64, kind scale.Kind, solids ...*scene.Solid) *scene.Scene {
	bands := scale.New(lo, hi, kind)
	return &scene.Scene{Solids: solids, Scale: &bands, Radius: 130}
}

// frameOf is a page of w by h pixels that one scene fills, seen from a named
// side.
func frameOf(s *scene.Scene, w, h int, from string) *desk.Frame {
	return &desk.Frame{
		Width: w, Height: h, Density: 1, Paper: color.NRGBA{251, 248, 240, 255},
		Views: []desk.View{{Where: image.Rect(0, 0, w, h), Scene: s, Camera: s.Seen(from, w, h), Contours: true}},
	}
}

// atlasOf makes an atlas for ordinary density.
func atlasOf(t *testing.T) *panel.Atlas {
	t.Helper()
	a, err := panel.NewAtlas(1)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// painterFor opens a context off the screen and a painter in it.
func painterFor(t testing.TB) *Painter {
	t.Helper()
	c, err := Offscreen()
	if err != nil {
		t.Fatalf("these tests draw with OpenGL off the screen: %v", err)
	}
	p, err := NewPainter()
	if err != nil {
		c.Close()
		t.Fatal(err)
	}
	t.Cleanup(func() {
		p.Close()
		c.Close()
	})
	return p
}

// drawn paints a frame and reads it back.
func drawn(t *testing.T, p *Painter, f *desk.Frame) *image.NRGBA {
	t.Helper()
	if err := p.Paint(f); err != nil {
		t.Fatal(err)
	}
	return p.Read()
}

// apart is the greatest difference of two colours in one channel, levels.
func apart(a, b color.NRGBA) int {
	d := 0
	for _, v := range [][2]uint8{{a.R, b.R}, {a.G, b.G}, {a.B, b.B}} {
		d = max(d, int(v[0])-int(v[1]), int(v[1])-int(v[0]))
	}
	return d
}
