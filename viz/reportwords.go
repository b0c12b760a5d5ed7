package viz

import (
	"fmt"
	"math"
	"strings"

	"archload/cases"
)

// dec writes a number with so many digits behind the point and a true minus.
func dec(v float64, digits int) string {
	s := fmt.Sprintf("%.*f", digits, v)
	if strings.Trim(s, "-0.") == "" {
		s = strings.TrimPrefix(s, "-")
	}
	return strings.Replace(s, "-", "−", 1)
}

// decNum is dec for a number that may not be had.
func decNum(v cases.Num, digits int, missing string) string {
	if !v.Known() {
		return missing
	}
	return dec(float64(v), digits)
}

// place writes a place as a maker would point at it: from the bridge's middle,
// or from the drawing's origin if there is no bridge.
func (d *design) place(x, y float64) string {
	from := "the drawing's origin"
	if b := d.s.Case.Bridge; b != nil {
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
func sure(a cases.Answer) string {
	return fmt.Sprintf("%s from plank to plank; mesh %s", woodRange(a), meshRange(a))
}

func meshRange(a cases.Answer) string {
	if !a.Mesh.Known() {
		return "not estimated"
	}
	return dec(float64(a.Value-a.Mesh), a.Digits) + " to " + dec(float64(a.Value+a.Mesh), a.Digits) + " " + shortUnit(a)
}

func woodRange(a cases.Answer) string {
	if !a.Wood.Known() {
		return "not known"
	}
	return dec(float64(a.Least), a.Digits) + " to " + dec(float64(a.Most), a.Digits) + " " + shortUnit(a)
}

// shortUnit is the unit without what it is a share of.
func shortUnit(a cases.Answer) string {
	unit, _, _ := strings.Cut(a.Unit, " ")
	return unit
}

// design is one design of a report.
type design struct {
	name    string
	s       *cases.Solution
	r       *cases.Report
	answers []cases.Answer
}

func (d *design) answer(key string) (cases.Answer, bool) {
	for _, a := range d.answers {
		if a.Key == key {
			return a, true
		}
	}
	return cases.Answer{}, false
}

// lead says the answers in words.
func (d *design) lead() []string {
	var out []string
	out = append(out, d.sayLoad())
	if b := d.r.Bridge; b != nil {
		out = append(out, d.saySink(b), d.sayMiddle(b))
	} else if a, ok := d.answer("most_sunk"); ok {
		out = append(out, fmt.Sprintf("The top sinks most by %s mm, %s (%s).", dec(float64(a.Value), a.Digits),
			d.place(d.r.Top.MostSunk.X, d.r.Top.MostSunk.Y), sure(a)))
	}
	if a, ok := d.answer("strength_used"); ok && a.Value.Known() {
		out = append(out, d.sayStrength(a))
	}
	if a, ok := d.answer("foot_used"); ok && a.Value.Known() {
		out = append(out, fmt.Sprintf("The foot presses with at most %s MPa: %s %% of what crushes the wood across the grain (%s).",
			decNum(d.r.Strength.FootPressure, 2, "?"), dec(float64(a.Value), 0), sure(a)))
	}
	s := d.r.Reactions.Sectors
	out = append(out, fmt.Sprintf("The edge holds it up with %s N at the neck, %s N at the tail, %s N along the bass side and %s N along the treble side.",
		dec(s.Neck, 0), dec(s.Tail, 0), dec(s.Bass, 0), dec(s.Treble, 0)))
	if x := d.r.Decades.Sink; x[0].Known() && x[1].Known() {
		out = append(out, fmt.Sprintf("Over decades expect a sink of %s to %s mm: an indication, no more (wood creeps; factor 1.6 for structural timber indoors, EN 1995-1-1).",
			dec(float64(x[0]), 2), dec(float64(x[1]), 2)))
	}
	return out
}

func (d *design) sayLoad() string {
	s := d.r.Strings
	if s == nil {
		return fmt.Sprintf("A load of %s N presses on the plate.", dec(math.Abs(d.r.Reactions.Applied[2]), 0))
	}
	return fmt.Sprintf("The strings pull with %s N in all and press the bridge down with %s N.", dec(s.Tension, 0), dec(s.Downforce, 0))
}

func (d *design) saySink(b *cases.BridgeReport) string {
	a, _ := d.answer("bridge_sink")
	way := "lower"
	if b.ActionChange < 0 {
		way = "higher"
	}
	return fmt.Sprintf("The bridge sinks %s mm at its middle (%s); its bass end %s mm, its treble end %s mm. At the octave the strings come %s mm %s.",
		dec(b.Sink, 2), sure(a), dec(b.EndSink[0], 2), dec(b.EndSink[1], 2), dec(math.Abs(b.ActionChange), 2), way)
}

func (d *design) sayMiddle(b *cases.BridgeReport) string {
	share, _ := d.answer("middle_share")
	carries := fmt.Sprintf("At full load it carries %s %% (%s), the bass end %s %%, the treble end %s %%.", dec(100*b.Share.Middle, 0), sure(share),
		dec(100*b.Share.BassEnd, 0), dec(100*b.Share.TrebleEnd, 0))
	touches, _ := d.answer("middle_touches_at")
	closes, _ := d.answer("middle_closes_at")
	switch {
	case !b.MiddleTouchesAt.Known():
		return fmt.Sprintf("The middle of the foot never touches: %s mm of gap are left at full load. In softer wood it may touch.", dec(b.GapLeft, 3))
	case b.MiddleClosesAt.Known() && b.MiddleClosesAt == 0:
		return "The middle of the foot bears from the first. " + carries
	case b.MiddleClosesAt.Known():
		return fmt.Sprintf("As the strings are brought up to pitch, the middle of the foot first touches at %s %% of full load (%s) and has closed at %s %% (%s). ",
			dec(float64(touches.Value), 0), sure(touches), dec(float64(closes.Value), 0), sure(closes)) + carries
	}
	return fmt.Sprintf("As the strings are brought up to pitch, the middle of the foot first touches at %s %% of full load (%s) and does not close: %s mm of gap are left. ",
		dec(float64(touches.Value), 0), sure(touches), dec(b.GapLeft, 3)) + carries
}

func (d *design) sayStrength(a cases.Answer) string {
	s := d.r.Strength
	text := fmt.Sprintf("The wood works hardest at the %s face, %s: there %s %% of its short-term strength is used (%s).", s.Surface,
		d.place(float64(s.X), float64(s.Y)), dec(float64(a.Value), 0), sure(a))
	switch v := float64(a.Value); {
	case v >= 100:
		return text + " Expect a crack there: do not build it like this."
	case v >= 60:
		return text + " Wood keeps about six tenths of its strength under ten years of load (Wood Handbook): this is more, so make that place stiffer or thicker, or press less."
	case !a.Most.Known():
		return text + " Wood keeps about six tenths of its strength under ten years of load (Wood Handbook)."
	case float64(a.Most) >= 60:
		return text + " Wood keeps about six tenths of its strength under ten years of load (Wood Handbook): a good plank stays below, a poor one does not."
	}
	return text + " Wood keeps about six tenths of its strength under ten years of load (Wood Handbook): this stays below, for a poor plank too."
}

// advice says what the numbers are good for at the bench.
func (d *design) advice() []string {
	var out []string
	if len(d.r.Error.Failed()) > 0 {
		return []string{"Nothing: the program's own checks failed."}
	}
	if n := len(d.r.Warnings); n > 0 {
		out = append(out, fmt.Sprintf("First read the warnings under \"How far to trust this\" (%d).", n))
	}
	b := d.r.Bridge
	if a, ok := d.answer("action_change"); ok && b != nil && a.Value > 0.01 {
		out = append(out, fmt.Sprintf("Set the strings %s mm higher at the octave than you want them in the end (%s to %s mm from plank to plank), and leave the saddle enough to follow as the top goes on sinking.",
			dec(float64(a.Value), 2), decNum(a.Least, 2, "?"), decNum(a.Most, 2, "?")))
	}
	if c := d.s.Case.Bridge; b != nil && c.Relief.Depth > 0 {
		switch {
		case !b.MiddleClosesAt.Known():
			out = append(out, fmt.Sprintf("With this relief the middle of the foot stays open by up to %s mm at full load: if you want it to bear, take away less than %s mm.", dec(b.GapLeft, 3), dec(float64(c.Relief.Depth), 2)))
		default:
			out = append(out, fmt.Sprintf("The relief of %s mm closes under the strings. To check it, feel for the gap in the middle with a feeler gauge while the strings are slack: it should be that much; at pitch it should be gone.", dec(float64(c.Relief.Depth), 2)))
		}
	}
	if len(d.r.Gauges) > 0 {
		g := d.r.Gauges[0]
		out = append(out, fmt.Sprintf("To see whether your plank is stiffer or softer than the handbook's, set a dial gauge at \"%s\" and bring the strings up to pitch: it should sink %s mm there.", g.Name, dec(g.Sink, 2)))
	}
	return append(out, "To choose between designs, set them side by side in one report: in one and the same plank their difference is more certain than any of these numbers.")
}

// left is what the model leaves out.
func (d *design) left() []string {
	out := []string{
		"Large movement: the theory is linear and takes the forces on the shape as carved. Against second-order calculations of such plates it reads 1 to 4 % too stiff.",
		"Time and weather: creep and moisture are not computed; what stands above on decades is a rule of thumb.",
		"Glue: every joint is whole and stiff.",
		"The rest of the instrument: the back does not move; there is no neck, tailpiece, finish or binding. The strings' tension stays as tuned (its change is about 1 %).",
		"This piece of wood: the numbers are means of clear, straight-grained wood. Runout, knots and wild grain are not in it.",
		"Sound: the load is at rest. Nothing here says how the instrument sounds.",
	}
	if d.s.Case.Rim.Squeeze == 0 {
		out = append([]string{"The strings' lengthwise squeeze of the body (squeeze in [rim] is 0 N): with high strings over a shallow body it can rival the arch's own thrust and push the apex up."}, out...)
	}
	if b := d.s.Case.Bridge; b != nil && b.Hold == "grip" {
		out = append(out, "A limit to friction: a place of the foot that bears stays where it is, however hard it is pushed sideways (hold = \"grip\"). Solve with hold = \"slip\" as well; the truth lies between.")
	}
	return out
}
