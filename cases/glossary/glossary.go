// Package glossary explains the words in which answers are printed: those of the table of
// quantities by their own sentences, and the rest, which stand here.
package glossary

import (
	"cmp"
	"regexp"
	"slices"
	"strings"

	"archload/cases/quantity"
)

// All lists every term by its name.
func All() []Term {
	out := slices.Concat(ofWood(), ofTop(), ofBridge(), ofStrings(), ofComparison(), ofTrust(), ofUnits())
	for _, q := range quantity.All() {
		if !slices.ContainsFunc(out, func(t Term) bool { return t.Name == q.Name }) {
			out = append(out, Term{Name: q.Name, Unit: q.Unit, Means: q.Means})
		}
	}
	slices.SortFunc(out, func(a, b Term) int { return cmp.Compare(strings.ToLower(a.Name), strings.ToLower(b.Name)) })
	return out
}

// Named returns the terms that a word names: those of that name, else those whose name
// or other words hold it, else those whose meaning does.
func Named(word string) []Term {
	word = strings.ToLower(strings.TrimSpace(word))
	holds := func(t Term, is func(string) bool) bool {
		return is(strings.ToLower(t.Name)) || slices.ContainsFunc(t.Also, func(a string) bool { return is(strings.ToLower(a)) })
	}
	for _, names := range []func(Term) bool{
		func(t Term) bool { return holds(t, func(s string) bool { return s == word }) },
		func(t Term) bool { return holds(t, func(s string) bool { return strings.Contains(s, word) }) },
		func(t Term) bool { return strings.Contains(strings.ToLower(t.Means), word) },
	} {
		if found := slices.DeleteFunc(All(), func(t Term) bool { return !names(t) }); len(found) > 0 && word != "" {
			return found
		}
	}
	return nil
}

// Marked splits a text at the first place of each term in it, longer terms first: pieces
// with a term are to be explained, the others stand as they are. Joined they are the text.
func Marked(text string) []Piece {
	type spelled struct{ word, means string }
	var all []spelled
	for _, t := range All() {
		if t.Plain {
			continue
		}
		for _, w := range append([]string{t.Name}, t.Also...) {
			all = append(all, spelled{w, t.Means})
		}
	}
	slices.SortStableFunc(all, func(a, b spelled) int { return len(b.word) - len(a.word) })
	pieces, told := []Piece{{Text: text}}, map[string]bool{}
	for _, s := range all {
		at := regexp.MustCompile(`(?i)\b` + regexp.QuoteMeta(s.word) + `\b`)
		for i, p := range pieces {
			m := at.FindStringIndex(p.Text)
			if p.Means != "" || m == nil || told[s.means] {
				continue
			}
			told[s.means] = true
			pieces = slices.Replace(pieces, i, i+1, Piece{Text: p.Text[:m[0]]}, Piece{p.Text[m[0]:m[1]], s.means}, Piece{Text: p.Text[m[1]:]})
			break
		}
	}
	return slices.DeleteFunc(pieces, func(p Piece) bool { return p.Text == "" })
}

// Piece is a stretch of a text.
type Piece struct {
	Text  string
	Means string // of the term it is; "" for none
}
