package section

import (
	"fmt"
	"image/color"
	"math"

	"archload/cases/design"
	"archload/viz/panel"
	"archload/viz/scale"
	"archload/viz/stage"
)

// beside is what stands on the plate in a cut through the bridge, seen square to the
// cut: along it and up, mm.
type beside struct {
	carved, loaded [][][2]float64 // outlines of the bridge's parts, as fitted and now, movements enlarged
	strings        [][][2]float64 // now: of a cross-arch a place each, of a long arch the way of one
	saddle, crown  float64        // heights of the strings as fitted where they are highest, and of the plate
	rise           float64        // of the plate over its lowest place
}

// standing gathers what stands on the plate of a design; false for a cut that the hand
// drew, and without a bridge.
func standing(a *stage.Answered, kind stage.CutKind, e float64) (b beside, ok bool) {
	parts := a.Drawn.Top.Built.BridgeParts()
	if kind == stage.FreeCut || len(parts) == 0 || a.Cut == nil {
		return b, false
	}
	axis := 0
	if kind == stage.LongArch {
		axis = 1
	}
	from := a.Cut.From[axis]
	flat := func(p [3]float64) [2]float64 { return [2]float64{p[axis] - from, p[2]} }
	now := func(p design.BridgePoint) [3]float64 {
		u := a.Drawn.BridgeMove(p)
		return [3]float64{p.At[0] + e*u[0], p.At[1] + e*u[1], p.At[2] + e*(u[2]+p.Gap)}
	}
	for _, p := range parts {
		var was, is [][][2]float64
		for _, sec := range p.Sections {
			var one, two [][2]float64
			for _, c := range sec {
				one, two = append(one, flat(c.At)), append(two, flat(now(c)))
			}
			was, is = append(was, one), append(is, two)
		}
		b.carved, b.loaded = append(b.carved, outline(was, axis)), append(b.loaded, outline(is, axis))
	}
	b.saddle, b.crown = math.Inf(-1), math.Inf(-1)
	low := math.Inf(1)
	for _, z := range a.Cut.Outer {
		if !math.IsNaN(z) {
			b.crown, low = math.Max(b.crown, z), math.Min(low, z)
		}
	}
	b.rise = b.crown - low
	b.lead(a, axis, flat, now)
	return b, true
}

// lead adds the strings: across the places where they lie on the saddle, along the way
// of the middle one.
func (b *beside) lead(a *stage.Answered, axis int, flat func([3]float64) [2]float64, now func(design.BridgePoint) [3]float64) {
	all := a.Drawn.Top.Built.StringShapes()
	best := 0
	for i, st := range all {
		b.saddle = math.Max(b.saddle, st.Saddle.At[2])
		if axis == 0 {
			b.strings = append(b.strings, [][2]float64{flat(now(st.Saddle))})
		} else if math.Abs(st.Saddle.At[0]) < math.Abs(all[best].Saddle.At[0]) {
			best = i
		}
	}
	if axis == 0 || len(all) == 0 {
		return
	}
	st, p := all[best], now(all[best].Saddle)
	reach := func(dir [3]float64, y float64) [2]float64 {
		t := (y - st.Saddle.At[1]) / dir[1]
		return flat([3]float64{st.Saddle.At[0], y, st.Saddle.At[2] + t*dir[2]})
	}
	b.strings = [][][2]float64{{reach(st.Tail, a.Cut.From[1]), flat(p), reach(st.Neck, a.Cut.To[1])}}
}

// outline is what a part hides, seen square to the cut: across, where its sections follow
// each other, from the lowest of each to the highest; along, the section in the middle.
func outline(sections [][][2]float64, axis int) [][2]float64 {
	if axis == 1 {
		return sections[len(sections)/2]
	}
	var low, high [][2]float64
	for _, s := range sections {
		lo, hi := s[0], s[0]
		for _, q := range s {
			if q[1] < lo[1] {
				lo = q
			}
			if q[1] > hi[1] {
				hi = q
			}
		}
		low, high = append(low, lo), append(high, hi)
	}
	for i := len(high) - 1; i >= 0; i-- {
		low = append(low, high[i])
	}
	return low
}

// draw draws it: the bridge as fitted in pale, as it stands now in rust, the strings.
func (b *beside) draw(l *panel.List, f stripFrame) {
	pale := color.NRGBA{226, 214, 196, 255}
	on := func(line [][2]float64) []panel.Point {
		var out []panel.Point
		for _, q := range line {
			out = append(out, f.place(q[0], q[1]))
		}
		return out
	}
	for _, o := range b.carved {
		fillBetween(l, on(o), pale)
	}
	for _, o := range b.loaded {
		pts := on(o)
		l.Polyline(append(pts, pts[0]), 1.1, panel.Rust())
	}
	for _, s := range b.strings {
		if pts := on(s); len(pts) == 1 {
			l.Disc(pts[0], 2.2, panel.Ink())
		} else {
			l.Polyline(pts, 1.2, panel.SoftInk())
		}
	}
}

// drawLoaded draws the bridge as it stands now by its outline, that of a design beside another.
func (b *beside) drawLoaded(l *panel.List, f stripFrame, ink color.NRGBA) {
	for _, o := range b.loaded {
		var pts []panel.Point
		for _, q := range append(o, o[0]) {
			pts = append(pts, f.place(q[0], q[1]))
		}
		l.Polyline(pts, 1.1, ink)
	}
}

// fillBetween fills an outline of as many places below as above, strip by strip.
func fillBetween(l *panel.List, pts []panel.Point, k color.NRGBA) {
	n := len(pts)
	for i := 1; i < n/2; i++ {
		l.Polygon([]panel.Point{pts[i-1], pts[i], pts[n-1-i], pts[n-i]}, k)
	}
}

// measures writes heights beside the section, if there is room: of the arch over the plan's level, unless the
// plate is flat, and of the strings over it.
func (s *Strip) measures(l *panel.List, f stripFrame, b *beside, to panel.Rect) {
	if !f.measured {
		return
	}
	x := f.place(f.hi, 0).X + 12
	if to.Y < f.z0-2 { // in a low strip the word at the end stands beside it
		x = math.Max(x, to.Right()+8)
	}
	const flat = 0.1 // mm
	if b.rise > flat {
		bracket(l, x, f.place(0, 0).Y, f.place(0, b.crown).Y, fmt.Sprintf("arch %s mm", scale.Fixed(b.crown, 1)))
	}
	if !math.IsInf(b.saddle, -1) {
		bracket(l, x, f.place(0, b.crown).Y, f.place(0, b.saddle).Y, fmt.Sprintf("strings %s mm", scale.Fixed(b.saddle-b.crown, 1)))
	}
}

// measuresWide is the room that heights need beside a section, in a low strip beside its word, too, points.
func measuresWide(a *panel.Atlas, lowly bool) float64 {
	w := 12 + 6 + a.TextWidth(panel.Small, "strings 88.8 mm")
	if lowly {
		w += a.TextWidth(panel.Small, "treble")
	}
	return w
}

// bracket draws an upright measure with its words beside it.
func bracket(l *panel.List, x, low, top float64, words string) {
	l.Upright(x, top, low, 1, panel.SoftInk())
	for _, y := range []float64{low, top} {
		l.Level(x-3, x+4, y, 1, panel.SoftInk())
	}
	l.TextIn(panel.Rect{X: x + 6, Y: (low+top)/2 - 8, W: l.Atlas.TextWidth(panel.Small, words) + 1, H: 16}, panel.Small, panel.Left, panel.Ink(), words)
}
