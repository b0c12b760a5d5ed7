package figure

import (
	"fmt"
	"math"

	"archload/viz/canvas"
	"archload/viz/scale"
)

// FootPressureInput is what FootPressure draws: the contact grid of each foot,
// its mean pressures, and the pressure that crushes the wood.
type FootPressureInput struct {
	Caption canvas.Caption
	Cells   []FootCell
	Means   []FootMean
	Names   []string // of the feet, bass first
	Limit   float64  // MPa; NaN: not known
}

// FootCell is one contact point of a foot.
type FootCell struct {
	Foot     int     // 0 is the bass foot
	X, Y     float64 // its middle from the bridge's middle, mm
	DX, DY   float64 // mm
	Pressure float64 // MPa, along the surface's normal
}

// FootMean is the mean pressure over a stretch of a foot.
type FootMean struct {
	Foot     int
	X        float64 // the middle of the stretch, from the bridge's middle, mm
	Pressure float64 // MPa
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
func FootPressure(in FootPressureInput) (*canvas.Picture, error) {
	if len(in.Cells) == 0 {
		return nil, fmt.Errorf("foot pressure: want a bearing area, found no contact points")
	}
	height := canvas.CaptionHeight(in.Caption) + footBand + footCurve
	return canvas.NewPicture(canvas.PageWidth, height, in.Caption.Title, func(g *canvas.Page) { drawFootPressure(g, in) }), nil
}

// footGrid is the bearing area on the page.
type footGrid struct {
	x, y  canvas.Axis
	scale scale.Scale
}

func drawFootPressure(g *canvas.Page, in FootPressureInput) {
	l := g.LayCaption(in.Caption)
	g.DrawCaption(l)
	r := l.Free
	lo, hi, half, most := math.Inf(1), math.Inf(-1), 0.0, 0.0
	for _, c := range in.Cells {
		lo, hi = math.Min(lo, c.X-c.DX/2), math.Max(hi, c.X+c.DX/2)
		half = math.Max(half, math.Abs(c.Y)+c.DY/2)
		most = math.Max(most, c.Pressure)
	}
	top := r.Y1 - 62
	v := footGrid{scale: scale.New(0, most, scale.Counting), x: canvas.TightAxis(lo, hi, 12, r.X0+40, r.X1-4),
		y: canvas.TightAxis(-half, half, 4, top-footRows, top)}
	v.legend(g, canvas.At(v.x.A, r.Y1-12))
	v.cells(g, in)
	g.LevelsAt(v.y, v.x.A)
	g.Turned(canvas.At(v.x.A-29, (v.y.A+v.y.B)/2), "mm toward the neck", canvas.Label(), math.Pi/2)
	g.Text(canvas.At(v.x.A, v.y.B+8), "neck side", canvas.Rim(), 0)
	stretch := (v.y.B - v.y.A) / (2 * half) / ((v.x.B - v.x.A) / (hi - lo))
	g.Text(canvas.At(v.x.B, v.y.B+8), fmt.Sprintf("drawn %s times as wide across the foot as along it", scale.Number(stretch, 1)), canvas.Small(), 1)
	v.means(g, in, canvas.Box(r.X0, r.Y0, r.X1, v.y.A-30))
}

// legend draws the bands of pressure in a row.
func (v footGrid) legend(g *canvas.Page, at canvas.Point) {
	n := v.scale.Bands()
	w := math.Min(34, (v.x.B-v.x.A-150)/float64(n))
	for k := range n {
		b := canvas.Box(at.X+w*float64(k), at.Y-12, at.X+w*float64(k+1), at.Y)
		g.Fill([][]canvas.Point{canvas.Loop(b)}, v.scale.BandColor(k))
		g.Stroke([][]canvas.Point{canvas.Loop(b)}, true, canvas.Thin())
	}
	for k := 0; k <= n; k++ {
		g.Text(canvas.At(at.X+w*float64(k), at.Y-21), v.scale.Label(k), canvas.Label(), 0.5)
	}
	g.Text(canvas.At(at.X+w*float64(n)+16, at.Y-9), "pressure, MPa; white: no pressure", canvas.Label(), 0)
}

// cells draws the grid; a point that carries nothing stays white.
func (v footGrid) cells(g *canvas.Page, in FootPressureInput) {
	for _, c := range in.Cells {
		b := canvas.Box(v.x.At(c.X-c.DX/2), v.y.At(c.Y-c.DY/2), v.x.At(c.X+c.DX/2), v.y.At(c.Y+c.DY/2))
		k := canvas.White()
		if c.Pressure > 0 {
			k = v.scale.Color(c.Pressure)
		}
		g.Fill([][]canvas.Point{canvas.Loop(b)}, k)
		g.Stroke([][]canvas.Point{canvas.Loop(b)}, true, canvas.Hair())
	}
	for i, name := range in.Names {
		lo, hi := v.reach(in, i)
		g.Stroke([][]canvas.Point{canvas.Loop(canvas.Box(v.x.At(lo), v.y.A, v.x.At(hi), v.y.B))}, true, canvas.Firm())
		if len(in.Names) > 1 {
			g.Text(canvas.At((v.x.At(lo)+v.x.At(hi))/2, v.y.A-14), name, nameStyle(), 0.5)
			continue
		}
		g.Text(canvas.At(v.x.At(lo), v.y.A-14), "bass end", canvas.Rim(), 0)
		g.Text(canvas.At(v.x.At(hi), v.y.A-14), "treble end", canvas.Rim(), 1)
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
func (v footGrid) means(g *canvas.Page, in FootPressureInput, r canvas.Rect) {
	most := 0.0
	for _, m := range in.Means {
		most = math.Max(most, m.Pressure)
	}
	y := canvas.NewAxis(0, math.Max(most, 1e-6), 5, r.Y0+32, r.Y1-24)
	g.Levels(y, v.x.A, v.x.B)
	g.Turned(canvas.At(v.x.A-34, (y.A+y.B)/2), "MPa", canvas.Label(), math.Pi/2)
	words := fmt.Sprintf("mean over 8 mm of foot; most %s MPa", scale.Reading(most))
	if !math.IsNaN(in.Limit) {
		words += fmt.Sprintf(", %.0f %% of the %s MPa that crush the softer wood", 100*most/in.Limit, scale.Reading(in.Limit))
	}
	by := canvas.Pen{Width: 1.4, Color: canvas.Blue()}
	g.SampleRow(canvas.At(v.x.A, r.Y1-12), v.x.B-v.x.A, []canvas.KeyItem{{Words: words, Sample: canvas.LineSample(by)}})
	for i := range in.Names {
		var run []canvas.Point
		for _, m := range in.Means {
			if m.Foot == i {
				run = append(run, canvas.At(v.x.At(m.X), y.At(m.Pressure)))
			}
		}
		g.Stroke([][]canvas.Point{run}, false, by)
	}
	g.Ruler(v.x, r.Y0+28, "mm from the bridge's middle (bass −, treble +)")
}
