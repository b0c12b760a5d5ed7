package say

import (
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"archload/cases/answer"
	"archload/cases/quantity"
	"archload/cases/study"
)

// summary is a report on its way into a maker's words. It knows which
// quantities have been told, so that a section can end with those that no
// sentence of its own has told.
type summary struct {
	strings.Builder
	r    *answer.Report
	told map[string]bool
}

// WriteSummary prints a report in a maker's words.
func WriteSummary(w io.Writer, r *answer.Report) error {
	s := &summary{r: r, told: map[string]bool{}}
	if r.Title != "" {
		fmt.Fprintf(s, "%s\n\n", r.Title)
	}
	s.top()
	s.strings()
	s.bridge()
	s.body()
	s.gauges()
	s.braces()
	s.paths()
	s.strength()
	s.motion()
	s.outlook()
	s.trust()
	_, err := io.WriteString(w, s.String())
	return err
}

// text is a quantity's number with its unit.
func (s *summary) text(key string) string {
	s.told[key] = true
	q := quantity.Of(key)
	if v := q.Get(s.r); v.Known() {
		return said(q, v) + s.mesh(q)
	}
	return "not known"
}

// number is a quantity's number alone.
func (s *summary) number(key string) string {
	s.told[key] = true
	q := quantity.Of(key)
	return numberText(q, q.Get(s.r)) + s.mesh(q)
}

// mesh is what the triangles may cost a quantity, behind its number; "" for less
// than is shown of the number.
func (s *summary) mesh(q quantity.Quantity) string {
	width, known := s.r.Error.Mesh[q.Key]
	if !known || q.Nought(width) {
		return ""
	}
	return " ± " + widthText(q, width)
}

// say prints a line of a quantity under its name, and what is to be said
// besides.
func (s *summary) say(key, format string, args ...any) {
	line(&s.Builder, quantity.Of(key).Name, "%s", s.text(key)+fmt.Sprintf(format, args...))
}

// skip takes quantities as told that another sentence makes plain.
func (s *summary) skip(keys ...string) {
	for _, k := range keys {
		s.told[k] = true
	}
}

// end ends a section with its quantities that have not been told.
func (s *summary) end(heading string) {
	s.rest(heading)
	s.WriteByte('\n')
}

// rest prints the quantities of a section that have not been told.
func (s *summary) rest(heading string) {
	for _, q := range quantity.All() {
		if q.Summary == heading && !s.told[q.Key] && q.Get(s.r).Known() {
			s.say(q.Key, "")
		}
	}
}

func (s *summary) top() {
	b, r := &s.Builder, s.r
	section(b, quantity.HeadTop)
	s.say("mass", ": the plate %.1f g, the braces %.1f g", r.Mass.Plate, r.Mass.Braces)
	if t := r.Top; t.Thickest.Value-t.Thinnest.Value < 0.05 {
		line(b, "thickness", "%.1f mm everywhere", t.Thinnest.Value)
	} else {
		line(b, "thickness", "%.1f mm at (%.0f, %.0f) to %.1f mm at (%.0f, %.0f)", r.Top.Thinnest.Value, r.Top.Thinnest.X,
			r.Top.Thinnest.Y, r.Top.Thickest.Value, r.Top.Thickest.X, r.Top.Thickest.Y)
	}
	s.skip("apex_sink")
	if r.Top.Arched() {
		line(b, "apex", "%.1f mm high at (%.0f, %.0f)", r.Top.Apex.Value, r.Top.Apex.X, r.Top.Apex.Y)
		line(b, "steepest slope", "%.1f degrees at (%.0f, %.0f)", r.Top.Steepest.Value, r.Top.Steepest.X, r.Top.Steepest.Y)
		if r.Top.ApexSink.Known() {
			s.say("apex_sink", "")
		}
	}
	s.say("most_sunk", " at (%.0f, %.0f)", r.Top.MostSunk.X, r.Top.MostSunk.Y)
	s.end(quantity.HeadTop)
}

func (s *summary) strings() {
	b, t := &s.Builder, s.r.Strings
	if t == nil {
		return
	}
	section(b, quantity.HeadStrings)
	line(b, "tension", "%.0f N in all", t.Tension)
	s.say("downforce", "")
	line(b, "push along with", "%.1f N toward the %s", math.Abs(t.Along), ends(t.Along, "neck", "tail"))
	sayPush(b, t)
	sayEach(b, t)
	s.end(quantity.HeadStrings)
}

func ends(v float64, positive, negative string) string {
	if v < 0 {
		return negative
	}
	return positive
}

func percent(n answer.Num) string {
	if !n.Known() {
		return "not known"
	}
	return fmt.Sprintf("%.0f %%", 100*float64(n))
}

func (s *summary) bridge() {
	b, g := &s.Builder, s.r.Bridge
	if g == nil {
		return
	}
	section(b, quantity.HeadBridge)
	line(b, "mass of the bridge", "%.1f g", float64(s.r.Mass.Bridge))
	s.say("bridge_sink", " at its middle; bass end %s, treble end %s", s.number("bass_end_sink"), s.number("treble_end_sink"))
	s.say("lean_along", "")
	s.say("lean_sideways", "")
	s.say("action_change", "")
	if g.TwoFeet() {
		line(b, "feet carry", "bass foot %s, treble foot %s of %.1f N square to the surface", s.text("bass_foot_share"), s.text("treble_foot_share"), g.Pressed())
		line(b, "their inner heels carry", "bass foot %s, treble foot %s; the outer heels %.1f and %.1f %%", s.text("bass_inner_share"),
			s.text("treble_inner_share"), 100*g.Feet[0].Outer, 100*g.Feet[1].Outer)
		line(b, "inner heels", "%s", s.closing("heels_touch_at", "heels_close_at"))
	} else {
		line(b, "foot carries", "bass end %s, middle %s, treble end %s of %.1f N square to the surface", s.text("bass_share"),
			s.text("middle_share"), s.text("treble_share"), g.Pressed())
		line(b, "middle of the foot", "%s", s.closing("middle_touches_at", "middle_closes_at"))
	}
	if g.RoughReport != nil {
		s.rough()
	} else if g.FrictionNeeded.Known() {
		s.say("friction_needed", "; wood gives 0.3 to 0.5")
	}
	s.end(quantity.HeadBridge)
}

// rough tells what friction does under the foot.
func (s *summary) rough() {
	b, g := &s.Builder, s.r.Bridge
	line(b, "friction", "%.2f; the foot as a whole needs %s", float64(g.Friction), s.text("friction_needed"))
	s.say("sliding", ", by %s at most; %.2f N mm of work go into it", s.text("slid"), s.r.Energy.Dissipated)
	if g.Glides {
		line(b, "the bridge glides", "the strings alone hold it at the saddle: %.1f N across, %.1f N along", g.Guides[0], g.Guides[1])
	}
	if len(g.Frictions) == 2 {
		lo, hi := g.Frictions[0], g.Frictions[1]
		middle := fmt.Sprintf("the middle carries %.1f and %.1f %%, ", 100*lo.Share.Middle, 100*hi.Share.Middle)
		line(b, fmt.Sprintf("with friction %.1f and %.1f", lo.Friction, hi.Friction), "the bridge sinks %.3f and %.3f mm, %sthe strings lower %.3f and %.3f mm",
			lo.Sink, hi.Sink, pickWords(g.TwoFeet(), "", middle), lo.ActionChange, hi.ActionChange)
	}
}

// closing says how the relieved part of the foot, its middle or its inner heels,
// comes to bear, from the loads at which it touches and has closed.
func (s *summary) closing(touches, closes string) string {
	s.skip("gap_left", touches, closes)
	left := study.GapWords(s.r.Bridge.GapLeft)
	first, all := quantity.Of(touches).Get(s.r), quantity.Of(closes).Get(s.r)
	many := s.r.Bridge.TwoFeet()
	touch, does := pickWords(many, "touch", "touches"), pickWords(many, "do", "does")
	switch {
	case !first.Known():
		return "never " + touch + "; left at full load: " + left
	case all.Known() && all == 0:
		return pickWords(many, "carry", "carries") + " from the first"
	case all.Known():
		return fmt.Sprintf("first %s at %s and %s closed at %s", touch, s.text(touches), pickWords(many, "have", "has"), s.text(closes))
	}
	return fmt.Sprintf("first %s at %s and %s not close all along; left: %s", touch, s.text(touches), does, left)
}

// body tells what a whole body does.
func (s *summary) body() {
	b, g := &s.Builder, s.r.Body
	if g == nil {
		return
	}
	section(b, quantity.HeadBody)
	line(b, "mass of the back", "%.1f g with its bars", s.r.Mass.Back)
	s.say("neck_turn", ", the tail block %.3f", g.TailTurn)
	if g.Action != nil {
		line(b, "string action at the octave", "%s lower: the bridge's sink %s, the neck's turn %s, the body's bend %s", s.text("action_change"),
			s.number("action_bridge"), s.number("action_neck"), s.number("action_body"))
	}
	if g.Sink.Bridge == nil {
		line(b, "apex from the rim's plane", "%.3f mm (down)", g.Sink.Apex)
	}
	line(b, "lengthwise it carries", "top %s, sides %s, back %s at y = %.0f", s.text("thrust_top"), s.text("thrust_sides"), s.text("thrust_back"), g.Thrust.Y)
	s.end(quantity.HeadBody)
}

func (s *summary) gauges() {
	b, r := &s.Builder, s.r
	if len(r.Gauges) == 0 {
		return
	}
	section(b, "Gauges: sink mm; stress MPa outside and inside, along and across the grain")
	for i, g := range r.Gauges {
		q := quantity.OfGauge(i, g.Name)
		q.Key = quantity.GaugeKey(i)
		text := fmt.Sprintf("%.3f%s; outside %.2f, %.2f; inside %.2f, %.2f", g.Sink, s.mesh(q), g.Outer.Along, g.Outer.Across, g.Inner.Along, g.Inner.Across)
		if g.Measured.Known() {
			text += fmt.Sprintf("; measured %.3f", float64(g.Measured))
		}
		line(b, g.Name, "%s", text)
	}
	sayBench(b, r.Bench)
	b.WriteByte('\n')
}

func (s *summary) braces() {
	b, r := &s.Builder, s.r
	if len(r.Braces) == 0 {
		return
	}
	section(b, "The braces: greatest axial force (pull positive) and bending moment (bottom pulled positive)")
	for _, br := range r.Braces {
		line(b, br.Name, "%+.1f N at (%.0f, %.0f); %+.0f N mm at (%.0f, %.0f); %.1f %% of the energy", br.Axial.Value, br.Axial.X,
			br.Axial.Y, br.Moment.Value, br.Moment.X, br.Moment.Y, 100*br.Energy/r.Energy.Total)
		g := br.Glue
		line(b, "  its glue line", "shear %.2f MPa, %s of the softer wood, at (%.0f, %.0f); peel %.3f MPa, %s, at (%.0f, %.0f)",
			g.Shear.Value, percent(g.ShearUsed), g.Shear.X, g.Shear.Y, g.Peel.Value, percent(g.PeelUsed), g.Peel.X, g.Peel.Y)
	}
	b.WriteByte('\n')
}

func (s *summary) paths() {
	b, r := &s.Builder, s.r
	section(b, quantity.HeadPaths)
	line(b, "edge holds up", "neck %s, tail %s, bass side %s, treble side %s", s.text("edge_neck"), s.text("edge_tail"), s.text("edge_bass"), s.text("edge_treble"))
	for _, p := range r.Reactions.Posts {
		line(b, p.Name+" holds up", "%.1f N", p.Force)
	}
	if now, another := r.PressesNow(); another {
		line(b, "strings press by then with", "%.1f N: with the body moved they pass over the saddle at another angle", now)
	}
	s.onward()
	if r.Flow != nil {
		for _, f := range r.Flow.Braces {
			line(b, f.Name, "takes over %.1f N of the load, %.0f %%, and carries at most %.1f N, at (%.0f, %.0f)", f.HandOver, 100*f.Share,
				math.Abs(f.Carries), f.X, f.Y)
		}
	}
	parts := fmt.Sprintf(": stretching %s, bending %s, shear %s, braces %s, bridge %s, bedding %s, rim and supports %s", s.text("energy_stretching"),
		s.text("energy_bending"), s.text("energy_shear"), s.text("energy_braces"), s.text("energy_bridge"), s.text("energy_bedding"), s.text("energy_rim"))
	if r.Body != nil {
		parts = strings.Replace(parts, "rim and supports", "sides", 1) + ", back " + s.text("energy_back")
	}
	s.skip("energy")
	if r.Energy.Total > 0 {
		s.say("energy", "%s", parts)
	}
	s.end(quantity.HeadPaths)
}

func (s *summary) strength() {
	b, r := &s.Builder, s.r
	t := r.Strength
	section(b, quantity.HeadStrength)
	if t.Used.Known() {
		s.say("strength_used", " at (%.0f, %.0f), %s face", float64(t.X), float64(t.Y), t.Surface)
	}
	s.say("rolling_shear_used", "")
	if t.FootPressure.Known() {
		s.say("foot_used", "")
		s.say("foot_pressure", ", averaged over %d mm of foot (single spots up to %.2f MPa)", answer.FootWindow, r.Bridge.HighestSpot())
	}
	if r.Decades.StrengthUsed.Known() || r.Decades.Sink[0].Known() {
		line(b, "over decades", "%s of the strength that %.0f years of load leave%s: an indication, no more", percent(r.Decades.StrengthUsed), r.Decades.Years, sinkOverDecades(&r.Decades))
	}
	fmt.Fprintf(b, "  Wood scatters, runs out of line and creeps: under lasting load count on %.0f %% of its\n"+
		"  strength, and on more sink in a soft plank. The maker's own judgement, and advice from\n"+
		"  someone qualified where people may be hurt, come first.\n", 100*answer.LongTerm())
	s.end(quantity.HeadStrength)
}

// sinkOverDecades says how far it then has sunk, as far as creep is known.
func sinkOverDecades(d *answer.DecadesReport) string {
	if !d.Sink[0].Known() || !d.Sink[1].Known() {
		return ""
	}
	return fmt.Sprintf(", and a sink of %.2f to %.2f mm in average wood", float64(d.Sink[0]), float64(d.Sink[1]))
}

// motion is how the top swings, if that was asked for.
func (s *summary) motion() {
	if s.r.Motion != nil {
		section(&s.Builder, quantity.HeadMotion)
		s.end(quantity.HeadMotion)
	}
}

// outlook is what seasons and years do, if that was asked for.
func (s *summary) outlook() {
	for _, heading := range []string{quantity.HeadSeasons, quantity.HeadYears} {
		known := func(q quantity.Quantity) bool { return q.Summary == heading && q.Get(s.r).Known() }
		if slices.ContainsFunc(quantity.All(), known) {
			section(&s.Builder, heading)
			s.end(heading)
		}
	}
}

func (s *summary) trust() {
	b, r := &s.Builder, s.r
	section(b, quantity.HeadTrust)
	s.skip("mesh_error")
	if r.Error.Discretisation.Known() {
		s.say("mesh_error", " of the sink, estimated (%d nodes)", r.Mesh.Nodes)
	}
	if r.Error.Mesh != nil {
		line(b, "± behind a number", "what the triangles may cost it; none where that is less than is shown")
	}
	s.rest(quantity.HeadTrust)
	if text := edgeText(r); text != "" {
		line(b, "± edge", "%s", text)
		line(b, "", "%s", "by sides "+edgeAssumed)
	}
	line(b, "wood", "handbook stiffness scatters by 22 %% from board to board (Wood Handbook, table 5-6)")
	if bad := r.Error.Failed(); len(bad) > 0 {
		line(b, "built-in checks FAILED", "%s", strings.Join(bad, ", "))
	} else {
		line(b, "built-in checks", "all passed (equilibrium, energy, contact)")
	}
	for _, w := range r.Warnings {
		line(b, "warning", "%s", w)
	}
}
