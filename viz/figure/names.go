package figure

import (
	"math"

	"archload/viz/canvas"
	"archload/viz/scale"
)

// placeBraceNames finds a place beside each brace for its name.
func (v *planView) placeBraceNames(g *canvas.Page) []canvas.Tag {
	f := v.lay.frame
	var out []canvas.Tag
	for _, b := range v.in.Drawing.Braces {
		name := canvas.Clean(b.Name)
		if name == "" || len(b.Line) < 2 {
			continue
		}
		off := 8.0
		if len(b.Half) > 0 {
			off += f.Scale * b.Half[0]
		}
		t := canvas.Tag{Text: name, In: canvas.Label(), Back: canvas.Behind()}
		if g.PlaceAlong(&t, f.All(b.Line), off) {
			g.Avoid(t.Box)
			out = append(out, t)
		}
	}
	return out
}

// placeLineName finds room on the longest line of level k for its value; the
// line is interrupted there.
func (v *planView) placeLineName(g *canvas.Page, k int, lines []path) (canvas.Tag, bool) {
	l := v.lay.frame.All(longest(lines).pts)
	if len(l) < 2 || canvas.PolyLength(l) < 60 {
		return canvas.Tag{}, false
	}
	t := canvas.Tag{Text: v.scale.Label(k), In: canvas.Label()}
	if scale.Lightness(v.scale.BandColor(k)) < 0.62 {
		t.In.Color = canvas.Paper()
	}
	for _, share := range []float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.42, 0.58, 0.27, 0.73, 0.1, 0.9} {
		at, angle := canvas.Along(l, share)
		angle = canvas.Readable(angle)
		s, c := math.Sincos(angle)
		t.Box = g.Place(at.Add(2.8*s, -2.8*c), t.Text, t.In, 0.5, angle)
		if g.Free(t.Box.Grown(2)) && canvas.Straight(l, share, t.Box.W+6) {
			g.Avoid(t.Box)
			return t, true
		}
	}
	return canvas.Tag{}, false
}

func longest(l []path) path {
	var best path
	most := 0.0
	for _, q := range l {
		n := 0.0
		for i := 1; i < len(q.pts); i++ {
			n += math.Hypot(q.pts[i][0]-q.pts[i-1][0], q.pts[i][1]-q.pts[i-1][1])
		}
		if n > most {
			best, most = q, n
		}
	}
	return best
}
