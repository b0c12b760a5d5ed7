package viz

import (
	"fmt"
	"math"

	"archload/cases/say"
	"archload/cases/study"

	"archload/viz/canvas"
	"archload/viz/figure"
)

// SeriesPictures lists the pages of a whole series: lines over one key, maps
// over two; a series over more keys has none.
func SeriesPictures(h study.SeriesHead, rows []study.SeriesRow) []Page {
	c := canvas.Caption{Title: h.Title, Footer: "archload series; a gap or a grey field: never, not known, or failed"}
	switch len(h.Keys) {
	case 1:
		c.Subtitle = "over " + h.Keys[0]
		return []Page{{Name: "lines", draw: func(bool) (*canvas.Picture, error) { return figure.Chart(seriesChart(c, h, rows)) }}}
	case 2:
		c.Subtitle = "over " + h.Keys[0] + " and " + h.Keys[1]
		return []Page{{Name: "map", draw: func(bool) (*canvas.Picture, error) { return figure.ChoiceMap(seriesMap(c, h, rows)) }}}
	}
	return nil
}

// result is one result at every point, NaN where there is none.
func result(name string, points int, rows []study.SeriesRow) []float64 {
	out := make([]float64, points)
	for i := range out {
		out[i] = math.NaN()
	}
	for _, r := range rows {
		if v, ok := r.Results[name]; ok && r.Failed == "" && v.Known() {
			out[r.Point-1] = float64(v)
		}
	}
	return out
}

func seriesChart(c canvas.Caption, h study.SeriesHead, rows []study.SeriesRow) figure.ChartInput {
	in := figure.ChartInput{Caption: c, Across: h.Keys[0], Names: []string{h.Title}}
	x, unit, ok := say.Axis(h, 0)
	if ok && unit != "" {
		in.Across = fmt.Sprintf("%s, %s", h.Keys[0], unit)
	}
	if !ok {
		x = make([]float64, len(h.Values[0]))
		for i := range x {
			x[i] = float64(i)
		}
		in.Words = h.Values[0]
	}
	in.X = x
	for _, q := range study.DrawnColumns(rows) {
		in.Panels = append(in.Panels, figure.ChartPanel{Name: q.Name, Unit: q.Unit, Lines: [][]float64{result(q.Column, h.Points, rows)}})
	}
	return in
}

func seriesMap(c canvas.Caption, h study.SeriesHead, rows []study.SeriesRow) figure.ChoiceMapInput {
	in := figure.ChoiceMapInput{Caption: c, Across: h.Keys[1], Up: h.Keys[0], X: h.Values[1], Y: h.Values[0]}
	for _, q := range study.DrawnColumns(rows) {
		v := result(q.Column, h.Points, rows)
		p := figure.ChoicePanel{Name: q.Name, Unit: q.Unit}
		for j := range in.Y {
			p.V = append(p.V, v[j*len(in.X):(j+1)*len(in.X)])
		}
		in.Panels = append(in.Panels, p)
	}
	return in
}
