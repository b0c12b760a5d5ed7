package study

import (
	"math"

	"archload/cases/answer"
	"archload/cases/quantity"

	"gonum.org/v1/gonum/mat"
)

// Told is what the gauges that were read on a design say of its wood, and of its other answers. The constants of its planks
// are normal in units of their scatter, z, before anything is read with the mean 0 and the correlations C of their cards; a
// gauge that sinks s reads m = s exp(h z), h being what each constant does to ln s (FindSpread), with an error
// of variance n. Then
//
//	z = C Hᵀ S⁻¹ ln(m/s),   P = C - C Hᵀ S⁻¹ H C,   S = H C Hᵀ + N               (1)
//
// (R. E. Kalman, J. Basic Eng. 82 (1960) 35). It is of first order, about the answers as computed.
type Told struct {
	Gauges []ReadGauge

	sp   *Spread
	c, p *mat.SymDense // covariance of z before and after
	z    *mat.VecDense
}

// ReadGauge is one gauge that was read, mm.
type ReadGauge struct {
	Name     string     `json:"name"`
	Measured answer.Num `json:"measured"`
	Noise    answer.Num `json:"noise"` // by which the reading, and the computation that it is compared with, may be off, one standard deviation
	Before   Ranged     `json:"before"`
	After    Ranged     `json:"after"`
	LeftOut  bool       `json:"left_out"` // it fits neither the wood nor the other gauges
	index    int
}

// Ranged is a number with what the wood leaves open of it, one standard deviation; both in its unit.
type Ranged struct {
	Value answer.Num `json:"value"`
	SD    answer.Num `json:"sd"`
}

// How far a reading of a gauge and the computation may differ but for the wood, one standard deviation: half a hundredth of a
// millimetre and two percent, for the needle, the strings' tension and how the edge is held (common practice, no published
// source), besides the mesh.
const (
	gaugeNoise = 0.005
	gaugeShare = 0.02
)

// fitsNothing is how many standard deviations a gauge may be from what the wood and all other gauges say.
const fitsNothing = 4.0

// Tell takes the gauges of a report that were read; nil if none was.
func (sp *Spread) Tell(r *answer.Report) *Told {
	t := &Told{sp: sp}
	var rows [][]float64
	for i, g := range r.Gauges {
		if !g.Measured.Known() {
			continue
		}
		q := quantity.OfGauge(i, g.Name)
		one := ReadGauge{Name: g.Name, Measured: g.Measured, index: i, Before: Ranged{answer.Num(g.Sink), sp.wood(q)}, After: Ranged{answer.None(), answer.None()}}
		noise := math.Hypot(gaugeNoise, gaugeShare*float64(g.Measured))
		if m := sp.mesh(q); m.Known() {
			noise = math.Hypot(noise, float64(m))
		}
		one.Noise = answer.Num(noise)
		row := sp.logShifts(q)
		if row == nil || !(g.Measured > 0) || !(g.Sink > 0) {
			one.LeftOut = true
		}
		t.Gauges, rows = append(t.Gauges, one), append(rows, row)
	}
	if len(rows) == 0 {
		return nil
	}
	t.c = sp.correlations()
	for t.take(rows) {
	}
	for k := range t.Gauges {
		g := &t.Gauges[k]
		g.After = t.Answer(quantity.OfGauge(g.index, g.Name), g.Before.Value)
	}
	return t
}

// correlations are those of the constants that scatter.
func (sp *Spread) correlations() *mat.SymDense {
	of := sp.scattered()
	c := mat.NewSymDense(len(of), nil)
	for i := range of {
		c.SetSym(i, i, 1)
		for k := range i {
			c.SetSym(i, k, of[i].with(of[k]))
		}
	}
	return c
}

// logShifts are how far one standard deviation of each constant moves the logarithm of a number, to first order; nil for one
// that changes its sign on the way, or that cannot be had.
func (sp *Spread) logShifts(q quantity.Quantity) []float64 {
	base := float64(q.Get(sp.base))
	out := make([]float64, len(sp.each))
	for i, r := range sp.each {
		if r == nil {
			return nil
		}
		ratio := base / float64(q.Get(r))
		if !(ratio > 0) || math.IsInf(ratio, 0) {
			return nil
		}
		out[i] = math.Log(ratio)
	}
	return out
}

// take solves (1) for the gauges that are not left out. It returns true if the one that fits least fits nothing: that is left
// out now, and the others are to be taken again.
func (t *Told) take(rows [][]float64) bool {
	var of []int
	for k := range t.Gauges {
		if !t.Gauges[k].LeftOut {
			of = append(of, k)
		}
	}
	n := t.c.SymmetricDim()
	t.p, t.z = mat.NewSymDense(n, nil), mat.NewVecDense(n, nil)
	t.p.CopySym(t.c)
	if len(of) == 0 {
		return false
	}
	h, off, noise := mat.NewDense(len(of), n, nil), mat.NewVecDense(len(of), nil), make([]float64, len(of))
	for i, k := range of {
		g := &t.Gauges[k]
		h.SetRow(i, rows[k])
		off.SetVec(i, math.Log(float64(g.Measured/g.Before.Value)))
		noise[i] = float64(g.Noise / g.Measured)
	}
	var hc, hch mat.Dense
	hc.Mul(h, t.c)
	hch.Mul(&hc, h.T())
	s := mat.NewSymDense(len(of), nil)
	for i := range of {
		for j := range i + 1 {
			s.SetSym(i, j, hch.At(i, j))
		}
		s.SetSym(i, i, s.At(i, i)+noise[i]*noise[i])
	}
	var inverse mat.SymDense
	var ch mat.Cholesky
	if !ch.Factorize(s) || ch.InverseTo(&inverse) != nil { // of a sum that holds the gauges' own errors
		return false
	}
	// (S⁻¹e)ᵢ/√(S⁻¹)ᵢᵢ is how far reading i is from what all others say, in standard deviations of that.
	var se mat.VecDense
	se.MulVec(&inverse, off)
	worst, most := -1, fitsNothing
	for i, k := range of {
		if far := math.Abs(se.AtVec(i)) / math.Sqrt(inverse.At(i, i)); far > most {
			worst, most = k, far
		}
	}
	if worst >= 0 {
		t.Gauges[worst].LeftOut = true
		return true
	}
	t.z.MulVec(hc.T(), &se)
	var taken, sh mat.Dense
	sh.Mul(&inverse, &hc)
	taken.Mul(hc.T(), &sh)
	for i := range n {
		for j := range i + 1 {
			t.p.SetSym(i, j, t.c.At(i, j)-taken.At(i, j))
		}
	}
	return false
}

// Answer is a number of the design, computed as value, with its range by the wood as the gauges tell it.
func (t *Told) Answer(q quantity.Quantity, value answer.Num) Ranged {
	before := t.sp.wood(q)
	row := t.sp.logShifts(q)
	linear := row == nil
	if linear {
		row = t.sp.shifts(q)
	}
	h := mat.NewVecDense(len(row), row)
	was, is := mat.Inner(h, t.c, h), mat.Inner(h, t.p, h)
	narrower := math.Sqrt(math.Max(is, 0) / was)
	if was == 0 {
		narrower = 1
	}
	if linear {
		return Ranged{value + answer.Num(mat.Dot(h, t.z)), answer.Num(narrower) * before}
	}
	times := math.Exp(mat.Dot(h, t.z))
	return Ranged{value * answer.Num(times), answer.Num(narrower*times) * before}
}
