package lesson

import "archload/cases"

// chartFile is a chart as the file has it.
type chartFile struct {
	Title string   `toml:"title" need:"what the bars are, with their unit"`
	Rows  []string `toml:"rows" need:"one text for each bar, as in \"by the card {10.9 = key:plate.wood.EL / 1000}\""`
}

// chart reads the rows of a chart and keeps their claims.
func (r *lessonReader) chart(f *chartFile, key string, s *Step, design, other *cases.Case) Chart {
	c := Chart{Title: f.Title}
	r.short(f.Title, key+".title", longestRow)
	if len(f.Rows) > mostRows {
		r.rep.AddKey(key+".rows", "want at most %d, found %d", mostRows, len(f.Rows))
	}
	for _, text := range f.Rows {
		n := len(s.Claims)
		row := Row{Words: r.words(text, key+".rows", longestRow, s, design, other)}
		shown := shownNumbers(s.Claims[n:])
		if len(shown) == 0 || len(shown) > 2 {
			r.rep.AddKey(key+".rows", "want a number in braces, and at most one more for its scatter, found %q", text)
			continue
		}
		row.Value, row.Of = shown[0], s.whose(s.Claims[n:])
		if len(shown) == 2 {
			row.Spread = shown[1]
		}
		c.Rows = append(c.Rows, row)
	}
	return c
}

// whose number claims are, where the step shows two designs: of neither alone, if they ask
// both, or none.
func (s *Step) whose(claims []Claim) (of Whose) {
	if s.Beside == "" {
		return Neither
	}
	for _, c := range claims {
		for _, r := range c.formula.references() {
			here := OfOwn
			if r.beside {
				here = OfBeside
			}
			if r.of == ofBench || of != Neither && of != here {
				return Neither
			}
			of = here
		}
	}
	return of
}
