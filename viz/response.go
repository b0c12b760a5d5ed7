package viz

import (
	"fmt"
	"math"

	"archload/cases/tone"

	"archload/viz/canvas"
	"archload/viz/figure"
)

// ResponsePicture draws how readily designs answer where they are driven, dB over frequency, one panel
// for each place. The designs have the same places and frequencies.
func ResponsePicture(list []*tone.ResponseReport) Page {
	return Page{
		Name:  "response",
		Words: "How readily the top moves where it is driven, velocity over force in dB re 1 m/(N s), over frequency.",
		draw: func(bare bool) (*canvas.Picture, error) {
			r := list[0]
			in := figure.ChartInput{Across: "frequency, Hz", X: r.Response.Hz, Caption: canvas.Caption{Bare: bare, Title: r.Title,
				Subtitle: "velocity over force where it is driven, dB re 1 m/(N s)",
				Facts:    []string{stateWords(r.State), fmt.Sprintf("loss %g", r.Loss)},
				Footer:   "archload; " + r.LeftOut + "; levels compare designs, they do not tell the sound"}}
			for _, one := range list {
				in.Names = append(in.Names, one.Title)
			}
			for k, p := range r.Response.Paths {
				if p.Drive != p.At || len(in.Panels) == mostResponsePanels {
					continue
				}
				panel := figure.ChartPanel{Name: p.Drive, Unit: "dB"}
				for _, one := range list {
					panel.Lines = append(panel.Lines, levels(one.Response.Paths[k]))
				}
				in.Panels = append(in.Panels, panel)
			}
			return figure.Chart(in)
		},
	}
}

// mostResponsePanels is how many places a picture shows.
const mostResponsePanels = 8

// levels are the levels of a path, dB.
func levels(p tone.ResponsePath) []float64 {
	out := make([]float64, len(p.Re))
	for i := range out {
		out[i] = 20 * math.Log10(math.Hypot(p.Re[i], p.Im[i]))
	}
	return out
}
