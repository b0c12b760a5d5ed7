package viz

import (
	"fmt"
	"math"
)

// sectionFrame takes a section to the page: lengths across at one scale,
// heights stretched, movements enlarged.
type sectionFrame struct {
	scale   float64 // points per mm across
	stretch float64 // heights drawn so many times larger than widths
	enlarge float64 // movements drawn so many times larger than widths
	x0, y0  float64 // page place of x = 0 and of height 0
	height  float64 // of the highest section on the page, with its movement, points
}

func (f sectionFrame) at(x, z float64) pt {
	return pt{f.x0 + f.scale*x, f.y0 + f.scale*f.stretch*z}
}

func (f sectionFrame) moved(s Section, i int, z float64) pt {
	q := f.at(s.X[i], z).add(0, -f.scale*f.enlarge*s.Sink[i])
	if s.Across != nil {
		q.X += f.scale * f.enlarge * s.Across[i]
	}
	return q
}

// sectionSize asks for the two exaggerations; 0 means chosen.
type sectionSize struct{ stretch, enlarge float64 }

// frameSections returns one frame for all sections, their lowest place at
// the bottom of r, as large as r allows.
func frameSections(all []Section, r rect, size sectionSize) sectionFrame {
	xlo, xhi, zlo, zhi, sink := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1), 0.0
	for _, s := range all {
		lo, hi := s.heights()
		zlo, zhi = math.Min(zlo, lo), math.Max(zhi, hi)
		xlo, xhi = math.Min(xlo, s.X[0]), math.Max(xhi, s.X[len(s.X)-1])
		_, d := s.deepest()
		sink = math.Max(sink, math.Abs(d))
	}
	f := sectionFrame{scale: r.width() / (xhi - xlo), stretch: size.stretch, enlarge: size.enlarge}
	if f.stretch <= 0 {
		f.stretch = atMost([]float64{1, 1.25, 1.5, 2, 2.5, 3, 4, 5}, 0.9*r.height()/(f.scale*math.Max(zhi-zlo, 1)))
	}
	if f.enlarge <= 0 {
		f.enlarge = 1
		if sink > 0 {
			f.enlarge = niceBelow(0.16 * r.height() / (f.scale * sink))
		}
	}
	f.x0 = r.X0 - f.scale*xlo
	f.y0 = r.Y1 - f.scale*f.stretch*zhi
	for _, s := range all {
		lo, _ := s.heights()
		f.height = math.Max(f.height, r.Y1-f.at(0, lo).Y)
		for i, z := range s.Inner {
			f.height = math.Max(f.height, nought(r.Y1-f.moved(s, i, z).Y))
		}
	}
	return f
}

// atMost returns the greatest of the rising list that is not above v, or the
// first.
func atMost(list []float64, v float64) float64 {
	best := list[0]
	for _, k := range list {
		if k <= v {
			best = k
		}
	}
	return best
}

// niceBelow returns the greatest 1, 2 or 5 times a power of ten <= v.
func niceBelow(v float64) float64 {
	n := nice(v)
	for _, k := range []float64{1, 0.5, 0.4, 0.2} {
		if m := nice(n * k * 0.999); m <= v*(1+1e-9) {
			return m
		}
	}
	return n / 10
}

// words states the exaggerations.
func (f sectionFrame) words() string {
	if f.stretch == 1 {
		return fmt.Sprintf("heights to the same scale as widths, movement drawn %g times larger", f.enlarge)
	}
	return fmt.Sprintf("heights drawn %g times, movement %g times as large as widths", f.stretch, f.enlarge)
}

func loadedPen() pen { return pen{width: 1.2, color: rustColor()} }

// drawSection draws the plate as carved and as loaded, and the bridge.
func (p *page) drawSection(s Section, f sectionFrame) {
	n := len(s.X)
	at := func(z []float64) [][]pt {
		return curve(n, func(i int) pt { return f.at(s.X[i], z[i]) })
	}
	top, under := at(s.Outer), at(s.Inner)
	for i := range top {
		if i < len(under) {
			p.fill([][]pt{closeUp(top[i], under[i])}, woodColor())
		}
	}
	for _, l := range s.Bridge {
		q := make([]pt, len(l))
		for i, v := range l {
			q[i] = f.at(v[0], v[1])
		}
		p.fill([][]pt{q}, faded(bridgeColor(), 0.55))
		p.stroke([][]pt{q}, true, thin())
	}
	for _, l := range [][][]pt{top, under} {
		p.stroke(l, false, thin())
	}
	for _, z := range [][]float64{s.Outer, s.Inner} {
		p.stroke(curve(n, func(i int) pt { return f.moved(s, i, z[i]) }), false, loadedPen())
	}
}

// closeUp joins two lines of the same direction to a loop.
func closeUp(a, b []pt) []pt {
	out := append([]pt{}, a...)
	for i := len(b) - 1; i >= 0; i-- {
		out = append(out, b[i])
	}
	return out
}

// under is the lowest place of the inner surface, carved or loaded, between
// two places across the page.
func (f sectionFrame) under(s Section, from, to float64) float64 {
	low := math.Inf(1)
	for i, z := range s.Inner {
		a, b := f.at(s.X[i], z), f.moved(s, i, z)
		for _, q := range []pt{a, b} {
			if q.X >= from && q.X <= to && !math.IsNaN(q.Y) {
				low = math.Min(low, q.Y)
			}
		}
	}
	if math.IsInf(low, 1) {
		return f.y0
	}
	return low
}

// noteDeepest writes the greatest movement beneath its arrow, at the first
// free height, and returns the lowest place of section and note.
func (p *page) noteDeepest(s Section, f sectionFrame) float64 {
	zlo, _ := s.heights()
	low := f.at(0, zlo).Y
	i, sink := s.deepest()
	if sink == 0 {
		return low
	}
	a, b := f.at(s.X[i], s.Outer[i]), f.moved(s, i, s.Outer[i])
	p.arrow(a, pt{a.X, b.Y}, firm())
	words := "sinks " + reading(sink) + " mm"
	if sink < 0 {
		words = "rises " + reading(-sink) + " mm"
	}
	t := tag{text: words, s: style{smallest, bold, inkColor()}}
	half := p.width(words, t.s) / 2
	x := math.Max(margin+half, math.Min(p.w-margin-half, a.X))
	under := f.under(s, x-half-3, x+half+3)
	for k := 0; k < 4; k++ {
		t.box = p.place(pt{x, under - 11 - 12*float64(k)}, words, t.s, 0.5, 0)
		if p.free(t.box) {
			break
		}
	}
	t.draw(p)
	return math.Min(low, t.box.at.Y-3)
}

// sides writes bass and treble under the ends of a section.
func (p *page) sides(s Section, f sectionFrame) {
	lo, _ := s.heights()
	y := f.at(0, lo).Y - 13
	p.text(pt{f.at(s.X[0], lo).X, y}, "bass side", rim(), 0)
	p.text(pt{f.at(s.X[len(s.X)-1], lo).X, y}, "treble side", rim(), 1)
}
