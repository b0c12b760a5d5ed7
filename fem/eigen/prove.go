package eigen

import (
	"errors"
	"fmt"
	"math"

	"archload/fem/sparse"
)

const (
	unit      = 0x1p-53 // rounding of one operation
	sumFactor = 16      // rounding of a sum, as it turns out, in units
	mostNoise = 0.1     // of the distance of mu from the eigenvalues beside it
)

// count counts the eigenvalues below a bound in the gap; it tries bounds until one is safe
// from rounding. The factor's memory serves for this: the operator is gone afterwards.
func (l *lanczos) count() (Proof, error) {
	weight := l.weight()
	least := Proof{Noise: math.Inf(1)}
	a := l.p.K.Like()
	for _, at := range []float64{0.5, 0.35, 0.65, 0.2, 0.8, 0.43, 0.57} {
		mu := l.cut.lo + at*(l.cut.hi-l.cut.lo)
		a.SetSum(1, l.p.K, -mu, l.p.M)
		a.Fix(l.p.Fixed)
		if err := l.f.RefactorSigned(a); err != nil {
			var pivot *sparse.PivotError
			if errors.As(err, &pivot) {
				continue // an eigenvalue of a part of the body: bad luck
			}
			return least, err
		}
		p := Proof{Bound: mu, Count: l.f.Negative(), Growth: l.f.Growth(a)}
		p.Noise = sumFactor * unit * p.Growth * weight / min(mu-l.cut.lo, l.cut.hi-mu)
		if p.Noise <= mostNoise {
			return p, nil
		}
		if p.Noise < least.Noise {
			least = p
		}
	}
	return least, fmt.Errorf("eigen: no safe count between %.9g and %.9g: rounding %.2g of the gap, growth %.2g",
		l.cut.lo, l.cut.hi, least.Noise, least.Growth)
}

// weight returns the larger sum of |k_ii| x_i² of the two vectors beside the gap: how much
// a relative error of the diagonal's size moves their eigenvalues.
func (l *lanczos) weight() float64 {
	w := make([]float64, l.alg.Len())
	most := 0.0
	for _, i := range []int{l.cut.below - 1, l.cut.below} {
		if i >= len(l.ritz.theta) {
			continue
		}
		l.pairs(w, i)
		sum := 0.0
		for d := range w[:len(w)/width] {
			x := w[width*d]
			sum += math.Abs(l.p.K.Diagonal(d)) * x * x
		}
		most = max(most, sum)
	}
	return most
}

// modes collects the answer and computes the residuals anew.
func (l *lanczos) modes() *Modes {
	m := &Modes{Shift: l.shift, Blocks: l.steps, Restarts: l.thick}
	stiff, n := l.p.K.Octets(l.o.Workers), l.alg.Len()
	rest := make([]float64, (l.cut.below+width-1)/width*n)
	x, mx := make([]float64, n), make([]float64, n)
	for first := 0; first < l.cut.below; first += width {
		l.pairs(x, first)
		r := rest[first/width*n:][:n]
		stiff.MulTo(r, x)
		l.mass.MulTo(mx, x)
		count := min(width, l.cut.below-first)
		for i, v := range mx {
			if k := i % width; k < count {
				r[i] -= l.ritz.value(first+k) * v
			} else {
				r[i] = 0
			}
		}
		norms := l.alg.Dots(x, mx)
		for k := range count {
			m.Values = append(m.Values, l.ritz.value(first+k))
		}
		m.Vectors = append(m.Vectors, columns(x, norms, count)...)
	}
	l.solve.Solve(rest)
	for first := 0; first < l.cut.below; first += width {
		y := rest[first/width*n:][:n]
		l.mass.MulTo(mx, y)
		g := l.alg.Dots(y, mx)
		for k := range min(width, l.cut.below-first) {
			m.Residuals = append(m.Residuals, math.Sqrt(max(g[(width+1)*k], 0)))
		}
	}
	return m
}

// columns returns the first vectors of an octet, each over its norm; norms has their squares on its
// diagonal.
func columns(x, norms []float64, count int) [][]float64 {
	list := make([][]float64, count)
	var inverse [width]float64
	for k := range list {
		list[k] = make([]float64, len(x)/width)
		inverse[k] = 1 / math.Sqrt(norms[(width+1)*k])
	}
	for i := range len(x) / width {
		for k, v := range x[width*i:][:count] {
			list[k][i] = v * inverse[k]
		}
	}
	return list
}
