package fit

import (
	"math"

	"archload/cases/bench"
	"archload/materials"

	"gonum.org/v1/gonum/mat"
)

// unknown is one of the numbers that are looked for, as the logarithm of how many times as great it is as
// expected. The first are the card's constants; then come the thicknesses, which are not quite known.
type unknown struct {
	key   string  // of a wood card; "" for a thickness
	words string  // "EL", "thickness of the blank"
	sd    float64 // before anything is measured, of the logarithm, 1
}

// woodKeys are the constants of a card that are looked for.
func woodKeys() []string {
	return []string{"density", "EL", "ER", "ET", "GLR", "GLT", "GRT", "nuLR", "nuLT", "nuRT"}
}

// atDensity and firstStiff are places among the unknowns.
const atDensity, firstStiff = 0, 1

// poissonScatter is how much a Poisson's ratio, made free of the moduli (nuLR sqrt(ER/EL)), scatters: as
// from species to species in table 5-2 of the Wood Handbook, from memory. Within a species no published
// value is at hand.
const poissonScatter = 0.2

// scatterOf is a constant's coefficient of variation: the card's own, or that of its species.
func scatterOf(card *materials.Card, key string) float64 {
	cv, _ := card.Spread(key)
	if _, own := card.OwnScatter[key]; !own && cv == 0 {
		return poissonScatter
	}
	return math.Max(cv, 1e-6)
}

// logDeviation is the standard deviation of the logarithm of a lognormal number of that coefficient of
// variation.
func logDeviation(cv float64) float64 { return math.Sqrt(math.Log1p(cv * cv)) }

// unknowns lists what is looked for in a file.
func unknowns(f *bench.File) []unknown {
	var list []unknown
	for _, k := range woodKeys() {
		list = append(list, unknown{key: k, words: k, sd: logDeviation(scatterOf(&f.Card, k))})
	}
	if b := f.Blank; b != nil {
		list = append(list, unknown{words: "thickness of the blank", sd: thicknessShare(float64(b.ThicknessNoise), meanThickness(f))})
	}
	for i := range f.Bars {
		b := &f.Bars[i]
		list = append(list, unknown{words: "thickness of " + b.Name, sd: thicknessShare(float64(b.ThicknessNoise), float64(b.Thickness))})
	}
	return list
}

// prior is the covariance of the unknowns before anything is measured.
func prior(f *bench.File, of []unknown) *mat.SymDense {
	p := mat.NewSymDense(len(of), nil)
	keys := woodKeys()
	card := f.Card.Covariance(keys)
	for i, u := range of {
		p.SetSym(i, i, u.sd*u.sd)
		for j := range min(i, len(keys)) {
			if i < len(keys) {
				p.SetSym(i, j, card.At(i, j))
			}
		}
	}
	return p
}

// thicknessShare is how far a thickness may be off as a share of it; never quite nothing.
func thicknessShare(noise, thickness float64) float64 { return math.Max(noise/thickness, 1e-6) }

// meanThickness is the blank's, mm.
func meanThickness(f *bench.File) float64 {
	if f.Top == nil {
		return f.Blank.Thickness.Mean()
	}
	return plateThickness(f)
}

// wood is the card's wood with the unknowns at x.
func wood(card *materials.Card, x []float64) materials.Orthotropic {
	times := map[string]float64{}
	for i, k := range woodKeys() {
		times[k] = math.Exp(x[i])
	}
	return card.Varied(times).Wood
}

// told are the constants as a card has them: their logarithms are linear in the unknowns. Row i of the
// result is that of constant i; Poisson's ratios follow the moduli (materials.Card.Varied).
func told() [][]float64 {
	keys := woodKeys()
	place := map[string]int{}
	for i, k := range keys {
		place[k] = i
	}
	rows := make([][]float64, len(keys))
	for i := range rows {
		rows[i] = make([]float64, len(keys))
		rows[i][i] = 1
	}
	for _, p := range [3][3]string{{"nuLR", "EL", "ER"}, {"nuLT", "EL", "ET"}, {"nuRT", "ER", "ET"}} {
		rows[place[p[0]]][place[p[1]]] = 0.5
		rows[place[p[0]]][place[p[2]]] = -0.5
	}
	return rows
}

// plateThickness is about that of a case's plate, mm: its thinnest given number or a usual one.
func plateThickness(f *bench.File) float64 {
	if t := float64(f.Top.Plate.EvenThickness()); t > 0 {
		return t
	}
	return 4
}

// turned is the covariance of the constants as a card has them from that of the unknowns.
func turned(p []float64, n int) [][]float64 {
	rows := told()
	m := len(rows)
	out := make([][]float64, m)
	for i := range out {
		out[i] = make([]float64, m)
		for j := range out[i] {
			for k, v := range rows[i] {
				for l, w := range rows[j] {
					out[i][j] += v * p[n*k+l] * w
				}
			}
		}
	}
	return out
}
