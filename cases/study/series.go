package study

import (
	"cmp"
	"context"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/shape"
	"archload/cases/tone"
	"archload/cases/tree"
)

// mostPoints is how many combinations a series may have.
const mostPoints = 100000

// triedFirst is how many combinations may be refused before the series is.
const triedFirst = 20

// Series is a case solved for every combination of some keys' values.
type Series struct {
	Head SeriesHead

	answer  func(t *design.Top) (*answer.Report, error) // nil: linear
	further func(ctx context.Context, r *answer.Report, t *design.Top, o design.Options) error
	files   *steady
	name    string
	changes []tree.Change
	order   []int // points, 0-based, those of one top together
	group   []int // of each point: points of one group stand on the same top
}

// SeriesOptions say how a series is solved.
type SeriesOptions struct {
	Refine float64 // multiplies the case's own mesh.refine
	Part   [2]int  // which of how many; 1 of 1 for the whole
	// Order and Answer are another theory than the linear one: its name, and how it answers a
	// prepared top. "" and nil: linear.
	Order  string
	Answer func(t *design.Top) (*answer.Report, error)
	// Ahead and Further put more among the answers of a prepared top: what it is, and how. "" and nil: nothing.
	Ahead   string
	Further func(ctx context.Context, r *answer.Report, t *design.Top, o design.Options) error
	Program string // that solves it, with its version
}

// NewSeries plans a series and reads all files that its points need, each
// once: what happens to them later does not matter. At least one of the first
// combinations must be a sound case; if none is, the first one's faults are the
// error.
func NewSeries(fsys fs.FS, name string, changes []tree.Change, o SeriesOptions) (*Series, error) {
	s := &Series{answer: o.Answer, further: o.Further, files: newSteady(fsys), name: name, changes: changes}
	part := o.Part
	s.Head = SeriesHead{Format: cases.Format, Units: cases.UnitsNote, Case: name, Refine: o.Refine, Points: 1, Part: part, Program: o.Program, Order: o.Order, Ahead: o.Ahead}
	for i, c := range changes {
		if slices.ContainsFunc(changes[:i], func(o tree.Change) bool { return tree.Related(o.Key)(c.Key) }) {
			return nil, fmt.Errorf("want each key once, found %s again", c.Key)
		}
		s.Head.Keys = append(s.Head.Keys, c.Key)
		var words []string
		for _, v := range c.Values {
			words = append(words, v.Text)
		}
		s.Head.Values = append(s.Head.Values, words)
		if s.Head.Points *= len(c.Values); s.Head.Points > mostPoints {
			return nil, fmt.Errorf("want at most %d combinations, found more", mostPoints)
		}
	}
	if part[0] < 1 || part[0] > part[1] || part[1] > s.Head.Points {
		return nil, fmt.Errorf("want a part from 1/1 to %d/%d, found %d/%d", s.Head.Points, s.Head.Points, part[0], part[1])
	}
	if err := s.identify(); err != nil {
		return nil, err
	}
	s.arrange()
	s.Head.Mine = len(s.Mine())
	return s, nil
}

// identify opens the first sound case, reads the files of all others and takes
// the fingerprint.
func (s *Series) identify() error {
	c, err := s.firstSound()
	if err != nil {
		return err
	}
	s.Head.Title = c.Title
	s.readAll()
	h := sha256.New()
	if s.Head.Order != "" {
		fmt.Fprintf(h, "%q\n", s.Head.Order)
	}
	if s.Head.Ahead != "" {
		fmt.Fprintf(h, "ahead %q\n", s.Head.Ahead)
	}
	fmt.Fprintf(h, "%q %q %q %v\n", s.Head.Program, s.Head.Keys, s.Head.Values, s.Head.Refine)
	for _, src := range c.Rep.Order { // bundled files among them
		fmt.Fprintf(h, "%q %d\n%s", path.Base(src.Label), len(src.Data), src.Data)
	}
	s.files.writeTo(h)
	s.Head.Fingerprint = hex.EncodeToString(h.Sum(nil))
	return nil
}

// firstSound opens the first sound case.
func (s *Series) firstSound() (*cases.Case, error) {
	var first error
	for i := range min(triedFirst, s.Head.Points) {
		c, err := s.open(i)
		if err == nil {
			err = c.AtRest()
		}
		if err == nil {
			_, err = shape.NewGeometry(c)
		}
		if err == nil {
			return c, nil
		}
		first = cmp.Or(first, err)
	}
	return nil, first
}

// settings are the keys of a point, the last key running fastest.
func (s *Series) settings(point int) []tree.KeyValue {
	out := make([]tree.KeyValue, len(s.changes))
	for k, c := range slices.Backward(s.changes) {
		out[k] = tree.KeyValue{Key: c.Key, Value: c.Values[point%len(c.Values)]}
		point /= len(c.Values)
	}
	return out
}

// open loads the case of a point.
func (s *Series) open(point int) (*cases.Case, error) {
	return cases.OpenChanged(s.files, s.name, "--change", s.settings(point))
}

// arrange puts the points of one top together.
func (s *Series) arrange() {
	s.group = make([]int, s.Head.Points)
	seen := map[string]int{}
	for i := range s.group {
		var heavy []string
		for _, kv := range s.settings(i) {
			if !design.Light(kv.Key) {
				heavy = append(heavy, kv.Value.Text)
			}
		}
		id := strings.Join(heavy, "\x00")
		if _, ok := seen[id]; !ok {
			seen[id] = i
		}
		s.group[i] = seen[id]
		s.order = append(s.order, i)
	}
	slices.SortStableFunc(s.order, func(a, b int) int { return cmp.Compare(s.group[a], s.group[b]) })
}

// Mine lists the points of this part, 1-based, in the order of work.
func (s *Series) Mine() []int {
	i, n, total := s.Head.Part[0], s.Head.Part[1], len(s.order)
	out := slices.Clone(s.order[(i-1)*total/n : i*total/n])
	for k := range out {
		out[k]++
	}
	return out
}

// seriesSolver answers the points of one worker; it keeps the last top.
type seriesSolver struct {
	s     *Series
	group int // of top, counted from 1
	tried int // points from the first on that were tried for it
	top   *design.Top
	err   error // why the group has no top
}

// row answers one point, 0-based. The error is a cancelled context alone.
func (w *seriesSolver) row(ctx context.Context, point int) (SeriesRow, error) {
	r := SeriesRow{Point: point + 1, Set: map[string]any{}, Results: map[string]answer.Num{}}
	for _, kv := range w.s.settings(point) {
		r.Set[kv.Key] = kv.Value.Value
	}
	if ctx.Err() != nil {
		return r, ctx.Err()
	}
	rep, err := w.solve(ctx, point)
	if ctx.Err() != nil {
		return r, ctx.Err()
	}
	for _, q := range SeriesColumns() {
		r.Results[q.Column] = answer.None()
		if err == nil {
			r.Results[q.Column] = q.Get(rep)
		}
	}
	if err != nil {
		r.Failed = oneLine(err)
		return r, nil
	}
	r.Checks = strings.Join(rep.Error.Failed(), "; ")
	return r, nil
}

// oneLine is the first fault of a case, or the whole message, on one line.
func oneLine(err error) string {
	var file *tree.FileError
	if errors.As(err, &file) {
		err = file
	}
	return strings.Join(strings.Fields(err.Error()), " ")
}

func (w *seriesSolver) solve(ctx context.Context, point int) (*answer.Report, error) {
	c, err := w.s.open(point)
	if err != nil {
		return nil, err
	}
	o := design.Options{Workers: 1, Refine: w.s.Head.Refine, NoFlow: true, NoError: true}
	top, err := w.prepared(ctx, point, o)
	if err != nil {
		return nil, err
	}
	if top, err = design.Adapt(ctx, top, c, o); err != nil {
		return nil, err
	}
	r, err := w.s.answerOf(top)
	if err == nil && w.s.further != nil {
		err = w.s.further(ctx, r, top, o)
	}
	return r, err
}

// answerOf answers a prepared top.
func (s *Series) answerOf(top *design.Top) (*answer.Report, error) {
	if s.answer != nil {
		return s.answer(top)
	}
	sol, err := top.Answer()
	if err != nil {
		return nil, err
	}
	r := answer.Summarize(sol)
	tone.Judge(r, sol, 1)
	return r, nil
}

// prepared is the top of a point's group, always made for the group's first
// sound case, so that an answer does not depend on who asks. A case may turn
// out to be faulty over its arch, where another of the group is not; any other
// error is that of the whole group.
func (w *seriesSolver) prepared(ctx context.Context, point int, o design.Options) (*design.Top, error) {
	g := w.s.group[point]
	if w.group != g+1 {
		*w = seriesSolver{s: w.s, group: g + 1, tried: g}
	}
	for ; w.top == nil && w.tried <= point; w.tried++ {
		var faults tree.Faults
		if w.err != nil && !errors.As(w.err, &faults) {
			break
		}
		if w.s.group[w.tried] != g {
			continue
		}
		c, err := w.s.open(w.tried)
		if err != nil {
			continue
		}
		if w.top, w.err = design.Prepare(ctx, c, o); ctx.Err() != nil {
			w.group = 0
			return nil, ctx.Err()
		}
	}
	return w.top, w.err
}
