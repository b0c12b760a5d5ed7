package fit

import (
	"context"
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/bench"
	"archload/materials"
)

// Fit finds the constants of a piece of wood from what was measured on it. Errors: a plate that cannot be
// built, a weight or a gauge beside the wood, a cancelled context.
func Fit(ctx context.Context, f *bench.File, o Options) (*Report, error) {
	t, err := newFitter(ctx, f, o)
	if err != nil {
		return nil, err
	}
	a, err := t.find(ctx)
	if err != nil {
		return nil, err
	}
	if err := t.mend(ctx, a.at); err != nil { // what the triangles take off depends a little on the wood
		return nil, err
	}
	rounds, rivals := a.rounds, a.rivals
	if a, err = t.settle(ctx, a.at, a.last); err != nil {
		return nil, err
	}
	a.rounds += rounds
	a.rivals = rivals
	t.doubtful(a)
	r := t.report(a)
	return r, t.tell(ctx, r, a)
}

// report says what was found.
func (t *fitter) report(a *rest) *Report {
	r := &Report{Format: cases.Format, Units: "MPa, kg/m3, 1; readings in g, Hz, mm", Title: t.f.Title, Name: t.f.Name, Like: t.f.Like,
		Wood: map[string]map[string]Constant{}, Correlation: []Pair{}, Thickness: []Thickness{}, Readings: []Reading{}, LeftOut: []string{},
		Unknown: []string{}, Next: []Next{}, Expected: []Expected{}, Doubt: []string{}, Cautions: []string{}, Steps: a.rounds, Settled: a.settled}
	t.constants(r, a)
	t.fitted(r, a)
	r.Next = t.next(a)
	t.doubts(r, a)
	t.cautions(r, a)
	return r
}

// constants turns unknowns into constants.
func (t *fitter) constants(r *Report, a *rest) {
	card, before := wood(&t.f.Card, a.x), t.f.Card.Wood
	r.card = t.f.Card
	r.card.Name, r.card.Wood = t.f.Name, card
	after, was := valuesOf(&card), valuesOf(&before)
	cov, first := turned(a.p, len(a.x)), t.turnedPrior()
	keys := woodKeys()
	list := map[string]Constant{}
	for i, k := range keys {
		sd, sd0 := math.Sqrt(cov[i][i]), math.Sqrt(first[i][i])
		c := Constant{Value: after[i], SD: after[i] * sd, Card: was[i], CardSD: was[i] * sd0, Known: 1 - sd/sd0,
			scatter: math.Sqrt(math.Expm1(math.Pow(a.deviation(i), 2)))}
		list[k] = c
		if c.Known < stillUnknown && k != "nuLT" && k != "nuRT" {
			r.Unknown = append(r.Unknown, k)
		}
		for j := range i {
			if by := cov[i][j] / math.Sqrt(cov[i][i]*cov[j][j]); math.Abs(by) >= leastCorrelation {
				r.Correlation = append(r.Correlation, Pair{Keys: [2]string{keys[j], k}, By: by})
			}
		}
	}
	r.Wood[t.f.Name] = list
	t.scatters(r, a)
	r.card.OwnScatter, r.card.Together = map[string]float64{}, nil
	for _, k := range keys {
		r.card.OwnScatter[k] = list[k].scatter
	}
	for _, p := range r.scatters {
		r.card.Together = append(r.card.Together, materials.Together{Keys: p.Keys, By: p.By})
	}
	for i := len(keys); i < len(t.unknowns); i++ {
		r.Thickness = append(r.Thickness, Thickness{Piece: t.unknowns[i].words, Times: math.Exp(a.x[i]), SD: a.deviation(i)})
	}
}

// scatters lists the correlations for a card.
func (t *fitter) scatters(r *Report, a *rest) {
	keys, n := woodKeys(), len(a.x)
	for i := range keys {
		for j := range i {
			if by := a.p[n*i+j] / (a.deviation(i) * a.deviation(j)); math.Abs(by) >= 0.001 {
				r.scatters = append(r.scatters, Pair{Keys: [2]string{keys[j], keys[i]}, By: by})
			}
		}
	}
	if t.f.Woods[t.f.Like] != nil {
		r.inFile = t.strengths()
	}
}

// strengths are those of a card of the file's own, which a case that takes the fitted wood does not know.
func (t *fitter) strengths() []number {
	var list []number
	for _, e := range t.f.Card.Entries() {
		if !slices.Contains(woodKeys(), e.Key) && e.Value > 0 {
			list = append(list, number{e.Key, rounded(e.Value, 6)})
		}
	}
	return list
}

// What is worth telling: a constant whose scatter the readings left by more than this share, and a correlation.
const (
	stillUnknown     = 0.2
	leastCorrelation = 0.02
)

// valuesOf are the constants in the order of woodKeys.
func valuesOf(w *materials.Orthotropic) []float64 {
	return []float64{w.Density, w.EL, w.ER, w.ET, w.GLR, w.GLT, w.GRT, w.NuLR, w.NuLT, w.NuRT}
}

// turnedPrior is turned before anything is measured.
func (t *fitter) turnedPrior() [][]float64 { return turned(newBelief(t.prior).p, len(t.unknowns)) }

// fitted sets each reading beside what the wood that was found gives, in the order of the file.
func (t *fitter) fitted(r *Report, a *rest) {
	for i := range t.readings {
		rd := &t.readings[i]
		value, sd, _ := rd.measured()
		out := Reading{Words: rd.words, Key: rd.key, Unit: rd.unit, Value: rd.value, SD: rd.sd, Fitted: answer.None(), Off: answer.None()}
		if rd.logged() {
			out.SD = rd.value * rd.sd
		}
		g, pattern := t.taken(a, i)
		out.Pattern = pattern
		if g == nil {
			out.LeftOut = true
			out.Hint = t.hint(a, rd)
			r.LeftOut = append(r.LeftOut, sentence(rd, out.Hint))
		} else {
			y, _ := a.expects(g, a.at)
			out.Off = answer.Num((value - y) / sd)
			out.Fitted = answer.Num(rd.unlogged(y))
		}
		r.Readings = append(r.Readings, out)
	}
	slices.SortStableFunc(r.Readings, func(x, y Reading) int { return t.f.Rep.Find(x.Key).Line - t.f.Rep.Find(y.Key).Line })
}

// taken is what reading i is taken for, and the pattern of that tone; nil for one that is left out.
func (t *fitter) taken(a *rest, i int) (*guess, string) {
	rd, as := &t.readings[i], a.took[i]
	if as == leftOut {
		return nil, ""
	}
	m := matcher{readings: t.readings, states: a.states, at: a.at}
	if rd.kind != tone {
		return m.guessOf(rd), ""
	}
	f := &a.states[rd.setup].tones[as]
	return &f.guess, f.pattern.String()
}

// sentence tells of a reading that fits nothing.
func sentence(r *reading, hint string) string {
	s := r.words + fmt.Sprintf(" (%s) fits nothing else and is left out", r.key)
	if hint != "" {
		s += "; " + hint
	}
	return s
}
