package viz

import (
	"fmt"

	"archload/cases/answer"
	"archload/cases/bench/fit"
	"archload/viz/canvas"
	"archload/viz/figure"
)

// PiecePictures shows what a piece of wood is by what was measured on it: each constant beside its card, and each reading
// beside what the wood that was found gives.
func PiecePictures(r *fit.Report) []Page {
	list := []Page{{
		Name:  "constants",
		Words: "Each constant by its card and by what was measured on this piece, with the range of one standard deviation: where the lower one is as wide as the upper, nothing was learnt.",
		draw:  func(bare bool) (*canvas.Picture, error) { return constantsPicture(r, bare) },
	}}
	const each = figure.MostBars / 2
	for from := 0; from < len(r.Readings); from += each {
		part := r.Readings[from:min(from+each, len(r.Readings))]
		list = append(list, Page{
			Name:  fmt.Sprintf("readings-%d", from/each+1),
			Words: "Each reading beside what the wood that was found gives. A reading that fits nothing has no bar beside it: look at it again.",
			draw:  func(bare bool) (*canvas.Picture, error) { return readingsPicture(r, part, bare) },
		})
	}
	return list
}

func pieceCaption(r *fit.Report, what string, bare bool) canvas.Caption {
	return canvas.Caption{Title: r.Title, Bare: bare, Subtitle: what, Facts: []string{r.Name + ", like " + r.Like},
		Footer: "archload; bars have scales of their own, from zero; ranges are one standard deviation"}
}

func constantsPicture(r *fit.Report, bare bool) (*canvas.Picture, error) {
	in := figure.BarsInput{Caption: pieceCaption(r, "constants by the card, and by what was measured", bare), Designs: []string{"by the card", "by the bench"}}
	for _, k := range [][2]string{{"density", "kg/m³"}, {"EL", "MPa"}, {"ER", "MPa"}, {"ET", "MPa"}, {"GLR", "MPa"}, {"GLT", "MPa"}, {"GRT", "MPa"}, {"nuLR", ""}} {
		c := r.Wood[r.Name][k[0]]
		in.Rows = append(in.Rows, figure.BarRow{Name: k[0], Unit: k[1], Values: []float64{c.Card, c.Value}, Wood: []float64{c.CardSD, c.SD}})
	}
	return figure.CompareBars(in)
}

func readingsPicture(r *fit.Report, part []fit.Reading, bare bool) (*canvas.Picture, error) {
	in := figure.BarsInput{Caption: pieceCaption(r, "what was read, and what the wood that was found gives", bare), Designs: []string{"read", "fitted"}}
	for _, x := range part {
		in.Rows = append(in.Rows, figure.BarRow{Name: x.Words, Unit: x.Unit, Values: []float64{x.Value, float64(x.Fitted)}, Wood: []float64{x.SD, float64(answer.None())}})
	}
	return figure.CompareBars(in)
}
