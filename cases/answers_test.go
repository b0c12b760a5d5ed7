package cases

import (
	"math"
	"testing"
)

// TestAnswersAgainstOtherWood solves the case again with every wood 22 % softer
// and compares with the end of the range, which comes from the deeper gap.
func TestAnswersAgainstOtherWood(t *testing.T) {
	solve := func(k float64) *Solution {
		c, err := Open(nil, "course-guitar-relief")
		if err != nil {
			t.Fatal(err)
		}
		for key, card := range c.cards {
			for _, v := range []*float64{&card.Wood.EL, &card.Wood.ER, &card.Wood.ET, &card.Wood.GLR, &card.Wood.GLT, &card.Wood.GRT} {
				*v *= k
			}
			c.cards[key] = card
		}
		s, err := Solve(t.Context(), c, Options{Refine: 0.4, NoFlow: true, NoError: true})
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	s := solve(1)
	got, err := s.Answers(Summarize(s))
	if err != nil {
		t.Fatal(err)
	}
	soft, stiff := Summarize(solve(1-scatter)), Summarize(solve(1+scatter))
	seen := 0
	for _, q := range questions() {
		for _, a := range got {
			if a.Key != q.key {
				continue
			}
			seen++
			least, most := q.span([]float64{float64(q.get(soft)), float64(q.get(stiff))})
			for _, c := range []struct {
				end       string
				got, want Num
			}{{"least", a.Least, least}, {"most", a.Most, most}} {
				if math.Abs(float64(c.got-c.want)) > 1e-6*math.Abs(float64(c.want))+1e-9 {
					t.Errorf("%s, %s of other wood: got %.9g %s, want %.9g (solved with scaled moduli)", a.Key, c.end, c.got, a.Unit, c.want)
				}
			}
			if !(a.Least <= a.Value && a.Value <= a.Most) {
				t.Errorf("%s: %g %s lies outside its own range %g to %g", a.Key, a.Value, a.Unit, a.Least, a.Most)
			}
		}
	}
	if want := len(questions()); seen != want {
		t.Errorf("%d answers, want %d: the relieved foot has all", seen, want)
	}
}
