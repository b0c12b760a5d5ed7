package viz

import (
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/viz/canvas"
	"archload/viz/figure"
)

// TrialPictures lists the pages of a relief trial.
func TrialPictures(t *cases.Trial) []Page {
	return []Page{{Name: "depths", draw: func(bool) (*canvas.Picture, error) { return figure.Chart(trialChart(t)) }}}
}

func trialChart(t *cases.Trial) figure.ChartInput {
	in := figure.ChartInput{Across: "wood taken from under the middle of the foot, mm", Caption: canvas.Caption{
		Title: t.Title, Subtitle: "the foot relieved more and more, at full string load",
		Facts:  []string{fmt.Sprintf("strings pressing with %.0f N", t.Downforce), "a line that ends: never, or not worked out"},
		Footer: "archload relief; thirds of the bearing length; what the wood's scatter does is on the bench sheet"}}
	by := map[string][]cases.TrialPoint{}
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
	for _, q := range []struct {
		name, unit string
		get        func(cases.TrialPoint) float64
	}{
		{"middle of the foot carries", "% of its force", func(p cases.TrialPoint) float64 { return 100 * p.Share.Middle }},
		{"both ends carry", "% of its force", func(p cases.TrialPoint) float64 { return 100 * (p.Share.BassEnd + p.Share.TrebleEnd) }},
		{"middle first touches at", "% of full load", func(p cases.TrialPoint) float64 { return 100 * float64(p.MiddleTouchesAt) }},
		{"middle has closed at", "% of full load", func(p cases.TrialPoint) float64 { return 100 * float64(p.MiddleClosesAt) }},
		{"greatest gap left", "mm", func(p cases.TrialPoint) float64 { return p.GapLeft }},
		{"bridge sinks", "mm", func(p cases.TrialPoint) float64 { return p.Sink }},
		{"pressure under the foot, over 8 mm", "MPa", func(p cases.TrialPoint) float64 { return float64(p.FootPressure) }},
		{"of the crushing strength", "%", func(p cases.TrialPoint) float64 { return 100 * float64(p.FootUsed) }},
		{"arch under the foot: rounder +, flatter −", "mm", func(p cases.TrialPoint) float64 { return -p.TopBend }},
		{"strength of the top used", "%", func(p cases.TrialPoint) float64 { return 100 * float64(p.StrengthUsed) }},
	} {
		panel := figure.ChartPanel{Name: q.name, Unit: q.unit}
		for _, shape := range in.Names {
			line := make([]float64, len(in.X))
			for i := range line {
				line[i] = q.get(by[shape][i])
			}
			if q.name == "strength of the top used" {
				bridgeGaps(in.X, line)
			}
			panel.Lines = append(panel.Lines, line)
		}
		in.Panels = append(in.Panels, panel)
	}
	return in
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
