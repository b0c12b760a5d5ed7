package viz

import (
	"strings"

	"archload/cases"
)

// sideBySide sets several designs side by side.
func sideBySide(in ReportInput) ([]reportSection, error) {
	c := in.Comparison
	first := reportSection{Title: "What differs, and what comes of it"}
	differs := reportTable{Caption: "What differs in the input", Head: []string{""}, Words: true}
	for i := range in.Reports {
		differs.Head = append(differs.Head, cases.Letter(i))
	}
	for _, k := range c.Differs {
		differs.Rows = append(differs.Rows, append([]string{k.Key}, k.Values...))
	}
	first.Tables = append([]reportTable{differs}, sideTables(c)...)
	first.Words = sideWords(c)
	pictures := reportSection{Title: "Pictures side by side"}
	for _, p := range ComparePictures(in.Solutions, c) {
		f, err := figure(p, "The designs side by side: "+p.Name+"; what is drawn and its unit stand in the picture.")
		if err != nil {
			return nil, err
		}
		pictures.Figures = append(pictures.Figures, f)
	}
	return []reportSection{first, pictures}, nil
}

// sideTables are the numbers of the designs: first those whose difference
// matters, then those within the wood's scatter.
func sideTables(c *cases.Comparison) []reportTable {
	beyond, within := sideTable(c), sideTable(c)
	beyond.Caption = "What comes of it"
	within.Caption = "None, or within the wood's scatter (~): in other planks such differences may vanish or turn round"
	for i := range c.Rows {
		r := &c.Rows[i]
		t := &beyond
		if r.WithinScatter() {
			t = &within
		}
		for k := range c.Cases {
			name := r.Name + ", " + r.Unit
			if k > 0 {
				name = ""
			}
			t.Rows = append(t.Rows, append([]string{name, cases.Letter(k)}, sideCells(c, r, k)...))
		}
	}
	if len(within.Rows) == 0 {
		return []reportTable{beyond}
	}
	return []reportTable{beyond, within}
}

// ranged says whether a comparison has ranges.
func ranged(c *cases.Comparison) bool { return c.Wood != nil }

func sideTable(c *cases.Comparison) reportTable {
	if ranged(c) {
		return reportTable{Head: []string{"", "design", "number", "± wood", "± mesh", "less A", "in %", "± wood", "± mesh"}}
	}
	return reportTable{Head: []string{"", "design", "number", "less A", "in %"}}
}

// sideCells are the cells of one design, with a true minus.
func sideCells(c *cases.Comparison, r *cases.Row, k int) []string {
	all := r.Cells(k)
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
func sideWords(c *cases.Comparison) []string {
	if !ranged(c) {
		return []string{"Each number stands with its difference from A; = means none. The greatest change in percent stands first."}
	}
	out := []string{
		"Each number stands with its difference from A; = means none. First stands what the design changes most against what another plank would change.",
		"± wood, of a number: what another plank makes of it, one standard deviation, so that about two planks in three lie within. Of a difference: both designs are cut from the same plank wherever role and wood are the same, and most of the scatter falls out. A difference smaller than that is marked ~: it is within the wood's scatter, and in another plank it may vanish or turn round.",
		"± mesh: what the triangles may cost the number, or the difference.",
	}
	for _, f := range c.Wood.Faults {
		out = append(out, "A range marked ? could not be had: "+f+".")
	}
	return out
}
