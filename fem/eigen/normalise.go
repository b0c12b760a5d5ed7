package eigen

import "math"

// normalise makes the octet w, with z = M w, M-orthonormal: w = q b, q in its place and
// M q in that of z; b is upper triangular (Cholesky's factor of wᵀ M w, twice where w is
// nearly dependent). A vector that is nothing beside the size given is replaced by a new
// one that does not couple: its row of b is zero.
func (l *lanczos) normalise(w, z []float64, size float64) *[width][width]float64 {
	b := &[width][width]float64{}
	for r := range width {
		b[r][r] = 1
	}
	for round := range 6 {
		g := l.alg.Dots(w, z)
		r, lost, poor := triangle(g, leastRank*size)
		l.divide(w, z, r)
		multiply(b, r)
		for k, is := range lost {
			if is {
				b[k] = [width]float64{}
			}
		}
		if lost != [width]bool{} {
			if l.whole {
				return b
			}
			l.whole = l.exhausted(lost) || round == mostReplaced
			l.replace(w, z, lost)
			continue
		}
		if !poor {
			break
		}
		l.mass.MulTo(z, w)
	}
	return b
}

// mostReplaced is how often lost vectors are replaced before the basis counts as whole:
// M may have a lower rank than there are freedoms.
const mostReplaced = 2

// exhausted reports whether basis and block without the lost vectors have as many as there
// are freedoms.
func (l *lanczos) exhausted(lost [width]bool) bool {
	n := width * l.size
	for _, is := range lost {
		if !is {
			n++
		}
	}
	return n >= l.dofs
}

// poorRank is the least share of a vector that may be new in its block before the
// triangle is computed again, squared.
const poorRank = 1e-6

// triangle returns the upper triangular factor of the 8 x 8 matrix g = rᵀ r. Vectors of norm
// at most least are lost; poor says that cancellation cost digits.
func triangle(g []float64, least float64) (r [width][width]float64, lost [width]bool, poor bool) {
	for j := range width {
		d := g[width*j+j]
		for k := range j {
			d -= r[k][j] * r[k][j]
		}
		if !(d > least*least) || !(d > 1e-24*g[width*j+j]) {
			lost[j], r[j][j] = true, 1
			continue
		}
		poor = poor || d < poorRank*g[width*j+j]
		r[j][j] = math.Sqrt(d)
		for c := j + 1; c < width; c++ {
			s := (g[width*j+c] + g[width*c+j]) / 2
			for k := range j {
				s -= r[k][j] * r[k][c]
			}
			r[j][c] = s / r[j][j]
		}
	}
	return r, lost, poor
}

// divide multiplies w and z by the inverse of r from the right.
func (l *lanczos) divide(w, z []float64, r [width][width]float64) {
	inv := make([]float64, width*width)
	for c := range width {
		for i := c; i >= 0; i-- {
			s := 0.0
			if i == c {
				s = 1
			}
			for k := i + 1; k <= c; k++ {
				s -= r[i][k] * inv[width*k+c]
			}
			inv[width*i+c] = s / r[i][i]
		}
	}
	for _, x := range [][]float64{w, z} {
		copy(l.work, x)
		l.alg.Combine(x, l.work, inv)
	}
}

// multiply sets b to r b.
func multiply(b *[width][width]float64, r [width][width]float64) {
	var c [width][width]float64
	for i := range width {
		for k := i; k < width; k++ {
			for j := range width {
				c[i][j] += r[i][k] * b[k][j]
			}
		}
	}
	*b = c
}

// replace puts new vectors, orthogonal to the basis, in the place of lost ones; zeros when
// the basis is whole.
func (l *lanczos) replace(w, z []float64, lost [width]bool) {
	fresh := l.work
	l.start(fresh, z)
	for i := range w {
		if lost[i%width] {
			w[i] = fresh[i]
			if l.whole {
				w[i] = 0
			}
		}
	}
	l.orthogonalise(w, z)
}
