package figure

import (
	"fmt"
	"image/color"
	"math"

	"archload/viz/canvas"
	"archload/viz/scale"
)

// Sizes of the bars along the edge.
const (
	longestBar = 34   // points
	BarWindow  = 25.0 // mm to each side, of the mean that a bar shows, in which what is nearer counts more
)

// greatest is the greatest hold along the edge without sign, N/mm.
func (r *RimHold) greatest() float64 {
	most := 0.0
	for _, b := range r.Bars {
		most = math.Max(most, math.Abs(b.PerMM))
	}
	return most
}

// downward tells whether the edge is held down anywhere.
func (r *RimHold) downward() bool {
	for _, b := range r.Bars {
		if b.PerMM < 0 {
			return true
		}
	}
	return false
}

// holdColor tells holding up from holding down.
func holdColor(down bool) color.NRGBA {
	if down {
		return canvas.Rust()
	}
	return canvas.Blue()
}

// drawRimHold draws bands inward from the edge, as wide as the hold there is
// strong, and ticks where one part of the edge ends and the next begins.
func (v *planView) drawRimHold(g *canvas.Page) {
	r := v.in.Drawing.Rim
	if r == nil || len(r.Bars) < 3 {
		return
	}
	n := len(r.Bars)
	var foot, tip []canvas.Point // of the run so far
	down := false
	put := func() {
		if len(foot) > 1 {
			g.Fill([][]canvas.Point{canvas.CloseUp(foot, tip)}, canvas.Faded(holdColor(down), 0.4))
			g.Stroke([][]canvas.Point{tip}, false, canvas.Pen{Width: 0.9, Color: holdColor(down)})
		}
		foot, tip = nil, nil
	}
	k := longestBar / math.Max(r.greatest(), 1e-12)
	for i := 0; i <= n; i++ {
		b := r.Bars[i%n]
		p, in := v.edgeAt(i % n)
		if (b.PerMM < 0) != down && len(foot) > 0 {
			foot, tip = append(foot, p), append(tip, p)
			put()
			foot, tip = append(foot, p), append(tip, p)
		}
		down = b.PerMM < 0
		w := k * math.Abs(b.PerMM)
		foot, tip = append(foot, p), append(tip, p.Add(w*in.X, w*in.Y))
	}
	put()
	for i := range r.Bars {
		if next := (i + 1) % n; r.Bars[i].Sector != r.Bars[next].Sector {
			p, in := v.edgeAt(i)
			q, _ := v.edgeAt(next)
			m := canvas.At((p.X+q.X)/2, (p.Y+q.Y)/2)
			g.Line(m.Add(-1.5*in.X, -1.5*in.Y), m.Add(11*in.X, 11*in.Y), canvas.Pen{Width: 1.6, Color: canvas.Ink()})
		}
	}
}

// edgeAt is where bar i stands on the page, and the direction inward.
func (v *planView) edgeAt(i int) (at, inward canvas.Point) {
	bars := v.in.Drawing.Rim.Bars
	n := len(bars)
	f := v.lay.frame
	a, b := f.At(bars[(i+n-1)%n].At), f.At(bars[(i+1)%n].At)
	l := math.Hypot(b.X-a.X, b.Y-a.Y)
	return f.At(bars[i].At), canvas.At(-(b.Y-a.Y)/l, (b.X-a.X)/l)
}

// rimWords are the words at the four sides of the plate, with what the edge
// holds there.
func (v *planView) rimWords() (neck, tail, bass, treble string) {
	neck, tail, bass, treble = "neck", "tail", "bass side", "treble side"
	r := v.in.Drawing.Rim
	if r == nil {
		return neck, tail, bass, treble
	}
	all := []float64{r.Neck, r.Tail, r.Bass, r.Treble}
	forces := scale.Alike(1, all...)
	for i := range all {
		all[i] *= 100 / r.Load
	}
	shares := scale.Alike(0, all...)
	with := func(name string, n float64) string {
		return fmt.Sprintf("%s: %s N, %s %%", name, scale.Number(n, forces), scale.Number(100*n/r.Load, shares))
	}
	return with(neck, r.Neck), with(tail, r.Tail), with(bass, r.Bass), with(treble, r.Treble)
}

// rimKey explains the bands.
func (v *planView) rimKey() []canvas.KeyItem {
	r := v.in.Drawing.Rim
	if r == nil || len(r.Bars) < 3 {
		return nil
	}
	out := []canvas.KeyItem{{Words: fmt.Sprintf("the edge holds up; widest: %s N/mm, weighted means over %.0f mm", scale.Reading(r.greatest()), 2*BarWindow),
		Sample: canvas.AreaSample(canvas.Faded(holdColor(false), 0.4), canvas.Pen{Width: 0.9, Color: holdColor(false)})}}
	if r.downward() {
		out = append(out, canvas.KeyItem{Words: "the edge holds down", Sample: canvas.AreaSample(canvas.Faded(holdColor(true), 0.4), canvas.Pen{Width: 0.9, Color: holdColor(true)})})
	}
	return append(out, canvas.KeyItem{Words: "from one part of the edge to the next", Sample: func(g *canvas.Page, r canvas.Rect) {
		g.Line(canvas.At((r.X0+r.X1)/2, r.Y0-1), canvas.At((r.X0+r.X1)/2, r.Y1+1), canvas.Pen{Width: 1.6, Color: canvas.Ink()})
	}})
}
