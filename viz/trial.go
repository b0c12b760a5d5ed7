package viz

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"archload/cases/quantity"

	"archload/cases/study"

	"archload/viz/canvas"
	"archload/viz/figure"
)

// TrialPictures lists the pages of a relief trial.
func TrialPictures(t *study.Trial) []Page {
	return []Page{{Name: "depths", draw: func(bool) (*canvas.Picture, error) { return figure.Chart(trialChart(t)) }}}
}

func trialChart(t *study.Trial) figure.ChartInput {
	in := figure.ChartInput{Across: "wood taken from under the middle of the foot, mm", Caption: canvas.Caption{
		Title: t.Title, Subtitle: "the foot relieved more and more, at full string load",
		Facts:  []string{fmt.Sprintf("strings pressing with %.0f N", t.Downforce), "a line that ends: never, or not worked out"},
		Footer: "archload relief; thirds of the bearing length; what the wood's scatter does is on the bench sheet"}}
	by := map[string][]study.TrialPoint{}
	for _, p := range t.Points {
		if !slices.Contains(in.Names, p.Shape) {
			in.Names = append(in.Names, p.Shape)
		}
		by[p.Shape] = append(by[p.Shape], p)
	}
	if len(in.Names) == 0 {
		return in
	}
	for _, p := range by[in.Names[0]] {
		in.X = append(in.X, p.Depth)
	}
	named := func(key string, get func(study.TrialPoint) float64) trialLine {
		q := quantity.Of(key)
		return trialLine{q.Name, q.Unit, get}
	}
	between, ends, touches, closes := quantity.Of("middle_share").Name, "ends of the foot carry", "middle_touches_at", "middle_closes_at"
	if len(t.Points[0].Feet) > 0 {
		between, ends, touches, closes = "inner heels carry", "outer heels carry", "heels_touch_at", "heels_close_at"
		in.Caption.Footer = strings.Replace(in.Caption.Footer, "thirds of the bearing length", "heels are halves of a foot", 1)
	}
	used := named("strength_used", func(p study.TrialPoint) float64 { return 100 * float64(p.StrengthUsed) })
	for _, q := range []trialLine{
		{between, "%", func(p study.TrialPoint) float64 { return 100 * p.Bearing().Between }},
		{ends, "%", func(p study.TrialPoint) float64 { return 100 * (1 - p.Bearing().Between) }},
		named(touches, func(p study.TrialPoint) float64 { return 100 * float64(p.Bearing().Touches) }),
		named(closes, func(p study.TrialPoint) float64 { return 100 * float64(p.Bearing().Closes) }),
		named("gap_left", func(p study.TrialPoint) float64 { return p.GapLeft }),
		named("bridge_sink", func(p study.TrialPoint) float64 { return p.Sink }),
		named("foot_pressure", func(p study.TrialPoint) float64 { return float64(p.FootPressure) }),
		named("foot_used", func(p study.TrialPoint) float64 { return 100 * float64(p.FootUsed) }),
		{"arch under the foot: rounder +, flatter −", "mm", func(p study.TrialPoint) float64 { return -p.TopBend }},
		used,
	} {
		panel := figure.ChartPanel{Name: q.name, Unit: q.unit}
		for _, shape := range in.Names {
			line := make([]float64, len(in.X))
			for i := range line {
				line[i] = q.get(by[shape][i])
			}
			if q.name == used.name {
				bridgeGaps(in.X, line)
			}
			panel.Lines = append(panel.Lines, line)
		}
		in.Panels = append(in.Panels, panel)
	}
	return in
}

// trialLine is one number of a trial's points.
type trialLine struct {
	name, unit string
	get        func(study.TrialPoint) float64
}

// bridgeGaps fills what was not worked out between two values on a straight
// line.
func bridgeGaps(x, v []float64) {
	last := -1
	for i := range v {
		if math.IsNaN(v[i]) {
			continue
		}
		for k := last + 1; last >= 0 && k < i; k++ {
			v[k] = v[last] + (v[i]-v[last])*(x[k]-x[last])/(x[i]-x[last])
		}
		last = i
	}
}
