package answer

import (
	"math"

	"archload/cases/body"
	"archload/cases/design"
	"archload/fem"
	"archload/mesh"
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

// GaugeReport is what a dial gauge and strain gauges would read.
type GaugeReport struct {
	Name         string     `json:"name"`
	X            float64    `json:"x"`
	Y            float64    `json:"y"`
	Sink         float64    `json:"sink"`
	Measured     Num        `json:"measured"`
	Displacement [3]float64 `json:"displacement"`
	FromRim      *float64   `json:"from_rim,omitempty"` // sink from the plane of the rim, mm; of a body alone
	Outer        inWood     `json:"outer"`
	Inner        inWood     `json:"inner"`
}

// ReadingAt is what a dial gauge and strain gauges would show at a place of
// the outer surface, with no name; inside is false beyond the plate's edge or
// over a hole, where nothing stands.
func ReadingAt(s *design.Solution, q mesh.Point) (r GaugeReport, inside bool) {
	at, inside := s.Top.Built.OnOuter(q)
	return reading(s, q, at), inside
}

// reading is ReadingAt at a place of the plan q whose place on the plate is known.
func reading(s *design.Solution, q mesh.Point, at fem.SurfacePoint) GaugeReport {
	u := s.Result.MoveAt(at)
	r := GaugeReport{X: q[0], Y: q[1], Sink: -u[2], Measured: None(), Displacement: u,
		Outer: stressAround(s, q, at, 1), Inner: stressAround(s, q, at, -1)}
	if s.Top.Built.Back != nil {
		sink := body.RimPlane(s).At(q) - u[2]
		r.FromRim = &sink
	}
	return r
}

// backReading is what a gauge under the back of a body would show.
func backReading(s *design.Solution, q mesh.Point) GaugeReport {
	at, _ := s.Top.Built.Back.OnOuter(q)
	u := s.Result.MoveAt(at)
	return GaugeReport{X: q[0], Y: q[1], Sink: -u[2], Measured: None(), Displacement: u,
		Outer: faceStress(s, int(at.Shell), 1), Inner: faceStress(s, int(at.Shell), -1)}
}

// gauges are the readings of the case's gauges.
func gauges(s *design.Solution) []GaugeReport {
	out := []GaugeReport{}
	for i := range s.Top.Built.Case.Gauges {
		g := &s.Top.Built.Case.Gauges[i]
		r, _ := ReadingAt(s, g.At)
		if g.On == "back" {
			r = backReading(s, g.At)
		}
		r.Name = g.Name
		if g.Measured != nil {
			r.Measured = Num(*g.Measured)
		}
		out = append(out, r)
	}
	return out
}
