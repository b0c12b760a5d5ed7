package fit

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"

	"archload/cases/bench"
	"archload/cases/tree"

	"gonum.org/v1/gonum/mat"
)

// Options steer a fit; the zero value is the default.
type Options struct {
	Workers  int                // goroutines; 0 means 1
	Progress func(stage string) // told what starts; may be nil

	coarse bool // triangles a third larger
}

// refine is how many times smaller than usual the rough triangles are.
func (o Options) refine() float64 {
	if o.coarse {
		return 0.75
	}
	return 1
}

func (o Options) workers() int { return max(o.Workers, 1) }

// say tells the stage that starts.
func (o Options) say(form string, args ...any) {
	if o.Progress != nil {
		o.Progress(fmt.Sprintf(form, args...))
	}
}

// fitter holds a file's setups, readings and unknowns.
type fitter struct {
	f        *bench.File
	o        Options
	setups   []*setup
	readings []reading // in the order in which they are taken in
	asked    []reading // gauges that are to be told
	unknowns []unknown
	prior    *mat.SymDense
	first    *matcher // the model of the card's own wood
}

// rest is where a fit came to rest.
type rest struct {
	*belief
	states  map[*setup]*state
	at      []float64 // the unknowns that the states were found for
	others  []*belief // other ways to take the readings, the next best first
	rivals  []*rest   // other places where the fit comes to rest that are nearly as likely
	last    *matcher  // the look at them
	rounds  int
	settled bool
}

// newFitter builds what a file asks for on rough triangles and mends them.
func newFitter(ctx context.Context, f *bench.File, o Options) (*fitter, error) {
	p, err := plan(ctx, f)
	if err != nil {
		return nil, err
	}
	t := &fitter{f: f, o: o, setups: p.setups, readings: sorted(p.readings), asked: p.asked, unknowns: unknowns(f)}
	t.prior = prior(f, t.unknowns)
	for _, s := range t.setups {
		o.say("%s: triangles", s.name)
		if s.rough, err = s.make(o.refine()); err != nil {
			return nil, err
		}
		if err := s.misplaced(s.rough); err != nil {
			return nil, t.fault(s, err)
		}
		if err := t.enough(ctx, s); err != nil {
			return nil, err
		}
	}
	zero := make([]float64, len(t.unknowns))
	if err := t.mend(ctx, zero); err != nil {
		return nil, err
	}
	t.first, err = t.look(ctx, zero, nil)
	return t, err
}

// fault puts what is wrong with a setup at the first key of its readings.
func (t *fitter) fault(s *setup, err error) error {
	if s.key != "" {
		p := t.f.Rep.Find(s.key)
		return tree.Faults{{File: p.Src.Label, Line: p.Line, Key: s.key, Err: err}}
	}
	for i := range t.readings {
		if t.readings[i].setup == s {
			p := t.f.Rep.Find(t.readings[i].key)
			return tree.Faults{{File: p.Src.Label, Line: p.Line, Key: t.readings[i].key, Err: err}}
		}
	}
	return err
}

// enough asks for so many tones of a bar that those that were heard are among them.
func (t *fitter) enough(ctx context.Context, s *setup) error {
	if s.bar == nil || s.count == 0 {
		return nil
	}
	const most = 60
	for ; s.count <= most; s.count *= 2 {
		st, err := s.evaluate(ctx, s.rough, &t.f.Card, make([]float64, len(t.unknowns)), t.o.workers(), false, nil)
		if err != nil {
			return err
		}
		all := true
		for i := range t.readings {
			if r := &t.readings[i]; r.setup == s && (r.kind == flexure || r.kind == torsion) {
				all = all && st.barTone(r.kind, r.order) >= 0
			}
		}
		if all {
			return nil
		}
	}
	return t.fault(s, fmt.Errorf("this tone of %s is not among the lowest %d that it has; want the lowest of each kind", s.name, most))
}

// mend finds anew what rough triangles take off, for the unknowns at x.
func (t *fitter) mend(ctx context.Context, x []float64) error {
	for _, s := range t.setups {
		if s.count == 0 && len(s.presses) == 0 {
			continue
		}
		t.o.say("%s: finer triangles", s.name)
		fine, err := s.make(2 * t.o.refine())
		if err != nil {
			return err
		}
		if err := s.findMend(ctx, fine, &t.f.Card, x, t.o.workers()); err != nil {
			return err
		}
		if err := s.findShear(ctx, 2*t.o.refine(), &t.f.Card, x, t.o.workers()); err != nil {
			return err
		}
	}
	return nil
}

// look solves all setups for the unknowns at x; before is the look before, if any, whose slopes serve if it is near.
func (t *fitter) look(ctx context.Context, x []float64, before *matcher) (*matcher, error) {
	m := &matcher{readings: t.readings, states: map[*setup]*state{}, at: x}
	m.slopesAt = x
	anew := before == nil || apart(x, before.slopesAt) > nearBy
	if !anew {
		m.slopesAt = before.slopesAt
	}
	for _, s := range t.setups {
		var last *state
		if before != nil {
			last = before.states[s]
		}
		st, err := s.evaluate(ctx, s.rough, &t.f.Card, x, t.o.workers(), anew, last)
		if err != nil {
			return nil, t.fault(s, err)
		}
		s.mend.apply(st)
		m.states[s] = st
	}
	return m, nil
}

// nearBy is how far from where they were found slopes serve, of a logarithm.
const nearBy = 0.05

// apart is the greatest difference of two lists.
func apart(a, b []float64) float64 {
	most := 0.0
	for i := range a {
		most = math.Max(most, math.Abs(a[i]-b[i]))
	}
	return most
}

// The steps of a fit: how many at most, when it rests (of an unknown's deviation), and how far one goes (of its
// deviation before anything was measured).
const (
	mostRounds = 15
	restsAt    = 0.01
	longest    = 2.5
)

// settle goes from x to where the readings and what was known before agree best: at each step the model is
// taken as linear (Gauss and Newton) and all likely ways to take the readings are weighed.
// from is a look before, if any.
func (t *fitter) settle(ctx context.Context, x []float64, from *matcher) (*rest, error) {
	a := &rest{at: x}
	last := math.Inf(1)
	m := from
	for a.rounds = 1; a.rounds <= mostRounds; a.rounds++ {
		t.o.say("step %d", a.rounds)
		var err error
		if m, err = t.look(ctx, a.at, m); err != nil {
			return nil, err
		}
		list := m.ways(newBelief(t.priorAt(a.at)))
		b, others := list[0], list[1:]
		if a.rounds > freeRounds {
			if same := a.asBefore(m, list); same >= 0 {
				b, others = list[same], slices.Delete(slices.Clone(list), same, same+1)
			}
		}
		a.belief, a.states, a.others, a.last = b, m.states, others, m
		size := t.stepSize(a.belief, a.at)
		if size.rest < restsAt {
			a.settled = true
			return a, nil
		}
		share := math.Min(1, longest/size.long)
		if size.rest > last {
			share *= 0.5 // it swings to and fro
		}
		last = size.rest
		next := make([]float64, len(x))
		for i := range next {
			next[i] = a.at[i] + share*(a.x[i]-a.at[i])
		}
		a.at = next
	}
	a.rounds--
	return a, nil
}

// freeRounds is after how many steps the readings are taken as in the step before: two ways, each of which looks better from
// where the other leads, would never rest.
const freeRounds = 5

// asBefore is the place in a list of ways of the one that takes the readings as a does, each tone known by its shape; -1 if
// there is none.
func (a *rest) asBefore(m *matcher, list []*belief) int {
	want := make([]int, len(a.took))
	for i, k := range a.took {
		want[i] = k
		if r := &m.readings[i]; r.kind == tone && k != leftOut {
			best, most := leftOut, 0.0
			for j, f := range m.states[r.setup].tones {
				if same := alike(f.shape, a.states[r.setup].tones[k].shape); same > most {
					best, most = j, same
				}
			}
			want[i] = best
		}
	}
	return slices.IndexFunc(list, func(b *belief) bool { return slices.Equal(b.took, want) })
}

// tails is how many degrees of freedom the card's scatter has as one of Student's: few, so that a piece of another
// kind than its card is not pulled toward it.
const tails = 5

// priorAt is what is known before anything is measured, seen from x: a constant that has gone z > 1 deviations from its
// card is held as by a normal scatter of variance (tails + z²)/(tails + 1) times as great, which is how the
// likeliest place under Student's distribution is found (K. L. Lange, R. J. A. Little, J. M. G. Taylor, J. Am. Stat.
// Assoc. 84 (1989) 881; from memory).
func (t *fitter) priorAt(x []float64) *mat.SymDense {
	p := mat.NewSymDense(len(x), nil)
	p.CopySym(t.prior)
	for i := range woodKeys() {
		z := x[i] / t.unknowns[i].sd
		wider := math.Sqrt(math.Max(1, (tails+z*z)/(tails+1)))
		for j := range x {
			f := wider
			if i == j {
				f *= wider
			}
			p.SetSym(i, j, p.At(i, j)*f)
		}
	}
	return p
}

type stepSizes struct{ rest, long float64 }

// stepSize measures a step in deviations after and before.
func (t *fitter) stepSize(b *belief, from []float64) (s stepSizes) {
	for i, u := range t.unknowns {
		d := math.Abs(b.x[i] - from[i])
		s.rest = math.Max(s.rest, d/math.Max(b.deviation(i), 1e-9))
		s.long = math.Max(s.long, d/u.sd)
	}
	return s
}

// starts is how many of the likely ways at first sight are followed to their end, and firstSlack how far a tone may
// be off at first sight because shapes change on the way.
const (
	starts     = 4
	firstSlack = 0.03
)

// nearSight is how much less likely than the best a way may be at first sight to be followed.
const nearSight = 12

// find follows the likely ways and keeps the best.
func (t *fitter) find(ctx context.Context) (*rest, error) {
	m := *t.first
	m.readings, m.slack = t.readings, firstSlack
	list := m.ways(newBelief(t.priorAt(t.byWeight())))
	var rests []*rest
	var tried []*belief
	for _, b := range list {
		if len(tried) == starts || b.cost > list[0].cost+nearSight {
			break
		}
		if t.nearOne(b, tried) {
			continue
		}
		tried = append(tried, b)
		a, err := t.settle(ctx, t.within(b.x), &m)
		if err != nil {
			return nil, err
		}
		rests = append(rests, a)
	}
	if x := t.exchanged(likeliest(rests)); x != nil {
		a, err := t.settle(ctx, x, nil)
		if err != nil {
			return nil, err
		}
		rests = append(rests, a)
	}
	best := likeliest(rests)
	for _, a := range rests {
		if a != best && a.cost < best.cost+nearSight && !t.nearOne(a.belief, best.rivalBeliefs(best.belief)) {
			best.rivals = append(best.rivals, a)
		}
	}
	return best, nil
}

// likeliest is the rest that costs least.
func likeliest(list []*rest) *rest {
	return slices.MinFunc(list, func(a, b *rest) int { return cmp.Compare(a.cost, b.cost) })
}

// rivalBeliefs are those of the rivals, and one more.
func (a *rest) rivalBeliefs(own *belief) []*belief {
	list := []*belief{own}
	for _, r := range a.rivals {
		list = append(list, r.belief)
	}
	return list
}

// exchanged is where else a rectangle has the tones that it has at rest: D11/a⁴ and D22/b⁴ may change places, D12 and D66, over
// a²b², stay, and only what is known before, or a pattern, tells which is which. nil where that does not apply, or where the
// other place is much less likely beforehand.
func (t *fitter) exchanged(a *rest) []float64 {
	b := t.f.Blank
	free := func(r reading) bool { return r.kind == tone && r.pattern == nil }
	if b == nil || b.Length == 0 || b.Shape == "bar" || !slices.ContainsFunc(t.readings, free) {
		return nil
	}
	along, across := slices.Index(woodKeys(), "EL"), slices.Index(woodKeys(), "ER")
	card := &t.f.Card.Wood
	ratio := math.Log(card.ER / card.EL)
	if t.f.Cut == "flat" {
		across, ratio = slices.Index(woodKeys(), "ET"), math.Log(card.ET/card.EL)
	}
	longer := 4 * math.Log(float64(b.Length)/float64(b.Width))
	x := slices.Clone(a.x)
	x[along], x[across] = a.x[across]+ratio+longer, a.x[along]-ratio-longer
	worse := 0.0 // than a, by Student's distribution
	for _, i := range []int{along, across} {
		sd := t.unknowns[i].sd
		worse += (tails + 1) * math.Log((tails+x[i]*x[i]/(sd*sd))/(tails+a.x[i]*a.x[i]/(sd*sd)))
	}
	if worse > nearSight || math.Abs(x[along]-a.x[along]) < 0.1*t.unknowns[along].sd {
		return nil
	}
	return x
}

// byWeight are the unknowns of a piece that is as dense as it weighs: scales err less than a card that was badly chosen.
func (t *fitter) byWeight() []float64 {
	x := make([]float64, len(t.unknowns))
	for i := range t.readings {
		if r := &t.readings[i]; r.kind == weight {
			x[atDensity] = math.Log(r.value) - t.first.states[r.setup].mass.y
			break
		}
	}
	return x
}

// within shortens a first step that goes too far.
func (t *fitter) within(x []float64) []float64 {
	long := 0.0
	for i, u := range t.unknowns {
		long = math.Max(long, math.Abs(x[i])/u.sd)
	}
	share := math.Min(1, longest/math.Max(long, 1e-12))
	out := make([]float64, len(x))
	for i := range x {
		out[i] = share * x[i]
	}
	return out
}

// nearOne says whether a way leads to where another one that was tried does.
func (t *fitter) nearOne(b *belief, tried []*belief) bool {
	for _, o := range tried {
		near := true
		for i, u := range t.unknowns {
			near = near && math.Abs(b.x[i]-o.x[i]) < 0.5*u.sd
		}
		if near {
			return true
		}
	}
	return false
}
