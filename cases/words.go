package cases

import (
	"fmt"
	"io"
	"math"
	"regexp"
	"strings"
)

// WriteSummary prints a report in a maker's words.
func (r *Report) WriteSummary(w io.Writer) error {
	var b strings.Builder
	if r.Title != "" {
		fmt.Fprintf(&b, "%s\n\n", r.Title)
	}
	r.sayTop(&b)
	r.sayStrings(&b)
	r.sayBridge(&b)
	r.sayGauges(&b)
	r.sayBraces(&b)
	r.sayPaths(&b)
	r.sayStrength(&b)
	r.sayTrust(&b)
	_, err := io.WriteString(w, b.String())
	return err
}

func section(b *strings.Builder, name string) { fmt.Fprintf(b, "%s\n", name) }

func line(b *strings.Builder, label, format string, args ...any) {
	fmt.Fprintf(b, "  %-28s %s\n", label, plainZeros(fmt.Sprintf(format, args...)))
}

// plainZeros takes the sign off numbers that are rounded to zero.
func plainZeros(text string) string {
	return regexp.MustCompile(`-0(\.0+)?([^.0-9]|$)`).ReplaceAllString(text, "0$1$2")
}

func (r *Report) sayTop(b *strings.Builder) {
	section(b, "The top")
	line(b, "mass", "%.0f g the plate, %.1f g the braces", r.Mass.Plate, r.Mass.Braces)
	if t := r.Top; t.Thickest.Value-t.Thinnest.Value < 0.05 {
		line(b, "thickness", "%.1f mm everywhere", t.Thinnest.Value)
	} else {
		line(b, "thickness", "%.1f mm at (%.0f, %.0f) to %.1f mm at (%.0f, %.0f)", r.Top.Thinnest.Value, r.Top.Thinnest.X,
			r.Top.Thinnest.Y, r.Top.Thickest.Value, r.Top.Thickest.X, r.Top.Thickest.Y)
	}
	arched := r.Top.Steepest.Value > 0.1
	if arched {
		line(b, "apex", "%.1f mm high at (%.0f, %.0f)", r.Top.Apex.Value, r.Top.Apex.X, r.Top.Apex.Y)
		line(b, "steepest slope", "%.1f degrees at (%.0f, %.0f)", r.Top.Steepest.Value, r.Top.Steepest.X, r.Top.Steepest.Y)
	}
	if arched && r.Top.ApexSink.Known() {
		line(b, "the apex sinks", "%.3f mm", float64(r.Top.ApexSink))
	}
	line(b, "it sinks most", "%.3f mm at (%.0f, %.0f)", r.Top.MostSunk.Value, r.Top.MostSunk.X, r.Top.MostSunk.Y)
	b.WriteByte('\n')
}

func (r *Report) sayStrings(b *strings.Builder) {
	s := r.Strings
	if s == nil {
		return
	}
	section(b, "The strings")
	line(b, "tension", "%.0f N in all", s.Tension)
	line(b, "press down with", "%.1f N", s.Downforce)
	line(b, "push along with", "%.1f N toward the %s", math.Abs(s.Along), ends(s.Along, "neck", "tail"))
	s.sayMore(b)
	b.WriteByte('\n')
}

func ends(v float64, positive, negative string) string {
	if v < 0 {
		return negative
	}
	return positive
}

func percent(n Num) string {
	if !n.Known() {
		return "not known"
	}
	return fmt.Sprintf("%.0f %%", 100*float64(n))
}

func (r *Report) sayBridge(b *strings.Builder) {
	g := r.Bridge
	if g == nil {
		return
	}
	section(b, "The bridge")
	line(b, "mass", "%.1f g", float64(r.Mass.Bridge))
	line(b, "sinks", "%.3f mm at its middle; bass end %.3f, treble end %.3f", g.Sink, g.EndSink[0], g.EndSink[1])
	line(b, "leans", "%.3f degrees toward the %s; %s", math.Abs(g.Tilt.ForeAft), ends(g.Tilt.ForeAft, "neck", "tail"), g.Tilt.sideWords())
	line(b, "string action at the octave", "%.3f mm %s", math.Abs(g.ActionChange), ends(g.ActionChange, "lower", "higher"))
	line(b, "the foot presses", "bass end %.1f %%, middle %.1f %%, treble end %.1f %% of %.1f N square to the surface", 100*g.Share.BassEnd,
		100*g.Share.Middle, 100*g.Share.TrebleEnd, g.pressed())
	line(b, "the middle of the foot", "%s", g.middleWords())
	if g.FrictionNeeded.Known() {
		line(b, "friction needed to hold it", "%.3f N for each N it presses with; wood gives 0.3 to 0.5", float64(g.FrictionNeeded))
	}
	b.WriteByte('\n')
}

// pressed is the sum of the foot's forces square to the surface, N. On slopes it
// differs from the downforce, as drag carries a part of that.
func (g *BridgeReport) pressed() float64 {
	sum := 0.0
	for _, c := range g.Contact {
		sum += c.Force
	}
	return sum
}

func (t TiltReport) sideWords() string {
	if math.Abs(t.Sideways) < 0.0005 {
		return "not sideways"
	}
	return fmt.Sprintf("%s side lower by %.3f degrees", ends(t.Sideways, "treble", "bass"), math.Abs(t.Sideways))
}

func (g *BridgeReport) middleWords() string {
	switch {
	case !g.MiddleTouchesAt.Known():
		return "never touches; left at full load: " + GapWords(g.GapLeft)
	case g.MiddleClosesAt.Known() && g.MiddleClosesAt == 0:
		return "bears from the first"
	case g.MiddleClosesAt.Known():
		return fmt.Sprintf("first touches at %s of full load and has closed at %s", percent(g.MiddleTouchesAt), percent(g.MiddleClosesAt))
	}
	return fmt.Sprintf("first touches at %s of full load and does not close all along; left: %s", percent(g.MiddleTouchesAt), GapWords(g.GapLeft))
}

func (r *Report) sayGauges(b *strings.Builder) {
	if len(r.Gauges) == 0 {
		return
	}
	section(b, "Gauges: sink mm; stress MPa outside and inside, along and across the grain")
	for _, g := range r.Gauges {
		text := fmt.Sprintf("%.3f; outside %.2f, %.2f; inside %.2f, %.2f", g.Sink, g.Outer.Along, g.Outer.Across, g.Inner.Along, g.Inner.Across)
		if g.Measured.Known() {
			text += fmt.Sprintf("; measured %.3f", float64(g.Measured))
		}
		line(b, g.Name, "%s", text)
	}
	r.Bench.say(b)
	b.WriteByte('\n')
}

func (r *Report) sayBraces(b *strings.Builder) {
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

func (r *Report) sayPaths(b *strings.Builder) {
	s := r.Reactions.Sectors
	section(b, "Where the load goes")
	line(b, "the edge holds up", "neck %.1f N, tail %.1f N, bass side %.1f N, treble side %.1f N", s.Neck, s.Tail, s.Bass, s.Treble)
	for _, p := range r.Reactions.Posts {
		line(b, p.Name+" holds up", "%.1f N", p.Force)
	}
	if r.Flow != nil {
		for _, f := range r.Flow.Braces {
			line(b, f.Name, "takes over %.1f N of the load, %.0f %%, and carries at most %.1f N, at (%.0f, %.0f)", f.HandOver, 100*f.Share,
				math.Abs(f.Carries), f.X, f.Y)
		}
	}
	e := r.Energy
	if e.Total > 0 {
		line(b, "energy", "%.2f N mm: stretching %.0f %%, bending %.0f %%, shear %.0f %%, braces %.0f %%, bridge %.0f %%, bedding %.0f %%, rim and supports %.0f %%",
			e.Total, 100*e.Membrane/e.Total, 100*e.Bending/e.Total, 100*e.Shear/e.Total, 100*e.Braces/e.Total,
			100*e.Bridge/e.Total, 100*e.Bedding/e.Total, 100*e.Rim/e.Total)
	}
	b.WriteByte('\n')
}

// HighestSpot is the greatest pressure on one place of the contact grid, MPa.
func (g *BridgeReport) HighestSpot() float64 {
	most := 0.0
	for _, c := range g.Contact {
		most = math.Max(most, c.Pressure)
	}
	return most
}

func (g *BridgeReport) spotWords() string {
	if g == nil {
		return ""
	}
	return fmt.Sprintf(" (single spots up to %.2f MPa)", g.HighestSpot())
}

func (r *Report) sayStrength(b *strings.Builder) {
	s := r.Strength
	section(b, "Strength of clear, straight-grained wood under short load")
	if s.Used.Known() {
		line(b, "used at the worst place", "%s at (%.0f, %.0f), %s face", percent(s.Used), float64(s.X), float64(s.Y), s.Surface)
	}
	line(b, "rolling shear used", "%s", percent(s.RollingShearUsed))
	if s.FootPressure.Known() {
		line(b, "pressure under the foot", "%.2f MPa, %s of crushing, averaged over 8 mm of foot%s", float64(s.FootPressure), percent(s.FootUsed), r.Bridge.spotWords())
	}
	line(b, "over decades", "%s of the strength used, and a sink of %.2f to %.2f mm in average wood: an indication, no more", percent(r.Decades.StrengthUsed),
		float64(r.Decades.Sink[0]), float64(r.Decades.Sink[1]))
	b.WriteString("  Wood scatters, runs out of line and creeps: under lasting load count on six tenths of\n" +
		"  its strength and on up to 1.6 times the sink, more in a soft plank. The maker's own judgement,\n" +
		"  and advice from someone qualified where people may be hurt, come first.\n\n")
}

func (r *Report) sayTrust(b *strings.Builder) {
	section(b, "How far to trust this")
	if r.Error.Discretisation.Known() {
		line(b, "error from the mesh", "about %.1f %% of the sink (%d nodes)", 100*float64(r.Error.Discretisation), r.Mesh.Nodes)
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
