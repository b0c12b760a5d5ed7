package sparse

import "archload/fem/sparse/team"

// Octet is the number of vectors in an octet: vectors that stand side by side, value r
// of degree of freedom i at 8i+r. Eight of them pass through a factor, a matrix or a
// sum of products in hardly more time than one.
const Octet = panelRows

// chunkDofs is how many degrees of freedom of an octet are worked on at a time: whole
// nodes, an even number, 49 kB.
const chunkDofs = 768

// OctetSolver solves with octets; it keeps the memory for that. One goroutine may use
// it at a time.
type OctetSolver struct {
	f *Factor
	b *batch
}

// Octets returns a solver for octets.
func (f *Factor) Octets() *OctetSolver { return &OctetSolver{f: f, b: f.newBatch()} }

// Solve replaces the octets of x, one after the other, by K⁻¹ x; some together cost less
// than each alone. It panics if they are not whole.
func (s *OctetSolver) Solve(x []float64) {
	n := tileLen * s.f.a.n
	if len(x)%n != 0 {
		panic("sparse: Octets: want whole octets")
	}
	for len(x) > 0 {
		some := x[:min(len(x), n*batchEights)]
		s.solve(some, n)
		x = x[len(some):]
	}
}

// solve solves for octets of n values, few enough to pass through a front together.
func (s *OctetSolver) solve(x []float64, n int) {
	b := s.b
	b.spare, b.ys = append(b.spare, b.ys...), b.ys[:0]
	for lo := 0; lo < len(x); lo += n {
		y := b.eight()
		for p, v := range s.f.a.order {
			copy(y[tileLen*p:][:tileLen], x[lo+tileLen*int(v):])
		}
		b.ys = append(b.ys, y)
	}
	b.pass()
	for i, y := range b.ys {
		for p, v := range s.f.a.order {
			copy(x[n*i+tileLen*int(v):][:tileLen], y[tileLen*p:])
		}
	}
}

// OctetAlgebra does sums of products of octets of n degrees of freedom, shared between
// workers; results do not depend on their number. A basis is a slice of whole octets,
// one after the other.
type OctetAlgebra struct {
	kern kernels
	team *team.Team
	n    int
}

// NewOctetAlgebra prepares it for vectors of 6 values for each of some nodes.
func NewOctetAlgebra(nodes, workers int) *OctetAlgebra {
	return &OctetAlgebra{kern: fastKernels(), team: team.New(workers), n: Block * nodes}
}

// Len returns the number of values of an octet.
func (o *OctetAlgebra) Len() int { return panelRows * o.n }

// count returns the number of octets of a basis; it panics if they are not whole.
func (o *OctetAlgebra) count(v []float64) int {
	if len(v)%o.Len() != 0 {
		panic("sparse: OctetAlgebra: want whole octets")
	}
	return len(v) / o.Len()
}

// chunks calls do for each range of degrees of freedom.
func (o *OctetAlgebra) chunks(do func(k, lo, hi int)) {
	n := (o.n + chunkDofs - 1) / chunkDofs
	o.team.Each(n, func(k int) { do(k, chunkDofs*k, min(chunkDofs*(k+1), o.n)) })
}

// Dots returns the products of the vectors of basis v with those of the octet z:
// vector j of v with vector r of z at 8j+r.
func (o *OctetAlgebra) Dots(v, z []float64) []float64 {
	count := o.count(v)
	if count == 0 {
		return nil
	}
	rows := panelRows * count
	off := make([]int32, 0, rows/2+2)
	for p := range count {
		for q := range int32(panelRows / 2) {
			off = append(off, int32(p*o.Len())+2*q)
		}
	}
	for len(off)%3 != 0 {
		off = append(off, 0) // fills the last tile; not read
	}
	size := panelRows * 2 * len(off)
	parts := make([]float64, size*((o.n+chunkDofs-1)/chunkDofs))
	o.chunks(func(k, lo, hi int) {
		o.kern.Gemm(parts[k*size:(k+1)*size], z[panelRows*lo:panelRows*hi], v[panelRows*lo:], off)
	})
	h := make([]float64, panelRows*rows)
	for ; len(parts) > 0; parts = parts[size:] {
		for i, part := range parts[:len(h)] {
			h[i] -= part
		}
	}
	return h
}

// Subtract takes from the octet w the combination of the basis v with the coefficients
// h, which stand as Dots gives them.
func (o *OctetAlgebra) Subtract(w, v, h []float64) {
	count := o.count(v)
	if len(w) != o.Len() || len(h) != panelRows*panelRows*count {
		panic("sparse: Subtract: length mismatch")
	}
	if count == 0 {
		return
	}
	o.chunks(func(_, lo, hi int) {
		o.kern.GemmT(w[panelRows*lo:panelRows*hi], h, v[panelRows*lo:], o.Len())
	})
}

// Combine sets the octet w, not one of v, to the combination of v with h.
func (o *OctetAlgebra) Combine(w, v, h []float64) {
	minus := make([]float64, len(h))
	for i, x := range h {
		minus[i] = -x
	}
	clear(w)
	o.Subtract(w, v, minus)
}

// OctetProduct multiplies a matrix with octets. It holds a copy of the matrix in which the
// blocks of every row stand together, those above the diagonal too.
type OctetProduct struct {
	n    int
	kern kernels
	team *team.Team
	ptr  []int32   // first block of each row, len n+1
	col  []int32   // block column of each block
	val  []float64 // -1 times each block, as a panel of six rows: row r of column c at 8c+r
}

// Octets prepares products of m, as it is now, with octets, shared between workers.
func (m *Matrix) Octets(workers int) *OctetProduct {
	p := &OctetProduct{n: m.n, kern: fastKernels(), team: team.New(workers), ptr: make([]int32, m.n+1)}
	for i := range m.n {
		for _, j := range m.col[m.ptr[i]:m.ptr[i+1]] {
			p.ptr[i+1]++
			if int(j) != i {
				p.ptr[j+1]++
			}
		}
	}
	for i := range m.n {
		p.ptr[i+1] += p.ptr[i]
	}
	p.col, p.val = make([]int32, p.ptr[m.n]), make([]float64, tileLen*int(p.ptr[m.n]))
	next := append([]int32(nil), p.ptr...)
	put := func(i, j int32) []float64 {
		at := next[i]
		next[i]++
		p.col[at] = j
		return p.val[tileLen*int(at):][:tileLen]
	}
	for i := range int32(m.n) {
		for b := m.ptr[i]; b < m.ptr[i+1]; b++ {
			j, blk := m.col[b], m.val[int(b)*blockLen:][:blockLen]
			if j == i {
				packDiagonal(put(i, i), blk)
				continue
			}
			packBlock(put(i, j), put(j, i), blk)
		}
	}
	return p
}

// packBlock writes -1 times a block to one panel and its transpose to another.
func packBlock(dst, turned, blk []float64) {
	for r := range Block {
		for c, v := range blk[Block*r:][:Block] {
			dst[panelRows*c+r], turned[panelRows*r+c] = -v, -v
		}
	}
}

// packDiagonal does it for a diagonal block, of which the lower triangle is read.
func packDiagonal(dst, blk []float64) {
	for r := range Block {
		for c, v := range blk[Block*r:][:r+1] {
			dst[panelRows*c+r], dst[panelRows*r+c] = -v, -v
		}
	}
}

// rowNodes is how many rows of nodes one worker does at a time.
const rowNodes = 512

// nodeRows is where the three pairs of a node's rows begin in a panel of its own.
var nodeRows = []int32{0, 2, 4}

// MulTo sets the octet y to the matrix times the octet x. It panics if a length is wrong.
func (p *OctetProduct) MulTo(y, x []float64) {
	if n := tileLen * p.n; len(x) != n || len(y) != n {
		panic("sparse: OctetProduct: length mismatch")
	}
	p.team.Each((p.n+rowNodes-1)/rowNodes, func(k int) {
		for i := rowNodes * k; i < min(rowNodes*(k+1), p.n); i++ {
			to := y[tileLen*i:][:tileLen]
			clear(to)
			for b := p.ptr[i]; b < p.ptr[i+1]; b++ {
				p.kern.Gemm(to, x[tileLen*int(p.col[b]):][:tileLen], p.val[tileLen*int(b):], nodeRows)
			}
		}
	})
}
