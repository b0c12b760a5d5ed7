package viz

import (
	"fmt"

	"archload/cases"
)

// OverlaySections draws the cross-arches of two designs over each other on one
// scale: as carved, and under the strings with the movement enlarged.
func OverlaySections(in CompareInput) (*Picture, error) {
	if n := len(in.Sections); n != 2 {
		return nil, fmt.Errorf("overlay sections: want 2 designs, found %d", n)
	}
	for _, s := range in.Sections {
		if err := s.check(); err != nil {
			return nil, fmt.Errorf("overlay sections: %w", err)
		}
	}
	p := &Picture{Width: pageWidth, Title: clean(in.Caption.Title)}
	f := frameSections(in.Sections, rect{margin + 36, -150, pageWidth - margin - 8, 0}, sectionSize{in.Stretch, in.Enlarge})
	p.Height = captionHeight(in.Caption) + overlayPart + 2*(f.height+overlayGap)
	p.draw = func(g *page) { drawOverlay(g, in, f) }
	return p, nil
}

// Sizes of an overlay, points, the caption not counted.
const (
	overlayPart = 60 // key and scale
	overlayGap  = 46 // head of a panel and the words below it
)

func drawOverlay(g *page, in CompareInput, f sectionFrame) {
	l := g.layCaption(in.Caption)
	g.drawCaption(l)
	r := l.free
	var key []keyItem
	for i, s := range in.Sections {
		key = append(key, keyItem{cases.Letter(i) + ": " + clean(s.Name), lineSample(designPen(i))})
	}
	g.sampleRow(pt{r.X0, r.Y1 - 8}, r.width(), key[:1])
	g.sampleRow(pt{r.X0, r.Y1 - 22}, r.width(), key[1:])
	g.sampleRow(pt{r.X0, r.Y1 - 36}, r.width(), []keyItem{{f.words(), nil}})
	top := r.Y1 - 60
	for k, head := range []string{"as carved", "under the strings"} {
		here := f
		here.y0 += top
		g.text(pt{r.X0, top + 3}, g.shorten(head, nameStyle(), r.width()), nameStyle(), 0)
		for i, s := range in.Sections {
			g.outlineSection(s, here, k == 1, designPen(i))
		}
		if k == 1 {
			g.sides(in.Sections[0], here)
		}
		top -= f.height + overlayGap
	}
}

// outlineSection draws the outer and the inner face of a section, as carved or
// moved.
func (g *page) outlineSection(s Section, f sectionFrame, moved bool, by pen) {
	for _, z := range [][]float64{s.Outer, s.Inner} {
		g.stroke(curve(len(s.X), func(i int) pt {
			if moved {
				return f.moved(s, i, z[i])
			}
			return f.at(s.X[i], z[i])
		}), false, by)
	}
}
