package cases

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"
)

// Verdict says in two or three sentences for each design from the second on
// what it changes against the first: the greatest differences in what decides,
// what is less, and what cannot be told apart.
func (c *Comparison) Verdict() []string {
	var out []string
	for k := 1; k < len(c.Cases); k++ {
		out = append(out, c.verdict(k))
	}
	return out
}

// told is what one row has to say about one design.
type told struct {
	words, name string
	weight      float64
}

// verdict is that of design k.
func (c *Comparison) verdict(k int) string {
	const most = 5
	var differ []told
	var scatter, alike []string
	for i := range c.Rows {
		r := &c.Rows[i]
		switch d := r.Differences[k-1]; {
		case r.rest || r.bare:
		case r.event && r.Values[0].Known() != r.Values[k].Known():
			differ = append(differ, told{r.against(k), r.plainName(), math.Inf(1)})
		case !d.Value.Known():
		case r.nought(d.Value):
			alike = append(alike, r.plainName())
		case d.Within:
			scatter = append(scatter, r.plainName())
		default:
			differ = append(differ, told{r.against(k), r.plainName(), float64(r.weightOf(k - 1))})
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
		words = append(words, sentence(pickWords(c.ranged(), "Less than these, yet beyond the wood's scatter: ", "Less than these: "), less)...)
	} else {
		words = append(words, pair+": no difference in what decides"+pickWords(c.ranged(), " that another plank could not turn round", "")+".")
	}
	words = append(words, sentence("Within the wood's scatter, so that another plank could turn it round: ", scatter)...)
	return strings.Join(append(words, sentence("No difference: ", alike)...), " ")
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

// plainName is the name without what its sign means.
func (h headline) plainName() string {
	name, _, _ := strings.Cut(h.name, " (")
	return name
}

// against writes design k's number beside the first one's.
func (r *Row) against(k int) string {
	s := fmt.Sprintf("%s %s instead of %s", r.plainName(), r.said(k), r.said(0))
	if p := r.Differences[k-1].Percent; p.Known() {
		s += fmt.Sprintf(" (%+.0f %%)", float64(p))
	}
	return s
}

// said is a design's number with its unit, its sign in words.
func (r *Row) said(k int) string {
	v := r.Values[k]
	switch {
	case !v.Known():
		return r.number(v)
	case r.signs[0] == "" || r.nought(v):
		return r.number(v) + " " + r.unitWord()
	}
	return fmt.Sprintf("%s %s (%s)", r.number(Num(math.Abs(float64(v)))), r.unitWord(), pickWords(v < 0, r.signs[1], r.signs[0]))
}

// unitWord is the unit behind a number in a sentence.
func (h headline) unitWord() string {
	if h.unit == "deg" {
		return "degrees"
	}
	return h.unit
}
