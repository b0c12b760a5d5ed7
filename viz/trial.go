package viz

import (
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/mesh"
)

// TrialPictures lists the pages of a relief trial.
func TrialPictures(t *cases.Trial) []Page {
	return []Page{{Name: "depths", picture: func() (*Picture, error) { return Chart(trialChart(t)) }}}
}

func trialChart(t *cases.Trial) ChartInput {
	in := ChartInput{Across: "wood taken from under the middle of the foot, mm", Caption: Caption{
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
		panel := ChartPanel{Name: q.name, Unit: q.unit}
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

// BenchSheet is the full-scale sheet for the relief of a trial, or nil if it
// has none: what to take off, and how to check it.
func BenchSheet(c *cases.Case, t *cases.Trial, paper Paper) *Sheet {
	if t.Sheet == nil {
		return nil
	}
	s := &shop{c: c}
	sh := &Sheet{Name: "bench", Title: "relief under the bridge's foot", Paper: paper, subject: c.Title,
		notes: []string{
			"Fit the foot tight first. Numbers along it: wood to take off, above in hundredths of a millimetre, below in thousandths of an inch.",
			"Seen from above, neck edge up, bass left.",
		}}
	sh.build = func(fitter) *fullScale {
		d := s.drawFoot()
		y := d.lo[1] - 8
		for i, part := range t.Instructions() {
			if i == 0 {
				part.Lines = []string{"The numbers stand along the foot above; the curve shows them."}
			}
			y = benchPart(d, part, y)
		}
		return d
	}
	return sh
}

// benchWidth is the width of the text on a bench sheet, mm.
const benchWidth = 178.0

// benchPart sets a heading and its lines from y down and returns where the
// next part begins, mm.
func benchPart(d *fullScale, p cases.Instruction, y float64) float64 {
	x := -benchWidth / 2
	d.words(mesh.Point{x, y}, p.Head, style{10, bold, rustColor()}, 0)
	y--
	for _, l := range p.Lines {
		for _, w := range d.rule.wrap(clean(l), label(), benchWidth*perMM) {
			y -= 3.9
			d.words(mesh.Point{x, y}, w, label(), 0)
		}
		y -= 0.8
	}
	return y - 5
}
