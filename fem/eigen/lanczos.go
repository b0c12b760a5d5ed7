package eigen

import (
	"math"

	"archload/fem/sparse"
)

// Limits of the search.
const (
	spare       = 2 * width // vectors kept beyond those wanted at a restart
	mostBlocks  = 4000      // steps before it counts as not converged
	leastRank   = 1e-11     // of a vector after orthogonalisation, relative to the largest theta
	firstBlocks = 4         // blocks after which the shift of a free body is judged
)

// lanczos is the state of the search: the M-orthonormal basis v of some octets, the last of
// which is still to be taken through the operator, and the projection t of the operator.
type lanczos struct {
	p     *Problem
	o     Options
	shift float64
	f     *sparse.Factor
	solve *sparse.OctetSolver
	mass  *sparse.OctetProduct
	alg   *sparse.OctetAlgebra
	free  []bool // freedoms that are not fixed
	dofs  int    // number of these

	v     []float64 // basis, room for most+1 octets
	size  int       // octets of the basis, the last included
	mv    []float64 // M times the last octet
	work  []float64 // an octet
	t     []float64 // projection, row-major, most*width wide
	from  int       // first octet that the last one couples with
	most  int       // octets of a full basis
	seed  uint64
	steps int
	thick int  // restarts
	whole bool // the basis spans all there is

	ritz ritz
	cut  cut
}

// shifted returns K + s M with the fixed freedoms as in K.
func (l *lanczos) shifted(s float64) *sparse.Matrix {
	a := l.p.K.Like()
	a.SetSum(1, l.p.K, s, l.p.M)
	a.Fix(l.p.Fixed)
	return a
}

// octet returns octet k of the basis.
func (l *lanczos) octet(k int) []float64 { return l.v[k*l.alg.Len():][:l.alg.Len()] }

// octets returns octets lo..hi of the basis.
func (l *lanczos) octets(lo, hi int) []float64 { return l.v[lo*l.alg.Len() : hi*l.alg.Len()] }

// start sets w to the operator times vectors of M-norm 1 from a fixed sequence; z is work
// space.
func (l *lanczos) start(w, z []float64) {
	l.random(w)
	l.mass.MulTo(z, w)
	g := l.alg.Dots(w, z)
	copy(w, z)
	l.solve.Solve(w)
	for i := range w {
		if n := g[(width+1)*(i%width)]; n > 0 {
			w[i] /= math.Sqrt(n)
		}
	}
}

// largest returns the largest entry on the diagonal of the projection: the size of the
// largest theta.
func (l *lanczos) largest() float64 {
	most := 0.0
	for i := range width * min(l.size, l.most) {
		most = max(most, math.Abs(l.at(i, i)))
	}
	return most
}

// random fills an octet from a fixed sequence in (-1, 1), zero on the fixed freedoms:
// SplitMix64 (G. L. Steele, D. Lea, C. H. Flood, 2014; from memory).
func (l *lanczos) random(w []float64) {
	for i := range w {
		l.seed += 0x9e3779b97f4a7c15
		if !l.free[i/width] {
			w[i] = 0
			continue
		}
		x := l.seed
		x = (x ^ x>>30) * 0xbf58476d1ce4e5b9
		x = (x ^ x>>27) * 0x94d049bb133111eb
		x ^= x >> 31
		w[i] = float64(int64(x)>>11) / (1 << 52)
	}
}

// at returns an entry of the projection.
func (l *lanczos) at(i, k int) float64 { return l.t[i*width*l.most+k] }

func (l *lanczos) set(i, k int, v float64) {
	l.t[i*width*l.most+k], l.t[k*width*l.most+i] = v, v
}

// coupling returns the coefficients of octets lo..j of the operator times octet j.
func (l *lanczos) coupling(lo, j int) []float64 {
	h := make([]float64, 0, width*width*(j-lo))
	for i := width * lo; i < width*j; i++ {
		for r := range width {
			h = append(h, l.at(i, width*j+r))
		}
	}
	return h
}

// addDiagonal adds a, made symmetric, to the diagonal block of octet j.
func (l *lanczos) addDiagonal(j int, a []float64) {
	for r := range width {
		for c := range r + 1 {
			i, k := width*j+r, width*j+c
			l.set(i, k, l.at(i, k)+(a[width*r+c]+a[width*c+r])/2)
		}
	}
}

// setBelow sets the block that couples octet j with the next.
func (l *lanczos) setBelow(j int, b *[width][width]float64) {
	for r := range width {
		for c := range width {
			l.set(width*(j+1)+r, width*j+c, b[r][c])
		}
	}
}

// orthogonalise makes w M-orthogonal to the whole basis, in a second pass if the first
// takes much off, and returns the coefficients of the last octet. It leaves M w in z.
func (l *lanczos) orthogonalise(w, z []float64) []float64 {
	last := make([]float64, width*width)
	if l.size == 0 {
		l.mass.MulTo(z, w)
		return last
	}
	basis := l.octets(0, l.size)
	for pass := 0; ; pass++ {
		l.mass.MulTo(z, w)
		h := l.alg.Dots(basis, z)
		norms := l.alg.Dots(w, z)
		share := taken(h, norms)
		if pass > 0 && share < takenNothing || pass == mostPasses {
			return last
		}
		l.alg.Subtract(w, basis, h)
		for i, v := range h[len(h)-width*width:] {
			last[i] += v
		}
		if share < takenLittle {
			l.mass.MulTo(z, w)
			return last
		}
	}
}

// mostPasses is how often a basis is taken off a block.
const mostPasses = 4

// takenNothing is the share of a norm squared below which nothing is left to take off.
const takenNothing = 1e-28

// takenLittle is the share of a vector's norm squared that may be taken off in the last
// pass of an orthogonalisation: what is left is then orthogonal to some 1e-15.
const takenLittle = 0.01

// taken returns the largest share of norm squared that the coefficients take off.
func taken(h, norms []float64) float64 {
	most := 0.0
	for r := range width {
		off := 0.0
		for i := r; i < len(h); i += width {
			off += h[i] * h[i]
		}
		if n := norms[width*r+r]; off > 0 {
			most = max(most, off/n)
		}
	}
	return most
}
