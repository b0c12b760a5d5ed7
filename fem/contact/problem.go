package contact

import (
	"fmt"
	"slices"

	"gonum.org/v1/gonum/blas/gonum"

	"archload/fem/parallel"
	"archload/fem/sparse"
)

// Problem is a body on a condensed plate: everything but the gaps and the
// load is settled, so that other gaps or loads cost only Follow.
type Problem struct {
	plate *Condensed
	frame *frame
	per   int             // rows of a pad
	cols  []sparse.Column // of the body, one for each row
	r     [][6]float64    // rigid motion of each row, about the body's first node
	a     []float64       // C + F + bedding, row-major
}

// Problem puts a body on the plate. Grip has no guides: it holds the body sideways.
func (c *Condensed) Problem(b *Body) (*Problem, error) {
	nodes, err := c.bearing(b)
	if err != nil {
		return nil, err
	}
	f, err := newFrame(b, nodes, c.workers())
	if err != nil {
		return nil, err
	}
	s := &Problem{plate: c, frame: f, per: c.hold.rows()}
	for i := range c.pads {
		p := &c.pads[i]
		for a := range s.per {
			s.addRow(p.Node, ArmRow(b.Nodes[p.Node], p.At, p.Dir[a]), ArmRow(b.Nodes[0], p.At, p.Dir[a]))
		}
	}
	if c.hold.guided() {
		for i := range b.Guides {
			g := &b.Guides[i]
			s.addRow(g.Node, g.row(b.Nodes[g.Node]), g.row(b.Nodes[0]))
		}
	}
	s.sum(nodes)
	return s, nil
}

// bearing lists the body's nodes that carry a pad or a guide, the held one left out.
func (c *Condensed) bearing(b *Body) ([]int32, error) {
	var nodes []int32
	for i := range c.pads {
		p := &c.pads[i]
		if p.Node < 0 || int(p.Node) >= len(b.Nodes) {
			return nil, fmt.Errorf("body: pad %d hangs on node %d of %d", i, p.Node, len(b.Nodes))
		}
		nodes = append(nodes, p.Node)
	}
	if c.hold.guided() {
		for i := range b.Guides {
			nodes = append(nodes, b.Guides[i].Node)
		}
	}
	slices.Sort(nodes)
	nodes = slices.Compact(nodes)
	if len(nodes) > 0 && nodes[0] == 0 {
		nodes = nodes[1:]
	}
	return nodes, nil
}

func (s *Problem) addRow(node int32, row, rigid [6]float64) {
	s.cols = append(s.cols, s.frame.column(node, row))
	s.r = append(s.r, rigid)
}

// sum sets up C + F + bedding. The body's flexibility F between two rows is that
// between their nodes, turned by their arms.
func (s *Problem) sum(nodes []int32) {
	n := len(s.cols)
	s.a = make([]float64, n*n)
	f := s.arms(nodes)
	workers := s.plate.workers()
	parallel.Chunks(workers, n, blockRows, func(from, to int) {
		move := make([]float64, f.dofs)
		for k := from; k < to; k++ {
			s.sumRow(n-1-k, f, move) // the long rows first
		}
	})
	parallel.Chunks(workers, n, mirrorRows, func(lo, hi int) {
		for j0 := lo; j0 < n; j0 += lineLen { // columns of a block above the diagonal
			j1 := min(j0+lineLen, n)
			for i := lo; i < min(hi, j1); i++ {
				for j := max(j0, i+1); j < j1; j++ {
					s.a[i*n+j] = s.a[j*n+i]
				}
			}
		}
	})
}

// mirrorRows is how many rows one worker mirrors at a time, lineLen how many columns: what a line of the cache holds.
const (
	mirrorRows = 64
	lineLen    = 8
)

// blockRows is how many rows of the compliance are summed by one worker at a time.
const blockRows = 16

// arms are the rows as they hang on the body's nodes.
type arms struct {
	g    []float64    // flexibility between the nodes' freedoms
	dofs int          // its size
	at   []int        // of each row: its node's first freedom in g
	row  [][6]float64 // zero on the held node
	far  []int        // of each row: beyond the freedoms of the rows up to it
	next []int        // of each row: the next one that hangs on another node
}

func (s *Problem) arms(nodes []int32) arms {
	f := arms{g: s.frame.flexibility(nodes), dofs: 6 * len(nodes), at: make([]int, len(s.cols)), row: make([][6]float64, len(s.cols))}
	place := make([]int, len(s.frame.body.Nodes))
	for k, node := range nodes {
		place[node] = 6 * k
	}
	for i, c := range s.cols {
		if len(c.Dofs) > 0 {
			f.at[i], f.row[i] = place[c.Dofs[0]/6], [6]float64(c.Vals)
		}
	}
	f.far, f.next = make([]int, len(f.at)), make([]int, len(f.at))
	for i, at := range f.at {
		f.far[i] = max(f.far[max(i-1, 0)], at+6)
	}
	for i := len(f.at) - 1; i >= 0; i-- {
		if f.next[i] = i + 1; i+1 < len(f.at) && f.at[i+1] == f.at[i] {
			f.next[i] = f.next[i+1]
		}
	}
	return f
}

// sumRow sums row i up to the diagonal; it works in move.
func (s *Problem) sumRow(i int, f arms, move []float64) {
	n, m := len(s.cols), len(s.plate.cols)
	ai := s.a[i*n : i*n+i+1]
	if i < m {
		copy(ai, s.plate.c[i*m:])
	}
	if i < s.plate.padRows() {
		bed := s.plate.pads[i/s.per].Bedding
		if i%s.per == 0 {
			ai[i] += bed[0]
		} else {
			ai[i] += bed[1]
		}
	}
	if f.dofs == 0 {
		return // all on the held node
	}
	var bl gonum.Implementation
	far := f.far[i]
	clear(move[:far]) // of the nodes under a unit force on the row
	for k, v := range f.row[i] {
		bl.Daxpy(far, v, f.g[(f.at[i]+k)*f.dofs:], 1, move, 1)
	}
	for from := 0; from < len(ai); from = f.next[from] { // rows on one node
		to := min(f.next[from], len(ai))
		u, rows := (*[6]float64)(move[f.at[from]:]), f.row[from:to]
		u0, u1, u2, u3, u4, u5 := u[0], u[1], u[2], u[3], u[4], u[5]
		for j, a := range ai[from:to] {
			v := &rows[j]
			ai[from+j] = a + ((u0*v[0] + u1*v[1]) + (u2*v[2] + u3*v[3]) + (u4*v[4] + u5*v[5]))
		}
	}
}

// Follow raises string load and plate loads together from nothing to full.
func (s *Problem) Follow(fit LoadCase) (*State, error) {
	if s.plate.hold == Rough {
		return s.followRough(fit)
	}
	return s.lcp(fit).trace()
}

// workers is the number of workers that the plate was prepared by.
func (c *Condensed) workers() int {
	if c.plate == nil || c.plate.Factor == nil {
		return 1
	}
	return c.plate.Factor.Workers()
}

// bodyUnder is the body under the loads of a load case.
func (s *Problem) bodyUnder(fit LoadCase) *Body {
	if fit.Loads == nil {
		return s.frame.body
	}
	b := *s.frame.body
	b.Loads = fit.Loads
	return &b
}

func (s *Problem) lcp(fit LoadCase) *lcp {
	body := s.frame.body
	if fit.Loads != nil {
		b := *body
		b.Loads = fit.Loads
		body = &b
	}
	fr := frame{body: body, factor: s.frame.factor}
	load, rigid := fr.loadVector()
	u := append([]float64(nil), load...)
	s.frame.factor.Solve(u)
	p := &lcp{a: s.a, r: s.r, f: rigid, gap: fit.Gap, order: fit.Order, likely: fit.Likely, history: fit.History, tolerance: fit.Tolerance, pads: len(s.plate.pads), per: s.per, workers: s.plate.workers(), idle: s.plate.idle,
		b: make([]float64, len(s.cols)), self: s.plate.loadE}
	for i, f := range load {
		p.self += f * u[i]
	}
	for i := range p.b {
		p.b[i] = dotColumn(s.cols[i], u)
		if i < len(s.plate.loadAt) {
			p.b[i] -= s.plate.loadAt[i]
		}
	}
	p.setSlack(s, rigid)
	return p
}

// setSlack prepares the slack body's rest: lowered straight down, with the
// push along the plate taken at the guides (slip) or in the bearing area (grip, friction).
func (p *lcp) setSlack(s *Problem, rigid [6]float64) {
	o := s.frame.body.Nodes[0]
	level := 0.0
	for i := range s.plate.pads {
		pad := &s.plate.pads[i]
		p.plane = append(p.plane, [3]float64{1, pad.At[1] - o[1], -(pad.At[0] - o[0])})
		p.nz = append(p.nz, pad.Dir[0][2])
		level += (pad.At[2] - o[2]) / float64(p.pads)
	}
	if s.per == 1 {
		for _, g := range s.frame.body.Guides {
			level = g.At[2] - o[2]
		}
	}
	p.down = [3]float64{rigid[2], rigid[3] + level*rigid[1], rigid[4] - level*rigid[0]}
}
