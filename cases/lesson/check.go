package lesson

import (
	"context"
	"fmt"
	"io/fs"
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/quantity"
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
	failed  []string
}

// answered is a solved design, and its numbers as claims look them up.
type answered struct {
	solution *design.Solution
	numbers  *Answer
}

// NewChecker returns a checker for lessons whose own cases lie in fsys.
func NewChecker(fsys fs.FS, o design.Options) *Checker {
	return &Checker{fsys: fsys, options: o, answers: map[string]*answered{}}
}

// Check solves the designs of a step, unless that is done already, and returns
// what was found for each of its claims, in their order. The error says that a
// design could not be opened or solved, or that ctx was cancelled.
func (k *Checker) Check(ctx context.Context, s *Step) ([]Finding, error) {
	if len(s.Claims) == 0 {
		return nil, nil
	}
	also := s.asked()
	design, err := k.answer(ctx, s.Case, s.Set, also)
	if err != nil {
		return nil, err
	}
	var beside *Answer
	if s.Beside != "" {
		other, err := k.answer(ctx, s.Beside, nil, also)
		if err != nil {
			return nil, err
		}
		beside = other.numbers
	}
	return s.findings(design.numbers, beside), nil
}

// Failed lists the built-in checks that a solve failed, each with its design;
// nil if the numbers can be trusted.
func (k *Checker) Failed() []string { return k.failed }

// findings holds every claim of a step against the answers of its design and
// of the one beside it (nil if there is none).
func (s *Step) findings(design, beside *Answer) []Finding {
	out := make([]Finding, len(s.Claims))
	for i := range s.Claims {
		c := &s.Claims[i]
		v, err := c.check(design, beside)
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
	flow   bool // the load flow
	motion bool // how it swings
}

// asked finds what the claims of a step need.
func (s *Step) asked() (e extra) {
	for _, c := range s.Claims {
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
	if err != nil {
		return nil, err
	}
	k.answers[id] = &answered{sol, numbers}
	return k.answers[id], nil
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
	return named(s.Case, s.Set) + " beside " + s.Beside
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
