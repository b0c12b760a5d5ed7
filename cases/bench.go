package cases

import (
	"fmt"
	"math"
	"strings"

	"archload/materials"
)

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

// bench compares the gauges that carry a reading; nil without any.
//
// A top of stiffness k times the computed one sinks 1/k as far, so with the
// computed sinks s and the readings m the factor of least squares is
//
//	min over k of sum (s/k - m)²:   k = sum s² / sum s m
//
// It holds for a load that does not change the contact: with a relief under the
// foot it is an approximation.
func bench(gauges []GaugeReport) *BenchReport {
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

// say prints the comparison and how far it reaches.
func (r *BenchReport) say(b *strings.Builder) {
	if r == nil {
		return
	}
	if !r.Stiffness.Known() {
		line(b, "against the bench", "no stiffness reconciles %s: they go against the computed sink; look at signs, zero and load", r.count())
		return
	}
	k := float64(r.Stiffness)
	text := fmt.Sprintf("%s would agree if every stiffness were %.2f times the computed", r.count(), k)
	if r.Readings > 1 {
		text += fmt.Sprintf("; off by %.3f mm before, %.3f after (single gauges ask for %.2f to %.2f)", float64(r.Off), float64(r.Left), float64(r.Least), float64(r.Most))
	}
	line(b, "against the bench", "%s", text)
	if math.Abs(math.Log(k)) > 2*materials.StiffnessScatter {
		b.WriteString("  That is more than boards differ (22 %): look first at the load, the thickness and the gauge's foot.\n")
	}
	if r.Readings == 1 {
		b.WriteString("  One reading is one reading: it cannot tell stiff wood from a wrong load or a gauge that slipped.\n" +
			"  Read it again, and at other places, before a number is changed for it.\n")
		return
	}
	b.WriteString("  A factor that fits one top under one load is not yet a property of the wood: load it another way,\n" +
		"  read again, and see whether the same factor serves.\n")
}

func (r *BenchReport) count() string {
	if r.Readings == 1 {
		return "the one reading"
	}
	return fmt.Sprintf("the %d readings", r.Readings)
}
