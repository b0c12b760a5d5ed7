package aging

import (
	"math"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/materials"
)

// walk is the path of a design through the years.
type walk struct {
	path  []stage
	power float64 // n of the growth tⁿ
}

// report is the design at an age of the path.
func (w *walk) report(a Age) AgeReport {
	at := w.stageAt(a)
	left := materials.LastingShare(a.Years)
	r := at.told
	r.At, r.Years = a.Name, a.Years
	r.Error.Discretisation = answer.None()
	for k, to := range [numRead]*Range{&r.Sink, &r.Action, &r.GapLeft, &r.Middle, &r.Strength.Used} {
		*to = w.between(a, k)
	}
	if at.second {
		r.Linear = &LinearAge{}
		for k, to := range [numRead]*answer.Num{&r.Linear.Sink, &r.Linear.Action, &r.Linear.GapLeft, &r.Linear.Middle, &r.Linear.Used} {
			*to = answer.Num(at.linear[k])
		}
		r.Linear.Used /= answer.Num(left)
	}
	used := &r.Strength.Used
	r.Strength.Left = answer.Num(left)
	used.Low, used.Mid, used.High = used.Low/answer.Num(left), used.Mid/answer.Num(left), used.High/answer.Num(left)
	return r
}

// stageAt is the stage at an age that was asked for.
func (w *walk) stageAt(a Age) *stage {
	at := 0
	for i := range w.path {
		if w.path[i].isAt(a) {
			at = i
		}
	}
	return &w.path[at]
}

// numRead is how many numbers of a stage have a range.
const numRead = 5

// numbers reads them off a solution: sink, action, gap left, share of the middle, strength used; NaN without a
// bridge.
func numbers(s *design.Solution) [numRead]float64 {
	none := math.NaN()
	out := [numRead]float64{answer.Sink(s), none, none, none, float64(answer.Strength(s).Used)}
	if b := answer.BridgeNow(s); b != nil {
		out[1], out[2], out[3] = b.ActionChange, b.GapLeft, b.Share.Middle
	}
	return out
}

// between is number k at an age, with the least and the greatest that less and more creep make of it.
func (w *walk) between(a Age, k int) Range {
	at := func(share float64) float64 { return w.read(a.Years*math.Pow(share, 1/w.power), k) }
	less, mid, more := at(materials.LeastCreep), at(1), at(materials.MostCreep)
	return Range{Low: answer.Num(min(less, mid, more)), Mid: answer.Num(mid), High: answer.Num(max(less, mid, more))}
}

// read is number k at an age; between two stages it is taken as straight in tⁿ.
func (w *walk) read(years float64, k int) float64 {
	i := 1
	for i < len(w.path)-1 && w.path[i].years < years*(1-1e-12) {
		i++
	}
	p, q := &w.path[i-1], &w.path[i]
	a, b := math.Pow(p.years, w.power), math.Pow(q.years, w.power)
	s := (math.Pow(years, w.power) - a) / (b - a)
	if math.Abs(s-1) < 1e-9 {
		s = 1 // to the last bit, also beside what is not known
	}
	return (1-s)*p.read[k] + s*q.read[k]
}
