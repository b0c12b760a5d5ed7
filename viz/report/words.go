package report

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"archload/cases/answer"
	"archload/cases/bench/effect"
	"archload/cases/design"
	"archload/cases/quantity"
	"archload/cases/say"
	"archload/cases/stability"
	"archload/cases/study"
)

// dec writes a number with so many digits behind the point and a true minus.
func dec(v float64, digits int) string {
	s := fmt.Sprintf("%.*f", digits, v)
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-")
	}
	return strings.Replace(s, "-", "−", 1)
}

// together keeps a number and its unit on one line.
func together(words []string) []string {
	joint := regexp.MustCompile(`(\d) (%|mm|N|MPa)\b?`)
	out := make([]string, len(words))
	for i, w := range words {
		out[i] = joint.ReplaceAllString(w, "$1\u00a0$2")
	}
	return out
}

// decNum is dec for a number that may not be had.
func decNum(v answer.Num, digits int, missing string) string {
	if !v.Known() {
		return missing
	}
	return dec(float64(v), digits)
}

// place writes a place as a maker would point at it: from the bridge's middle,
// or from the drawing's origin if there is no bridge.
func (d *subject) place(x, y float64) string {
	from := "the drawing's origin"
	if b := d.s.Top.Built.Case.Bridge; b != nil {
		x, y, from = x-b.At[0], y-b.At[1], "the bridge's middle"
	}
	side := func(v float64, positive, negative string) string {
		switch {
		case math.Abs(v) < 0.5:
			return ""
		case v < 0:
			return dec(-v, 0) + " mm " + negative
		}
		return dec(v, 0) + " mm " + positive
	}
	a, b := side(x, "to the treble side", "to the bass side"), side(y, "toward the neck", "toward the tail")
	switch {
	case a == "" && b == "":
		return "at " + from
	case a != "" && b != "":
		a += " and "
	}
	return a + b + " from " + from
}

// sure writes both ranges of an answer.
func sure(a study.Answer) string {
	return fmt.Sprintf("%s from plank to plank; mesh %s", woodRange(a), meshRange(a))
}

func meshRange(a study.Answer) string {
	if !a.Mesh.Known() {
		return "not estimated"
	}
	return fromTo(a.Value-a.Mesh, a.Value+a.Mesh, a)
}

func woodRange(a study.Answer) string {
	if !a.Wood.Known() {
		return "not known"
	}
	return fromTo(a.Least, a.Most, a)
}

// fromTo writes a range; one that both ends round to as that number.
func fromTo(least, most answer.Num, a study.Answer) string {
	lo, hi := dec(float64(least), a.Digits), dec(float64(most), a.Digits)
	if lo == hi {
		return lo + " " + shortUnit(a)
	}
	return lo + " to " + hi + " " + shortUnit(a)
}

// shortUnit is the unit without what it is a share of.
func shortUnit(a study.Answer) string {
	unit, _, _ := strings.Cut(a.Unit, " ")
	return unit
}

// subject is one design of a report.
type subject struct {
	name    string
	s       *design.Solution
	r       *answer.Report
	spread  *study.Spread // nil: without ranges
	answers []study.Answer
	effect  *effect.Report    // what measurements did; nil: nothing was measured
	stands  *stability.Stands // nil: not asked
}

func (d *subject) answer(key string) (study.Answer, bool) {
	for _, a := range d.answers {
		if a.Key == key {
			return a, true
		}
	}
	return study.Answer{}, false
}

// number writes a quantity of the design with as many digits as it is worth.
func (d *subject) number(key string) string {
	q := quantity.Of(key)
	v := q.Get(d.r)
	switch {
	case !v.Known() && q.Event:
		return "never"
	case !v.Known():
		return "–"
	}
	return dec(float64(v), q.Digits)
}

// lead says the answers in words.
func (d *subject) lead() []string {
	var out []string
	out = append(out, d.sayLoad())
	if b := d.r.Bridge; b != nil {
		out = append(out, d.saySink(b), d.sayMiddle(b))
	} else if a, ok := d.answer("most_sunk"); ok {
		out = append(out, fmt.Sprintf("The top sinks most by %s mm, %s (%s).", d.number("most_sunk"),
			d.place(d.r.Top.MostSunk.X, d.r.Top.MostSunk.Y), sure(a)))
	}
	if a, ok := d.answer("strength_used"); ok && a.Value.Known() {
		out = append(out, d.sayStrength(a))
	}
	if a, ok := d.answer("foot_used"); ok && a.Value.Known() {
		out = append(out, fmt.Sprintf("The foot presses with at most %s MPa, averaged over 8 mm of it: %s %% of what crushes the wood across the grain (%s). Single spots take up to %s MPa.",
			d.number("foot_pressure"), d.number("foot_used"), sure(a), dec(d.r.Bridge.HighestSpot(), 2)))
	}
	out = append(out, fmt.Sprintf("The edge holds it up with %s N at the neck, %s N at the tail, %s N along the bass side and %s N along the treble side.",
		d.number("edge_neck"), d.number("edge_tail"), d.number("edge_bass"), d.number("edge_treble")))
	if x := d.r.Decades.Sink; x[0].Known() && x[1].Known() {
		out = append(out, d.sayDecades(x))
	}
	if d.stands != nil {
		out = append(out, strings.Join(d.standing(), " "))
	}
	return out
}

// standing says how the design stands on its moved shape.
func (d *subject) standing() (out []string) {
	if m := d.stands.Moved; m != nil && m.Second.Share.Known() {
		out = append(out, "All this on the shape as it has moved: "+say.ByMovement(float64(m.Second.Share))+".")
	}
	return append(out, say.GivesWay(d.stands.Giving))
}

// sayDecades spans from a stiff plank that creeps little to a soft one that creeps
// much.
func (d *subject) sayDecades(sink [2]answer.Num) string {
	const why = "an indication, no more (wood creeps: by half of what its card tells to a third more, in fifty years)"
	a, ok := d.answer("bridge_sink")
	if !ok {
		a, ok = d.answer("most_sunk")
	}
	if !ok || !a.Wood.Known() {
		return fmt.Sprintf("Over decades expect a sink of %s to %s mm in wood of average stiffness: %s.", dec(float64(sink[0]), 2), dec(float64(sink[1]), 2), why)
	}
	return fmt.Sprintf("Over decades expect a sink of %s mm (a stiff plank that creeps little) to %s mm (a soft one that creeps much): %s. One plank in six is softer still.",
		dec(float64(a.Least*sink[0]/a.Value), 2), dec(float64(a.Most*sink[1]/a.Value), 2), why)
}

func (d *subject) sayLoad() string {
	s := d.r.Strings
	if s == nil {
		return fmt.Sprintf("A load of %s N presses on the plate.", dec(math.Abs(d.r.Reactions.Applied[2]), 0))
	}
	return fmt.Sprintf("The strings pull with %s N in all and press the bridge down with %s N.", dec(s.Tension, 0), d.number("downforce"))
}

func (d *subject) saySink(b *answer.BridgeReport) string {
	a, _ := d.answer("bridge_sink")
	way := "lower"
	if b.ActionChange < 0 {
		way = "higher"
	}
	return fmt.Sprintf("The bridge sinks %s mm at its middle (%s)%s; its bass end %s mm, its treble end %s mm. At the octave the strings come %s mm %s.",
		d.number("bridge_sink"), sure(a), d.closing(b), d.number("bass_end_sink"), d.number("treble_end_sink"),
		strings.TrimPrefix(d.number("action_change"), "−"), way)
}

// closing says how much of the bridge's sink is its middle bending down into the
// relief; nothing without a gap under the middle.
func (d *subject) closing(b *answer.BridgeReport) string {
	const near = 10 // mm from the bridge's middle
	var mid *answer.FootColumn
	cols, x := answer.FootColumns(d.s), d.s.Top.Built.Case.Bridge.At[0]
	for i := range cols {
		if c := &cols[i]; mid == nil || math.Abs(c.X-x) < math.Abs(mid.X-x) {
			mid = c
		}
	}
	if mid == nil || math.Abs(mid.X-x) > near || mid.Relief < study.LeastGap {
		return ""
	}
	closed := mid.Relief - mid.Gap
	return fmt.Sprintf(", %s mm of it as it bends down into the relief and %s mm with the top under it", dec(closed, 3), dec(b.Sink-closed, 3))
}

func (d *subject) sayMiddle(b *answer.BridgeReport) string {
	if b.TwoFeet() {
		return d.sayFeet(b)
	}
	share, _ := d.answer("middle_share")
	carries := fmt.Sprintf("At full load it carries %s %% of the force under the foot (%s), the bass end %s %%, the treble end %s %%.", d.number("middle_share"), sure(share),
		d.number("bass_share"), d.number("treble_share"))
	touches, _ := d.answer("middle_touches_at")
	closes, _ := d.answer("middle_closes_at")
	switch {
	case !b.MiddleTouchesAt.Known():
		return fmt.Sprintf("The middle of the foot never touches. Left at full load: %s. In softer wood it may touch.", study.GapWords(b.GapLeft))
	case b.MiddleClosesAt.Known() && b.MiddleClosesAt == 0:
		return "The middle of the foot carries from the first. " + carries
	case b.MiddleClosesAt.Known():
		return fmt.Sprintf("As the strings are brought up to pitch, the middle of the foot first touches at %s %% of full load (%s) and has closed at %s %% (%s). ",
			d.number("middle_touches_at"), sure(touches), d.number("middle_closes_at"), sure(closes)) + carries
	}
	return fmt.Sprintf("As the strings are brought up to pitch, the middle of the foot first touches at %s %% of full load (%s) and does not close all along; left: %s. ",
		d.number("middle_touches_at"), sure(touches), study.GapWords(b.GapLeft)) + carries
}

// sayFeet says how two feet bear.
func (d *subject) sayFeet(b *answer.BridgeReport) string {
	carries := fmt.Sprintf("At full load the bass foot carries %s %% of the force under both feet, the treble foot %s %%; of their inner heels the bass one %s %%, the treble one %s %%.",
		d.number("bass_foot_share"), d.number("treble_foot_share"), d.number("bass_inner_share"), d.number("treble_inner_share"))
	touch, closed := answer.HeelsTouchAt(b.Feet), answer.HeelsCloseAt(b.Feet)
	switch {
	case !touch.Known():
		return fmt.Sprintf("No inner heel of the feet touches. Left at full load: %s. ", study.GapWords(b.GapLeft)) + carries
	case closed.Known() && closed == 0:
		return "The inner heels of the feet carry from the first. " + carries
	case closed.Known():
		return fmt.Sprintf("As the strings are brought up to pitch, an inner heel first touches at %s %% of full load and both have closed at %s %%. ",
			d.number("heels_touch_at"), d.number("heels_close_at")) + carries
	}
	return fmt.Sprintf("As the strings are brought up to pitch, an inner heel first touches at %s %% of full load; they do not close all along; left: %s. ",
		d.number("heels_touch_at"), study.GapWords(b.GapLeft)) + carries
}

func (d *subject) sayStrength(a study.Answer) string {
	s := d.r.Strength
	limit := " The limit under fifty years of load is " + longTerm() + " of the strength (Madison curve)"
	text := fmt.Sprintf("The wood works hardest at the %s face, %s: there %s %% of its short-term strength is used (%s).", s.Surface,
		d.place(float64(s.X), float64(s.Y)), d.number("strength_used"), sure(a))
	switch v := float64(a.Value); {
	case v >= 100:
		return text + " Expect a crack there: do not build it like this."
	case v >= 100*answer.LongTerm():
		return text + limit + ": this is more, so make that place stiffer or thicker, or press less."
	case !a.Most.Known():
		return text + limit + "."
	case float64(a.Most) >= 100*answer.LongTerm():
		return text + limit + fmt.Sprintf(": a good plank stays below; but one plank in six uses more than %s %%, above that limit.", dec(float64(a.Most), a.Digits))
	}
	return text + limit + fmt.Sprintf(": this stays below, and so it does in a poor plank (one in six uses more than %s %%).", dec(float64(a.Most), a.Digits))
}

// longTerm writes the share of its strength that wood keeps under fifty years of
// load.
func longTerm() string { return dec(100*answer.LongTerm(), 0) + " %" }

// advice says what the numbers are good for at the bench.
func (d *subject) advice() []string {
	var out []string
	if len(d.r.Error.Failed()) > 0 {
		out = append(out, "Nothing: the program's own checks failed.")
	}
	var doubts []string
	for _, w := range d.r.Warnings {
		doubts = append(doubts, "Warning: "+w+".")
	}
	if len(d.r.Error.Failed()) > 0 {
		return append(out, doubts...)
	}
	b := d.r.Bridge
	if a, ok := d.answer("action_change"); ok && b != nil && a.Value > 0.01 {
		out = append(out, fmt.Sprintf("Set the strings %s mm higher at the octave than you want them in the end (%s to %s mm from plank to plank), and leave the saddle enough to follow as the top goes on sinking.",
			d.number("action_change"), decNum(a.Least, a.Digits, "?"), decNum(a.Most, a.Digits, "?")))
	}
	if c := d.s.Top.Built.Case.Bridge; b != nil && c.Relief.Depth > 0 {
		out = append(out, checkRelief(b, float64(c.Relief.Depth)))
	}
	if i := slices.IndexFunc(d.r.Gauges, func(g answer.GaugeReport) bool { return !g.Measured.Known() }); i >= 0 && d.r.Bench == nil {
		g, a := d.r.Gauges[i], study.GaugeAnswer(d.r, i, d.spread)
		out = append(out, fmt.Sprintf("To see whether your plank is stiffer or softer than the handbook's, set a dial gauge at \"%s\", %s, and %s: it should sink %s mm there (%s).",
			g.Name, d.place(g.X, g.Y), pick(d.r.Strings == nil, "put the load on", "bring the strings up to pitch"), dec(g.Sink, a.Digits), sure(a)))
	}
	if d.r.Bench != nil {
		out = append(out, "Your readings stand beside the computed sinks under \"What sinks\", with the factor of stiffness that they ask for; a second load tells whether it is the wood's.")
	}
	out = append(out, "To choose between designs, set them side by side in one report: in one and the same plank their difference is more certain than any of these numbers.")
	return append(out, doubts...)
}

// checkRelief says how to check a relief on the bench.
func checkRelief(b *answer.BridgeReport, depth float64) string {
	closes := b.MiddleClosesAt
	if b.TwoFeet() {
		closes = answer.HeelsCloseAt(b.Feet)
	}
	slack := fmt.Sprintf("To check the relief of %s mm, feel for the gap %s with a feeler gauge while the strings are slack: it should be that much", dec(depth, 2), pick(b.TwoFeet(), "under the bridge's middle", "in the middle"))
	switch {
	case !closes.Known():
		return fmt.Sprintf("%s. At pitch %s stays open; left at its greatest: %s. If you want it to bear, take away less.", slack, pick(b.TwoFeet(), "an inner heel", "the middle of the foot"), study.GapWords(b.GapLeft))
	case closes == 0:
		return slack + "."
	}
	p := float64(closes)
	return fmt.Sprintf("%s. It should close at about %s %% of full load, and be gone at pitch. %s", slack, dec(100*p, 0), say.TuningWords(p))
}

func pick(when bool, a, b string) string {
	if when {
		return a
	}
	return b
}
