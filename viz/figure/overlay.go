package figure

import (
	"fmt"

	"archload/viz/canvas"
)

// OverlaySections draws the cross-arches of two designs over each other on one
// scale: as carved, and under the strings with the movement enlarged.
func OverlaySections(in CompareInput) (*canvas.Picture, error) {
	if n := len(in.Sections); n != 2 {
		return nil, fmt.Errorf("overlay sections: want 2 designs, found %d", n)
	}
	for _, s := range in.Sections {
		if err := s.check(); err != nil {
			return nil, fmt.Errorf("overlay sections: %w", err)
		}
	}
	f := frameSections(in.Sections, canvas.Box(canvas.Margin+36, -150, canvas.PageWidth-canvas.Margin-8, 0), sectionSize{in.Stretch, in.Enlarge})
	height := canvas.CaptionHeight(in.Caption) + overlayPart + 2*(f.height+overlayGap)
	return canvas.NewPicture(canvas.PageWidth, height, in.Caption.Title, func(g *canvas.Page) { drawOverlay(g, in, f) }), nil
}

// Sizes of an overlay, points, the caption not counted.
const (
	overlayPart = 60 // key and scale
	overlayGap  = 46 // head of a panel and the words below it
)

func drawOverlay(g *canvas.Page, in CompareInput, f sectionFrame) {
	l := g.LayCaption(in.Caption)
	g.DrawCaption(l)
	r := l.Free
	var key []canvas.KeyItem
	for i, s := range in.Sections {
		key = append(key, canvas.KeyItem{Words: canvas.Clean(s.Name), Sample: canvas.LineSample(designPen(i))})
	}
	g.SampleRow(canvas.At(r.X0, r.Y1-8), r.Width(), key[:1])
	g.SampleRow(canvas.At(r.X0, r.Y1-22), r.Width(), key[1:])
	g.SampleRow(canvas.At(r.X0, r.Y1-36), r.Width(), []canvas.KeyItem{{Words: f.words(), Sample: nil}})
	top := r.Y1 - 60
	for k, head := range []string{"as carved", "under the strings"} {
		here := f
		here.y0 += top
		g.Text(canvas.At(r.X0, top+3), g.Shorten(head, nameStyle(), r.Width()), nameStyle(), 0)
		for i, s := range in.Sections {
			here.outline(g, s, k == 1, designPen(i))
		}
		if k == 1 {
			here.drawSides(g, in.Sections[0])
		}
		top -= f.height + overlayGap
	}
}

// outline draws the outer and the inner face of a section, as carved or
// moved.
func (f sectionFrame) outline(g *canvas.Page, s Section, moved bool, by canvas.Pen) {
	for _, z := range [][]float64{s.Outer, s.Inner} {
		g.Stroke(canvas.Curve(len(s.X), func(i int) canvas.Point {
			if moved {
				return f.moved(s, i, z[i])
			}
			return f.at(s.X[i], z[i])
		}), false, by)
	}
}
