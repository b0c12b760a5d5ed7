package lesson

import (
	"context"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/aging"
	"archload/cases/answer"
	"archload/cases/bench"
	"archload/cases/bench/fit"
	"archload/cases/design"
	"archload/cases/quantity"
	"archload/cases/stability"
	"archload/cases/tone"
	"archload/cases/tree"
)

// Finding is a claim beside what was computed for it.
type Finding struct {
	Claim    *Claim
	Computed float64         // in the unit of the words; NaN if it cannot be had
	Fault    *tree.FileError // why the claim does not hold; nil if it does
}

// Checker holds the claims of lessons to the solve of the designs that their
// steps show. It solves every design once, at the mesh that the program uses;
// those that differ in the fit of the foot share a factor.
type Checker struct {
	fsys    fs.FS
	options design.Options
	tops    []*design.Top
	answers map[string]*answered // by designID
	pieces  map[string]*Answer   // by bench file
	failed  []string
}

// answered is a solved design, and its numbers as claims look them up.
type answered struct {
	solution *design.Solution
	numbers  *Answer
}

// NewChecker returns a checker for lessons whose own cases lie in fsys.
func NewChecker(fsys fs.FS, o design.Options) *Checker {
	return &Checker{fsys: fsys, options: o, answers: map[string]*answered{}, pieces: map[string]*Answer{}}
}

// Check solves the designs of a step, unless that is done already, and returns
// what was found for each of its claims, in their order. The error says that a
// design could not be opened or solved, or that ctx was cancelled.
func (k *Checker) Check(ctx context.Context, s *Step) ([]Finding, error) {
	if len(s.Claims) == 0 {
		return nil, nil
	}
	also := s.asked(false)
	design, err := k.answer(ctx, s.Case, s.Set, also)
	if err != nil {
		return nil, err
	}
	all := answers{design: design.numbers}
	if s.Beside != "" {
		other, err := k.answer(ctx, s.Beside, s.Against, s.asked(true))
		if err != nil {
			return nil, err
		}
		all.beside = other.numbers
	}
	if s.asks(ofBench) {
		if all.bench, err = k.piece(ctx, s.Bench); err != nil {
			return nil, err
		}
	}
	return s.findings(all), nil
}

// Failed lists the built-in checks that a solve failed, each with its design;
// nil if the numbers can be trusted.
func (k *Checker) Failed() []string { return k.failed }

// findings holds every claim of a step against the answers.
func (s *Step) findings(a answers) []Finding {
	out := make([]Finding, len(s.Claims))
	for i := range s.Claims {
		c := &s.Claims[i]
		v, err := c.check(a)
		out[i] = Finding{Claim: c, Computed: v}
		if err != nil {
			fault := c.at
			fault.Err = err
			out[i].Fault = &fault
		}
	}
	return out
}

// extra is what claims ask for besides the plain answer.
type extra struct {
	flow    bool // the load flow
	motion  bool // how it swings
	seasons bool // what moisture does to it
	moved   bool // how it stands on its moved shape
}

// asks tells whether a claim of the step asks a source.
func (s *Step) asks(of source) bool {
	return slices.ContainsFunc(s.Claims, func(c Claim) bool { return strings.Contains(c.Of, string(of)) })
}

// asked finds what the claims of a step need of its design, or of the one beside it.
func (s *Step) asked(beside bool) (e extra) {
	for _, c := range s.Claims {
		for _, r := range c.formula.references() {
			e.seasons = e.seasons || r.of == ofSeasons && r.beside == beside
			e.moved = e.moved || r.of == ofMoved && r.beside == beside
		}
		e.flow = e.flow || strings.Contains(c.Of, "flow.") || strings.Contains(c.Of, "sectors.") // an elastic edge's come from the flow
		for _, q := range quantity.Where(func(q quantity.Quantity) bool { return q.Summary == quantity.HeadMotion }) {
			e.motion = e.motion || strings.Contains(c.Of, q.Key)
		}
	}
	return e
}

// designID tells designs apart.
func designID(name string, set []tree.KeyValue, also extra) string {
	return fmt.Sprint(name, set, also)
}

// answer answers a case with its set keys, with what else is asked for.
func (k *Checker) answer(ctx context.Context, name string, set []tree.KeyValue, also extra) (*answered, error) {
	id := designID(name, set, also)
	if a, ok := k.answers[id]; ok {
		return a, nil
	}
	k.options.Say(named(name, set))
	c, err := cases.OpenChanged(k.fsys, name, "set", set)
	if err != nil {
		return nil, err
	}
	if also.motion {
		moving := c.Moving()
		moving.Judged = true
		c.Motion = &moving
	}
	sol, err := k.solve(ctx, c)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", named(name, set), err)
	}
	if also.flow {
		sol.FindFlow()
	}
	report := answer.Summarize(sol)
	if also.motion {
		k.options.Say("how it swings")
		tone.Judge(report, sol, k.options.WorkerCount())
	}
	for _, what := range report.Error.Failed() {
		k.failed = append(k.failed, what+" of "+named(name, set))
	}
	numbers, err := newAnswer(c, report)
	if err == nil && also.seasons {
		err = k.seasons(ctx, c, numbers)
	}
	if err == nil && also.moved {
		err = k.moved(ctx, sol, numbers)
	}
	if err != nil {
		return nil, err
	}
	k.answers[id] = &answered{sol, numbers}
	return k.answers[id], nil
}

// seasons adds what moisture does to a case. The triangles' share of the error is left to archload seasons.
func (k *Checker) seasons(ctx context.Context, c *cases.Case, to *Answer) error {
	k.options.Say("through the seasons")
	quiet := k.options
	quiet.Progress, quiet.NoError = nil, true
	r, err := aging.Seasons(ctx, c, aging.Wish{}, quiet)
	if err != nil {
		return err
	}
	for _, what := range r.Failed() {
		k.failed = append(k.failed, what+" of "+c.Title)
	}
	return to.add(ofSeasons, r)
}

// moved adds how a case stands on its moved shape.
func (k *Checker) moved(ctx context.Context, sol *design.Solution, to *Answer) error {
	k.options.Say("on its moved shape")
	s, err := stability.OnMovedShape(ctx, sol)
	if err != nil {
		return err
	}
	return to.add(ofMoved, stability.Summarize(s, 1))
}

// piece fits a bench file.
func (k *Checker) piece(ctx context.Context, name string) (*Answer, error) {
	if a, ok := k.pieces[name]; ok {
		return a, nil
	}
	k.options.Say(name)
	f, err := bench.Open(k.fsys, name)
	if err != nil {
		return nil, err
	}
	r, err := fit.Fit(ctx, f, fit.Options{Workers: k.options.WorkerCount()})
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	a := &Answer{trees: map[source]any{}}
	k.pieces[name] = a
	return a, a.add(ofBench, r)
}

// solve answers a case on a top that is there already if one fits.
func (k *Checker) solve(ctx context.Context, c *cases.Case) (*design.Solution, error) {
	quiet := k.options
	quiet.Progress = nil
	for _, t := range k.tops {
		if slices.ContainsFunc(design.ChangedKeys(t.Built.Case, c), heavy) {
			continue
		}
		fit, err := design.Adapt(ctx, t, c, quiet)
		if err != nil {
			return nil, err
		}
		return fit.Answer()
	}
	t, err := design.Prepare(ctx, c, quiet)
	if err != nil {
		return nil, err
	}
	k.tops = append(k.tops, t)
	return t.Answer()
}

// heavy tells whether a key changes more than the strings' forces and the gap
// under the foot, so that a top adapted to it need not have the mesh that a solve
// of the case would make.
func heavy(key string) bool { return !design.Light(key) }

// Shown names the designs of a step: its case with the keys set on it, and the
// one beside it.
func (s *Step) Shown() string {
	if s.Beside == "" {
		return named(s.Case, s.Set)
	}
	return named(s.Case, s.Set) + " beside " + named(s.Beside, s.Against)
}

// named names a case with its set keys.
func named(name string, set []tree.KeyValue) string {
	var keys []string
	for _, kv := range set {
		keys = append(keys, kv.Key+" = "+kv.Value.Text)
	}
	if len(keys) == 0 {
		return name
	}
	return name + " with " + strings.Join(keys, ", ")
}
