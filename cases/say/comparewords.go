package say

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"archload/cases/answer"
	"archload/cases/quantity"
	"archload/cases/study"
)

// Verdict says in two or three sentences for each design from the second on
// what it changes against the first: the greatest differences in what decides,
// what is less, and what cannot be told apart.
func Verdict(c *study.Comparison) []string {
	var out []string
	for k := 1; k < len(c.Cases); k++ {
		out = append(out, verdict(c, k))
	}
	return out
}

// told is what one row has to say about one design.
type told struct {
	words, name string
	weight      float64
}

// verdict is that of design k.
func verdict(c *study.Comparison, k int) string {
	const most = 5
	var differ []told
	var scatter, alike []string
	for i := range c.Rows {
		r := &c.Rows[i]
		q := r.Quantity()
		switch d := r.Differences[k-1]; {
		case q.Compare != quantity.UnderDecides:
		case q.Event && r.Values[0].Known() != r.Values[k].Known():
			differ = append(differ, told{against(r, k), q.Name, math.Inf(1)})
		case !d.Value.Known():
		case q.Nought(d.Value):
			alike = append(alike, q.Name)
		case d.Within:
			scatter = append(scatter, q.Name)
		default:
			differ = append(differ, told{against(r, k), q.Name, float64(r.WeightOf(k - 1))})
		}
	}
	slices.SortStableFunc(differ, func(a, b told) int { return cmp.Compare(b.weight, a.weight) })
	pair := Letter(k) + " against " + Letter(0)
	var words []string
	if n := min(most, len(differ)); n > 0 {
		var first, less []string
		for i, t := range differ {
			if i < n {
				first = append(first, t.words)
			} else {
				less = append(less, t.name)
			}
		}
		words = append(words, pair+": "+strings.Join(first, "; ")+".")
		words = append(words, sentence(pickWords(ranged(c), "Less than these, yet beyond the wood's scatter: ", "Less than these: "), less)...)
	} else {
		words = append(words, pair+": no difference in what decides"+pickWords(ranged(c), " that another plank could not turn round", "")+".")
	}
	words = append(words, feetSentence(c, k)...)
	words = append(words, sentence("Within the wood's scatter, so that another plank could turn it round: ", scatter)...)
	return strings.Join(append(words, sentence("No difference: ", alike)...), " ")
}

// feetSentence says what can be compared between a continuous foot and two feet.
func feetSentence(c *study.Comparison, k int) []string {
	first, other := c.Reports[0].Bridge, c.Reports[k].Bridge
	if first == nil || other == nil || first.TwoFeet() == other.TwoFeet() {
		return nil
	}
	one, two := Letter(0), Letter(k)
	if first.TwoFeet() {
		one, two = two, one
	}
	return []string{fmt.Sprintf("%s stands on one foot, which has thirds, %s on two, which have none in the middle: what those carry "+
		"cannot be set against each other. Sinks, lean, pressure, friction and strength can.", one, two)}
}

// sentence is a list of names behind a beginning; none of an empty list.
func sentence(begin string, names []string) []string {
	if len(names) == 0 {
		return nil
	}
	return []string{begin + strings.Join(names, ", ") + "."}
}

func pickWords(when bool, a, b string) string {
	if when {
		return a
	}
	return b
}

// against writes design k's number beside the first one's.
func against(r *study.Row, k int) string {
	q := r.Quantity()
	s := fmt.Sprintf("%s %s instead of %s", q.Name, said(q, r.Values[k]), said(q, r.Values[0]))
	if p := r.Differences[k-1].Percent; p.Known() {
		s += fmt.Sprintf(" (%+.0f %%)", float64(p))
	}
	return s
}

// said is a number of a quantity with its unit, its sign in words where the
// name does not say it.
func said(q quantity.Quantity, v answer.Num) string {
	switch {
	case !v.Known():
		return numberText(q, v)
	case q.Minus == "" || q.Nought(v):
		return numberText(q, v) + " " + unitWord(q)
	}
	return fmt.Sprintf("%s %s (%s)", numberText(q, answer.Num(math.Abs(float64(v)))), unitWord(q), pickWords(v < 0, q.Minus, q.Plus))
}

// unitWord is the unit behind a number in a sentence.
func unitWord(q quantity.Quantity) string {
	if q.Unit == "deg" {
		return "degrees"
	}
	return q.Unit
}

func ranged(c *study.Comparison) bool { return len(c.Rows) > 0 && len(c.Rows[0].Ranges) > 0 }
