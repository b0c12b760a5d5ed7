package viz

import (
	"fmt"
	"image/color"
	"math"

	"archload/cases"
	"archload/mesh"
)

// RimHold is what holds the plate's edge up, N, and how it is spread along the
// edge.
type RimHold struct {
	Neck, Tail, Bass, Treble float64 // N
	Load                     float64 // N, of which they are the shares
	Bars                     []EdgeForce
}

// EdgeForce is the upward hold at one place of the edge.
type EdgeForce struct {
	At     mesh.Point // mm; anticlockwise from one to the next
	PerMM  float64    // N/mm of edge
	Sector string     // the part of the edge it belongs to
}

// Sizes of the bars along the edge.
const (
	longestBar = 34   // points
	barWindow  = 10.0 // mm to each side, of the mean that a bar shows
)

// rimHoldOf takes the rim's hold from a load flow; spread adds the bars.
func rimHoldOf(s *cases.Solution, r *cases.Report, spread bool) *RimHold {
	c := r.Flow.Sectors
	h := &RimHold{Neck: c.Neck, Tail: c.Tail, Bass: c.Bass, Treble: c.Treble, Load: r.Flow.Load}
	if !spread {
		return h
	}
	st := s.RimStations()
	for i, p := range st {
		h.Bars = append(h.Bars, EdgeForce{At: mesh.Point{p.X, p.Y}, PerMM: rimMean(st, i), Sector: p.Sector})
	}
	return h
}

// rimMean is the hold about station i, N/mm: a mean over the stations within
// barWindow along the edge.
func rimMean(st []cases.RimStation, i int) float64 {
	n := len(st)
	force, length := st[i].Force, st[i].Along
	for _, dir := range [2]int{1, n - 1} {
		gone := 0.0
		for j := i; ; {
			k := (j + dir) % n
			gone += math.Hypot(st[k].X-st[j].X, st[k].Y-st[j].Y)
			if j = k; gone > barWindow || j == i {
				break
			}
			force, length = force+st[j].Force, length+st[j].Along
		}
	}
	return force / length
}

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
		return rustColor()
	}
	return blueColor()
}

// drawRimHold draws bands inward from the edge, as wide as the hold there is
// strong, and ticks where one part of the edge ends and the next begins.
func (v *planView) drawRimHold(g *page) {
	r := v.in.Drawing.Rim
	if r == nil || len(r.Bars) < 3 {
		return
	}
	n := len(r.Bars)
	var foot, tip []pt // of the run so far
	down := false
	put := func() {
		if len(foot) > 1 {
			g.fill([][]pt{closeUp(foot, tip)}, faded(holdColor(down), 0.4))
			g.stroke([][]pt{tip}, false, pen{width: 0.9, color: holdColor(down)})
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
		foot, tip = append(foot, p), append(tip, p.add(w*in.X, w*in.Y))
	}
	put()
	for i := range r.Bars {
		if next := (i + 1) % n; r.Bars[i].Sector != r.Bars[next].Sector {
			p, in := v.edgeAt(i)
			q, _ := v.edgeAt(next)
			m := pt{(p.X + q.X) / 2, (p.Y + q.Y) / 2}
			g.line(m.add(-1.5*in.X, -1.5*in.Y), m.add(11*in.X, 11*in.Y), pen{width: 1.6, color: inkColor()})
		}
	}
}

// edgeAt is where bar i stands on the page, and the direction inward.
func (v *planView) edgeAt(i int) (at, inward pt) {
	bars := v.in.Drawing.Rim.Bars
	n := len(bars)
	f := v.lay.frame
	a, b := f.at(bars[(i+n-1)%n].At), f.at(bars[(i+1)%n].At)
	l := math.Hypot(b.X-a.X, b.Y-a.Y)
	return f.at(bars[i].At), pt{-(b.Y - a.Y) / l, (b.X - a.X) / l}
}

// rimWords are the words at the four sides of the plate, with what the edge
// holds there.
func (v *planView) rimWords() (neck, tail, bass, treble string) {
	neck, tail, bass, treble = "neck", "tail", "bass side", "treble side"
	r := v.in.Drawing.Rim
	if r == nil {
		return neck, tail, bass, treble
	}
	with := func(name string, n float64) string {
		return fmt.Sprintf("%s: %s N, %s %%", name, number(n, 1), number(100*n/r.Load, 0))
	}
	return with(neck, r.Neck), with(tail, r.Tail), with(bass, r.Bass), with(treble, r.Treble)
}

// rimKey explains the bands.
func (v *planView) rimKey() []keyItem {
	r := v.in.Drawing.Rim
	if r == nil || len(r.Bars) < 3 {
		return nil
	}
	out := []keyItem{{fmt.Sprintf("the edge holds up; widest: %s N/mm, means over %.0f mm", reading(r.greatest()), 2*barWindow),
		areaSample(faded(holdColor(false), 0.4), pen{width: 0.9, color: holdColor(false)})}}
	if r.downward() {
		out = append(out, keyItem{"the edge holds down", areaSample(faded(holdColor(true), 0.4), pen{width: 0.9, color: holdColor(true)})})
	}
	return append(out, keyItem{"from one part of the edge to the next", func(g *page, r rect) {
		g.line(pt{(r.X0 + r.X1) / 2, r.Y0 - 1}, pt{(r.X0 + r.X1) / 2, r.Y1 + 1}, pen{width: 1.6, color: inkColor()})
	}})
}
