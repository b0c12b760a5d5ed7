package report

import (
	"strings"

	"archload/cases/say"
	"archload/cases/study"

	"archload/viz"
)

// sideBySide sets several designs side by side.
func sideBySide(in Input) ([]reportSection, error) {
	c := in.Comparison
	first := reportSection{Title: "What differs, and what comes of it"}
	differs := reportTable{Caption: "What differs in the input", Head: []string{""}, Words: true}
	for i := range in.Reports {
		differs.Head = append(differs.Head, say.Letter(i))
	}
	for _, k := range c.Differs {
		differs.Rows = append(differs.Rows, append([]string{k.Key}, k.Values...))
	}
	first.Tables = append([]reportTable{differs}, sideTables(c)...)
	first.Words = sideWords(c)
	short := reportSection{Title: "In short", Lead: true, List: together(say.Verdict(c))}
	for i, v := range short.List {
		short.List[i] = strings.ReplaceAll(v, "(-", "(−")
	}
	if ranged(c) {
		short.Words = []string{rangeWords()}
	}
	pictures := reportSection{Title: "Pictures side by side"}
	for _, p := range viz.ComparePictures(in.Solutions, c) {
		f, err := embed(p)
		if err != nil {
			return nil, err
		}
		pictures.Figures = append(pictures.Figures, f)
	}
	return []reportSection{short, first, pictures}, nil
}

// ofMesh is how many columns the numbers about the mesh have: they have neither
// ranges nor differences.
const ofMesh = 3

// sideTables are the numbers of the designs, part by part; none of a part
// without rows.
func sideTables(c *study.Comparison) []reportTable {
	var out []reportTable
	last := study.Part(-1)
	for i := range c.Rows {
		r := &c.Rows[i]
		if p := r.Part(); p != last {
			last = p
			t := sideTable(c)
			if p == study.OfMesh {
				t.Head = t.Head[:ofMesh]
			}
			t.Caption = say.Heads(c)[p]
			out = append(out, t)
		}
		t := &out[len(out)-1]
		for k := range c.Cases {
			name := r.Name + ", " + r.Unit
			if k > 0 {
				name = ""
			}
			t.Rows = append(t.Rows, append([]string{name, say.Letter(k)}, sideCells(c, r, k)...)[:len(t.Head)])
		}
	}
	return out
}

// ranged says whether a comparison has ranges.
func ranged(c *study.Comparison) bool { return c.Wood != nil }

func sideTable(c *study.Comparison) reportTable {
	if ranged(c) {
		return reportTable{Close: true, Head: []string{"", "design", "number", "±\u00a0wood", "±\u00a0mesh", "less A", "in %", "±\u00a0wood", "±\u00a0mesh"}}
	}
	return reportTable{Close: true, Head: []string{"", "design", "number", "less A", "in %"}}
}

// sideCells are the cells of one design, with a true minus.
func sideCells(c *study.Comparison, r *study.Row, k int) []string {
	all := say.Cells(r, k)
	out := all[:]
	if !ranged(c) {
		out = []string{all[0], all[3], all[4]}
	}
	for i, s := range out {
		out[i] = strings.Replace(s, "-", "−", 1)
	}
	return out
}

// sideWords say how to read the table.
func sideWords(c *study.Comparison) []string {
	if !ranged(c) {
		return []string{"Each number stands with its difference from A; = means less than is shown. Differences are taken before rounding. The greatest change in percent stands first."}
	}
	out := []string{
		"Each number stands with its difference from A; = means less than is shown. Differences are taken before rounding. In each part, first stands what the design changes most against what another plank would change.",
		"± wood, of a number: what another plank makes of it, one standard deviation, so that about one plank in three lies outside. Of a difference: both designs are cut from the same plank wherever role and wood are the same, and most of the scatter falls out. A difference smaller than that is marked ~: it is within the wood's scatter, and in another plank it may vanish or turn round.",
		"± mesh: what the triangles may cost the number, or the difference.",
	}
	for _, f := range c.Wood.Faults {
		out = append(out, "A range marked ? could not be had: "+f+".")
	}
	return out
}
