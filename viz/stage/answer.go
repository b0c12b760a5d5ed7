package stage

import (
	"context"
	"fmt"
	"io/fs"
	"math"
	"slices"

	"archload/cases/aging"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/live"
	"archload/cases/tree"
	"archload/mesh"
	"archload/viz"
	"archload/viz/scene"
)

// mostOpened is how many cases stay opened: two that are shown, and one to go back to. A whole body holds
// some hundred megabytes of factors.
const mostOpened = 3

// Answerer answers wants. It remembers the newest cases as they were opened, so that a
// key taken back does not cost a new start.
type Answerer struct {
	fsys    fs.FS
	options design.Options
	opened  map[string]*live.Live
	recent  []string // what they are remembered by, the one wanted last at the end

	onMovedShape bool // numbers settle to those on the moved shape
}

// NewAnswerer answers wants whose cases are files of fsys, or bundled.
func NewAnswerer(fsys fs.FS, o design.Options) *Answerer {
	return &Answerer{fsys: fsys, options: o, opened: map[string]*live.Live{}}
}

// OnMovedShape lets the numbers settle to those on the moved shape when the hand rests; until then, and in
// the picture, they are those on the shape as carved.
func (a *Answerer) OnMovedShape() { a.onMovedShape = true }

// Answer works out a want, starting from what was answered last; last may be
// nil. Faults of a case come out as cases.Faults.
func (a *Answerer) Answer(ctx context.Context, w Want, last *Shown) (*Shown, error) {
	if s := last.grasped(w); s != nil {
		return s, nil
	}
	s := &Shown{Want: w, Second: a.onMovedShape && !w.Linear}
	for i, d := range w.Designs {
		one, err := a.design(ctx, d, w, beside(s, d, last.Of(i)))
		if err == nil {
			err = one.settle(ctx, w, w.humid(i), a.options)
		}
		if err != nil {
			return nil, err
		}
		s.Designs = append(s.Designs, one)
	}
	a.forget(last, s)
	return s, s.compose(last)
}

// beside is what a design is answered from: from what was shown last, or from the first design of the
// same want where both are the same.
func beside(s *Shown, d Design, last *Answered) *Answered {
	if len(s.Designs) == 0 || !d.Same(s.Want.Designs[0]) || last != nil && SameKeys(last.Live.Keys(), d.Keys) && last.of == d.opened() {
		return last
	}
	return s.Designs[0]
}

// forget closes what has not been wanted for longest; what is shown and what is to be stays.
func (a *Answerer) forget(shown ...*Shown) {
	for _, s := range shown {
		for i := 0; s != nil && i < len(s.Designs); i++ {
			name := s.Designs[i].of
			a.recent = append(slices.DeleteFunc(a.recent, func(o string) bool { return o == name }), name)
		}
	}
	for len(a.recent) > mostOpened {
		delete(a.opened, a.recent[0])
		a.recent = a.recent[1:]
	}
}

// compose makes picture and numbers of the designs, all by the same theory: those of the cases solved afresh
// once each of them is.
func (s *Shown) compose(last *Shown) error {
	for _, d := range s.Designs {
		d.Report = d.quick
		if s.pitched() {
			d.Report = d.Pitch.Report
		}
		if err := d.at(s.Want, s.here()); err != nil {
			return err
		}
	}
	s.measure(last)
	s.Like = s.matched()
	if s.looksAs(last) {
		s.Scenes = last.Scenes
	} else {
		s.draw()
	}
	s.tabulate()
	return nil
}

// design answers one design.
func (a *Answerer) design(ctx context.Context, d Design, w Want, last *Answered) (*Answered, error) {
	hand, err := a.live(ctx, d, last)
	if err != nil {
		return nil, err
	}
	one := &Answered{Live: hand, of: d.opened()}
	if last != nil && last.Live == hand {
		*one = Answered{Live: hand, of: d.opened(), Full: last.Full, Events: last.Events, Sound: last.Sound, Air: last.Air, carved: last.carved, quick: last.quick}
	}
	if base := a.opened[d.opened()]; base != hand {
		one.base = base
	}
	one.keep(last, w, w.Linear || !a.onMovedShape)
	if err := one.fill(last); err != nil {
		return nil, err
	}
	return one, nil
}

// keep takes over what was worked out before and still serves.
func (d *Answered) keep(last *Answered, w Want, linear bool) {
	if last == nil || last.of != d.of {
		return
	}
	d.Before = last.Before
	if last.Live == d.Live {
		if last.Pitch.serves(1, linear) {
			d.Pitch = last.Pitch
		}
		for _, c := range []*Certain{last.Here, d.Pitch} {
			if c.serves(w.Load, linear) {
				d.Here = c
			}
		}
		d.Earlier = last.Earlier
	} else {
		d.Earlier = earlier(last)
	}
	if o := last.Origin; d.base == nil && o.serves(w.Load, linear) && o.Linear != nil { // all is taken back
		if d.Here = o; w.Load == 1 {
			d.Pitch = o
		}
	}
	for _, c := range []*Certain{last.Origin, last.Here} { // what is unchanged is the origin of what is changed
		if d.base != nil && c.serves(w.Load, linear) && (c == last.Origin || last.base == nil) {
			d.Origin = c
			break
		}
	}
}

// earlier are the numbers with spreads of a design that is changed now: the newest at each load.
func earlier(last *Answered) []*Certain {
	var out []*Certain
	for _, c := range append([]*Certain{last.Pitch, last.Here}, last.Earlier...) {
		if c != nil && c.Spread != nil && !slices.ContainsFunc(out, func(o *Certain) bool { return o.Load == c.Load }) && len(out) < 2 {
			out = append(out, c.numbers())
		}
	}
	return out
}

// fill answers a design at its full load, unless it is known.
func (d *Answered) fill(last *Answered) (err error) {
	if d.Full != nil {
		return nil
	}
	if d.Full, err = d.Live.At(1); err != nil {
		return err
	}
	d.Events = d.Live.Events()
	if last != nil && last.carved.Fits(d.Full) {
		d.carved = last.carved
	} else {
		d.carved = scene.NewSkeleton(d.Full)
	}
	return nil
}

// settle finds what takes longer than a hand waits: its tones, and where other air takes it.
func (d *Answered) settle(ctx context.Context, w Want, humid float64, o design.Options) error {
	switch {
	case w.Held:
		return nil
	case w.Field == scene.Tone:
		return d.sound(ctx, w, o)
	case w.Aired():
		return d.air(ctx, humid, o)
	}
	return nil
}

// before is the design of a file under a want, by the same theory as the design is shown.
func (d *Answered) before(w Want, sure bool) (*Before, error) {
	var s *design.Solution
	var err error
	b := &Before{}
	switch {
	case d.base == nil || sure && d.Origin == nil:
		return nil, nil
	case sure && d.Before != nil && d.Before.origin == d.Origin && d.Before.cut == w.Cut:
		return d.Before, nil
	case sure:
		s, b.Bridge = d.Origin.Solution, d.Origin.Report.Bridge
		b.origin, b.cut = d.Origin, w.Cut
	case d.Before != nil && d.Before.base == d.base && d.Before.load == w.Load && d.Before.cut == w.Cut:
		return d.Before, nil
	default:
		if s, err = d.base.At(w.Load); err != nil {
			return nil, err
		}
		b.base, b.load, b.cut = d.base, w.Load, w.Cut
		b.Bridge = answer.BridgeNow(s)
	}
	b.Sink = &scene.Before{Mesh: s.Top.Built.Mesh, Values: scene.Values(s, scene.Sink, scene.Outer)}
	edge, _ := answer.Outlines(s)
	if from, to, ok := cutLine(s.Top.Built.Case, w.Cut, edge); ok {
		cut := s.CutAlong(from, to)
		b.Cut = &cut
	}
	return b, nil
}

// live is the prepared design, on the cheapest way that is known.
func (a *Answerer) live(ctx context.Context, d Design, last *Answered) (*live.Live, error) {
	if last != nil && last.of == d.opened() {
		switch keys := last.Live.Keys(); {
		case SameKeys(keys, d.Keys):
			return last.Live, nil
		case within(keys, d.Keys):
			return last.Live.Set(ctx, d.Keys...)
		}
	}
	base := a.opened[d.opened()]
	if base == nil {
		var err error
		if base, err = live.Begin(ctx, a.fsys, d.Name, a.options); err != nil {
			return nil, err
		}
		a.opened[d.opened()] = base
	}
	if len(d.Keys) == 0 {
		return base, nil
	}
	return base.Set(ctx, d.Keys...)
}

// within says whether every key of a is set in b too, to whatever.
func within(a, b []tree.KeyValue) bool {
	for _, k := range a {
		found := false
		for _, o := range b {
			found = found || o.Key == k.Key
		}
		if !found {
			return false
		}
	}
	return true
}

// state sets what is shown at the want's load: sure, of the case solved afresh; else of the top in hand.
func (d *Answered) state(w Want, sure bool) (err error) {
	d.Gauges, d.Pins, d.Cut, d.FullCut, d.Flow, d.Pathless = nil, nil, nil, nil, nil, ""
	if sure {
		d.sure = true
		d.Now, d.Skeleton, d.Bridge = d.Here.Solution, d.Here.skeleton, d.Here.Report.Bridge
		return nil
	}
	d.Now, d.Skeleton, d.sure = d.Full, d.carved, false
	if w.Load < 1 {
		d.Now, err = d.Live.At(w.Load)
	}
	if err == nil {
		d.Bridge = answer.BridgeNow(d.Now)
	}
	return err
}

// readGauges reads the gauges of the case.
func (d *Answered) readGauges() {
	if c := d.Sure(); c != nil {
		d.Gauges = c.Report.Gauges
		return
	}
	for _, g := range d.Now.Top.Built.Case.Gauges {
		r, _ := answer.ReadingAt(d.Now, g.At)
		r.Name = g.Name
		d.Gauges = append(d.Gauges, r)
	}
}

// at works out everything that depends on the load, field, cut and pins.
func (d *Answered) at(w Want, sure bool) (err error) {
	if err := d.state(w, sure); err != nil {
		return err
	}
	if d.Before, err = d.before(w, sure); err != nil {
		return err
	}
	d.readGauges()
	for _, p := range w.Pins {
		r, inside := answer.ReadingAt(d.Now, p.At)
		r.Name = p.Name
		if !inside {
			r.Sink = math.NaN()
		}
		d.Pins = append(d.Pins, r)
	}
	edge, _ := answer.Outlines(d.Now)
	d.Drawn, _ = d.drawn(w)
	if from, to, ok := cutLine(d.Now.Top.Built.Case, w.Cut, edge); ok {
		cut := d.Drawn.CutAlong(from, to)
		d.Cut, d.FullCut = &cut, &cut
		if d.Full != d.Now && d.Drawn == d.Now {
			full := d.Full.CutAlong(from, to)
			d.FullCut = &full
		}
	}
	if w.Flow || w.Forces || w.Field == scene.LoadFlow {
		d.flow()
	}
	return nil
}

// flow finds the paths of the load at the want's load. Where they cannot be
// had, the rest of the picture still stands.
func (d *Answered) flow() {
	if d.Now.Flow == nil {
		now := *d.Now
		now.FindFlow()
		d.Now = &now
	}
	var err error
	if d.Flow, err = answer.FlowLines(d.Now); err != nil {
		d.Pathless = err.Error()
	} else if d.Flow == nil {
		d.Pathless = "no load presses down, so there are no paths"
	}
}

// values of the want's field over a design, at full load and now; at the cells
// of the foot if it lies there.
func (d *Answered) values(w Want, s *design.Solution) []float64 {
	if w.Field.OnFoot() {
		return scene.FootValues(s, w.Field)
	}
	return scene.Values(s, w.Field, w.face())
}

// measure finds the field's values and the scales that they are drawn by; last is
// what was shown before, if anything.
func (s *Shown) measure(last *Shown) {
	w := s.Want
	var ranges, reach [][2]float64
	s.values = make([][]float64, len(s.Designs))
	for i, d := range s.Designs {
		now, _ := d.drawn(w)
		s.values[i] = d.values(w, now)
		r := scene.Range(now, w.Field, s.values[i])
		if back := s.backValues(i); back != nil {
			r = scene.Range(now, w.Field, back)
		}
		ranges, reach = append(ranges, r, d.steadyRange(w)), append(reach, r)
	}
	s.reach = joined(reach)
	s.Scales = s.fresh(ranges).kept(last, w)
}

// backValues is the field of design i on its back, where that is seen.
func (s *Shown) backValues(i int) []float64 {
	if !s.Want.Behind {
		return nil
	}
	now, _ := s.Designs[i].drawn(s.Want)
	return scene.BackValues(now, s.Want.Field, s.Want.face())
}

// Drawn is the same with its movements and arrows drawn by other scales: what lies
// between two while one goes over into the other.
func (s *Shown) Drawn(by Scales) *Shown {
	out := *s
	out.Enlarge, out.Arrow = by.Enlarge, by.Arrow
	out.draw()
	return &out
}

// draw builds the scenes.
func (s *Shown) draw() {
	w := s.Want
	s.Scenes = nil
	if w.Field == scene.Tone {
		s.Scenes = s.Swung(1)
		return
	}
	if len(s.Designs) == 2 && w.Arrange == Difference && s.values[0] != nil && !w.Field.OnFoot() && w.Field != scene.Humidity {
		s.Scenes = []*scene.Scene{s.difference(s.values)}
		return
	}
	for i, d := range s.Designs {
		now, skeleton := d.drawn(w)
		s.Scenes = append(s.Scenes, skeleton.Build(scene.Show{
			Solution: now, Statement: s.airWords(d), Behind: w.Behind, Field: w.Field, Face: w.face(), Values: s.values[i], Enlarge: s.Enlarge, Range: &s.Range, Before: d.sinkBefore(w),
			Load: w.Load, Strings: w.Strings, Flow: s.lines(d), Forces: s.arrows(d), Worst: s.worst(d), Pins: pinsOf(w.Pins, i), Cut: d.cutEnds(),
		}))
	}
	for i, d := range s.Designs {
		if w.Aired() && d.Air != nil {
			s.Scenes[i].Title = d.airTitle(d.Now.Top.Built.Case.Title)
		}
	}
	s.strips()
}

// leastGap is the end of the legend of a gap at least, mm.
const leastGap = 0.02

// steadyRange is the range of the want's field at full load, and of a gap what
// was cut away: the legend must not run while the load rises.
func (d *Answered) steadyRange(w Want) [2]float64 {
	switch {
	case w.Field == scene.RemainingGap:
		deepest := leastGap
		for _, c := range answer.FootColumns(d.Full) {
			deepest = math.Max(deepest, c.Relief)
		}
		return [2]float64{0, deepest}
	case w.Behind && d.Full.Top.Built.Back != nil:
		return scene.Range(d.Full, w.Field, scene.BackValues(d.Full, w.Field, w.face()))
	case d.Full == d.Now || w.Field == scene.LoadFlow || w.Aired():
		return [2]float64{}
	}
	return scene.Range(d.Full, w.Field, d.values(w, d.Full))
}

// lines of force, if they are wanted.
func (s *Shown) lines(d *Answered) *answer.FlowReport {
	if !s.Want.Flow && s.Want.Field != scene.LoadFlow {
		return nil
	}
	return d.Flow
}

// arrows of the forces, if they are wanted.
func (s *Shown) arrows(d *Answered) *scene.Forces {
	if !s.Want.Forces || s.Want.Field == scene.Humidity { // which is a movement between two states
		return nil
	}
	share := s.Want.Load
	if d.sure { // a case of its own, whose strings pull with that share
		share = 1
	}
	f := &scene.Forces{Flow: d.Flow, PerNewton: s.Arrow, Share: share}
	if s.Want.Field.OnFoot() { // the edge is beyond the picture
		f.Flow = nil
	}
	return f
}

// worst is the mark at the place where most of the strength is used, where that is shown.
func (s *Shown) worst(d *Answered) *scene.Mark {
	if s.Want.Field != scene.StrengthUsed || s.Want.Load < 1 {
		return nil
	}
	if s.Want.Aired() {
		return d.Air.worst()
	}
	return d.Worst()
}

// Worst is the place where most of the strength is used at full load; nil as long as it
// is not known.
func (d *Answered) Worst() *scene.Mark {
	if d.Report == nil {
		return nil
	}
	return worstOf(&d.Report.Strength)
}

// worstOf is the mark at the place that a report of the strength names; nil where it knows none.
func worstOf(r *answer.StrengthReport) *scene.Mark {
	if r == nil || !r.Used.Known() {
		return nil
	}
	return &scene.Mark{At: mesh.Point{float64(r.X), float64(r.Y)}, Inside: r.Surface == "inner",
		Text: fmt.Sprintf("most: %.0f %%, %s face", 100*float64(r.Used), r.Surface)}
}

// difference is the first design in the colours of what the second has more.
func (s *Shown) difference(values [][]float64) *scene.Scene {
	a, b := s.Designs[0], s.Designs[1]
	more := viz.Difference(a.Now, b.Now, values[0], values[1])
	most := greatest(more, differenceShare)
	if s.Want.Field == scene.Sink {
		most = greatest(more, 1)
	}
	known := slices.DeleteFunc(slices.Clone(more), math.IsNaN)
	if len(known) == 0 {
		known = []float64{0}
	}
	shape, words := a.Now, ""
	if s.Want.Enlarge > 0 && len(a.Now.Result.U) == len(b.Now.Result.U) { // the picture moves as its colours say
		shape = aging.Moved(a.Now, b.Now)
		words = fmt.Sprintf("difference in %s, %s; drawn is what B moves more than A, %g times as large", s.Want.Field.Name(), scene.LoadWords(a.Now, s.Want.Load), s.Enlarge)
	}
	return a.Skeleton.Build(scene.Show{
		Solution: shape, Statement: words, Load: s.Want.Load, Field: s.Want.Field, Face: s.Want.face(), Enlarge: s.Enlarge, Strings: s.Want.Strings,
		Values: more, Difference: true, Range: &[2]float64{math.Max(-most, slices.Min(known)), math.Min(most, slices.Max(known))}, Cut: a.cutEnds(), Pins: s.Want.Pins,
	})
}

// differenceShare is the share of the nodes whose difference the legend
// covers: the peaks of stress and load flow at the feet would wash out the
// rest.
const differenceShare = 0.99

// greatest is the size that a share of the values does not exceed.
func greatest(values []float64, share float64) float64 {
	var sizes []float64
	for _, v := range values {
		if !math.IsNaN(v) {
			sizes = append(sizes, math.Abs(v))
		}
	}
	if len(sizes) == 0 {
		return 0
	}
	slices.Sort(sizes)
	return sizes[int(share*float64(len(sizes)-1))]
}

// sinkBefore is the sink of the design as its file says, where sink is shown and the hand has changed
// something: a second design, and that of a lesson, is what a change is seen by.
func (d *Answered) sinkBefore(w Want) *scene.Before {
	if d.Before == nil || w.Field != scene.Sink || w.Behind || w.Linear || len(w.Designs) > 1 {
		return nil
	}
	return d.Before.Sink
}

// cutEnds are the ends of the section's line; equal without one.
func (d *Answered) cutEnds() (ends [2]mesh.Point) {
	if d.Cut != nil {
		ends = [2]mesh.Point{d.Cut.From, d.Cut.To}
	}
	return ends
}
