package figure

import (
	"fmt"
	"image/color"
	"math"

	"archload/viz/canvas"
	"archload/viz/scale"
)

// ChoiceMapInput is what ChoiceMap draws: quantities over two choices at once.
type ChoiceMapInput struct {
	Caption    canvas.Caption
	Across, Up string   // what the two choices are
	X, Y       []string // their values as words, in order
	Panels     []ChoicePanel
}

// ChoicePanel is one quantity: V[j][i] belongs to Y[j] and X[i]; NaN: none.
type ChoicePanel struct {
	Name string
	Unit string
	V    [][]float64
}

// Sizes of a map, points.
const (
	mapPart = 178.0 // height with its words
	mapGap  = 20.0  // between two
)

// ChoiceMap draws quantities as maps of coloured fields, two to a row, lowest Y
// at the bottom; where there is room the value stands in its field.
func ChoiceMap(in ChoiceMapInput) (*canvas.Picture, error) {
	if len(in.X) == 0 || len(in.Y) == 0 || len(in.Panels) == 0 || len(in.Panels) > mostPanels {
		return nil, fmt.Errorf("map of choices: want values both ways and 1 to %d quantities, found %d, %d and %d",
			mostPanels, len(in.X), len(in.Y), len(in.Panels))
	}
	for _, p := range in.Panels {
		if len(p.V) != len(in.Y) {
			return nil, fmt.Errorf("map of choices: %q: %d rows for %d values", p.Name, len(p.V), len(in.Y))
		}
		for _, row := range p.V {
			if len(row) != len(in.X) {
				return nil, fmt.Errorf("map of choices: %q: %d columns for %d values", p.Name, len(row), len(in.X))
			}
		}
	}
	in, keys := in.keyed()
	maps := mapPart * math.Ceil(float64(len(in.Panels))/2)
	height := canvas.CaptionHeight(in.Caption) + maps + keys[0].height() + keys[1].height()
	draw := func(g *canvas.Page) {
		l := g.LayCaption(in.Caption)
		g.DrawCaption(l)
		w := (l.Free.Width() - mapGap) / 2
		for k, panel := range in.Panels {
			x0, y1 := l.Free.X0+float64(k%2)*(w+mapGap), l.Free.Y1-float64(k/2)*mapPart
			in.draw(g, panel, canvas.Box(x0, y1-mapPart+8, x0+w, y1))
		}
		keys[1].draw(g, l.Free.X0, keys[0].draw(g, l.Free.X0, l.Free.Y1-maps))
		keys[1].draw(g, l.Free.X0, keys[0].draw(g, l.Free.X0, l.Free.Y1-maps))
	}
	return canvas.NewPicture(canvas.PageWidth, height, in.Caption.Title, draw), nil
}

func (in ChoiceMapInput) draw(g *canvas.Page, p ChoicePanel, r canvas.Rect) {
	g.Text(canvas.At(r.X0, r.Y1-10), g.Shorten(heading(p.Name, p.Unit), nameStyle(), r.Width()), nameStyle(), 0)
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, row := range p.V {
		for _, v := range row {
			if !math.IsNaN(v) {
				lo, hi = math.Min(lo, v), math.Max(hi, v)
			}
		}
	}
	kind := scale.Counting
	if lo < 0 && hi > 0 {
		kind = scale.Signed
	}
	s := scale.New(lo, hi, kind)
	side := 0.0
	for _, w := range in.Y {
		side = math.Max(side, math.Min(sideRoom, g.TextWidth(canvas.Clean(w), canvas.Label())))
	}
	cell := canvas.Box(r.X0+side+17, r.Y0+40, r.X1, r.Y1-18)
	dx, dy := cell.Width()/float64(len(in.X)), cell.Height()/float64(len(in.Y))
	for j, row := range p.V {
		for i, v := range row {
			c := canvas.Box(cell.X0+float64(i)*dx, cell.Y0+float64(j)*dy, cell.X0+float64(i+1)*dx, cell.Y0+float64(j+1)*dy)
			k := scale.NoValue()
			if !math.IsNaN(v) {
				k = s.Color(v)
			}
			g.Fill([][]canvas.Point{canvas.Loop(c)}, k)
			g.Stroke([][]canvas.Point{canvas.Loop(c)}, true, canvas.Pen{Width: 0.4, Color: canvas.Paper()})
			if words := cellWords(v); g.TextWidth(words, canvas.Label()) < dx-2 && dy > 10 {
				g.Text(canvas.At((c.X0+c.X1)/2, (c.Y0+c.Y1)/2-3), words, canvas.Style{Size: canvas.Smallest, Face: canvas.Regular, Color: inkOn(k)}, 0.5)
			}
		}
	}
	in.edges(g, cell, side)
	words := "no value anywhere"
	if lo <= hi {
		words = "least " + withUnit(scale.Reading(lo), p.Unit) + ", greatest " + withUnit(scale.Reading(hi), p.Unit)
	}
	g.Text(canvas.At(cell.X0, r.Y0+4), g.Shorten(words, canvas.Small(), cell.Width()), canvas.Small(), 0)
}

// edges writes the values along both sides, as many as there is room for.
func (in ChoiceMapInput) edges(g *canvas.Page, cell canvas.Rect, side float64) {
	dx, dy := cell.Width()/float64(len(in.X)), cell.Height()/float64(len(in.Y))
	widest := 0.0
	for _, w := range in.X {
		widest = math.Max(widest, g.TextWidth(canvas.Clean(w), canvas.Label()))
	}
	each := int(math.Ceil(math.Min(widest+4, 60) / dx))
	for i, w := range in.X {
		if i%each == 0 {
			g.Text(canvas.At(cell.X0+(float64(i)+0.5)*dx, cell.Y0-11), g.Shorten(canvas.Clean(w), canvas.Label(), dx*float64(each)-2), canvas.Label(), 0.5)
		}
	}
	each = int(math.Ceil(10 / dy))
	for j, w := range in.Y {
		if j%each == 0 {
			g.Text(canvas.At(cell.X0-4, cell.Y0+(float64(j)+0.5)*dy-3), g.Shorten(canvas.Clean(w), canvas.Label(), side), canvas.Label(), 1)
		}
	}
	g.Text(canvas.At((cell.X0+cell.X1)/2, cell.Y0-23), g.Shorten(canvas.Clean(in.Across), canvas.Label(), cell.Width()), canvas.Label(), 0.5)
	g.Turned(canvas.At(cell.X0-side-8, (cell.Y0+cell.Y1)/2), g.Shorten(canvas.Clean(in.Up), canvas.Label(), cell.Height()), canvas.Label(), math.Pi/2)
}

func cellWords(v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	return scale.Reading(v)
}

// inkOn is ink that can be read on a colour.
func inkOn(c color.NRGBA) color.NRGBA {
	if scale.Lightness(c) < 0.6 {
		return canvas.White()
	}
	return canvas.Ink()
}
