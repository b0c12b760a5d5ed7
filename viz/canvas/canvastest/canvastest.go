// Package canvastest holds what the tests of pictures share.
package canvastest

import (
	"math"
	"testing"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/vgimg"

	"archload/viz/canvas"
)

// sizes is a canvas that only notes the sizes of text.
type sizes struct {
	vg.Canvas
	least float64
}

func (s *sizes) FillString(f font.Face, _ vg.Point, _ string) {
	s.least = math.Min(s.least, float64(f.Font.Size))
}

// StandsClear checks the text of one picture.
func StandsClear(t *testing.T, p *canvas.Picture) {
	t.Helper()
	if p.Width > 7.5*72 || p.Height > 10.5*72 {
		t.Errorf("%.0f x %.0f points, want what A4 and Letter paper can hold", p.Width, p.Height)
	}
	c := &sizes{vgimg.New(1, 1), 1000}
	g := p.Draw(c)
	if c.least < canvas.Smallest {
		t.Errorf("smallest text %g points, want at least %d", c.least, canvas.Smallest)
	}
	for i, a := range g.Texts() {
		for _, q := range a.Corners() {
			if q.X < 9 || q.Y < 9 || q.X > p.Width-9 || q.Y > p.Height-9 {
				t.Errorf("text at %.0f, %.0f reaches over the border", a.At.X, a.At.Y)
				break
			}
		}
		for _, b := range g.Texts()[:i] {
			if a.Overlaps(b) {
				t.Errorf("text at %.0f, %.0f (%.0f wide) over text at %.0f, %.0f (%.0f wide)", a.At.X, a.At.Y, a.W, b.At.X, b.At.Y, b.W)
			}
		}
	}
}
