package fem

import (
	"fmt"

	"archload/fem/sparse"
)

// Standing is a body on a condensed plate: everything but the gaps and the
// load is settled, so that a new relief or string set costs only Follow.
type Standing struct {
	plate *Condensed
	frame *frame
	per   int             // rows of a pad
	cols  []sparse.Column // of the body, one for each row
	r     [][6]float64    // rigid motion of each row, about the body's first node
	a     []float64       // C + F + bedding, row-major
}

// Stand puts a body on the plate. Guides are used in slip only, where nothing
// else holds the body sideways.
func (c *Condensed) Stand(b *Body) (*Standing, error) {
	f, err := newFrame(b)
	if err != nil {
		return nil, err
	}
	s := &Standing{plate: c, frame: f, per: c.hold.rows()}
	for i := range c.pads {
		p := &c.pads[i]
		if p.Node < 0 || int(p.Node) >= len(b.Nodes) {
			return nil, fmt.Errorf("bridge: pad %d hangs on station %d of %d", i, p.Node, len(b.Nodes))
		}
		for a := range s.per {
			s.addRow(p.Node, armRow(b.Nodes[p.Node], p.At, p.Dir[a]), armRow(b.Nodes[0], p.At, p.Dir[a]))
		}
	}
	if c.hold == Slip {
		for i := range b.Guides {
			g := &b.Guides[i]
			s.addRow(g.Node, g.row(b.Nodes[g.Node]), g.row(b.Nodes[0]))
		}
	}
	s.sum()
	return s, nil
}

func (s *Standing) addRow(node int32, row, rigid [6]float64) {
	s.cols = append(s.cols, s.frame.column(node, row))
	s.r = append(s.r, rigid)
}

func (s *Standing) sum() {
	n, m := len(s.cols), len(s.plate.cols)
	s.a = s.frame.factor.Compliance(s.cols)
	for i := range m {
		ci := s.plate.c[i*m : (i+1)*m]
		ai := s.a[i*n : i*n+m]
		for j, v := range ci {
			ai[j] += v
		}
		bed := s.plate.pads[i/s.per].Bedding
		if i%s.per == 0 {
			ai[i] += bed[0]
		} else {
			ai[i] += bed[1]
		}
	}
}

// Fit is what may change on a standing body at the cost of milliseconds.
type Fit struct {
	Gap       []float64  // of each pad before loading, mm
	Loads     []BodyLoad // nil keeps the body's own
	Tolerance float64    // what counts as no force or no gap in an event, relative, 1; 0 means 1e-11
	Less      float64    // 1 less the fraction of the loads on the plate that a result is for
	Path      bool       // State keeps the whole path, for State.At
	Stops     []float64  // fractions of full load, rising, above 0 to 1, at which State keeps a Stop
}

// Follow raises string load and plate loads together from nothing to full.
func (s *Standing) Follow(fit Fit) (*State, error) {
	return s.problem(fit).follow()
}

// problem is the contact problem in its rows.
type problem struct {
	a    []float64
	r    [][6]float64
	b    []float64  // movement of each row at full load with all λ zero, mm
	f    [6]float64 // resultant of the body's loads about its first node
	self float64    // work coefficient of the loads, N·mm
	gap  []float64  // of each pad, mm
	pads int
	per  int

	tiny  float64      // relative size of nothing, 1
	snap  float64      // gaps at rest below this count as none, mm
	stops []float64    // still to be kept
	keep  bool         // the whole path
	plane [][3]float64 // vertical movement of each pad by ρz, ρrx, ρry
	down  [3]float64   // the load that presses the slack body down: Fz, Mx, My
	nz    []float64    // vertical part of each pad's normal
}

func (s *Standing) problem(fit Fit) *problem {
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
	p := &problem{a: s.a, r: s.r, f: rigid, gap: fit.Gap, stops: fit.Stops, keep: fit.Path, tiny: fit.Tolerance, pads: len(s.plate.pads), per: s.per,
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
	p.setPlane(s, rigid)
	return p
}

// setPlane prepares the slack body's rest: lowered straight down, with the
// push of the strings taken at the guides (slip) or in the foot's face (grip).
func (p *problem) setPlane(s *Standing, rigid [6]float64) {
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

func (p *problem) normal(i int) int32 { return int32(i * p.per) }

func (p *problem) isNormal(row int32) bool {
	return int(row) < p.pads*p.per && int(row)%p.per == 0
}

func (p *problem) padOf(row int32) int { return int(row) / p.per }

func (p *problem) at(i, j int32) float64 { return p.a[int(i)*len(p.b)+int(j)] }

// movement is b t + A λ + R ρ of a row, mm.
func (p *problem) movement(row int32, t float64, lambda []float64, rho [6]float64) float64 {
	n := len(p.b)
	v := p.b[row] * t
	for j, a := range p.a[int(row)*n : (int(row)+1)*n] {
		v += a * lambda[j]
	}
	for m := range 6 {
		v += p.r[row][m] * rho[m]
	}
	return v
}
