package materials

import (
	"fmt"
	"maps"
	"math"
	"slices"

	"gonum.org/v1/gonum/mat"
)

// Together says how two numbers of a card scatter together: the correlation of their logarithms.
type Together struct {
	Keys [2]string
	By   float64 // 1, -1 to 1
}

// Spread is Scatter for one card: what is known of this piece of wood (key scatter), or else of
// its species.
func (c *Card) Spread(key string) (cv float64, from Source) {
	if own, ok := c.OwnScatter[key]; ok {
		return own, Source{Text: "the card's own scatter"}
	}
	return Scatter(key)
}

// Covariance is that of the logarithms of some numbers of a card, lognormal with the coefficients of
// variation of Spread: sd² = ln(1 + cv²).
func (c *Card) Covariance(keys []string) *mat.SymDense {
	out := mat.NewSymDense(len(keys), nil)
	sd := make([]float64, len(keys))
	for i, k := range keys {
		cv, _ := c.Spread(k)
		sd[i] = math.Sqrt(math.Log1p(cv * cv))
		out.SetSym(i, i, sd[i]*sd[i])
	}
	for i, a := range keys {
		for j, b := range keys[:i] {
			out.SetSym(i, j, c.Correlation(a, b)*sd[i]*sd[j])
		}
	}
	return out
}

// Correlation is that of the logarithms of two numbers of a card, 1; 0 where none is known.
func (c *Card) Correlation(a, b string) float64 {
	for _, t := range c.Together {
		if t.Keys == [2]string{a, b} || t.Keys == [2]string{b, a} {
			return t.By
		}
	}
	return 0
}

// readScatter takes the table scatter of a card: coefficients of variation by key. It returns what is
// wrong.
func readScatter(card *Card, raw any) string {
	table, ok := raw.(map[string]any)
	if !ok {
		return "found " + show(raw) + "; want a table such as { EL = 0.03, density = 0.01 }"
	}
	own := map[string]float64{}
	for _, key := range slices.Sorted(maps.Keys(table)) {
		v, isNumber := finite(table[key])
		if !slices.Contains(Keys(), key) {
			return fmt.Sprintf("unknown key %s; want keys of a card as in { EL = 0.03 }", show(key))
		}
		if !isNumber || v < 0 || v > mostScatter {
			return fmt.Sprintf("%s: found %s; want a coefficient of variation, 0 to %d, as in 0.03", key, show(table[key]), mostScatter)
		}
		own[key] = v
	}
	card.OwnScatter = own
	return ""
}

// mostScatter is the largest coefficient of variation that a card may have: nothing is known.
const mostScatter = 3

// readTogether takes the list together of a card: [key, key, correlation]. It returns what is wrong.
func readTogether(card *Card, raw any) string {
	const want = `; want a list such as [["EL", "GLR", -0.4]]`
	list, ok := raw.([]any)
	if !ok {
		return "found " + show(raw) + want
	}
	card.Together = nil
	for _, item := range list {
		e, ok := item.([]any)
		if !ok || len(e) != 3 {
			return "found " + show(item) + want
		}
		a, isA := e[0].(string)
		b, isB := e[1].(string)
		by, isNumber := finite(e[2])
		if !isA || !isB || !isNumber || a == b || !slices.Contains(Keys(), a) || !slices.Contains(Keys(), b) || math.Abs(by) >= 1 {
			return "found " + show(item) + "; want two keys of a card and a correlation between -1 and 1"
		}
		if card.Correlation(a, b) != 0 {
			return "found " + show(item) + "; these two keys have a correlation already"
		}
		card.Together = append(card.Together, Together{Keys: [2]string{a, b}, By: by})
	}
	var ch mat.Cholesky
	keys := Keys()
	sure := mat.NewSymDense(len(keys), nil)
	for i := range keys {
		sure.SetSym(i, i, 1)
	}
	for _, t := range card.Together {
		sure.SetSym(slices.Index(keys, t.Keys[0]), slices.Index(keys, t.Keys[1]), t.By)
	}
	if !ch.Factorize(sure) {
		return "no numbers can scatter together like that: the correlations contradict each other"
	}
	return ""
}
