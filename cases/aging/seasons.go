package aging

import (
	"context"
	"fmt"
	"strings"

	"archload/cases"
	"archload/cases/answer"
	"archload/cases/design"
	"archload/cases/season"
	"archload/cases/tree"
	"archload/materials"
)

// step is one season to be computed.
type step struct {
	report SeasonReport
	change change
}

// Seasons computes what each season of a case does to it; of the wish counts by which theory. On the moved shape
// the made state is what a solve tells of the case in that air, and contact and friction go on from there. It is a
// fault at season if there is none, and at the key of a wood whose swelling is not known. Other errors are those of a
// solve. With the options' NoError the mesh's share of the error is not estimated; it is judged by linear theory.
func Seasons(ctx context.Context, c *cases.Case, w Wish, o design.Options) (*SeasonsReport, error) {
	r, err := seasons(ctx, nil, c, w, o)
	if err != nil || o.NoError {
		return r, err
	}
	o.Say("error estimate")
	coarse := o
	coarse.Progress, coarse.Refine = nil, half(o.Refine)
	if rough, err := seasons(ctx, nil, c, Wish{}, coarse); err == nil {
		r.estimate(rough)
	} else if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	return r, nil
}

// half is half a refinement, 0 being 1.
func half(refine float64) float64 {
	if refine == 0 {
		refine = 1
	}
	return refine / 2
}

// seasons computes them on the triangles of a prepared top if there is one.
func seasons(ctx context.Context, like *design.Top, c *cases.Case, w Wish, o design.Options) (*SeasonsReport, error) {
	if c.Season == nil {
		return nil, c.Fault("season", "the case has no seasons; want a table [season] with made = { humidity = 45 } and to = [{ name = \"winter\", humidity = 25 }], or moisture = -3")
	}
	o.Swells = true
	if err := swellingKnown(c); err != nil {
		return nil, err
	}
	steps, made := stepsOf(c.Season)
	r := &SeasonsReport{Format: cases.Format, Units: cases.UnitsNote + "; moisture in percent of the dry wood", Title: c.Title, Order: orderWord(w),
		Seasons: []SeasonReport{}, Held: heldWords(c), Cautions: cautions(c, w)}
	sol, err := solved(ctx, like, c.WithCards(airOf(c)), o)
	if err != nil {
		return nil, err
	}
	was, err := stands(ctx, sol, w.SecondOrder)
	if err != nil {
		return nil, fmt.Errorf("in the made state: %w", err)
	}
	r.Nodes = len(sol.Top.Built.Model.Nodes)
	if r.Made = made; made != nil {
		made.fill(was.shown())
	}
	from := was
	for _, s := range steps {
		o.Say(s.report.Name)
		now, err := s.solve(ctx, from, was, c, o)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", s.report.Name, err)
		}
		if c.Season.Cycle {
			from = now
		}
		s.report.fill(was, now, s.change)
		r.Seasons = append(r.Seasons, s.report)
	}
	return r, nil
}

// solve takes the design to the season, from the made state or from another season.
func (s *step) solve(ctx context.Context, from, made state, c *cases.Case, o design.Options) (state, error) {
	if c.Season.Strings == "length" && made.linear.Top.Built.Bridge != nil {
		return s.keepLength(ctx, from, made, c, o)
	}
	return onward(ctx, from, c, s.change, o)
}

// solved answers a case: on the triangles of a prepared top if there is one, else from scratch.
func solved(ctx context.Context, like *design.Top, c *cases.Case, o design.Options) (*design.Solution, error) {
	var top *design.Top
	var err error
	if like != nil {
		top, err = design.Adapt(ctx, like, c, o)
	} else {
		top, err = design.Prepare(ctx, c, o)
	}
	if err != nil {
		return nil, err
	}
	return top.Answer()
}

// airOf is how the woods of a case change from the air of their cards to that in which it was made; nil if seasons
// do not tell it.
func airOf(c *cases.Case) func(materials.Card) materials.Card {
	if c.Season == nil || len(c.Season.To) == 0 {
		return nil
	}
	return at(materials.Moisture(c.Season.Made.Humidity, c.Season.Made.Temperature))
}

// at is a wood's card at a moisture.
func at(moisture float64) func(materials.Card) materials.Card {
	return func(card materials.Card) materials.Card { return card.Wetted(moisture) }
}

// stepsOf are the seasons to compute and the made state; nil where no air is given.
func stepsOf(s *season.Season) ([]step, *MadeReport) {
	var made *MadeReport
	if s.Made != nil {
		made = &MadeReport{Humidity: s.Made.Humidity, Temperature: s.Made.Temperature,
			Moisture: materials.Moisture(s.Made.Humidity, s.Made.Temperature)}
	}
	if len(s.To) == 0 {
		outer, inner := s.MoistureOuter, s.MoistureInner
		if s.Moisture != nil {
			outer, inner = s.Moisture, s.Moisture
		}
		mean := (*outer + *inner) / 2
		r := SeasonReport{Name: fmt.Sprintf("moisture %+.3g", mean), Humidity: answer.None(), Temperature: answer.None(), Moisture: answer.Num(mean)}
		if made != nil {
			r.Moisture += answer.Num(made.Moisture)
		}
		return []step{{r, change{outer: *outer, inner: *inner}}}, made
	}
	var out []step
	for i, to := range s.To {
		m := materials.Moisture(to.Humidity, to.Temperature)
		name := to.Name
		if name == "" {
			name = fmt.Sprintf("season %d", i+1)
		}
		out = append(out, step{SeasonReport{Name: name, Humidity: answer.Num(to.Humidity), Temperature: answer.Num(to.Temperature), Moisture: answer.Num(m)},
			change{cards: at(m), outer: m - made.Moisture, inner: m - made.Moisture}})
	}
	if s.Cycle {
		out = append(out, step{SeasonReport{Name: "made again", Humidity: answer.Num(made.Humidity), Temperature: answer.Num(made.Temperature),
			Moisture: answer.Num(made.Moisture)}, change{cards: at(made.Moisture)}})
	}
	return out, made
}

// known wants these keys of the card of every wood of the case; want says what is to be known, of a wood
// and of the keys that it lacks.
func known(c *cases.Case, want string, keys ...string) error {
	var faults tree.Faults
	for _, key := range tree.SortedKeys(c.Cards) {
		card := c.Cards[key]
		if missing := card.Missing(keys...); len(missing) > 0 {
			faults = append(faults, c.Fault(key, want, card.Name, strings.Join(missing, ", ")))
		}
	}
	if len(faults) == 0 {
		return nil
	}
	return faults
}

// swellingKnown wants the swelling of every wood of the case.
func swellingKnown(c *cases.Case) error {
	return known(c, "the swelling of %q is not known; want %s, the strain for each percentage point of moisture, as in swell_L = 0.0001, swell_R = 0.0015, swell_T = 0.0026",
		"swell_L", "swell_R", "swell_T")
}

// heldWords say what movements are relative to.
func heldWords(c *cases.Case) string {
	if c.SwellsAlone() {
		return "the plate lies free: movements are relative to the plan's origin at the height z = 0, without its turning as a whole"
	}
	if c.Rim.Support == "body" {
		return "the stand that holds the blocks where they meet the back"
	}
	return "the rim's support"
}

// blockWords say what the blocks are of.
func blockWords(c *cases.Case) string {
	wood := c.Body.BlockWood
	if wood == "" {
		wood = c.Plate.Wood
	}
	return wood + ", grain " + c.Body.BlockGrain
}

// cautions stand wherever numbers of seasons do.
func cautions(c *cases.Case, w Wish) []string {
	out := []string{
		"moisture is taken as even in all wood, or linear from face to face; wood that dries slowly, over weeks, relaxes a third to two thirds of the stress (from memory), which is not in these numbers: read stress and strength used as the most that can be",
	}
	if c.Bridge != nil && !w.SecondOrder {
		out = append(out, "the forces act on the shape as carved: --second-order takes each season on its moved shape, which adds or takes 5 to 13 % on a guitar's body, and up to a quarter on a plate whose edge cannot give way at all")
	}
	if c.Rim.Support == "hinged" || c.Rim.Support == "clamped" {
		out = append(out, "the edge is held and does not swell with the plate: on sides that give way the arch moves less")
	}
	if c.Season.Strings == "length" {
		out = append(out, "strings keep their length: what the neck bends by itself, and steel that grows with warmth, are not in their tension")
	}
	if c.Rim.Support == "body" {
		out = append(out, "the blocks are rigid ("+blockWords(c)+"); they swell as block, plates and side glued together would in the mean, by their stiffness: the pull right beside them is rough")
	}
	if c.Rim.Support == "elastic" {
		out = append(out, "the sides' lower edge is held still: the back's own swelling is not in these numbers")
	}
	return append(out, "what is told of cracks and glue is an indication: your own judgement of the wood, of its joints and of how slowly it may dry comes first")
}
