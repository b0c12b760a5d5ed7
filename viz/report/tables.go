package report

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"archload/cases/answer"
	"archload/cases/quantity"
	"archload/cases/say"
	"archload/cases/study"
)

func (d *subject) forces() reportSection {
	sec := reportSection{Title: "Strings and forces"}
	s := d.r.Strings
	if s == nil {
		a := d.r.Reactions.Applied
		sec.Words = []string{fmt.Sprintf("No strings. Forces on the plate in sum: across %s N, along %s N, downward %s N.", dec(a[0], 1), dec(a[1], 1), dec(-a[2], 1))}
		return sec
	}
	t := reportTable{Head: []string{"string", "tension, N", "front angle, degrees", "back angle, degrees", "downforce, N", "push toward the neck, N"}}
	for _, e := range s.Each {
		t.Rows = append(t.Rows, []string{e.Name, dec(e.Tension, 1), dec(e.FrontAngle, 1), dec(e.BackAngle, 1), dec(e.Downforce, 1), dec(e.Along, 2)})
	}
	t.Rows = append(t.Rows, []string{"in all", dec(s.Tension, 1), "", "", dec(s.Downforce, 1), dec(s.Along, 2)})
	sec.Tables = []reportTable{t}
	if k := s.Rocking; k != nil {
		sec.Words = append(sec.Words, fmt.Sprintf("The push along the strings shifts the pressure under the foot by %s mm toward the %s. An edge of the foot lifts beyond %s mm (a third of its half width of %s mm); %s mm is %s %% of that.",
			dec(math.Abs(k.Shift), 2), pick(k.Shift < 0, "tail", "neck"), dec(k.HalfWidth/3, 2), dec(k.HalfWidth, 1), dec(math.Abs(k.Shift), 2), dec(100*3*k.Used, 0)))
	}
	return sec
}

func (d *subject) sinks() reportSection {
	sec := reportSection{Title: "What sinks"}
	t := reportTable{Caption: "What dial gauges would read, and the stress at their places, MPa (pull positive)",
		Head: []string{"gauge", "place, mm", "sink, mm", "outer face along", "outer face across", "inner face along", "inner face across"}}
	measured := slices.ContainsFunc(d.r.Gauges, func(g answer.GaugeReport) bool { return g.Measured.Known() })
	if measured {
		t.Head = slices.Insert(t.Head, 3, "read on the bench, mm")
	}
	for i, g := range d.r.Gauges {
		row := []string{fmt.Sprintf("%d  %s", i+1, g.Name), fmt.Sprintf("(%s, %s)", dec(g.X, 0), dec(g.Y, 0)), dec(g.Sink, 3),
			dec(g.Outer.Along, 2), dec(g.Outer.Across, 2), dec(g.Inner.Along, 2), dec(g.Inner.Across, 2)}
		if measured {
			row = slices.Insert(row, 3, decNum(g.Measured, 3, "–"))
		}
		t.Rows = append(t.Rows, row)
	}
	if len(t.Rows) > 0 {
		sec.Tables = append(sec.Tables, t)
	}
	if d.r.Bench != nil {
		verdict, cautions := say.BenchWords(d.r.Bench)
		sec.Words = append(sec.Words, "Against the bench: "+verdict+". "+strings.Join(cautions, " "))
	}
	m := d.r.Top.MostSunk
	sec.Words = append(sec.Words, fmt.Sprintf("The top sinks most by %s mm, %s.", d.number("most_sunk"), d.place(m.X, m.Y)))
	if b := d.r.Bridge; b != nil {
		sec.Words = append(sec.Words, leanWords(b.Tilt))
	}
	return sec
}

// leanWords say how the bridge leans.
func leanWords(t answer.TiltReport) string {
	const none = 0.0005 // degrees, rounded to nothing
	along, side := "does not lean along the strings", "does not lean sideways"
	if math.Abs(t.ForeAft) >= none {
		along = fmt.Sprintf("leans %s degrees toward the %s", dec(math.Abs(t.ForeAft), 3), pick(t.ForeAft < 0, "tail", "neck"))
	}
	if math.Abs(t.Sideways) >= none {
		side = fmt.Sprintf("its %s side is lower by %s degrees", pick(t.Sideways < 0, "bass", "treble"), dec(math.Abs(t.Sideways), 3))
	}
	return "The bridge " + along + ", and " + side + "."
}

func (d *subject) bears() reportSection {
	sec := reportSection{Title: "How the foot bears"}
	b := d.r.Bridge
	if b == nil {
		return sec
	}
	t := reportTable{Caption: "Force under each third of the foot as the load rises",
		Head: []string{"load, % of full", "bass end, N", "middle, N", "treble end, N"}}
	if b.TwoFeet() {
		t = reportTable{Caption: "Force under each heel of the two feet as the load rises",
			Head: []string{"load, % of full", "bass foot outer, N", "bass foot inner, N", "treble foot inner, N", "treble foot outer, N"}}
	}
	step := max(1, (len(b.ByLoad)+9)/10)
	for i, l := range b.ByLoad {
		if i%step == 0 || i == len(b.ByLoad)-1 {
			row := []string{dec(100*l.Load, 0)}
			forces := l.Thirds[:]
			if b.TwoFeet() {
				forces = l.Heels
			}
			for _, f := range forces {
				row = append(row, dec(f, 1))
			}
			t.Rows = append(t.Rows, row)
		}
	}
	sec.Tables = []reportTable{t}
	sec.Words = []string{fmt.Sprintf("Left under the foot at full load, at its greatest: %s.", study.GapWords(b.GapLeft)), d.sumWords()}
	if b.RoughReport != nil {
		sec.Words = append(sec.Words, fmt.Sprintf("Friction: with a coefficient of %s (smooth dry wood has 0.3 to 0.5, Wood Handbook) %s %% of the force under the foot rests on places that slide, by %s mm at most.", dec(float64(b.Friction), 2), d.number("sliding"), d.number("slid")))
	} else if b.FrictionNeeded.Known() {
		sec.Words = append(sec.Words, fmt.Sprintf("Friction needed: to stay where it is the foot must drag %s N for each N it presses with (wood on wood gives 0.3 to 0.5 at most; common practice, no published source).", d.number("friction_needed")))
	}
	return sec
}

// sumWords say why the forces of the thirds are not what the strings press with.
func (d *subject) sumWords() string {
	why := "there a part is carried by drag along it"
	if d.s.Top.Built.Case.Bridge.Hold == "slip" {
		why = "there a force square to it carries less than itself downward"
	}
	return fmt.Sprintf("The forces of the thirds are those square to the surface and sum to %s N. The strings press with %s N: the surface slopes, and %s.",
		dec(d.r.Bridge.Pressed(), 1), d.number("downforce"), why)
}

func (d *subject) paths() reportSection {
	sec := reportSection{Title: "Where the load goes"}
	r := d.r.Reactions
	t := reportTable{Caption: "What holds the top up", Head: []string{"", "N", "% of the load"}}
	total := r.Total[2]
	for _, key := range []string{"edge_neck", "edge_tail", "edge_bass", "edge_treble"} {
		q := quantity.Of(key)
		t.Rows = append(t.Rows, []string{q.Name, d.number(key), dec(100*float64(q.Get(d.r))/total, 0)})
	}
	for _, p := range r.Posts {
		t.Rows = append(t.Rows, []string{p.Name + " holds up", dec(p.Force, 1), dec(100*p.Force/total, 0)})
	}
	sec.Tables = []reportTable{t}
	if len(d.r.Braces) > 0 {
		sec.Tables = append(sec.Tables, d.braceTable())
	}
	if e := d.r.Energy; e.Total > 0 {
		t := reportTable{Caption: "What is strained: where the work of the strings is stored", Head: []string{"", "N mm", "% of all"}}
		for _, key := range []string{"energy_stretching", "energy_bending", "energy_shear", "energy_braces", "energy_bridge", "energy_bedding", "energy_rim"} {
			q := quantity.Of(key)
			t.Rows = append(t.Rows, []string{q.Name, dec(float64(q.Get(d.r))/100*e.Total, 2), d.number(key)})
		}
		t.Rows = append(t.Rows, []string{quantity.Of("energy").Name, d.number("energy"), "100"})
		sec.Tables = append(sec.Tables, t)
	}
	return sec
}

func (d *subject) braceTable() reportTable {
	t := reportTable{Caption: "What the braces carry",
		Head: []string{"brace", "greatest pull (push −), N", "greatest bending moment, N mm", "takes over of the load, N", "glue line: shear, MPa", "of its strength, %", "glue line: peel, MPa", "of its strength, %"}}
	for _, b := range d.r.Braces {
		over := "–"
		if d.r.Flow != nil {
			for _, f := range d.r.Flow.Braces {
				if f.Name == b.Name {
					over = dec(f.HandOver, 1)
				}
			}
		}
		t.Rows = append(t.Rows, []string{b.Name, dec(b.Axial.Value, 0), dec(b.Moment.Value, 0), over, dec(b.Glue.Shear.Value, 2),
			decNum(100*b.Glue.ShearUsed, 0, "?"), dec(b.Glue.Peel.Value, 3), decNum(100*b.Glue.PeelUsed, 0, "?")})
	}
	return t
}

func (d *subject) works() reportSection {
	t := reportTable{Head: []string{"", "used now, %", "of what decades of load leave, %"}}
	for _, key := range []string{"strength_used", "rolling_shear_used", "shear_used", "foot_used"} {
		q := quantity.Of(key)
		if v := q.Get(d.r); v.Known() {
			t.Rows = append(t.Rows, []string{q.Name, d.number(key), dec(float64(v)/answer.LongTerm(), q.Digits)})
		}
	}
	return reportSection{Title: "How hard the wood works", Tables: []reportTable{t}, Words: []string{
		"Against the short-term strength of clear, straight-grained wood, each place averaged over a circle as wide as the plate is thick, all stresses together by Hoffman's criterion; bending strength stands in for tension along the grain. The last column divides by the " + longTerm() + " that wood keeps under fifty years of load (Madison curve).",
	}}
}

func (d *subject) trust() reportSection {
	e, m := d.r.Error, d.r.Mesh
	t := reportTable{Caption: "The program's own checks of this run, as shares of the whole", Head: []string{"", "found", "passes up to"}}
	for _, k := range []struct {
		name  string
		v     float64
		limit string
	}{{"forces balance", e.Equilibrium, "1e-8"}, {"moments balance", e.Moment, "1e-8"}, {"energy balances the work of the loads", e.Energy, "1e-6"},
		{"the foot presses only where it touches", e.Complementarity, "1e-9"}} {
		t.Rows = append(t.Rows, []string{k.name, fmt.Sprintf("%.0e", k.v), k.limit})
	}
	sec := reportSection{Title: "How far to trust this", Tables: []reportTable{t}}
	verdict := "All built-in checks passed."
	if bad := e.Failed(); len(bad) > 0 {
		verdict = "Built-in checks FAILED: do not use these numbers."
	}
	if e.Discretisation.Known() {
		verdict += fmt.Sprintf(" The error from the mesh is about %s %% of the sink.", d.number("mesh_error"))
	}
	sec.Words = []string{verdict, fmt.Sprintf("Mesh: %d nodes, %d triangles, smallest angle %s degrees.", m.Nodes, m.Triangles, dec(m.MinAngle, 0))}
	if n := len(d.r.Warnings); n > 0 {
		sec.Words = append(sec.Words, fmt.Sprintf("Warnings: %d, to be looked at before any wood is cut; they stand with the answers.", n))
	}
	return sec
}
