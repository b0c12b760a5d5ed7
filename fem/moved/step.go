package moved

import (
	"math"

	"archload/fem/contact"
)

// Effort says what an answer took.
type Effort struct {
	Steps    int // linear contact problems
	Tangents int // factors beside the first
	Parts    int // load steps; 1: the whole load at once
}

// walk is a load on its way.
type walk struct {
	p      *Problem
	on     setting
	effort Effort

	share float64 // of the load, reached
	at    answer  // there
}

// answer is one of the linear contact problem (2).
type answer struct {
	setting // whose plate is pushed
	state   *contact.State
	fit     contact.LoadCase
	u       []float64       // movements of the plate's nodes
	body    []float64       // of the body's; nil without one
	result  *contact.Result // with movements alone
}

// stands is how the body stands in an answer.
func (a *answer) stands() standing {
	if a.state == nil {
		return standing{}
	}
	return standing{a.state.Lambda, a.body}
}

// How the contact of a step is followed.
type way int

const (
	anew  way = iota // from nothing
	again            // in the increments of the step before
	ends             // where these end
)

// step solves (2) at a share of the load, with the push at some movements.
func (w *walk) step(share float64, from *answer, u []float64, by way) (answer, error) {
	a := answer{setting: w.on, fit: w.p.Fit}
	if w.p.Stop != nil {
		if err := w.p.Stop(); err != nil {
			return a, err
		}
	}
	acts := w.p.acting(w.p.load(share), u, from.stands())
	a.cond = w.on.cond.WithPush(acts.plate, w.push(u))
	w.effort.Steps++
	if w.on.stand == nil {
		a.result = a.cond.RecoverPlateMoves(1)
		a.u = a.result.U
		return a, nil
	}
	a.stand = w.on.stand.Over(a.cond)
	a.fit.Loads = acts.body
	like := from.state
	if by == anew {
		like = nil
	}
	var err error
	if w.p.From != nil {
		a.state, err = a.stand.OnwardLike(*w.p.From, a.fit, like, by == ends)
	} else {
		a.state, err = a.stand.FollowLike(a.fit, like, by == ends)
	}
	if err != nil {
		return a, err
	}
	a.result = a.stand.RecoverMoves(a.state, a.fit)
	a.u, a.body = a.result.U, a.result.Body
	return a, nil
}

// push is K u - f(u) where nothing is held.
func (w *walk) push(u []float64) []float64 {
	p := make([]float64, len(u))
	f := make([]float64, len(u))
	w.on.plate.K.MulTo(p, u)
	w.on.plate.PullTo(f, u, w.p.Workers)
	for i, v := range f {
		p[i] -= v
	}
	for _, d := range w.on.plate.FixedDofs() {
		p[d] = 0
	}
	return p
}

// recovered completes the answer at which the walk has arrived, but for the check of the energy.
func (w *walk) recovered() *contact.Result {
	var r *contact.Result
	if a := &w.at; a.stand == nil {
		r = a.cond.RecoverPlate()
	} else {
		r = a.stand.Recover(a.state, a.fit)
	}
	w.on.plate.FollowTurned(r.U)
	return r
}

// workLeft compares the plate's strain energy with the work that its forces take while the
// movements grow in proportion, by Gauss's rule of three points, exact to the fifth power (that work
// is of the third, but for what the turns add), relative; wood that has stretched by itself holds energy from the
// outset, which counts.
func (w *walk) workLeft(r *contact.Result) float64 {
	f, part := make([]float64, len(r.U)), make([]float64, len(r.U))
	work := 0.0
	start := 0.0
	if w.on.swell != nil {
		start = w.on.plate.PullTo(f, part, w.p.Workers)
		work = start
	}
	for _, g := range gauss3 {
		for i, v := range r.U {
			part[i] = g.at * v
		}
		w.on.plate.PullTo(f, part, w.p.Workers)
		work += g.weight * dot(f, r.U)
	}
	stored := w.on.plate.PullTo(f, r.U, w.p.Workers)
	if stored == 0 {
		return 0
	}
	if start > stored {
		return math.Abs(stored-work) / start
	}
	return math.Abs(stored/work - 1)
}

// gauss3 is Gauss's rule of three points on 0 to 1 (any handbook).
var gauss3 = [3]struct{ at, weight float64 }{
	{0.5, 4.0 / 9}, {0.5 - 0.3872983346207417, 5.0 / 18}, {0.5 + 0.3872983346207417, 5.0 / 18},
}
