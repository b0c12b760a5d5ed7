package figure

import (
	"cmp"
	"maps"
	"math"
	"slices"

	"archload/viz/canvas"
	"archload/viz/scale"
)

// hatch draws the triangles without a value.
func hatch(g *canvas.Page, s *sheet, f canvas.Frame) {
	var loops [][]canvas.Point
	var lines [][]canvas.Point
	for _, t := range s.blank {
		c := [3]canvas.Point{f.At(s.pts[t[0]]), f.At(s.pts[t[1]]), f.At(s.pts[t[2]])}
		loops = append(loops, c[:])
		lines = append(lines, hatchLines(c[:], 5)...)
	}
	g.Fill(loops, scale.NoValue())
	g.Stroke(lines, false, canvas.Pen{Width: 0.5, Color: canvas.SoftInk()})
}

// hatchLines returns the pieces of the lines x + y = k·step inside a convex
// polygon, points.
func hatchLines(c []canvas.Point, step float64) [][]canvas.Point {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, q := range c {
		lo, hi = math.Min(lo, q.X+q.Y), math.Max(hi, q.X+q.Y)
	}
	var out [][]canvas.Point
	for k := math.Ceil(lo / step); k*step <= hi; k++ {
		var cut []canvas.Point
		for i, a := range c {
			b := c[(i+1)%len(c)]
			da, db := a.X+a.Y-k*step, b.X+b.Y-k*step
			if (da < 0) != (db < 0) {
				t := da / (da - db)
				cut = append(cut, canvas.At(a.X+t*(b.X-a.X), a.Y+t*(b.Y-a.Y)))
			}
		}
		if len(cut) == 2 {
			out = append(out, cut)
		}
	}
	return out
}

// sideStep is the distance between the lines of hatchSide along x and along y, points.
const sideStep = 5.5

func sidePen() canvas.Pen {
	return canvas.Pen{Width: 0.35, Color: canvas.Faded(canvas.Ink(), 0.45)}
}

// hatched tells whether band k lies on the side of zero that is hatched, so that the sign
// shows without colours, too: pull, and what has come up.
func (v *planView) hatched(k int) bool {
	s := v.scale
	return s.HatchedSide()*(s.Level(k)+s.Level(k+1)) > 0
}

// hatchWords says in the legend what is hatched; "": nothing.
func (v *planView) hatchWords() string {
	switch s := v.scale; {
	case v.hatched(s.Bands() - 1):
		return "hatched: above zero"
	case v.hatched(0):
		return "hatched: has come up"
	}
	return ""
}

// hatchSide hatches that side of the plan.
func (v *planView) hatchSide(g *canvas.Page) {
	if v.hatchWords() == "" {
		return
	}
	loops, _ := v.sheet.above(0)
	if v.hatched(0) { // below zero is what lies within the one or the other edge, not within both
		all, _ := v.sheet.above(math.Inf(-1))
		loops = append(loops, all...)
	}
	g.Stroke(hatchWithin(paths(v.lay.frame, loops), sideStep), false, sidePen())
}

// hatchWithin returns the pieces of the lines x + y = k·step that lie within an odd number of
// closed lines, points.
func hatchWithin(loops [][]canvas.Point, step float64) [][]canvas.Point {
	cuts := map[int][]canvas.Point{}
	for _, l := range loops {
		for i, a := range l {
			b := l[(i+1)%len(l)]
			da, db := (a.X+a.Y)/step, (b.X+b.Y)/step
			for k := math.Ceil(min(da, db)); k < max(da, db); k++ {
				t := (k - da) / (db - da)
				cuts[int(k)] = append(cuts[int(k)], canvas.At(a.X+t*(b.X-a.X), a.Y+t*(b.Y-a.Y)))
			}
		}
	}
	var out [][]canvas.Point
	for _, k := range slices.Sorted(maps.Keys(cuts)) {
		c := cuts[k]
		slices.SortFunc(c, func(p, q canvas.Point) int { return cmp.Compare(p.X, q.X) })
		for i := 0; i+1 < len(c); i += 2 {
			out = append(out, []canvas.Point{c[i], c[i+1]})
		}
	}
	return out
}
