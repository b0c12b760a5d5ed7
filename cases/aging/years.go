package aging

import (
	"context"
	"math"
	"slices"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/tree"
	"archload/materials"
)

// The range of creep, times that of the cards: half of it was seen in dry wood under little load (from
// memory); 4/3 is service class 2 of EN 1995-1-1, table 3.2, 0.80, over class 1, 0.60.
const (
	leastCreep = 0.5
	mostCreep  = 4.0 / 3
)

// mostRatio is how many times as old a design may be from one step to the next. Contact is taken as changing
// straight in between.
const mostRatio = 25

// stage is the design at one age of its path.
type stage struct {
	years float64
	sol   *design.Solution
	read  [numRead]float64
}

// Years lets a design stand under its strings and loads. It is a fault at the key of a wood whose creep is
// not known. Other errors are those of a solve.
//
// Each step is elastic, with the moduli that the load's whole duration leaves (quasi-elastic), and the contact
// followed from the step before. Less and more creep are read off the same path: a wood that creeps by a share s of the
// card's law is after t years where the card's is after t s^(1/n), n being the plate's.
func Years(ctx context.Context, c *cases.Case, ages []Age, o design.Options) (*YearsReport, error) {
	if err := creepKnown(c); err != nil {
		return nil, err
	}
	first, err := solved(ctx, c, o)
	if err != nil {
		return nil, err
	}
	r := &YearsReport{Format: cases.Format, Units: cases.UnitsNote, Title: c.Title, Nodes: len(first.Top.Built.Model.Nodes),
		Years: []AgeReport{}, Moments: []MomentReport{}, Range: [2]float64{leastCreep, mostCreep}, Creep: woodsCreep(c), Cautions: yearsCautions()}
	n := c.Cards["plate.wood"].Creep.Power
	path := []stage{{0, first, numbers(first)}}
	for _, t := range stepsTo(ages, math.Pow(mostCreep, 1/n)) {
		last := path[len(path)-1]
		o.Say(tellAge(t))
		now, err := onward(ctx, last.sol, c, change{cards: func(card materials.Card) materials.Card { return card.Crept(t, 1) }}, o)
		if err != nil {
			return nil, err
		}
		path = append(path, stage{t, now, numbers(now)})
		r.noteMoments(last, path[len(path)-1], n)
	}
	w := walk{path: path, power: n}
	r.Strung = w.report(Age{"strung", 0})
	for _, a := range ages {
		r.Years = append(r.Years, w.report(a))
	}
	r.noteFoot(first)
	return r, nil
}

// creepKnown wants the creep of every wood of the case.
func creepKnown(c *cases.Case) error {
	return known(c, "the creep of %q is not known; want %s: a and n of 1 + a tⁿ, t in years, as in creep_along = 0.2, creep_power = 0.28",
		"creep_along", "creep_across", "creep_shear", "creep_rolling_shear", "creep_power")
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
func (r *YearsReport) noteMoments(from, to stage, n float64) {
	st := to.sol.Result.State
	if st == nil {
		return
	}
	a, b := math.Pow(from.years, n), math.Pow(to.years, n)
	for _, e := range st.Events {
		at := to.sol.Top.Built.Bridge.Pads[e.Pad].At
		r.Moments = append(r.Moments, MomentReport{Years: math.Pow(a+e.Load*(b-a), 1/n), X: at[0], Y: at[1], Closes: e.Closes, pad: int(e.Pad)})
	}
}

// noteFoot finds when the stations of the foot's middle third come to carry; those beyond the last age asked for
// do not count.
func (r *YearsReport) noteFoot(first *design.Solution) {
	b := first.Top.Built
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
			if first.Result.State.Closed[i] {
				from[x] = 0
			}
		}
	}
	for _, e := range first.Result.State.Events {
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
func yearsCautions() []string {
	return []string{
		"an indication: wood of one species creeps by half to twice the mean, damp air that comes and goes makes it creep more than steady air (EN 1995-1-1 counts up to three times as much), and heat more still",
		"each age is taken as elastic with softened wood; what stress hands over from one part to another in the meantime is met to a few percent",
		"strings are kept at their tension; glue does not creep in these numbers",
	}
}

// tellAge says for the progress which age is worked on.
func tellAge(years float64) string {
	if years < 1 {
		return "days"
	}
	return "years"
}
