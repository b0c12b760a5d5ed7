package fit

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// belief is what is held of the unknowns: their mean and covariance, normal, and what the readings taken in so
// far have cost: minus twice the logarithm of their likelihood.
type belief struct {
	x    []float64
	p    []float64 // row-major
	cost float64
	far  float64 // sum of the squares of how far each reading was from what was expected, in standard deviations
	took []int   // of each reading so far: the tone it is taken for (0 where there is no choice), or leftOut
}

// leftOut stands for a reading that is taken for a slip.
const leftOut = -1

// newBelief holds what is known before anything is measured.
func newBelief(p *mat.SymDense) *belief {
	n := p.SymmetricDim()
	b := &belief{x: make([]float64, n), p: make([]float64, n*n)}
	for i := range n {
		for j := range n {
			b.p[n*i+j] = p.At(i, j)
		}
	}
	return b
}

// expects is the mean and the variance of a guess g, made for the unknowns at c.
func (b *belief) expects(g *guess, c []float64) (y, variance float64) {
	n := len(b.x)
	y = g.y
	for i, v := range g.row {
		if v == 0 {
			continue
		}
		y += v * (b.x[i] - c[i])
		sum := 0.0
		for j, w := range g.row {
			sum += b.p[n*i+j] * w
		}
		variance += v * sum
	}
	return y, variance
}

// taking is the belief with a reading more: value measured with the standard deviation sd, in the unit that
// stands for 1 in likelihoods. It is the linear update of a normal distribution (R. E. Kalman, J. Basic Eng.
// 82 (1960) 35).
func (b *belief) taking(g *guess, c []float64, value, sd, unit float64, as int) *belief {
	n := len(b.x)
	y, v := b.expects(g, c)
	s := v + sd*sd
	off := value - y
	out := &belief{x: append([]float64(nil), b.x...), p: append([]float64(nil), b.p...)}
	out.far = b.far + off*off/s
	out.cost = b.cost + off*off/s + math.Log(2*math.Pi*s/(unit*unit))
	out.took = append(append([]int(nil), b.took...), as)
	ph := make([]float64, n)
	for i := range n {
		for j, w := range g.row {
			ph[i] += b.p[n*i+j] * w
		}
	}
	for i := range n {
		out.x[i] += ph[i] / s * off
		for j := range n {
			out.p[n*i+j] -= ph[i] * ph[j] / s
		}
	}
	return out
}

// leaving is the belief with a reading more that is taken for a slip: it may lie anywhere.
func (b *belief) leaving() *belief {
	return &belief{x: b.x, p: b.p, cost: b.cost + slipCost, far: b.far, took: append(append([]int(nil), b.took...), leftOut)}
}

// A slip of the pen: one reading in fifty, anywhere within a factor of e either way.
var slipCost = -2 * math.Log(0.02/2)

// deviation is the standard deviation of unknown i.
func (b *belief) deviation(i int) float64 { return math.Sqrt(math.Max(b.p[len(b.x)*i+i], 0)) }
