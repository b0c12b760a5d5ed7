package viz

import (
	"fmt"
	"image/color"
	"math"
)

// ChoiceMapInput is what ChoiceMap draws: quantities over two choices at once.
type ChoiceMapInput struct {
	Caption    Caption
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

const mapPart = 178.0 // height of a map with its words, points

// ChoiceMap draws quantities as maps of coloured fields, two to a row, lowest Y
// at the bottom; where there is room the value stands in its field.
func ChoiceMap(in ChoiceMapInput) (*Picture, error) {
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
	p := &Picture{Width: pageWidth, Title: clean(in.Caption.Title)}
	p.Height = captionHeight(in.Caption) + mapPart*math.Ceil(float64(len(in.Panels))/2)
	p.draw = func(g *page) {
		l := g.layCaption(in.Caption)
		g.drawCaption(l)
		const gap = 20
		w := (l.free.width() - gap) / 2
		for k, panel := range in.Panels {
			x0, y1 := l.free.X0+float64(k%2)*(w+gap), l.free.Y1-float64(k/2)*mapPart
			in.draw(g, panel, rect{x0, y1 - mapPart + 8, x0 + w, y1})
		}
	}
	return p, nil
}

func (in ChoiceMapInput) draw(g *page, p ChoicePanel, r rect) {
	g.text(pt{r.X0, r.Y1 - 10}, g.shorten(heading(BarRow{Name: p.Name, Unit: p.Unit}), nameStyle(), r.width()), nameStyle(), 0)
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, row := range p.V {
		for _, v := range row {
			if !math.IsNaN(v) {
				lo, hi = math.Min(lo, v), math.Max(hi, v)
			}
		}
	}
	s := NewScale(lo, hi, lo < 0 && hi > 0)
	side := 0.0
	for _, w := range in.Y {
		side = math.Max(side, math.Min(52, g.width(clean(w), label())))
	}
	cell := rect{r.X0 + side + 17, r.Y0 + 40, r.X1, r.Y1 - 18}
	dx, dy := cell.width()/float64(len(in.X)), cell.height()/float64(len(in.Y))
	for j, row := range p.V {
		for i, v := range row {
			c := rect{cell.X0 + float64(i)*dx, cell.Y0 + float64(j)*dy, cell.X0 + float64(i+1)*dx, cell.Y0 + float64(j+1)*dy}
			k := noValueColor()
			if !math.IsNaN(v) {
				k = s.Color(v)
			}
			g.fill([][]pt{box(c)}, k)
			g.stroke([][]pt{box(c)}, true, pen{width: 0.4, color: paperColor()})
			if words := cellWords(v); g.width(words, label()) < dx-2 && dy > 10 {
				g.text(pt{(c.X0 + c.X1) / 2, (c.Y0+c.Y1)/2 - 3}, words, style{smallest, regular, inkOn(k)}, 0.5)
			}
		}
	}
	in.edges(g, cell, side)
	words := "no value anywhere"
	if lo <= hi {
		words = "least " + withUnit(reading(lo), p.Unit) + ", greatest " + withUnit(reading(hi), p.Unit)
	}
	g.text(pt{cell.X0, r.Y0 + 4}, g.shorten(words, small(), cell.width()), small(), 0)
}

// edges writes the values along both sides, as many as there is room for.
func (in ChoiceMapInput) edges(g *page, cell rect, side float64) {
	dx, dy := cell.width()/float64(len(in.X)), cell.height()/float64(len(in.Y))
	widest := 0.0
	for _, w := range in.X {
		widest = math.Max(widest, g.width(clean(w), label()))
	}
	each := int(math.Ceil(math.Min(widest+4, 60) / dx))
	for i, w := range in.X {
		if i%each == 0 {
			g.text(pt{cell.X0 + (float64(i)+0.5)*dx, cell.Y0 - 11}, g.shorten(clean(w), label(), dx*float64(each)-2), label(), 0.5)
		}
	}
	each = int(math.Ceil(10 / dy))
	for j, w := range in.Y {
		if j%each == 0 {
			g.text(pt{cell.X0 - 4, cell.Y0 + (float64(j)+0.5)*dy - 3}, g.shorten(clean(w), label(), side), label(), 1)
		}
	}
	g.text(pt{(cell.X0 + cell.X1) / 2, cell.Y0 - 23}, g.shorten(clean(in.Across), label(), cell.width()), label(), 0.5)
	g.turned(pt{cell.X0 - side - 8, (cell.Y0 + cell.Y1) / 2}, g.shorten(clean(in.Up), label(), cell.height()), label(), math.Pi/2)
}

func cellWords(v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	return reading(v)
}

// inkOn is ink that can be read on a colour.
func inkOn(c color.NRGBA) color.NRGBA {
	if lightness(c) < 0.6 {
		return whiteColor()
	}
	return inkColor()
}
