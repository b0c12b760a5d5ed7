package figure

import (
	"fmt"
	"math"

	"archload/viz/canvas"
	"archload/viz/scale"
)

// footView is the part of a cross-arch page across the feet: the gap between
// foot and top above, the forces below, on one level axis.
type footView struct {
	in     CrossArchInput
	x      canvas.Axis // mm across
	gaps   canvas.Axis // mm, up
	forces canvas.Axis // N/mm, down from the top's surface
}

// tightGap is the gap, mm, below which a foot is drawn as tight: without a
// picture of the gap.
const tightGap = 0.02

// drawFeet draws gaps and forces in r; f is the frame of the section above,
// which ends at low.
func drawFeet(g *canvas.Page, in CrossArchInput, f sectionFrame, r canvas.Rect, low float64) {
	lo, _ := in.Feet[0].reach(0)
	last := in.Feet[len(in.Feet)-1]
	_, hi := last.reach(len(last.X) - 1)
	lo, hi = math.Min(lo, hi), math.Max(lo, hi)
	edge := 0.02 * (hi - lo)
	v := &footView{in: in, x: canvas.TightAxis(lo-edge, hi+edge, 12, r.X0+38, r.X1)}
	ruler := r.Y0 + 26
	foot := ruler + 34 // below it the shares
	if len(in.Shares) == 0 {
		foot = ruler + 6
	}
	room := r.Y1 - 46 - foot
	gap, force := v.in.greatest()
	split := foot + 0.56*room
	if gap < tightGap {
		split = foot + room + 20
		v.gaps.B = foot + room - 4 // where the lines from the section end
		v.sayTight(g, gap)
	} else {
		v.gaps = canvas.NewAxis(0, gap, 4, split, foot+room)
		v.drawGaps(g)
	}
	v.forces = canvas.NewAxis(0, force, 4, split-20, foot+10)
	v.fan(g, f, lo, hi, low)
	v.drawForces(g)
	v.drawShares(g, ruler+4)
	g.Ruler(v.x, ruler, "mm from the centre line (bass −, treble +)")
}

// sayTight says in words that there is no gap to draw.
func (v *footView) sayTight(g *canvas.Page, gap float64) {
	words := "the foot is fitted tight: no gap, neither before nor under load"
	if gap > 0 {
		words = "the foot is fitted tight: no gap above " + scale.Number(math.Ceil(1000*gap)/1000, 3) + " mm"
	}
	g.Text(canvas.At(v.x.A, v.gaps.B+10), words, canvas.Label(), 0)
}

// greatest returns the greatest gap (mm) and force (N/mm).
func (in CrossArchInput) greatest() (gap, force float64) {
	for _, f := range in.Feet {
		for i := range f.X {
			gap = math.Max(gap, math.Max(nought(f.Relief[i]), nought(f.Gap[i])))
			force = math.Max(force, nought(f.perMM(i)))
		}
	}
	if force <= 0 {
		force = 1
	}
	return gap, force
}

// fan joins the feet in the section, marked at height y, with their enlarged
// view.
func (v *footView) fan(g *canvas.Page, f sectionFrame, lo, hi, y float64) {
	a, b := canvas.At(f.at(lo, 0).X, y), canvas.At(f.at(hi, 0).X, y)
	g.Line(a, b, canvas.Pen{Width: 0.8, Color: canvas.SoftInk()})
	by := canvas.Pen{Width: 0.5, Color: canvas.SoftInk(), Dash: []float64{1.2, 2}}
	g.Line(a, canvas.At(v.x.At(lo), v.gaps.B+22), by)
	g.Line(b, canvas.At(v.x.At(hi), v.gaps.B+22), by)
}

// drawGaps draws the feet above the top's outer surface, which is laid flat.
func (v *footView) drawGaps(g *canvas.Page) {
	y := v.gaps
	perMM := (v.x.B - v.x.A) / (v.x.Hi - v.x.Lo)
	k := (y.B - y.A) / (y.Hi - y.Lo) / perMM
	g.SampleRow(canvas.At(v.x.A, y.B+10), v.x.B-v.x.A, []canvas.KeyItem{
		{Words: "foot", Sample: canvas.AreaSample(canvas.BridgeWood(), canvas.Thin())},
		{Words: "gap as fitted", Sample: canvas.LineSample(canvas.Hidden())},
		{Words: "gap left under load", Sample: canvas.LineSample(loadedPen())},
		{Words: fmt.Sprintf("mm, drawn %s times as high as wide", scale.Number(k, 0)), Sample: nil},
	})
	for _, f := range v.in.Feet {
		for _, l := range v.underside(f, f.Gap) {
			g.Fill([][]canvas.Point{canvas.CloseUp(l, []canvas.Point{canvas.At(l[0].X, y.B+3), canvas.At(l[len(l)-1].X, y.B+3)})}, canvas.BridgeWood())
		}
	}
	g.Levels(y, v.x.A, v.x.B)
	g.Turned(canvas.At(v.x.A-29, (y.A+y.B)/2), "gap, mm", canvas.Label(), math.Pi/2)
	for _, f := range v.in.Feet {
		g.Stroke(v.underside(f, f.Relief), false, canvas.Hidden())
		g.Stroke(v.underside(f, f.Gap), false, loadedPen())
	}
	g.Fill([][]canvas.Point{canvas.Loop(canvas.Box(v.x.A, y.A-7, v.x.B, y.A))}, canvas.Wood())
	g.Line(canvas.At(v.x.A, y.A), canvas.At(v.x.B, y.A), canvas.Firm())
}

// underside is the line of a gap from end to end of a foot, carried on
// straight from the outermost stations.
func (v *footView) underside(f FootSection, z []float64) [][]canvas.Point {
	n := len(f.X)
	return canvas.Curve(n+2, func(i int) canvas.Point {
		switch {
		case i == 0:
			x, _ := f.reach(0)
			return v.beyond(f, z, 0, min(1, n-1), x)
		case i == n+1:
			_, x := f.reach(n - 1)
			return v.beyond(f, z, n-1, max(0, n-2), x)
		}
		return canvas.At(v.x.At(f.X[i-1]), v.gaps.At(z[i-1]))
	})
}

// beyond is the gap at x on the line through stations a and b, not below 0.
func (v *footView) beyond(f FootSection, z []float64, a, b int, x float64) canvas.Point {
	h := z[a]
	if a != b {
		h += (z[a] - z[b]) / (f.X[a] - f.X[b]) * (x - f.X[a])
	}
	return canvas.At(v.x.At(x), v.gaps.At(math.Max(0, h)))
}

// drawForces draws the force at each station as a bar that hangs from the
// top's surface, in newtons on each mm of the foot's length; the numbers are left
// out where bars are narrow.
func (v *footView) drawForces(g *canvas.Page) {
	y := v.forces
	g.Levels(y, v.x.A, v.x.B)
	g.Turned(canvas.At(v.x.A-29, (y.A+y.B)/2), "N/mm", canvas.Label(), math.Pi/2)
	paper := canvas.Paper()
	numbers := v.numbersFit(g)
	for _, f := range v.in.Feet {
		for i := range f.Force {
			n := f.perMM(i)
			if !(n > 0) {
				continue
			}
			a, b := v.span(f, i)
			bar := canvas.Box(a, y.At(n), b, y.A)
			g.Fill([][]canvas.Point{canvas.Loop(bar)}, canvas.Faded(canvas.Blue(), 0.85))
			if numbers {
				t := canvas.Tag{Text: scale.Reading(n), In: canvas.Label(), Back: &paper}
				t.Box = g.Place(canvas.At((a+b)/2, bar.Y0-8.5), t.Text, t.In, 0.5, 0)
				t.Draw(g)
			}
		}
	}
	g.Line(canvas.At(v.x.A, y.A), canvas.At(v.x.B, y.A), canvas.Firm())
}

// span is the place of a station's bar on the page.
func (v *footView) span(f FootSection, i int) (a, b float64) {
	from, to := f.reach(i)
	a, b = v.x.At(from), v.x.At(to)
	inset := math.Min(1.2, 0.12*(b-a))
	return a + inset, b - inset
}

// numbersFit tells whether every force can be written under its bar.
func (v *footView) numbersFit(g *canvas.Page) bool {
	for _, f := range v.in.Feet {
		for i := range f.Force {
			n := f.perMM(i)
			if a, b := v.span(f, i); n > 0 && g.TextWidth(scale.Reading(n), canvas.Label())+2.5 > b-a+2.4 {
				return false
			}
		}
	}
	return true
}

// drawShares writes what each part of the bearing length carries.
func (v *footView) drawShares(g *canvas.Page, y float64) {
	total := 0.0
	for _, s := range v.in.Shares {
		total += nought(s.Force)
	}
	var percent []float64
	for _, s := range v.in.Shares {
		percent = append(percent, 100*s.Force/total)
	}
	digits := scale.Alike(0, percent...)
	for _, s := range v.in.Shares {
		a, b := v.x.At(s.From)+1, v.x.At(s.To)-1
		g.Stroke([][]canvas.Point{{canvas.At(a, y+26), canvas.At(a, y+22), canvas.At(b, y+22), canvas.At(b, y+26)}}, false, canvas.Firm())
		words := scale.Reading(s.Force) + " N"
		if total > 0 {
			words += fmt.Sprintf(" · %.*f %%", digits, 100*s.Force/total)
		}
		bolder := canvas.Style{Size: canvas.Smallest, Face: canvas.Bold, Color: canvas.Ink()}
		g.Text(canvas.At((a+b)/2, y+12), g.Shorten(canvas.Clean(s.Name), bolder, b-a), bolder, 0.5)
		g.Text(canvas.At((a+b)/2, y+2.5), g.Shorten(words, canvas.Label(), b-a), canvas.Label(), 0.5)
	}
}
