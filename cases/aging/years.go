package aging

import (
	"context"
	"fmt"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/tree"
	"archload/fem/contact"
	"archload/materials"
)

// mostRatio is how many times as old a design may be from one step to the next. Contact is taken as changing
// straight in between.
const mostRatio = 25

// stage is the design at one age of its path.
type stage struct {
	years  float64
	stands *state           // nil but for those that meet seasons: a factor is large
	told   AgeReport        // without age, ranges and what depends on them: on the moved shape if that is asked for
	events []footEvent      // on the way from the stage before
	read   [numRead]float64 // of what is told
	linear [numRead]float64
	second bool
}

// footEvent is a point of the foot that comes to bear or lets go when so much of the change between two stages is
// made.
type footEvent struct {
	share float64
	at    MomentReport
}

// Wish is what years are asked for.
type Wish struct {
	Ages        []Age // rising
	SecondOrder bool  // each age in equilibrium on its moved shape
}

// Years lets a design stand under its strings and loads, in the air in which it was made if the case has seasons,
// and takes it at each age to each season. It is a fault at the key of a wood whose creep is
// not known. Other errors are those of a solve.
//
// Each step is elastic, with the moduli that the load's whole duration leaves (quasi-elastic), and the contact
// followed from the step before. Less and more creep are read off the same path: a wood that creeps by a share s of the
// card's law is after t years where the card's is after t s^(1/n), n being the plate's. On the moved shape each age is
// in equilibrium with its softened wood, and contact and seasons go on from there.
func Years(ctx context.Context, c *cases.Case, w Wish, o design.Options) (*YearsReport, error) {
	if c.Season != nil {
		if err := swellingKnown(c); err != nil {
			return nil, err
		}
	}
	l, err := live(ctx, nil, c, w, o)
	if err != nil {
		return nil, err
	}
	r := l.report(w)
	if c.Season != nil {
		err = l.meetSeasons(r, w)
	}
	return r, err
}

// life is a design with its path through the years.
type life struct {
	ctx  context.Context
	o    design.Options
	c    *cases.Case // as its file tells
	walk walk

	built *design.Built  // as it was strung
	foot  *contact.State // then; nil without a bridge
}

// live follows a design through the years, on the triangles of a prepared top if there is one.
func live(ctx context.Context, like *design.Top, c *cases.Case, w Wish, o design.Options) (*life, error) {
	if err := creepKnown(c); err != nil {
		return nil, err
	}
	l := &life{ctx: ctx, o: o, c: c, walk: walk{power: c.Cards["plate.wood"].Creep.Power}}
	sol, err := solved(ctx, like, c.WithCards(airOf(c)), o)
	if err != nil {
		return nil, err
	}
	now, err := stands(ctx, sol, w.SecondOrder)
	if err != nil {
		return nil, err
	}
	l.add(0, now, w)
	l.built, l.foot = sol.Top.Built, now.shown().Result.State
	for _, t := range stepsTo(w.Ages, math.Pow(materials.MostCreep, 1/l.walk.power)) {
		o.Say(tellAge(t))
		if now, err = onward(ctx, now, c, change{cards: l.crept(airOf(c), t)}, o); err != nil {
			return nil, fmt.Errorf("after %.3g years: %w", t, err)
		}
		l.add(t, now, w)
	}
	return l, ctx.Err()
}

// crept is how woods change from their cards to some air and then by years of load.
func (l *life) crept(air func(materials.Card) materials.Card, years float64) func(materials.Card) materials.Card {
	return func(card materials.Card) materials.Card {
		if air != nil {
			card = air(card)
		}
		return card.Crept(years, 1)
	}
}

// add notes the design at an age.
func (l *life) add(years float64, now state, w Wish) {
	told := now.shown()
	s := stage{years: years, read: numbers(told), events: footEvents(told), second: w.SecondOrder}
	s.linear = s.read
	if s.second {
		s.linear = numbers(now.linear)
	}
	whole := answer.Summarize(told)
	s.told = AgeReport{Bridge: answer.BridgeNow(told), Gauges: whole.Gauges, Energy: whole.Energy.Total, Error: whole.Error}
	if l.c.Season != nil && (years == 0 || slices.ContainsFunc(w.Ages, s.isAt)) {
		s.stands = &now
	}
	l.walk.path = append(l.walk.path, s)
}

// isAt says whether the stage is of an age that was asked for.
func (s *stage) isAt(a Age) bool { return math.Abs(s.years-a.Years) <= 1e-12*a.Years }

// footEvents are those of a solution.
func footEvents(s *design.Solution) (out []footEvent) {
	st := s.Result.State
	if st == nil {
		return nil
	}
	for _, e := range st.Events {
		at := s.Top.Built.Bridge.Pads[e.Pad].At
		out = append(out, footEvent{e.Load, MomentReport{X: at[0], Y: at[1], Closes: e.Closes, pad: int(e.Pad)}})
	}
	return out
}

// report tells each age.
func (l *life) report(w Wish) *YearsReport {
	r := &YearsReport{Format: cases.Format, Units: cases.UnitsNote, Title: l.c.Title, Nodes: len(l.built.Model.Nodes), Order: orderWord(w),
		Years: []AgeReport{}, Moments: []MomentReport{}, Range: [2]float64{materials.LeastCreep, materials.MostCreep}, Creep: woodsCreep(l.c), Cautions: yearsCautions(l.c, w)}
	for k := range l.walk.path[1:] {
		r.noteMoments(&l.walk.path[k], &l.walk.path[k+1], l.walk.power)
	}
	r.Strung = l.walk.report(Age{"strung", 0})
	for _, a := range w.Ages {
		r.Years = append(r.Years, l.walk.report(a))
	}
	r.noteFoot(l.built, l.foot)
	return r
}

// orderWord says by which theory the ages are told.
func orderWord(w Wish) string {
	if w.SecondOrder {
		return "second"
	}
	return "linear"
}

// creepKnown wants the creep of every wood of the case.
func creepKnown(c *cases.Case) error {
	return known(c, "the creep of %q is not known; want %s: a and n of 1 + a tⁿ, t in years, as in creep_along = 0.2, creep_power = 0.28",
		materials.CreepKeys()...)
}

// woodsCreep lists the creep of each wood once.
func woodsCreep(c *cases.Case) []CreepReport {
	var out []CreepReport
	for _, key := range tree.SortedKeys(c.Cards) {
		if k := creepOf(c.Cards[key]); !slices.Contains(out, k) {
			out = append(out, k)
		}
	}
	return out
}

// stepsTo are the ages to be solved, rising: those asked for, the last one stretched as by more creep, and what
// lies between where they are far apart.
func stepsTo(ages []Age, stretch float64) []float64 {
	var out []float64
	add := func(t float64) {
		if n := len(out); n > 0 && t > out[n-1] {
			from := out[n-1]
			for k, count := 1, int(math.Ceil(math.Log(t/from)/math.Log(mostRatio))); k < count; k++ {
				out = append(out, from*math.Pow(t/from, float64(k)/float64(count)))
			}
		}
		out = append(out, t)
	}
	const day = 1 / 365.25
	if ages[0].Years > day {
		add(day)
	}
	for _, a := range ages {
		add(a.Years)
	}
	add(ages[len(ages)-1].Years * stretch)
	return out
}

// noteMoments tells the points of the foot that came to bear or let go between two stages, at the age by which
// so much of the growth of tⁿ between them has passed.
func (r *YearsReport) noteMoments(from, to *stage, n float64) {
	a, b := math.Pow(from.years, n), math.Pow(to.years, n)
	for _, e := range to.events {
		e.at.Years = math.Pow(a+e.share*(b-a), 1/n)
		r.Moments = append(r.Moments, e.at)
	}
}

// noteFoot finds when the stations of the foot's middle third come to carry; those beyond the last age asked for
// do not count.
func (r *YearsReport) noteFoot(b *design.Built, strung *contact.State) {
	last := r.Years[len(r.Years)-1].Years
	r.Moments = slices.DeleteFunc(r.Moments, func(m MomentReport) bool { return m.Years > last })
	if b.Bridge == nil {
		return
	}
	const middleThird = 1
	from := map[float64]float64{} // by station: years
	for i := range b.Bridge.Pads {
		if x := b.Bridge.Cells[i].X; answer.Third(b.Bridge, i) == middleThird {
			if _, known := from[x]; !known {
				from[x] = math.Inf(1)
			}
			if strung.Closed[i] {
				from[x] = 0
			}
		}
	}
	for _, e := range strung.Events {
		if x := b.Bridge.Cells[e.Pad].X; e.Closes && math.IsInf(from[x], 1) {
			from[x] = 0 // it came to bear as the strings came on
		}
	}
	for _, m := range r.Moments {
		x := b.Bridge.Cells[m.pad].X
		if t, in := from[x]; in && m.Closes {
			from[x] = min(t, m.Years)
		}
	}
	touches, closes := math.Inf(1), 0.0
	for _, t := range from {
		touches, closes = min(touches, t), max(closes, t)
	}
	r.Foot = &FootYears{MiddleTouches: answer.Num(touches), MiddleCloses: answer.Num(closes)}
}

// yearsCautions stand wherever numbers of years do.
func yearsCautions(c *cases.Case, w Wish) []string {
	out := []string{
		"an indication: wood of one species creeps by half to twice the mean, damp air that comes and goes makes it creep more than steady air (EN 1995-1-1 counts up to three times as much), and heat more still",
		"each age is taken as elastic with softened wood; what stress hands over from one part to another in the meantime is met to a few percent",
		"strings are kept at their tension; glue does not creep in these numbers",
	}
	if slices.ContainsFunc(c.Posts, func(p cases.Post) bool { return p.Wood == "" }) {
		out = append(out, "a post without a wood keeps its stiffness: with wood = \"sitka-spruce\", say, it creeps along its grain")
	}
	if !w.SecondOrder {
		out = append(out, "the forces act on the shape as carved: --second-order takes each age on its moved shape, which sinks further")
	}
	if c.Season != nil {
		out = append(out, "a season that meets an age meets wood as soft as the age has left it, which slow seasons come near: what a quick change does to wood stands in the seasons of the new design, and more strength is used then")
	}
	return out
}

// tellAge says for the progress which age is worked on.
func tellAge(years float64) string {
	if years < 1 {
		return "days"
	}
	return "years"
}
