package lesson

import (
	"maps"
	"slices"
	"strings"

	"archload/cases"
)

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
		row.Value, row.Of = shown[0], s.whose(row.Words, s.Claims[n:])
		if len(shown) == 2 {
			row.Spread = shown[1]
		}
		c.Rows = append(c.Rows, row)
	}
	return c
}

// sketchFile is a sketch as the file has it.
type sketchFile struct {
	Of    string   `toml:"of" need:"what is drawn"`
	Notes []string `toml:"notes"` // default: none
}

// sketch reads a sketch and keeps the claims of its notes.
func (r *lessonReader) sketch(f *sketchFile, key string, s *Step, design, other *cases.Case) (out Sketch) {
	if f.Of == "" {
		return out
	}
	known := slices.Sorted(maps.Keys(Sketches()))
	if out.Of = r.choice(f.Of, "", key+".of", known); out.Of != "" && len(f.Notes) != Sketches()[out.Of] {
		r.rep.AddKey(key+".notes", "want %d for %q, found %d", Sketches()[out.Of], out.Of, len(f.Notes))
	}
	if s.Section != Sections()[0] {
		r.rep.AddKey(key+".of", "a section stands in its place; want section = %q with a sketch", Sections()[0])
	}
	for _, text := range f.Notes {
		n := len(s.Claims)
		row := Row{Words: r.words(text, key+".notes", longestRow, s, design, other)}
		if shown := shownNumbers(s.Claims[n:]); len(shown) > 0 {
			row.Value = shown[0]
		}
		out.Notes = append(out.Notes, row)
	}
	return out
}

// standsAlone tells whether a letter stands alone among words.
func standsAlone(words, letter string) bool {
	return slices.Contains(strings.FieldsFunc(words, func(r rune) bool { return strings.ContainsRune(" ,:;()", r) }), letter)
}

// whose number a row is, where the step shows two designs: of the one that its words name, else of the one
// that its claims ask; of neither alone, if they ask both, or none.
func (s *Step) whose(words string, claims []Claim) (of Whose) {
	if s.Beside == "" {
		return Neither
	}
	if a, b := standsAlone(words, "A"), standsAlone(words, "B"); a != b {
		return map[bool]Whose{true: OfBeside, false: OfOwn}[a]
	}
	if s.AirA > 0 {
		return Neither // one design in two airs
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
