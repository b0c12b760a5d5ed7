package fit

import (
	"context"
	"fmt"
	"math"
	"sync"

	"archload/cases/motion"
	"archload/fem"
	"archload/fem/parallel"
	"archload/fem/vibration"
	"archload/materials"
)

// guess is what the model says of a number: its value (of a tone and a weight the logarithm) and how that
// changes with each unknown.
type guess struct {
	y   float64
	row []float64
}

// found is a tone of a setup in the model.
type found struct {
	guess
	pattern motion.Pattern
	odd     bool      // the two long edges move against each other
	shape   []float64 // at the places of the grid, of unit length
}

// state is what the model says of a setup at some values of the unknowns.
type state struct {
	tones []found
	sinks []guess
	mass  guess  // logarithm of the weight in g
	idle  []bool // unknowns that change none of the tones and sinks; nil: not known
}

// step is by how much the logarithm of an unknown is changed to see what it does.
const step = 1e-4

// evaluate solves a setup on a scene for the unknowns at x. The derivatives are those of the energies under
// the same movements, which is exact for tones (of modal mass 1, dω² = φᵀ(dK - ω² dM)φ) and, with the
// movement λ under a unit force at the gauge, for sinks (ds = -λᵀ dK u).
//
// Slopes are found anew, or taken from a state nearby, or, with neither, left out.
func (s *setup) evaluate(ctx context.Context, sc *scene, card *materials.Card, x []float64, workers int, slopes bool, before *state) (*state, error) {
	thicker := s.thicker(x)
	sys, err := fem.Assemble(sc.in(wood(card, x), thicker), 1)
	if err != nil {
		return nil, err
	}
	out := &state{}
	out.weigh(s, sc, card, x)
	var shapes [][]float64
	var pairs [][2][]float64
	if s.count > 0 {
		if shapes, err = s.swing(out, sc, sys, x, workers); err != nil {
			return nil, err
		}
	}
	if len(s.presses) > 0 {
		if pairs, err = s.push(out, sc, sys, x); err != nil {
			return nil, err
		}
	}
	if err := ctx.Err(); err != nil {
		return nil, err
	}
	if before != nil {
		out.idle = before.idle
	}
	if !slopes {
		if before != nil {
			out.take(before)
		}
		return out, nil
	}
	return out, s.slopes(out, sc, sys, card, x, shapes, pairs, workers)
}

// thicker is how many times as thick as measured the piece is.
func (s *setup) thicker(x []float64) float64 {
	if s.onEdge {
		return 1
	}
	return math.Exp(x[s.thickness])
}

// weigh is the weight of the wood in a scene; what else the plate carries is a case's and known.
func (out *state) weigh(s *setup, sc *scene, card *materials.Card, x []float64) {
	const gPerTonne = 1e6
	own := sc.volume() * wood(card, x).Density * 1e-6 * math.Exp(x[s.thickness]) // g
	other := 0.0
	for i := range sc.model.Beams {
		other += sc.model.Beams[i].Mass * gPerTonne
	}
	for i := range sc.model.Masses {
		other += sc.model.Masses[i].Mass * gPerTonne
	}
	share := own / (own + other)
	out.mass = guess{y: math.Log(own + other), row: make([]float64, len(x))}
	out.mass.row[atDensity], out.mass.row[s.thickness] = share, share
}

// swing finds the tones.
func (s *setup) swing(out *state, sc *scene, sys *fem.System, x []float64, workers int) ([][]float64, error) {
	v, err := vibration.New(vibration.Input{Plate: sys, Workers: workers})
	if err != nil {
		return nil, err
	}
	t, err := v.Tones(s.count, sc.free)
	if err != nil {
		return nil, err
	}
	g := newGrid(sc, sys)
	var shapes [][]float64
	for i := range t.List {
		shapes = append(shapes, t.List[i].Shape)
	}
	shares := v.Shares(shapes)
	for i := range t.List {
		f := found{guess: guess{y: math.Log(t.List[i].Hz), row: make([]float64, len(x))}}
		f.shape, f.pattern, f.odd = g.look(t.List[i].Shape)
		share := shares[i].Parts[0]
		f.row[atDensity] = -share / 2
		if !s.onEdge {
			f.row[s.thickness] = -share / 2
		}
		out.tones = append(out.tones, f)
	}
	return shapes, nil
}

// push finds the sinks under the weight, and the movements behind them: under the weight, and under a unit
// force at each gauge.
func (s *setup) push(out *state, sc *scene, sys *fem.System, x []float64) ([][2][]float64, error) {
	top, err := sys.Prepare(1)
	if err != nil {
		return nil, err
	}
	var pairs [][2][]float64
	for _, p := range s.presses {
		pts, _ := sc.spots(p.at, p.size)
		u := make([]float64, 6*len(sys.Model.Nodes))
		for _, at := range pts {
			sys.AddForce(u, at, [3]float64{0, 0, -p.force / float64(len(pts))})
		}
		top.Solve(u)
		for _, q := range p.gauges {
			at, _ := sc.at(q)
			l := make([]float64, len(u))
			sys.AddForce(l, at, [3]float64{0, 0, -1})
			top.Solve(l)
			out.sinks = append(out.sinks, guess{y: -sys.MoveAt(u, at)[2], row: make([]float64, len(x))})
			pairs = append(pairs, [2][]float64{u, l})
		}
	}
	return pairs, nil
}

// slopes fills in what each unknown changes by the stiffness.
func (s *setup) slopes(out *state, sc *scene, sys *fem.System, card *materials.Card, x []float64, shapes [][]float64, pairs [][2][]float64, workers int) error {
	both := make([][2][]float64, 0, len(pairs))
	for _, p := range pairs {
		plus, minus := make([]float64, len(p[0])), make([]float64, len(p[0]))
		for i := range p[0] {
			plus[i], minus[i] = p[0][i]+p[1][i], p[0][i]-p[1][i]
		}
		both = append(both, [2][]float64{plus, minus})
	}
	var all [][]float64
	all = append(all, shapes...)
	for _, b := range both {
		all = append(all, b[0], b[1])
	}
	base := energies(sys, all)
	places := s.stirring(out.idle)
	var mu sync.Mutex
	var fault error
	parallel.Chunks(workers, len(places), 1, func(from, to int) {
		for _, k := range places[from:to] {
			y := append([]float64(nil), x...)
			y[k] += step
			other, err := fem.Loose(sc.in(wood(card, y), s.thicker(y)), 1)
			if err != nil {
				mu.Lock()
				fault = err
				mu.Unlock()
				return
			}
			e := energies(other, all)
			for i := range shapes {
				// ln f = ½ ln ω²; energies are ½ φᵀKφ, ω² is φᵀKφ.
				out.tones[i].row[k] += (e[i] - base[i]) / step / (2 * base[i])
			}
			for i := range both {
				at := len(shapes) + 2*i
				out.sinks[i].row[k] = -(e[at] - base[at] - e[at+1] + base[at+1]) / (2 * step)
			}
		}
	})
	out.rest(places)
	return fault
}

// stirring lists the unknowns that may change a setup's stiffness.
func (s *setup) stirring(idle []bool) []int {
	var places []int
	for i := firstStiff; i < len(woodKeys()); i++ {
		if idle == nil || !idle[i] {
			places = append(places, i)
		}
	}
	if !s.onEdge {
		places = append(places, s.thickness)
	}
	return places
}

// rest marks the unknowns that stirred nothing.
func (out *state) rest(places []int) {
	if out.idle == nil {
		out.idle = make([]bool, len(out.mass.row))
	}
	for _, k := range places {
		most := 0.0
		for i := range out.tones {
			most = math.Max(most, math.Abs(out.tones[i].row[k]))
		}
		for i := range out.sinks {
			most = math.Max(most, math.Abs(out.sinks[i].row[k]/out.sinks[i].y))
		}
		out.idle[k] = most < nothing
	}
}

// nothing is how little, in logarithms, an unknown changes that changes nothing.
const nothing = 1e-7

// take takes the slopes of a state nearby.
func (out *state) take(before *state) {
	for i := range out.tones {
		f := &out.tones[i]
		best, most := -1, 0.0
		for k := range before.tones {
			if m := alike(f.shape, before.tones[k].shape); m > most {
				best, most = k, m
			}
		}
		if best >= 0 {
			copy(f.row, before.tones[best].row)
		}
	}
	for i := range out.sinks {
		for k, v := range before.sinks[i].row {
			out.sinks[i].row[k] = v * out.sinks[i].y / before.sinks[i].y
		}
	}
	out.idle = before.idle
}

// energies are the strain energies of all elements of the searched wood and the rest under some movements.
func energies(sys *fem.System, all [][]float64) []float64 {
	out := make([]float64, len(all))
	var buf []float64
	for _, e := range sys.Elements {
		n := 6 * len(e.Nodes())
		if cap(buf) < n {
			buf = make([]float64, n)
		}
		for i, u := range all {
			fem.Gather(buf[:n], u, e.Nodes())
			v := e.Energy(buf[:n])
			out[i] += v.Membrane + v.Bending + v.Shear + v.Other
		}
	}
	return out
}

// misplaced tells of a weight or a gauge that stands off the wood.
func (s *setup) misplaced(sc *scene) error {
	for _, p := range s.presses {
		if _, inside := sc.spots(p.at, p.size); !inside {
			return fmt.Errorf("%s: the weight at (%g, %g) stands partly off the wood", s.name, p.at[0], p.at[1])
		}
		for _, q := range p.gauges {
			if _, inside := sc.at(q); !inside {
				return fmt.Errorf("%s: the gauge at (%g, %g) stands off the wood", s.name, q[0], q[1])
			}
		}
	}
	return nil
}
