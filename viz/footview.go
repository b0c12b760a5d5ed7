package viz

import (
	"fmt"
	"math"
)

// footView is the part of a cross-arch page across the feet: the gap between
// foot and top above, the forces below, on one level axis.
type footView struct {
	in     CrossArchInput
	x      axis // mm across
	gaps   axis // mm, up
	forces axis // N, down from the top's surface
}

// drawFeet draws gaps and forces in r; f is the frame of the section above,
// which ends at low.
func drawFeet(g *page, in CrossArchInput, f sectionFrame, r rect, low float64) {
	lo, _ := in.Feet[0].reach(0)
	last := in.Feet[len(in.Feet)-1]
	_, hi := last.reach(len(last.X) - 1)
	lo, hi = math.Min(lo, hi), math.Max(lo, hi)
	edge := 0.02 * (hi - lo)
	v := &footView{in: in, x: tightAxis(lo-edge, hi+edge, 12, r.X0+38, r.X1)}
	ruler := r.Y0 + 26
	foot := ruler + 34 // below it the shares
	if len(in.Shares) == 0 {
		foot = ruler + 6
	}
	room := r.Y1 - 46 - foot
	gap, force := v.greatest()
	v.gaps = newAxis(0, gap, 4, foot+0.56*room, foot+room)
	v.forces = newAxis(0, force, 4, foot+0.56*room-20, foot+10)
	v.fan(g, f, lo, hi, low)
	v.drawGaps(g)
	v.drawForces(g)
	v.drawShares(g, ruler+4)
	g.ruler(v.x, ruler, "mm from the centre line (bass −, treble +)")
}

// greatest returns the greatest gap (mm) and force (N).
func (v *footView) greatest() (gap, force float64) {
	for _, f := range v.in.Feet {
		for i := range f.X {
			gap = math.Max(gap, math.Max(nought(f.Relief[i]), nought(f.Gap[i])))
			force = math.Max(force, nought(f.Force[i]))
		}
	}
	if gap < 0.02 {
		gap = 0.05 // tight, or nearly: an axis of an ordinary relief
	}
	if force <= 0 {
		force = 1
	}
	return gap, force
}

// nought is v, or 0 for a missing value.
func nought(v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return 0
	}
	return v
}

// fan joins the feet in the section, marked at height y, with their enlarged
// view.
func (v *footView) fan(g *page, f sectionFrame, lo, hi, y float64) {
	a, b := pt{f.at(lo, 0).X, y}, pt{f.at(hi, 0).X, y}
	g.line(a, b, pen{width: 0.8, color: softInkColor()})
	by := pen{width: 0.5, color: softInkColor(), dash: []float64{1.2, 2}}
	g.line(a, pt{v.x.at(lo), v.gaps.b + 22}, by)
	g.line(b, pt{v.x.at(hi), v.gaps.b + 22}, by)
}

// drawGaps draws the feet above the top's outer surface, which is laid flat.
func (v *footView) drawGaps(g *page) {
	y := v.gaps
	perMM := (v.x.b - v.x.a) / (v.x.hi - v.x.lo)
	k := (y.b - y.a) / (y.hi - y.lo) / perMM
	g.sampleRow(pt{v.x.a, y.b + 10}, v.x.b-v.x.a, []keyItem{
		{"foot", areaSample(bridgeColor(), thin())},
		{"gap as fitted", lineSample(hidden())},
		{"gap left under load", lineSample(loadedPen())},
		{fmt.Sprintf("mm, drawn %s times as high as wide", number(k, 0)), nil},
	})
	for _, f := range v.in.Feet {
		for _, l := range v.underside(f, f.Gap) {
			g.fill([][]pt{closeUp(l, []pt{{l[0].X, y.b + 3}, {l[len(l)-1].X, y.b + 3}})}, bridgeColor())
		}
	}
	g.levels(y, v.x.a, v.x.b)
	g.turned(pt{v.x.a - 29, (y.a + y.b) / 2}, "gap, mm", label(), math.Pi/2)
	for _, f := range v.in.Feet {
		g.stroke(v.underside(f, f.Relief), false, hidden())
		g.stroke(v.underside(f, f.Gap), false, loadedPen())
	}
	g.fill([][]pt{box(rect{v.x.a, y.a - 7, v.x.b, y.a})}, woodColor())
	g.line(pt{v.x.a, y.a}, pt{v.x.b, y.a}, firm())
}

// underside is the line of a gap from end to end of a foot, carried on
// straight from the outermost stations.
func (v *footView) underside(f FootSection, z []float64) [][]pt {
	n := len(f.X)
	return curve(n+2, func(i int) pt {
		switch {
		case i == 0:
			x, _ := f.reach(0)
			return v.beyond(f, z, 0, min(1, n-1), x)
		case i == n+1:
			_, x := f.reach(n - 1)
			return v.beyond(f, z, n-1, max(0, n-2), x)
		}
		return pt{v.x.at(f.X[i-1]), v.gaps.at(z[i-1])}
	})
}

// beyond is the gap at x on the line through stations a and b, not below 0.
func (v *footView) beyond(f FootSection, z []float64, a, b int, x float64) pt {
	h := z[a]
	if a != b {
		h += (z[a] - z[b]) / (f.X[a] - f.X[b]) * (x - f.X[a])
	}
	return pt{v.x.at(x), v.gaps.at(math.Max(0, h))}
}

// drawForces draws the force at each station as a bar that hangs from the
// top's surface, in newtons; the numbers are left out where bars are narrow.
func (v *footView) drawForces(g *page) {
	y := v.forces
	g.levels(y, v.x.a, v.x.b)
	g.turned(pt{v.x.a - 29, (y.a + y.b) / 2}, "newtons", label(), math.Pi/2)
	paper := paperColor()
	numbers := v.numbersFit(g)
	for _, f := range v.in.Feet {
		for i, n := range f.Force {
			if !(n > 0) {
				continue
			}
			a, b := v.span(f, i)
			bar := rect{a, y.at(n), b, y.a}
			g.fill([][]pt{box(bar)}, faded(rustColor(), 0.75))
			if numbers {
				t := tag{text: number(n, 1), s: label(), back: &paper}
				t.box = g.place(pt{(a + b) / 2, bar.Y0 - 8.5}, t.text, t.s, 0.5, 0)
				t.draw(g)
			}
		}
	}
	g.line(pt{v.x.a, y.a}, pt{v.x.b, y.a}, firm())
}

// span is the place of a station's bar on the page.
func (v *footView) span(f FootSection, i int) (a, b float64) {
	from, to := f.reach(i)
	a, b = v.x.at(from), v.x.at(to)
	inset := math.Min(1.2, 0.12*(b-a))
	return a + inset, b - inset
}

// numbersFit tells whether every force can be written under its bar.
func (v *footView) numbersFit(g *page) bool {
	for _, f := range v.in.Feet {
		for i, n := range f.Force {
			if a, b := v.span(f, i); n > 0 && g.width(number(n, 1), label())+2.5 > b-a+2.4 {
				return false
			}
		}
	}
	return true
}

// drawShares writes what each part of the bearing length carries.
func (v *footView) drawShares(g *page, y float64) {
	total := 0.0
	for _, s := range v.in.Shares {
		total += nought(s.Force)
	}
	for _, s := range v.in.Shares {
		a, b := v.x.at(s.From)+1, v.x.at(s.To)-1
		g.stroke([][]pt{{{a, y + 26}, {a, y + 22}, {b, y + 22}, {b, y + 26}}}, false, firm())
		words := reading(s.Force) + " N"
		if total > 0 {
			words += fmt.Sprintf(" · %.0f %%", 100*s.Force/total)
		}
		bolder := style{smallest, bold, inkColor()}
		g.text(pt{(a + b) / 2, y + 12}, g.shorten(clean(s.Name), bolder, b-a), bolder, 0.5)
		g.text(pt{(a + b) / 2, y + 2.5}, g.shorten(words, label(), b-a), label(), 0.5)
	}
}
