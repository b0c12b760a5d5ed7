package moved

import (
	"errors"
	"math"
)

// errLost says that an iteration does not settle.
var errLost = errors.New("moved: the iteration does not settle")

// Limits of an iteration.
const (
	settled     = 1e-9 // change of the movements in a step, over the movements
	firstPath   = 1e-3 // change at which a rough foot's path is followed for the first time on the moved shape
	samePath    = 1e-6 // change of the movements by following it again that counts as none
	mostSteps   = 60   // on the way to one share of the load
	mostFactors = 6
	manySteps   = 9  // still to come, by their rate: then a new factor is worth its cost
	fewSteps    = 3  // before a rate is known
	far         = 30 // times the first change: lost
	// mostGain is how many times the tangent's forecast the movements of one part of the load may
	// be. On the way to a limit point, t ~ 1 - x², it is 2 at most: the part that reaches just there.
	// More is the far side, to which the plate would snap.
	mostGain = 2
)

// settle finds the equilibrium at a share of the load, from where the walk stands.
func (w *walk) settle(share float64) error {
	start := w.on
	w.on = w.p.eased(start, share)
	err := w.iterate(share)
	if err != nil {
		w.on = start
	}
	return err
}

func (w *walk) iterate(share float64) error {
	r := &round{walk: w, share: share, at: w.at, u: w.at.u, mix: &mixer{}, by: anew, due: firstPath}
	if w.share > 0 {
		if err := w.refactor(r.u); err != nil {
			return err
		}
	}
	factors := 0
	for k := range mostSteps {
		a, err := r.next()
		if err != nil {
			return err
		}
		if k == 0 {
			r.path, r.first = a.u, between(a.u, r.u)
		}
		change := apart(a.u, r.u)
		r.changes = append(r.changes, change)
		if math.IsNaN(change) || change > far*r.changes[0] {
			return errLost
		}
		if rests, err := r.rests(&a, change); err != nil {
			return err
		} else if rests {
			return w.arrive(a, r.first)
		}
		r.at, r.u = a, r.mix.next(r.u, a.u)
		if stepsLeft(r.changes) <= manySteps {
			continue
		}
		if factors++; factors > mostFactors {
			return errLost
		}
		if err := w.refactor(r.u); err != nil {
			return err
		}
		r.mix, r.changes = &mixer{}, nil
	}
	return errLost
}

// round is the iteration at one share of the load.
type round struct {
	*walk
	share   float64
	at      answer    // of the last step
	u       []float64 // where the next step takes its push
	first   float64   // distance that the first step goes
	changes []float64 // of the steps since the last factor
	mix     *mixer
	by      way       // of the next step
	due     float64   // change at which the contact's path is followed again
	path    []float64 // movements where it was followed
	known   bool      // following it again would change less than samePath
}

// next is the next step. The first one from rest is the linear answer.
func (r *round) next() (answer, error) {
	l := r.p.Linear
	a := answer{setting: r.on, fit: r.p.Fit}
	if l != nil && r.walk.share == 0 && r.share == 1 && r.by == anew && r.changes == nil {
		a.state, a.u, a.body, a.result = l.State, l.U, l.Body, l
		r.by = ends
		return a, nil
	}
	a, err := r.step(r.share, &r.at, r.u, r.by)
	r.by = ends
	return a, err
}

// rests says whether a step that changes so much is the last one; where its path is due it is followed again.
func (r *round) rests(a *answer, change float64) (bool, error) {
	if change > r.due {
		return false, nil
	}
	settles, err := r.followPath(a)
	return settles && change <= settled, err
}

// followPath follows the contact once more over all of its increments, if there are several of them, with the push of
// the last step. What that changes at the end is in proportion with how far the push has come since, which tells
// whether doing it again would change anything. settles says that the path is known; else the answer is the new one.
func (r *round) followPath(a *answer) (settles bool, err error) {
	r.due = settled
	if r.known || a.state == nil || a.state.Slid == nil || a.state.Increments() <= 1 {
		return true, nil
	}
	b, err := r.step(r.share, &r.at, r.u, again)
	if err != nil {
		return false, err
	}
	jump, since := apart(b.u, a.u), apart(a.u, r.path)
	r.known = jump <= samePath || jump*apart(a.u, r.u) <= samePath*since
	if jump <= samePath {
		return true, nil
	}
	r.mix.shift(less(b.u, a.u))
	*a, r.path = b, b.u
	return false, nil
}

// arrive takes a settled state, unless it is so much further off than the first step that it
// lies on another branch.
func (w *walk) arrive(a answer, first float64) error {
	if between(a.u, w.at.u) > mostGain*first {
		return errLost
	}
	w.at = a
	return nil
}

// refactor makes the tangent at movements u the stiffness of the steps to come.
func (w *walk) refactor(u []float64) (err error) {
	on, err := w.p.tangent(w.on, u)
	if err != nil {
		return errLost // no longer stable there
	}
	w.on = on
	w.effort.Tangents++
	return nil
}

// stepsLeft is how many more steps the rate of the last ones asks for; 0 before it is known.
func stepsLeft(changes []float64) float64 {
	n := len(changes)
	if n <= fewSteps {
		return 0
	}
	rate := math.Log(changes[n-1]/changes[n-3]) / 2
	if rate >= 0 {
		return math.Inf(1)
	}
	return math.Log(settled/changes[n-1]) / rate
}

// between is the distance of movements u and v.
func between(u, v []float64) float64 {
	d := 0.0
	for i, x := range u {
		d += (x - v[i]) * (x - v[i])
	}
	return math.Sqrt(d)
}

// apart is the distance of movements u and v over the size of u.
func apart(u, v []float64) float64 {
	if size := math.Sqrt(dot(u, u)); size > 0 {
		return between(u, v) / size
	}
	return 0
}
