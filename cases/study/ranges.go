package study

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
	"sync"

	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/quantity"
	"archload/fem/parallel"
)

// Spread is how the numbers of a solved case answer to its wood: a report of
// the case, and one for each constant of each plank made smaller. It is taken
// on the companion mesh of the error estimate, whose answers differ by a
// percent or two and whose factors cost a tenth; without a companion, on the
// case's own.
type Spread struct {
	planks    []plank
	constants []constant
	base      *answer.Report
	each      []*answer.Report // of each constant; nil: no answer in such wood
	edges     []*answer.Report // of each measure of the edge made smaller; nil: no answer
	companion bool             // base is of triangles twice as large
	own       *answer.Report   // of the case's own mesh
	faults    []string         // why there is none
	ahead     Ahead            // nil: seasons and years are not asked for
}

// FindSpread solves the case again with every scattering constant of its wood
// smaller by one standard deviation (of its logarithm), one at a time: one new
// factor for each constant of the top, its braces and its sides, contact alone
// for those of the bridge, and neither for strengths and density. A small step
// would follow a number into the corner that it stands in (a worst place that
// jumps, a point of the foot that lets go); one as wide as the scatter looks
// across it. Smaller rather than greater, as movements grow faster in softer
// wood than they shrink in stiffer, which a single step upward would miss. An
// error is a cancelled context alone.
func FindSpread(ctx context.Context, s *design.Solution, o design.Options) (*Spread, error) {
	return FindSpreadAhead(ctx, s, nil, o)
}

// FindSpreadAhead is FindSpread with the ranges of what seasons and years do, by linear theory: swelling and creep of each
// plank scatter too. nil leaves them out.
func FindSpreadAhead(ctx context.Context, s *design.Solution, ahead Ahead, o design.Options) (*Spread, error) {
	on := scatterMesh(s)
	sp := &Spread{companion: on != s, planks: planks(s.Top.Built.Case), ahead: ahead}
	sp.constants = scattering(sp.planks, on.Top.Built.Bridge != nil)
	if ahead != nil {
		sp.constants = append(sp.constants, timely(sp.planks, on.Top.Built.Bridge != nil)...)
	}
	sp.base = companion(on, o.WorkerCount())
	sp.own = sp.base
	if sp.companion {
		sp.own = companion(s, o.WorkerCount())
	}
	if err := sp.startAhead(ctx, s, on, o); err != nil {
		return nil, err
	}
	sp.each = make([]*answer.Report, len(sp.constants))
	faults := make([]error, len(sp.constants))
	steps := edgeSteps(s.Top.Built.Case)
	sp.edges = make([]*answer.Report, len(steps))
	err := inParallel(ctx, o, len(sp.constants)+len(steps), func(i int) {
		if k := i - len(sp.constants); k >= 0 {
			if other, err := answerIn(ctx, on, steps[k].smaller(on.Top.Built.Case)); err == nil {
				sp.edges[k] = reportOf(other, on, sp.base)
				if sp.lookAhead(ctx, sp.edges[k], other.Top, nil) != nil {
					sp.edges[k] = nil
				}
			}
			return
		}
		sp.each[i], faults[i] = sp.inPlank(ctx, on, &sp.constants[i])
	})
	if err != nil {
		return nil, err
	}
	for i, err := range faults {
		if err != nil {
			c := sp.constants[i]
			sp.faults = append(sp.faults, fmt.Sprintf("no answer with a smaller %s of the %s: %v", c.key, sp.planks[c.plank].words(), err))
		}
	}
	return sp, nil
}

// inPlank is the report of a design with a constant smaller by one standard deviation.
func (sp *Spread) inPlank(ctx context.Context, on *design.Solution, c *constant) (*answer.Report, error) {
	times := make([]map[string]float64, len(sp.planks))
	times[c.plank] = c.times(math.Exp(-logDeviation(c.cv)))
	other, err := answerIn(ctx, on, cutFrom(on.Top.Built.Case, sp.planks, times))
	if err != nil {
		return nil, err
	}
	r := reportOf(other, on, sp.base)
	return r, sp.lookAhead(ctx, r, other.Top, c)
}

// scatterMesh is the solution on which the wood's scatter is worked out.
func scatterMesh(s *design.Solution) *design.Solution {
	if s.Coarse != nil {
		return s.Coarse
	}
	return s
}

// scattering lists the constants of some planks.
func scattering(planks []plank, bridge bool) []constant {
	var out []constant
	for i, p := range planks {
		if bridge || p.role != "bridge" && p.role != "saddle beam" {
			out = append(out, p.constants(i)...)
		}
	}
	return out
}

// inParallel does n pieces of work on the options' workers and tells how far it
// is. The error is that of the context.
func inParallel(ctx context.Context, o design.Options, n int, do func(i int)) error {
	var say sync.Mutex
	done := 0 // under say
	parallel.Chunks(o.WorkerCount(), n, 1, func(i, _ int) {
		if ctx.Err() != nil {
			return
		}
		do(i)
		say.Lock()
		defer say.Unlock()
		done++
		o.Say(fmt.Sprintf("planks, %d of %d", done, n))
	})
	return ctx.Err()
}

// shifts are how far one standard deviation of each constant moves a number, to
// first order, in the number's unit, as the constant grows by that. Without a
// number in the base or in the wood of a step, NaN.
func (sp *Spread) shifts(q quantity.Quantity) []float64 {
	base, scale := float64(q.Get(sp.base)), companionScale(q, sp.own, sp.base)
	out := make([]float64, len(sp.constants))
	for i, r := range sp.each {
		if r == nil {
			out[i] = math.NaN()
			continue
		}
		out[i] = scale * (base - float64(q.Get(r)))
	}
	return out
}

// logDeviation is the standard deviation of the logarithm of a lognormal quantity with
// the given coefficient of variation, 1: sqrt(ln(1 + cv²)).
func logDeviation(cv float64) float64 { return math.Sqrt(math.Log1p(cv * cv)) }

// norm is the scatter of a sum of shifts, those of the constants of some planks:
// the root of the sum of squares, and of what scatters together.
func norm(shifts []float64, of []scattered) answer.Num {
	sum := 0.0
	for _, v := range parts(shifts, of) {
		sum += v
	}
	return answer.Num(math.Sqrt(max(sum, 0)))
}

// parts are the shares of the constants in the square of the norm: with
// correlations ρ, v(i) Σ ρ(i, k) v(k).
func parts(shifts []float64, of []scattered) []float64 {
	out := make([]float64, len(shifts))
	for i, v := range shifts {
		out[i] = v * v
		for k, w := range shifts {
			if by := of[i].with(of[k]); by != 0 {
				out[i] += v * by * w
			}
		}
	}
	return out
}

// scattered is a constant of a plank.
type scattered struct {
	plank
	key string
}

// with is the correlation of two constants of one plank; 0 where they scatter
// each for itself, and of a constant with itself.
func (c scattered) with(o scattered) float64 {
	if len(c.card.Together) == 0 || c.key == o.key || !c.same(o.plank) {
		return 0
	}
	return c.card.Correlation(c.key, o.key)
}

// scattered lists the constants with their planks.
func (sp *Spread) scattered() []scattered {
	out := make([]scattered, len(sp.constants))
	for i, c := range sp.constants {
		out[i] = scattered{sp.planks[c.plank], c.key}
	}
	return out
}

// wood is the wood's range of a number, one standard deviation, in its unit.
func (sp *Spread) wood(q quantity.Quantity) answer.Num { return norm(sp.shifts(q), sp.scattered()) }

// apart is the wood's range of what o has more than sp of a number, if both
// designs are cut from the same planks where role and wood are the same: the
// shifts of a plank that both have are subtracted before they are squared.
func (sp *Spread) apart(o *Spread, q quantity.Quantity) answer.Num {
	shifts, of := o.shifts(q), o.scattered()
	for i, v := range sp.shifts(q) {
		if k := o.find(sp.planks[sp.constants[i].plank], sp.constants[i].key); k >= 0 {
			shifts[k] -= v
			continue
		}
		shifts, of = append(shifts, v), append(of, scattered{sp.planks[sp.constants[i].plank], sp.constants[i].key})
	}
	return norm(shifts, of)
}

// find is the place of a plank's constant among o's, or -1.
func (sp *Spread) find(p plank, key string) int {
	return slices.IndexFunc(sp.constants, func(c constant) bool { return c.key == key && sp.planks[c.plank].same(p) })
}

// behind lists the constants that make up a number's range, the greatest first,
// down to a hundredth of the variance.
func (sp *Spread) behind(q quantity.Quantity) []Behind {
	shifts, of := sp.shifts(q), sp.scattered()
	sum := design.Sq(float64(norm(shifts, of)))
	out := []Behind{}
	for i, part := range parts(shifts, of) {
		if share := part / sum; share >= 0.01 {
			c := sp.constants[i]
			out = append(out, Behind{Plank: sp.planks[c.plank].words(), Constant: c.key, Share: share})
		}
	}
	slices.SortStableFunc(out, func(a, b Behind) int { return cmp.Compare(b.Share, a.Share) })
	return out
}

// mesh is the mesh's range of a number, by the linear answers on both meshes: a number that is known to second
// order on one alone has the same.
func (sp *Spread) mesh(q quantity.Quantity) answer.Num {
	if !sp.companion {
		return answer.None()
	}
	return answer.MeshRange(q.Get(sp.own), q.Get(sp.base), q.Peak)
}

// meshApart is that of what o has more than sp.
func (sp *Spread) meshApart(o *Spread, q quantity.Quantity) answer.Num {
	if !sp.companion || !o.companion {
		return answer.None()
	}
	return answer.MeshRange(q.Get(o.own)-q.Get(sp.own), q.Get(o.base)-q.Get(sp.base), q.Peak)
}

// companionScale is by how much a quantity's scatter on a companion mesh is to
// be multiplied: a peak is lower or higher there as a whole, and its scatter
// with it.
func companionScale(q quantity.Quantity, own, companion *answer.Report) float64 {
	a, b := float64(q.Get(own)), float64(q.Get(companion))
	if !q.Peak || own == companion || !(a > 0) || !(b > 0) {
		return 1
	}
	return a / b
}

// wooden gathers what stands behind the ranges of several cases.
func wooden(names []string, spreads []*Spread) *Wooden {
	w := &Wooden{Faults: []string{}}
	var seen []constant
	var planks []plank
	for k, sp := range spreads {
		for _, c := range sp.constants {
			p := sp.planks[c.plank]
			i := slices.IndexFunc(seen, func(o constant) bool { return o.key == c.key && planks[o.plank].same(p) })
			if i < 0 {
				i = len(seen)
				planks = append(planks, p)
				seen = append(seen, constant{plank: i, key: c.key})
				w.Constants = append(w.Constants, Constant{Plank: p.words(), Constant: c.key, Scatter: c.cv, Source: c.from.Words()})
			}
			w.Constants[i].Cases = append(w.Constants[i].Cases, names[k])
		}
		for _, f := range sp.faults {
			w.Faults = append(w.Faults, names[k]+": "+f)
		}
	}
	return w
}
