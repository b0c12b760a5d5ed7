package report

import (
	"fmt"
	"slices"
	"strings"

	"archload/cases"
	"archload/cases/say"
	"archload/cases/study"
	"archload/viz"
)

// part makes the part of design i of n.
func (d *subject) part(i, n int) (reportPart, error) {
	p := reportPart{ID: fmt.Sprintf("design-%d", i+1), Title: d.r.Title, Name: d.name, Failed: d.r.Error.Failed(), Lead: together(d.lead()), Advice: together(d.advice())}
	if p.Title == "" {
		p.Title = d.name
	}
	if n > 1 {
		p.Letter = say.Letter(i) + ": "
	} else {
		p.Ranges = rangeWords()
	}
	p.Sections = []reportSection{d.certain(), d.drawn(), d.forces(), d.sinks(), d.bears(), d.paths(), d.works(), d.trust()}
	if err := d.illustrate(p.Sections, n); err != nil {
		return p, err
	}
	moved, err := d.moved()
	if err != nil {
		return p, err
	}
	p.Sections = slices.Insert(p.Sections, 1, d.measured(), moved) // behind how sure each number is
	p.Sections = slices.DeleteFunc(p.Sections, func(s reportSection) bool {
		return len(s.Words)+len(s.List)+len(s.Tables)+len(s.Figures) == 0
	})
	return p, nil
}

// elsewhere are the pages of a design that stand among those side by side, if
// there are n designs.
func elsewhere(n int) []string {
	switch n {
	case 1:
		return nil
	case 2:
		return []string{"sink", "strength-used"}
	}
	return []string{"sink"}
}

// illustrate draws every page of the design into the section where it belongs.
func (d *subject) illustrate(sections []reportSection, n int) error {
	for _, p := range append(viz.DesignPictures(d.s, d.r), viz.Pictures(d.s, d.r)...) {
		if slices.Contains(elsewhere(n), p.Name) {
			continue
		}
		f, err := embed(p)
		if err != nil {
			return err
		}
		s := &sections[p.Part+1] // behind how sure each number is
		s.Figures = append(s.Figures, f)
	}
	return nil
}

func (d *subject) certain() reportSection {
	t := reportTable{Head: []string{"", "computed", "from plank to plank", "from the mesh"}}
	for _, a := range d.answers {
		if a.Key == "gap_left" && float64(a.Most) < study.LeastGap {
			t.Rows = append(t.Rows, []string{a.Name, "none that a feeler can find", "", ""})
			continue
		}
		t.Rows = append(t.Rows, []string{a.Name, decNum(a.Value, a.Digits, "never") + " " + a.Unit, woodRange(a), meshRange(a)})
	}
	return reportSection{Title: "How sure each number is", Tables: []reportTable{t}}
}

// measured says what the readings of the bench did to the answers.
func (d *subject) measured() reportSection {
	sec := reportSection{Title: "What was measured, and what it helped"}
	if d.effect == nil {
		return sec
	}
	head, rows := say.EffectTable(d.effect)
	for _, row := range rows {
		for i := range row {
			row[i] = strings.ReplaceAll(row[i], "-", "−")
		}
	}
	sec.Tables = []reportTable{{Head: head, Rows: rows}}
	sec.Words = []string{say.EffectWords(d.effect)}
	for _, s := range d.effect.LeftOut {
		sec.List = append(sec.List, "Left out: "+s+".")
	}
	for _, s := range d.effect.Cautions {
		sec.List = append(sec.List, "Mind: "+s+".")
	}
	return sec
}

// moved sets the numbers on the moved shape beside the linear ones, and draws how it would give way.
func (d *subject) moved() (reportSection, error) {
	sec := reportSection{Title: "On its moved shape, and how far from giving way"}
	if d.stands == nil {
		return sec, nil
	}
	sec.Words = together(d.standing())
	if m := d.stands.Moved; m != nil {
		t := reportTable{Caption: "Numbers that differ by more than 1 %", Head: []string{"", "as carved (linear)", "as it has moved (second order)"}}
		for _, q := range m.Changed(say.WorthTelling) {
			t.Rows = append(t.Rows, []string{q.Name, decNum(q.Linear, q.Digits, "never") + " " + q.Unit, decNum(q.Second, q.Digits, "never") + " " + q.Unit})
		}
		if len(t.Rows) > 0 {
			sec.Tables = []reportTable{t}
		}
	}
	for _, p := range viz.GivingPictures(d.stands.Shape, d.stands.Giving) {
		f, err := embed(p)
		if err != nil {
			return sec, err
		}
		sec.Figures = append(sec.Figures, f)
	}
	for _, c := range d.stands.Giving.Cautions {
		sec.List = append(sec.List, "Mind: "+c+".")
	}
	return sec, nil
}

// rangeWords say what the ranges cover and what not.
func rangeWords() string {
	return "The ranges cover wood and mesh only. From plank to plank is what another plank makes of a number (one standard deviation): about one plank in three lies outside. Mesh is what the triangles may cost it. Not in them: a foot that slips, how the edge is held, and all that stands under \"What is left out\"."
}

// ranges says how the ranges were got.
func ranges() reportSection {
	s := reportSection{Title: "How the ranges were got"}
	s.Words = []string{
		"From the mesh: the program cuts the top into small triangles. It solves the case a second time on triangles twice as large and sees how much the answer moves; about seven tenths of that are left in the finer one (Richardson's extrapolation; for strength the whole of it is shown, because a peak settles more slowly).",
		"From plank to plank: no two planks are alike. Stiffness scatters from board to board with a coefficient of variation of 22 % (Wood Handbook, table 5-6), so about two planks in three lie within 22 % of the mean; strengths and density have their own (same table: bending strength 16 %, crushing across the grain 28 %). The table knows one stiffness, along the grain; the others are assumed to scatter as much. The case was solved again with each constant of each piece of wood smaller by that, one at a time, with the same strings and the same relief; the range is the root of the sum of the squares of what each of them does: about two planks in three lie within it, one in three outside.",
	}
	return s
}

func (d *subject) drawn() reportSection {
	c, r := d.s.Top.Built.Case, d.r
	t := reportTable{Head: []string{"", ""}, Words: true}
	add := func(name, form string, args ...any) {
		t.Rows = append(t.Rows, []string{name, fmt.Sprintf(form, args...)})
	}
	add("wood of the top", "%s, %s, %s-cut", c.Plate.Wood, c.Plate.Made, c.Plate.Cut)
	add("arch", "apex %s mm high, %s", dec(r.Top.Apex.Value, 1), d.place(r.Top.Apex.X, r.Top.Apex.Y))
	add("steepest slope", "%s degrees", dec(r.Top.Steepest.Value, 1))
	if lo, hi := dec(r.Top.Thinnest.Value, 1), dec(r.Top.Thickest.Value, 1); lo == hi {
		add("thickness", "%s mm everywhere", lo)
	} else {
		add("thickness", "%s to %s mm", lo, hi)
	}
	add("mass", "plate %s g, braces %s g", dec(r.Mass.Plate, 0), dec(r.Mass.Braces, 1))
	add("edge", "%s", rimWords(c))
	for i := range c.Braces {
		b := &c.Braces[i]
		if !b.Fitted {
			add(b.Name, "left out")
			continue
		}
		add(b.Name, "up to %s mm wide and %s mm high", dec(b.Width.Max(), 1), dec(b.HeightScale*b.Height.Max(), 1))
	}
	if b := c.Bridge; b != nil {
		add("bridge", "%s, %s mm long, %s mm wide, up to %s mm high, mass %s g; strings %s mm above the top; %s", b.Wood, dec(float64(b.Length), 0),
			dec(float64(b.Width), 1), dec(b.Height.Max(), 1), decNum(r.Mass.Bridge, 1, "?"), dec(float64(b.SaddleHeight), 1), holdWords(b))
		add("relief under the foot", "%s", reliefWords(b))
	}
	return reportSection{Title: "The design", Tables: []reportTable{t}}
}

func rimWords(c *cases.Case) string {
	r := c.Rim
	switch r.Support {
	case "hinged":
		return "held along the outline, free to turn"
	case "clamped":
		return "held along the outline, not free to turn"
	case "free":
		return "not held"
	}
	return fmt.Sprintf("on elastic sides of %s, %s mm high and %s mm thick, lining %s x %s mm", r.SideWood, dec(float64(r.SideHeight), 0),
		dec(float64(r.SideThickness), 1), dec(float64(r.Lining[0]), 0), dec(float64(r.Lining[1]), 0))
}

func reliefWords(b *cases.Bridge) string {
	switch {
	case len(b.Relief.Stations) > 0:
		return "by stations, see the case"
	case b.Relief.Depth > 0:
		return fmt.Sprintf("%s mm deep, %s", dec(float64(b.Relief.Depth), 2), b.Relief.Shape)
	case b.Relief.Across > 0:
		return fmt.Sprintf("%s mm hollow across", dec(float64(b.Relief.Across), 2))
	}
	return "none: fitted tight"
}

// holdWords say how the foot is held sideways.
func holdWords(b *cases.Bridge) string {
	switch b.Hold {
	case "slip":
		return "its foot slides freely (hold = \"slip\")"
	case "friction":
		return fmt.Sprintf("its foot slides where it would drag with more than %.2f of its press (hold = \"friction\")", b.Friction)
	}
	return "its foot stays where it bears (hold = \"grip\")"
}
