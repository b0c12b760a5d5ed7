package study

import (
	"cmp"
	"math"
	"slices"

	"archload/cases/answer"
	"archload/cases/quantity"
	"archload/materials"
)

// WoodChange says which constants make the difference between a design and the first where
// a plank of one role is of another wood.
type WoodChange struct {
	Case      string     `json:"case"`
	Role      string     `json:"role"` // "top"
	From      string     `json:"from"` // the first design's wood
	To        string     `json:"to"`
	Key       string     `json:"key"` // of the quantity: bridge_sink, or most_sunk without a bridge
	Constants []Deciding `json:"constants"`
}

// Deciding is what one constant contributes.
type Deciding struct {
	Constant string  `json:"constant"`
	From     float64 `json:"from"` // in the card's unit
	To       float64 `json:"to"`
	Adds     float64 `json:"adds"` // to the quantity, in its unit, to first order in the logarithm
	Scatter  float64 `json:"scatter"`
	Source   string  `json:"source"` // of the second wood's value, with its mark
}

// woodChanges finds the planks in which designs differ from the first, and what each
// constant adds: how far the number moves as the constant of the first design grows by its
// scatter, times how much more the other wood has of it, in logarithms. Constants that add
// less than a twentieth of the greatest are left out.
func woodChanges(names []string, spreads []*Spread) []WoodChange {
	out := []WoodChange{}
	first := spreads[0]
	q := quantity.Of("bridge_sink")
	if !q.Get(first.base).Known() {
		q = quantity.Of("most_sunk")
	}
	shifts := first.shifts(q)
	for k, sp := range spreads[1:] {
		for i, p := range first.planks {
			j := slices.IndexFunc(sp.planks, func(o plank) bool { return o.role == p.role })
			if j < 0 || sp.planks[j].same(p) {
				continue
			}
			w := WoodChange{Case: names[k+1], Role: p.role, From: p.card.Name, To: sp.planks[j].card.Name, Key: q.Key}
			for n, c := range first.constants {
				if c.plank == i {
					w.add(c, shifts[n], p.card, sp.planks[j].card)
				}
			}
			w.rank()
			out = append(out, w)
		}
	}
	return out
}

// add puts in one constant, if it moves the number.
func (w *WoodChange) add(c constant, shift float64, from, to materials.Card) {
	a, _ := entryOf(from, c.key)
	b, source := entryOf(to, c.key)
	if !(a > 0) || !(b > 0) || math.IsNaN(shift) {
		return
	}
	w.Constants = append(w.Constants, Deciding{Constant: c.key, From: a, To: b, Adds: shift * math.Log(b/a) / logDeviation(c.cv), Scatter: c.cv, Source: source.Words()})
}

// rank puts the greatest first and leaves out what hardly counts.
func (w *WoodChange) rank() {
	slices.SortStableFunc(w.Constants, func(a, b Deciding) int { return cmp.Compare(math.Abs(b.Adds), math.Abs(a.Adds)) })
	w.Constants = slices.DeleteFunc(w.Constants, func(d Deciding) bool { return math.Abs(d.Adds) <= math.Abs(w.Constants[0].Adds)/20 })
	if w.Constants == nil {
		w.Constants = []Deciding{}
	}
}

// entryOf is a number of a card and its source.
func entryOf(c materials.Card, key string) (float64, materials.Source) {
	for _, e := range c.Entries() {
		if e.Key == key {
			return e.Value, e.Source
		}
	}
	return float64(answer.None()), materials.Source{}
}
