package eigen

import (
	"cmp"
	"fmt"
	"math"

	"archload/fem/sparse"
)

const (
	width       = sparse.Octet // vectors of a block
	spare       = 2 * width    // vectors kept beyond those wanted at a restart
	mostBlocks  = 4000         // steps before it counts as not converged
	leastRank   = 1e-11        // of a vector after orthogonalisation, relative to the largest theta
	firstBlocks = 4            // blocks after which the shift of a free body is judged
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

func newLanczos(p *Problem, o Options, room int) (*lanczos, error) {
	l := &lanczos{p: p, o: o,
		mass: p.M.Octets(o.Workers), alg: sparse.NewOctetAlgebra(p.K.Nodes(), o.Workers)}
	l.free = make([]bool, sparse.Block*p.K.Nodes())
	for i := range l.free {
		l.free[i] = true
	}
	for _, d := range p.Fixed {
		l.free[d] = false
	}
	for _, is := range l.free {
		if is {
			l.dofs++
		}
	}
	l.most = cmp.Or(room, (3*(o.Count+o.Free)+96)/width)
	l.v = make([]float64, (l.most+1)*l.alg.Len())
	l.mv, l.work = make([]float64, l.alg.Len()), make([]float64, l.alg.Len())
	l.t = make([]float64, l.most*width*l.most*width)
	if o.Free == 0 {
		return l, l.begin(0)
	}
	return l, l.beginFree()
}

// begin factorises K + shift M and makes the first block.
func (l *lanczos) begin(shift float64) error {
	k := l.p.K
	if shift != 0 {
		k = l.shifted(shift)
	}
	var err error
	if l.f == nil {
		if l.f, err = sparse.Factorize(k, l.p.Plan, l.o.Workers); err != nil {
			return err
		}
		l.solve = l.f.Octets()
	} else if err = l.f.Refactor(k); err != nil {
		return err
	}
	l.shift, l.size, l.seed, l.whole = shift, 0, 0, false
	clear(l.t)
	l.fresh()
	return nil
}

// beginFree chooses the shift of a free body: small beside its lowest elastic eigenvalue,
// so that the spectrum is well spread, but not so small that the rigid motions drown it.
func (l *lanczos) beginFree() error {
	shift := l.o.Scale
	if !(shift > 0) {
		shift = 1
	}
	for range 12 {
		if err := l.begin(shift); err != nil {
			return err
		}
		for range firstBlocks {
			l.step()
		}
		l.project()
		if len(l.ritz.theta) <= l.o.Free {
			return nil // smaller than a few blocks
		}
		lowest := l.ritz.value(l.o.Free)
		if lowest > 0.3*shift && lowest < 1e4*shift {
			return nil
		}
		if lowest > 0 {
			shift = lowest / 10
		} else {
			shift *= 1e-3
		}
	}
	return fmt.Errorf("eigen: no shift fits a body with %d free motions: lowest other eigenvalue %.3g", l.o.Free, l.ritz.value(l.o.Free))
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

// fresh appends a block of new start vectors, smoothed once by the operator and
// orthogonal to the basis.
func (l *lanczos) fresh() {
	w, z := l.octet(l.size), l.mv
	l.start(w, z)
	l.from = l.size
	l.orthogonalise(w, z)
	l.normalise(w, z, l.largest())
	l.size++
}

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

// step takes the last block of the basis through the operator and appends what is new
// in the result.
func (l *lanczos) step() {
	j := l.size - 1
	w := l.octet(l.size)
	copy(w, l.mv)
	l.solve.Solve(w)
	a := l.alg.Dots(l.mv, w)
	l.alg.Subtract(w, l.octet(j), a)
	if l.from < j {
		l.alg.Subtract(w, l.octets(l.from, j), l.coupling(l.from, j))
	}
	l.addDiagonal(j, a)
	l.addDiagonal(j, l.orthogonalise(w, l.mv))
	b := l.normalise(w, l.mv, l.largest())
	if l.size < l.most {
		l.setBelow(j, b)
	}
	l.ritz.below = b
	l.from = j
	l.size++
	l.steps++
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
