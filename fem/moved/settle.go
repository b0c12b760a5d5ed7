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
	err := w.iterate(share)
	if err != nil {
		w.on = start
	}
	return err
}

func (w *walk) iterate(share float64) error {
	mix, at := &mixer{}, w.at
	var changes []float64
	u, factors, first := w.at.u, 0, 0.0
	if w.share > 0 {
		if err := w.refactor(u); err != nil {
			return err
		}
	}
	for k := range mostSteps {
		a, err := w.step(share, &at, u)
		if err != nil {
			return err
		}
		if k == 0 {
			first = between(a.u, u)
		}
		change := apart(a.u, u)
		changes = append(changes, change)
		if change <= settled {
			return w.arrive(a, first)
		}
		if math.IsNaN(change) || change > far*changes[0] {
			return errLost
		}
		at, u = a, mix.next(u, a.u)
		if stepsLeft(changes) <= manySteps {
			continue
		}
		if factors++; factors > mostFactors {
			return errLost
		}
		if err := w.refactor(u); err != nil {
			return err
		}
		mix, changes = &mixer{}, nil
	}
	return errLost
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
	on, err := w.p.tangent(u)
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
