package sparse

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
func (f *Factor) Octets() *OctetSolver {
	b := f.newBatch()
	b.ys = [][]float64{make([]float64, panelRows*Block*f.a.n)}
	return &OctetSolver{f: f, b: b}
}

// Solve replaces the octet x by K⁻¹ x. It panics if the length is wrong.
func (s *OctetSolver) Solve(x []float64) {
	y := s.b.ys[0]
	if len(x) != len(y) {
		panic("sparse: Octets: length mismatch")
	}
	for p, v := range s.f.a.order {
		copy(y[tileLen*p:][:tileLen], x[tileLen*int(v):])
	}
	s.b.pass()
	for p, v := range s.f.a.order {
		copy(x[tileLen*int(v):][:tileLen], y[tileLen*p:])
	}
}

// OctetAlgebra does sums of products of octets of n degrees of freedom, shared between
// workers; results do not depend on their number. A basis is a slice of whole octets,
// one after the other.
type OctetAlgebra struct {
	kern kernels
	team *team
	n    int
}

// NewOctetAlgebra prepares it for vectors of 6 values for each of some nodes.
func NewOctetAlgebra(nodes, workers int) *OctetAlgebra {
	return &OctetAlgebra{kern: fastKernels(), team: newTeam(workers), n: Block * nodes}
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
	o.team.each(n, func(k int) { do(k, chunkDofs*k, min(chunkDofs*(k+1), o.n)) })
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
		o.kern.gemm(parts[k*size:(k+1)*size], z[panelRows*lo:panelRows*hi], v[panelRows*lo:], off)
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
		o.kern.gemmt(w[panelRows*lo:panelRows*hi], h, v[panelRows*lo:], o.Len())
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

// OctetProduct multiplies a matrix with octets.
type OctetProduct struct {
	m    *Matrix
	kern kernels
	team *team
	ptr  []int32 // of each node: its range in below
	down []int32 // blocks below the diagonal in the node's column
	row  []int32 // and their rows
	most int     // blocks of a full row
}

// Octets prepares products of m with octets, shared between workers. Values of m may
// change afterwards; they must not while a product runs.
func (m *Matrix) Octets(workers int) *OctetProduct {
	p := &OctetProduct{m: m, kern: fastKernels(), team: newTeam(workers), ptr: make([]int32, m.n+1)}
	for i := range m.n {
		for _, j := range m.col[m.ptr[i] : m.ptr[i+1]-1] {
			p.ptr[j+1]++
		}
	}
	for i := range m.n {
		p.ptr[i+1] += p.ptr[i]
	}
	next := append([]int32(nil), p.ptr...)
	p.down, p.row = make([]int32, p.ptr[m.n]), make([]int32, p.ptr[m.n])
	for i := range m.n {
		for b := m.ptr[i]; b < m.ptr[i+1]-1; b++ {
			at := &next[m.col[b]]
			p.down[*at], p.row[*at] = b, int32(i)
			*at++
		}
	}
	for i := range m.n {
		p.most = max(p.most, int(m.ptr[i+1]-m.ptr[i]+p.ptr[i+1]-p.ptr[i]))
	}
	return p
}

// rowNodes is how many rows of nodes one worker does at a time.
const rowNodes = 512

// MulTo sets the octet y to m x, x another octet. It panics if a length is wrong.
func (p *OctetProduct) MulTo(y, x []float64) {
	if n := tileLen * p.m.n; len(x) != n || len(y) != n {
		panic("sparse: OctetProduct: length mismatch")
	}
	p.team.each((p.m.n+rowNodes-1)/rowNodes, func(k int) {
		tiles, panel := make([]float64, tileLen*p.most), make([]float64, tileLen*p.most)
		for i := rowNodes * k; i < min(rowNodes*(k+1), p.m.n); i++ {
			p.row6(y, x, i, tiles, panel)
		}
	})
}

// row6 does the six rows of node i: it gathers the tiles of x that they meet, and
// their negative coefficients as a panel.
func (p *OctetProduct) row6(y, x []float64, i int, tiles, panel []float64) {
	m, at := p.m, 0
	next := func(j int) []float64 {
		copy(tiles[at:][:tileLen], x[tileLen*j:])
		at += tileLen
		return panel[at-tileLen:][:tileLen]
	}
	last := m.ptr[i+1] - 1
	for b := m.ptr[i]; b < last; b++ {
		to, blk := next(int(m.col[b])), m.val[int(b)*blockLen:][:blockLen]
		for c := range Block {
			for r, dst := 0, to[panelRows*c:][:Block]; r < Block; r++ {
				dst[r] = -blk[Block*r+c]
			}
		}
	}
	for k := p.ptr[i]; k < p.ptr[i+1]; k++ {
		to, blk := next(int(p.row[k])), m.val[int(p.down[k])*blockLen:][:blockLen]
		for c := range Block {
			dst := to[panelRows*c:][:Block]
			for r, v := range blk[Block*c:][:Block] {
				dst[r] = -v
			}
		}
	}
	to, blk := next(i), m.val[int(last)*blockLen:][:blockLen]
	for c := range Block {
		for r := range Block {
			to[panelRows*c+r] = -blk[Block*max(r, c)+min(r, c)]
		}
	}
	p.kern.gemm0(y[tileLen*i:][:tileLen], tiles[:at], panel, nodeRows)
}

// nodeRows is where the three pairs of a node's rows begin in a panel of its own.
var nodeRows = []int32{0, 2, 4}
