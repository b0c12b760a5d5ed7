package figure

import (
	"fmt"
	"math"

	"archload/viz/canvas"
	"archload/viz/scale"
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

func (f sectionFrame) at(x, z float64) canvas.Point {
	return canvas.At(f.x0+f.scale*x, f.y0+f.scale*f.stretch*z)
}

func (f sectionFrame) moved(s Section, i int, z float64) canvas.Point {
	q := f.at(s.X[i], z).Add(0, -f.scale*f.enlarge*s.Sink[i])
	if s.Across != nil {
		q.X += f.scale * f.enlarge * s.Across[i]
	}
	return q
}

// sectionSize asks for the two exaggerations; 0 means chosen.
type sectionSize struct{ stretch, enlarge float64 }

// frameSections returns one frame for all sections, their lowest place at
// the bottom of r, as large as r allows.
func frameSections(all []Section, r canvas.Rect, size sectionSize) sectionFrame {
	xlo, xhi, zlo, zhi, sink := math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1), 0.0
	for _, s := range all {
		lo, hi := s.heights()
		zlo, zhi = math.Min(zlo, lo), math.Max(zhi, hi)
		xlo, xhi = math.Min(xlo, s.X[0]), math.Max(xhi, s.X[len(s.X)-1])
		_, d := s.deepest()
		sink = math.Max(sink, math.Abs(d))
	}
	f := sectionFrame{scale: r.Width() / (xhi - xlo), stretch: size.stretch, enlarge: size.enlarge}
	if f.stretch <= 0 {
		f.stretch = atMost([]float64{1, 1.25, 1.5, 2, 2.5, 3, 4, 5}, 0.9*r.Height()/(f.scale*math.Max(zhi-zlo, 1)))
	}
	if f.enlarge <= 0 {
		f.enlarge = 1
		if sink > 0 {
			f.enlarge = scale.StepBelow(0.16 * r.Height() / (f.scale * sink))
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

// words states the exaggerations.
func (f sectionFrame) words() string {
	if f.stretch == 1 {
		return fmt.Sprintf("heights to the same scale as widths, movement drawn %g times larger", f.enlarge)
	}
	return fmt.Sprintf("heights drawn %g times, movement %g times as large as widths", f.stretch, f.enlarge)
}

func loadedPen() canvas.Pen { return canvas.Pen{Width: 1.2, Color: canvas.Rust()} }

// drawSection draws the plate as carved and as loaded, and the bridge.
func (f sectionFrame) drawSection(p *canvas.Page, s Section) {
	n := len(s.X)
	at := func(z []float64) [][]canvas.Point {
		return canvas.Curve(n, func(i int) canvas.Point { return f.at(s.X[i], z[i]) })
	}
	top, under := at(s.Outer), at(s.Inner)
	for i := range top {
		if i < len(under) {
			p.Fill([][]canvas.Point{canvas.CloseUp(top[i], under[i])}, canvas.Wood())
		}
	}
	for _, l := range s.Bridge {
		q := make([]canvas.Point, len(l))
		for i, v := range l {
			q[i] = f.at(v[0], v[1])
		}
		p.Fill([][]canvas.Point{q}, canvas.Faded(canvas.BridgeWood(), 0.55))
		p.Stroke([][]canvas.Point{q}, true, canvas.Thin())
	}
	for _, l := range [][][]canvas.Point{top, under} {
		p.Stroke(l, false, canvas.Thin())
	}
	for _, z := range [][]float64{s.Outer, s.Inner} {
		p.Stroke(canvas.Curve(n, func(i int) canvas.Point { return f.moved(s, i, z[i]) }), false, loadedPen())
	}
}

// under is the lowest place of the inner surface, carved or loaded, between
// two places across the page.
func (f sectionFrame) under(s Section, from, to float64) float64 {
	low := math.Inf(1)
	for i, z := range s.Inner {
		a, b := f.at(s.X[i], z), f.moved(s, i, z)
		for _, q := range []canvas.Point{a, b} {
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
func (f sectionFrame) noteDeepest(p *canvas.Page, s Section) float64 {
	zlo, _ := s.heights()
	low := f.at(0, zlo).Y
	i, sink := s.deepest()
	if sink == 0 {
		return low
	}
	a, b := f.at(s.X[i], s.Outer[i]), f.moved(s, i, s.Outer[i])
	p.Arrow(a, canvas.At(a.X, b.Y), canvas.Firm())
	words := "sinks " + scale.Reading(sink) + " mm"
	if sink < 0 {
		words = "rises " + scale.Reading(-sink) + " mm"
	}
	t := canvas.Tag{Text: words, In: canvas.Style{Size: canvas.Smallest, Face: canvas.Bold, Color: canvas.Ink()}}
	half := p.TextWidth(words, t.In) / 2
	x := math.Max(canvas.Margin+half, math.Min(p.W-canvas.Margin-half, a.X))
	under := f.under(s, x-half-3, x+half+3)
	for k := 0; k < 4; k++ {
		t.Box = p.Place(canvas.At(x, under-11-12*float64(k)), words, t.In, 0.5, 0)
		if p.Free(t.Box) {
			break
		}
	}
	t.Draw(p)
	return math.Min(low, t.Box.At.Y-3)
}

// drawSides writes bass and treble under the ends of a section.
func (f sectionFrame) drawSides(p *canvas.Page, s Section) {
	lo, _ := s.heights()
	y := f.at(0, lo).Y - 13
	p.Text(canvas.At(f.at(s.X[0], lo).X, y), "bass side", canvas.Rim(), 0)
	p.Text(canvas.At(f.at(s.X[len(s.X)-1], lo).X, y), "treble side", canvas.Rim(), 1)
}
