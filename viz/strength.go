package viz

import (
	"fmt"
	"math"

	"archload/cases"
	"archload/mesh"
)

// stressPages are the stresses at one face (1 outer, -1 inner) along and across
// the grain; the gauges read them too.
func (u subject) stressPages(d Drawing, zeta float64) []Page {
	s, r := u.s, u.r
	along, across := s.StressFields(zeta)
	face, ending := "outer", ""
	if zeta < 0 {
		face, ending = "inner", "-inner"
	}
	page := func(way string, v []float64, of func(cases.FaceStress) float64) Page {
		w := d
		w.Gauges = nil
		for _, g := range r.Gauges {
			f := g.Outer
			if zeta < 0 {
				f = g.Inner
			}
			w.Gauges = append(w.Gauges, Mark{Name: g.Name, At: mesh.Point{g.X, g.Y}, Value: of(f), Unit: "MPa"})
		}
		return u.planPage("stress-"+way+ending, w,
			Field{Name: "stress " + way + " the grain, " + face + " face", Unit: "MPa", PerTriangle: v, Signed: true})
	}
	return []Page{
		page("along", along, func(f cases.FaceStress) float64 { return f.Along }),
		page("across", across, func(f cases.FaceStress) float64 { return f.Across }),
	}
}

// strengthPages are the stresses at the inner face and the share of strength
// used.
func (u subject) strengthPages(d Drawing) []Page {
	s, r := u.s, u.r
	pages := u.stressPages(d, -1)
	if !r.Strength.Used.Known() {
		return pages
	}
	used, _ := s.StrengthFields()
	w := d
	w.Gauges = []Mark{{Name: fmt.Sprintf("the worst place itself, %s face", r.Strength.Surface), Worst: true,
		At: mesh.Point{float64(r.Strength.X), float64(r.Strength.Y)}, Value: 100 * float64(r.Strength.Used), Unit: "%"}}
	return append(pages, u.planPage("strength-used", w,
		Field{Name: "strength used at the worse face, means over one thickness", Unit: "%", PerTriangle: used}))
}

// FootPressureInput is what FootPressure draws: the contact grid of each foot,
// its mean pressures, and the pressure that crushes the wood.
type FootPressureInput struct {
	Caption Caption
	Cells   []cases.FootCell
	Means   []cases.FootMean
	Names   []string // of the feet, bass first
	Limit   float64  // MPa; NaN: not known
}

func (u subject) footPressure() FootPressureInput {
	s, r := u.s, u.r
	in := FootPressureInput{Caption: u.caption(), Cells: s.FootCells(), Means: s.FootMeans(), Limit: s.CrushingLimit()}
	in.Caption.Subtitle = "pressure under the foot, " + loadWords(r)
	for i := range s.Top.Built.Case.Bridge.Feet {
		in.Names = append(in.Names, footName(i, len(s.Top.Built.Case.Bridge.Feet)))
	}
	return in
}

// Sizes of a foot pressure page, points.
const (
	footBand  = 300 // legend, grid and its words
	footCurve = 170 // the means below
	footRows  = 150 // height of the grid
)

// FootPressure draws the bearing area from above, enlarged across, each
// contact point in the colour of its pressure, and below it the means over 8 mm
// along the foot.
func FootPressure(in FootPressureInput) (*Picture, error) {
	if len(in.Cells) == 0 {
		return nil, fmt.Errorf("foot pressure: want a bearing area, found no contact points")
	}
	p := &Picture{Width: pageWidth, Title: clean(in.Caption.Title)}
	p.Height = captionHeight(in.Caption) + footBand + footCurve
	p.draw = func(g *page) { drawFootPressure(g, in) }
	return p, nil
}

// footGrid is the bearing area on the page.
type footGrid struct {
	x, y  axis
	scale Scale
}

func drawFootPressure(g *page, in FootPressureInput) {
	l := g.layCaption(in.Caption)
	g.drawCaption(l)
	r := l.free
	lo, hi, half, most := math.Inf(1), math.Inf(-1), 0.0, 0.0
	for _, c := range in.Cells {
		lo, hi = math.Min(lo, c.X-c.DX/2), math.Max(hi, c.X+c.DX/2)
		half = math.Max(half, math.Abs(c.Y)+c.DY/2)
		most = math.Max(most, c.Pressure)
	}
	top := r.Y1 - 62
	v := footGrid{scale: NewScale(0, most, false), x: tightAxis(lo, hi, 12, r.X0+40, r.X1-4),
		y: tightAxis(-half, half, 4, top-footRows, top)}
	v.legend(g, pt{v.x.a, r.Y1 - 12})
	v.cells(g, in)
	g.levelsAt(v.y, v.x.a)
	g.turned(pt{v.x.a - 29, (v.y.a + v.y.b) / 2}, "mm toward the neck", label(), math.Pi/2)
	g.text(pt{v.x.a, v.y.b + 8}, "neck side", rim(), 0)
	stretch := (v.y.b - v.y.a) / (2 * half) / ((v.x.b - v.x.a) / (hi - lo))
	g.text(pt{v.x.b, v.y.b + 8}, fmt.Sprintf("drawn %s times as wide across the foot as along it", number(stretch, 1)), small(), 1)
	v.means(g, in, rect{r.X0, r.Y0, r.X1, v.y.a - 30})
}

// levelsAt draws the marks of an upright axis left of x0.
func (p *page) levelsAt(y axis, x0 float64) {
	for _, v := range y.marks() {
		p.line(pt{x0 - 3, y.at(v)}, pt{x0, y.at(v)}, thin())
		p.text(pt{x0 - 5, y.at(v) - 3}, y.label(v), label(), 1)
	}
}

// legend draws the bands of pressure in a row.
func (v footGrid) legend(g *page, at pt) {
	n := v.scale.Bands()
	w := math.Min(34, (v.x.b-v.x.a-150)/float64(n))
	for k := range n {
		b := rect{at.X + w*float64(k), at.Y - 12, at.X + w*float64(k+1), at.Y}
		g.fill([][]pt{box(b)}, v.scale.BandColor(k))
		g.stroke([][]pt{box(b)}, true, thin())
	}
	for k := 0; k <= n; k++ {
		g.text(pt{at.X + w*float64(k), at.Y - 21}, v.scale.label(k), label(), 0.5)
	}
	g.text(pt{at.X + w*float64(n) + 16, at.Y - 9}, "pressure, MPa; white: no pressure", label(), 0)
}

// cells draws the grid; a point that carries nothing stays white.
func (v footGrid) cells(g *page, in FootPressureInput) {
	for _, c := range in.Cells {
		b := rect{v.x.at(c.X - c.DX/2), v.y.at(c.Y - c.DY/2), v.x.at(c.X + c.DX/2), v.y.at(c.Y + c.DY/2)}
		k := whiteColor()
		if c.Pressure > 0 {
			k = v.scale.Color(c.Pressure)
		}
		g.fill([][]pt{box(b)}, k)
		g.stroke([][]pt{box(b)}, true, hair())
	}
	for i, name := range in.Names {
		lo, hi := v.reach(in, i)
		g.stroke([][]pt{box(rect{v.x.at(lo), v.y.a, v.x.at(hi), v.y.b})}, true, firm())
		if len(in.Names) > 1 {
			g.text(pt{(v.x.at(lo) + v.x.at(hi)) / 2, v.y.a - 14}, name, nameStyle(), 0.5)
			continue
		}
		g.text(pt{v.x.at(lo), v.y.a - 14}, "bass end", rim(), 0)
		g.text(pt{v.x.at(hi), v.y.a - 14}, "treble end", rim(), 1)
	}
}

// reach is where foot i begins and ends, mm.
func (v footGrid) reach(in FootPressureInput, i int) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	for _, c := range in.Cells {
		if c.Foot == i {
			lo, hi = math.Min(lo, c.X-c.DX/2), math.Max(hi, c.X+c.DX/2)
		}
	}
	return lo, hi
}

// means draws the mean pressures along the feet.
func (v footGrid) means(g *page, in FootPressureInput, r rect) {
	most := 0.0
	for _, m := range in.Means {
		most = math.Max(most, m.Pressure)
	}
	y := newAxis(0, math.Max(most, 1e-6), 5, r.Y0+32, r.Y1-24)
	g.levels(y, v.x.a, v.x.b)
	g.turned(pt{v.x.a - 34, (y.a + y.b) / 2}, "MPa", label(), math.Pi/2)
	words := fmt.Sprintf("mean over 8 mm of foot; most %s MPa", reading(most))
	if !math.IsNaN(in.Limit) {
		words += fmt.Sprintf(", %.0f %% of the %s MPa that crush the softer wood", 100*most/in.Limit, reading(in.Limit))
	}
	by := pen{width: 1.4, color: rustColor()}
	g.sampleRow(pt{v.x.a, r.Y1 - 12}, v.x.b-v.x.a, []keyItem{{words, lineSample(by)}})
	for i := range in.Names {
		var run []pt
		for _, m := range in.Means {
			if m.Foot == i {
				run = append(run, pt{v.x.at(m.X), y.at(m.Pressure)})
			}
		}
		g.stroke([][]pt{run}, false, by)
	}
	g.ruler(v.x, r.Y0+28, "mm from the bridge's middle (bass −, treble +)")
}
