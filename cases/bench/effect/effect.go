package effect

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/bench/fit"
	"archload/cases/quantity"
	"archload/cases/study"
)

// Report is what measurements did to a design.
type Report struct {
	Format   int               `json:"format"`
	Units    string            `json:"units"`
	Case     string            `json:"case"`     // the design
	Wood     string            `json:"wood"`     // of its top by the bench file; "" without one
	Like     string            `json:"like"`     // the card that this piece was expected to be like; "" without one
	Answers  []Answer          `json:"answers"`  // those that got surer most first
	Gauges   []study.ReadGauge `json:"gauges"`   // that the case says were read under its load
	LeftOut  []string          `json:"left_out"` // readings that fit nothing, in words
	Cautions []string          `json:"cautions"`
}

// Answer is one number of the design, in its unit, with one standard deviation that the wood leaves open.
type Answer struct {
	Key    string       `json:"key"`
	Name   string       `json:"name"`
	Unit   string       `json:"unit"`
	Card   study.Ranged `json:"card"`   // by the wood that the case names
	Bench  study.Ranged `json:"bench"`  // by the bench file; null without one
	Gauges study.Ranged `json:"gauges"` // by the case's own gauges as well; null without any
	Surer  answer.Num   `json:"surer"`  // 1, how many times narrower its range has become
	Digits int          `json:"-"`
}

// Last is the number by all that was measured.
func (a *Answer) Last() study.Ranged {
	switch {
	case a.Gauges.SD.Known():
		return a.Gauges
	case a.Bench.SD.Known():
		return a.Bench
	}
	return a.Card
}

// Solved is a solved design with what its wood leaves open.
type Solved struct {
	Report *answer.Report
	Spread *study.Spread
}

// Of sets a design in the wood of its card beside the same design in a piece of the bench; without a piece (nil) both are the
// same. It returns nil if nothing was measured.
func Of(name string, piece *fit.Report, c *cases.Case, card, now Solved) *Report {
	told := now.Spread.Tell(now.Report)
	if piece == nil && told == nil {
		return nil
	}
	r := &Report{Format: cases.Format, Units: "mm, N, MPa, deg as each answer says; sd: one standard deviation", Case: name,
		Answers: []Answer{}, Gauges: []study.ReadGauge{}, LeftOut: []string{}, Cautions: []string{}}
	if piece != nil {
		r.Wood, r.Like, r.LeftOut = piece.Name, piece.Like, append(r.LeftOut, piece.LeftOut...)
		r.mind(piece, c)
	}
	if told != nil {
		r.Gauges = told.Gauges
		for _, g := range told.Gauges {
			if g.LeftOut {
				r.LeftOut = append(r.LeftOut, fmt.Sprintf("gauge %q, %.3g mm, fits neither the wood nor the other gauges", g.Name, float64(g.Measured)))
			}
		}
		r.Cautions = append(r.Cautions, "gauges of the case are taken as read under its whole load, off by half a hundredth of a millimetre and two percent; what they say is of first order")
	}
	none := study.Ranged{Value: answer.None(), SD: answer.None()}
	before := byKey(study.Answers(card.Report, card.Spread))
	for _, a := range study.Answers(now.Report, now.Spread) {
		one := Answer{Key: a.Key, Name: a.Name, Unit: a.Unit, Digits: a.Digits, Card: none, Bench: none, Gauges: none, Surer: answer.None()}
		if b, ok := before[a.Key]; ok {
			one.Card = study.Ranged{Value: b.Value, SD: b.Wood}
		}
		if piece != nil {
			one.Bench = study.Ranged{Value: a.Value, SD: a.Wood}
		}
		if told != nil {
			one.Gauges = told.Answer(quantity.Of(a.Key), a.Value)
		}
		if last := one.Last().SD; last > 0 && !a.Nought(one.Card.SD) {
			one.Surer = one.Card.SD / last
		}
		r.Answers = append(r.Answers, one)
	}
	slices.SortStableFunc(r.Answers, func(a, b Answer) int { return cmp.Compare(known(b.Surer), known(a.Surer)) })
	return r
}

// known puts what is not known last.
func known(v answer.Num) float64 {
	if !v.Known() {
		return math.Inf(-1)
	}
	return float64(v)
}

// byKey finds answers.
func byKey(list []study.Answer) map[string]study.Answer {
	out := map[string]study.Answer{}
	for _, a := range list {
		out[a.Key] = a
	}
	return out
}

// mind tells where piece and design do not go together.
func (r *Report) mind(piece *fit.Report, c *cases.Case) {
	card, err := c.Wood("plate.wood")
	if err != nil {
		return
	}
	if like, _ := startsFrom(c); card.Name != piece.Like && like != piece.Like && card.Name != piece.Name {
		r.Cautions = append(r.Cautions, fmt.Sprintf("the piece was expected to be like %s, and the design names %s", piece.Like, card.Name))
	}
	if !piece.Settled {
		r.Cautions = append(r.Cautions, "the fit of the bench file did not come to rest; see archload bench")
	}
}

// startsFrom is the card that the plate's own wood starts from.
func startsFrom(c *cases.Case) (string, bool) {
	own := c.Woods[c.Plate.Wood]
	if own == nil {
		return "", false
	}
	like, ok := own.Values["like"].(string)
	return like, ok
}
