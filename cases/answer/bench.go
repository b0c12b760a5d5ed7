package answer

import "math"

// BenchReport sets the gauges' readings against the computed sink: the one
// factor on every stiffness of the computation that would reconcile them.
type BenchReport struct {
	Readings  int `json:"readings"`
	Stiffness Num `json:"stiffness"` // 1, above 1: the top on the bench is stiffer than the computed one; null if the readings allow none
	Least     Num `json:"least"`     // 1, smallest factor that a single gauge asks for
	Most      Num `json:"most"`      // 1, greatest
	Off       Num `json:"off"`       // mm, root mean square of computed less measured
	Left      Num `json:"left"`      // mm, what of it is left with the factor
}

// Bench compares the gauges that carry a reading; nil without any.
//
// A top of stiffness k times the computed one sinks 1/k as far, so with the
// computed sinks s and the readings m the factor of least squares is
//
//	min over k of sum (s/k - m)²:   k = sum s² / sum s m
//
// It holds for a load that does not change the contact: with a relief under the
// foot it is an approximation.
func Bench(gauges []GaugeReport) *BenchReport {
	r := &BenchReport{Stiffness: None(), Least: None(), Most: None(), Left: None()}
	var ss, sm, off float64
	least, most := math.Inf(1), 0.0
	for _, g := range gauges {
		if !g.Measured.Known() {
			continue
		}
		m := float64(g.Measured)
		r.Readings++
		ss, sm, off = ss+g.Sink*g.Sink, sm+g.Sink*m, off+(g.Sink-m)*(g.Sink-m)
		if k := g.Sink / m; k > 0 {
			least, most = min(least, k), max(most, k)
		}
	}
	if r.Readings == 0 {
		return nil
	}
	n := float64(r.Readings)
	r.Off = Num(math.Sqrt(off / n))
	if sm <= 0 {
		return r
	}
	r.Stiffness, r.Least, r.Most = Num(ss/sm), Num(least), Num(most)
	left := 0.0
	for _, g := range gauges {
		if g.Measured.Known() {
			d := g.Sink*sm/ss - float64(g.Measured)
			left += d * d
		}
	}
	r.Left = Num(math.Sqrt(left / n))
	return r
}
